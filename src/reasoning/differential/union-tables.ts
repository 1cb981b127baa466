/** The same sums without a single subtraction: condition by condition, which present findings are explained so far. */
import type { Groups, Sums } from "./expansion.ts";
import type { NetworkEvidence } from "./network.ts";
import type { Parameters } from "./parameters.ts";
import { explain, explainBack, type Move, type Step, stepsOf, type TableEvidence } from "./table-steps.ts";
import { isSuppressed } from "./terms.ts";

/**
 * Exact sums over all sets, from tables indexed by the subset of present findings explained so far.
 *
 * Every step multiplies and adds numbers that are not negative, so nothing cancels however unlikely the evidence is;
 * only the weight of the empty set can take away. A finding that is absent although something can suppress it is either
 * blocked, and then a table tells by a bit of its own that some condition blocked it, or neither blocked nor caused:
 * two parts for each such finding. Cost: 2^(present findings and such findings) × conditions, and 3 in place of the
 * second 2 for the few conditions that suppress.
 */
export function unionTables(parameters: Parameters, evidence: NetworkEvidence, groups: Groups = []): Sums {
  return partsOf(parameters, evidence)
    .map((part) => sumsOf(parameters, part, groups))
    .reduce(added);
}

/** Weight of all sets alone: one walk through the tables, of which only one is kept. */
export function unionTotal(parameters: Parameters, evidence: NetworkEvidence): number {
  return partsOf(parameters, evidence).reduce((sum, part) => sum + totalOf(parameters, part), 0);
}

/** The evidence as parts to add up: which of the absent findings that can be suppressed were. */
function partsOf(parameters: Parameters, evidence: NetworkEvidence): readonly TableEvidence[] {
  const suppressed = evidence.absent.filter((finding) => isSuppressed(parameters, finding));
  return Array.from({ length: 1 << suppressed.length }, (_, chosen) => {
    const blocked = suppressed.filter((_finding, index) => ((chosen >> index) & 1) === 1);
    return { ...evidence, blocked, absent: evidence.absent.filter((finding) => !blocked.includes(finding)) };
  });
}

function added(a: Sums, b: Sums): Sums {
  const total = a.total + b.total;
  return {
    total,
    withCondition: a.withCondition.map((each, index) => each + (b.withCondition[index] ?? 0)),
    withoutGroup: a.withoutGroup.map((each, index) => each + (b.withoutGroup[index] ?? 0)),
    empty: a.empty + b.empty,
    relativeError: total > 0 ? (a.relativeError * a.total + b.relativeError * b.total) / total : 0,
  };
}

/** What a walk through the tables needs. A block of tied conditions is one unit of the walk. */
interface Walk {
  readonly steps: readonly Step[];
  /** What blocks a finding comes last: the tables of all others go without the bits of the blocked. */
  readonly units: readonly Unit[];
  /** The table before any condition, without the bits of the blocked: what the leak explains. */
  readonly start: Float64Array<ArrayBuffer>;
  /** Length of a table with all bits. */
  readonly size: number;
  readonly room: Room;
}

/** Room to work in, as long as the longest table: written over at every step. */
interface Room {
  readonly copy: Float64Array;
  readonly spare: Float64Array;
}

function walkOf(parameters: Parameters, evidence: TableEvidence, groups: Groups): Walk {
  const { steps, leak } = stepsOf(parameters, evidence);
  const start = new Float64Array(1 << evidence.present.length);
  const size = start.length << evidence.blocked.length;
  const room = { copy: new Float64Array(size), spare: new Float64Array(size) };
  start[0] = leak.odds;
  for (const touch of leak.touches) explain(start, touch, room.spare.subarray(0, start.length));
  const isBlocker = (member: number) =>
    (steps[member] as Step).touches.some(({ bits }) => Math.max(...bits) >= start.length);
  const units = [...[...parameters.singles].map(singleUnit), ...parameters.blocks.map(blockUnit)].map((unit) => ({
    ...unit,
    blocks: unit.members.some(isBlocker),
  }));
  // Units of one group side by side: a sum without the group then leaves the common path for a short way only.
  const placed = units.map((unit) => ({ unit, place: groups.findIndex((group) => holds(unit, group)) }));
  const order = placed.sort((a, b) => Number(a.unit.blocks) - Number(b.unit.blocks) || a.place - b.place);
  return { steps, units: order.map(({ unit }) => unit), start, size, room };
}

/** The table as the unit takes it: with all bits where it blocks something, and nothing blocked so far. */
function readyFor({ blocks }: Unit, { size }: Walk, table: Float64Array): Float64Array {
  if (!blocks || table.length === size) return table;
  const whole = new Float64Array(size);
  whole.set(table);
  return whole;
}

function totalOf(parameters: Parameters, evidence: TableEvidence): number {
  const walk = walkOf(parameters, evidence, []);
  const start: Float64Array = walk.start;
  const last = walk.units.reduce((table, unit) => pass(unit, walk, readyFor(unit, walk, table)), start);
  return (last[walk.size - 1] as number) + (parameters.emptyWeight - 1) * emptyOf(walk);
}

/** Weight of the empty set by the odds alone: it blocks nothing. */
const emptyOf = ({ start, size }: Walk): number => (start.length === size ? (start[size - 1] as number) : 0);

function sumsOf(parameters: Parameters, evidence: TableEvidence, groups: Groups): Sums {
  const { conditions, emptyWeight } = parameters;
  const walk = walkOf(parameters, evidence, groups);
  const { units, size } = walk;
  // Forward through the units, keeping each table; then back with the weight of completing it.
  const tables: Float64Array[] = [];
  let table: Float64Array = walk.start;
  for (const unit of units) {
    tables.push(readyFor(unit, walk, table));
    table = pass(unit, walk, tables.at(-1) as Float64Array);
  }
  const all = table[size - 1] as number;
  const withCondition = new Float64Array(conditions);
  const last = new Float64Array(size);
  last[size - 1] = 1;
  const completing = [last];
  for (let index = units.length - 1; index >= 0; index--) {
    const before = tables[index] as Float64Array;
    // Where nothing is blocked yet only those entries are to be completed.
    const complete = (completing.at(-1) as Float64Array).subarray(0, before.length);
    completing.push(passBack(units[index] as Unit, walk, complete, before, withCondition));
  }
  completing.reverse();
  const empty = emptyOf(walk);
  const extra = (emptyWeight - 1) * empty;
  const without = groups.map((group) => {
    const first = units.findIndex((unit) => holds(unit, group));
    const end = units.findLastIndex((unit) => holds(unit, group)) + 1;
    if (first < 0) return all;
    // A unit of which only the state without members is left changes nothing.
    const kept = units
      .slice(first, end)
      .map((unit) => withoutMembers(unit, group))
      .filter(({ states }) => states.length > 1);
    const passed = kept.reduce(
      (moved, unit) => pass(unit, walk, readyFor(unit, walk, moved)),
      tables[first] as Float64Array,
    );
    return dot(passed, completing[end] as Float64Array);
  });
  const total = all + extra;
  const roundings = 4 * conditions * (evidence.present.length + evidence.blocked.length + 1);
  return {
    total,
    withCondition,
    withoutGroup: Float64Array.from(without, (each) => each + extra),
    empty: emptyWeight * empty,
    // One rounding for each product and sum on a path through the tables; the weight of the empty set may take away.
    relativeError: total > 0 ? (roundings * Number.EPSILON * (all + Math.abs(extra))) / total : 0,
  };
}

/** Sum of products; where one table goes without the bits of the blocked, the other's entries there weigh nothing. */
function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  const { length } = a.length < b.length ? a : b;
  for (let at = 0; at < length; at++) sum += (a[at] as number) * (b[at] as number);
  return sum;
}

/** Conditions that come and go together in the walk: states as lists of members, each with a weight. */
interface Unit {
  readonly members: readonly number[];
  readonly states: readonly State[];
  /** Whether a member blocks a finding. */
  readonly blocks: boolean;
}

interface State {
  readonly members: readonly number[];
  readonly weight: number;
}

const singleUnit = (condition: number): Omit<Unit, "blocks"> => ({
  members: [condition],
  states: [
    { members: [], weight: 1 },
    { members: [condition], weight: 1 },
  ],
});

const blockUnit = ({ members, weight }: Parameters["blocks"][number]): Omit<Unit, "blocks"> => ({
  members: [...members],
  states: [...weight].map((each, state) => ({
    members: [...members].filter((_, index) => ((state >> index) & 1) === 1),
    weight: each,
  })),
});

const holds = ({ members }: Pick<Unit, "members">, group: Int32Array): boolean =>
  members.some((member) => group.includes(member));
const withoutMembers = ({ states, ...unit }: Unit, group: Int32Array): Unit => ({
  ...unit,
  states: states.filter((state) => !holds(state, group)),
});

/** The table moved by one state of a unit, but for the state's weight; it lies in the room, or is the table itself. */
function moved({ members }: State, { steps, room }: Walk, table: Float64Array, move: Move): Float64Array {
  if (members.every((member) => (steps[member] as Step).touches.length === 0)) return table;
  const [copy, spare] = [room.copy.subarray(0, table.length), room.spare.subarray(0, table.length)];
  copy.set(table);
  for (const member of members) for (const touch of (steps[member] as Step).touches) move(copy, touch, spare);
  return copy;
}

const weightOf = ({ members, weight }: State, { steps }: Walk): number =>
  members.reduce((product, member) => product * (steps[member] as Step).odds, weight);

function addTo(sum: Float64Array, weight: number, table: Float64Array): void {
  for (let at = 0; at < sum.length; at++) sum[at] = (sum[at] as number) + weight * (table[at] as number);
}

/** The table with the state without members, whose weight is 1: what the others are added to. */
function pass({ states }: Unit, walk: Walk, table: Float64Array): Float64Array<ArrayBuffer> {
  const sum = new Float64Array(table);
  for (const state of states.slice(1)) addTo(sum, weightOf(state, walk), moved(state, walk, table, explain));
  return sum;
}

/**
 * The weight of completing each entry before a unit, from that after it; adds what each member's states weigh in all.
 * Steps of one state commute, so each may be transposed in the order it came.
 */
function passBack(
  { states }: Unit,
  walk: Walk,
  complete: Float64Array,
  before: Float64Array,
  withCondition: Float64Array,
): Float64Array<ArrayBuffer> {
  const sum = new Float64Array(complete);
  for (const state of states.slice(1)) {
    const back = moved(state, walk, complete, explainBack);
    const weight = weightOf(state, walk);
    addTo(sum, weight, back);
    const all = weight * dot(before, back);
    for (const member of state.members) withCondition[member] = (withCondition[member] as number) + all;
  }
  return sum;
}
