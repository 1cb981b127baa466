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
 * two parts for each such finding. Cost: 2^(present findings) × 3^(such findings) × conditions.
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
  readonly units: readonly Unit[];
  /** The table before any condition: what the leak explains. */
  readonly start: Float64Array<ArrayBuffer>;
  readonly room: Room;
}

/** Room to work in, of a table's length: written over at every step. */
interface Room {
  readonly copy: Float64Array;
  readonly spare: Float64Array;
}

function walkOf(parameters: Parameters, evidence: TableEvidence, groups: Groups): Walk {
  const { steps, leak } = stepsOf(parameters, evidence);
  const start = new Float64Array(1 << (evidence.present.length + evidence.blocked.length));
  const room = { copy: new Float64Array(start.length), spare: new Float64Array(start.length) };
  start[0] = leak.odds;
  for (const touch of leak.touches) explain(start, touch, room.spare);
  const units = [...[...parameters.singles].map(singleUnit), ...parameters.blocks.map(blockUnit)];
  // Units of one group side by side: a sum without the group then leaves the common path for a short way only.
  const place = (unit: Unit) => groups.findIndex((group) => holds(unit, group));
  return { steps, units: units.toSorted((a, b) => place(a) - place(b)), start, room };
}

function totalOf(parameters: Parameters, evidence: TableEvidence): number {
  const walk = walkOf(parameters, evidence, []);
  const { units, start } = walk;
  const all = units.reduce((table, unit) => pass(unit, walk, table), start).at(-1) as number;
  return all + (parameters.emptyWeight - 1) * (start.at(-1) as number);
}

function sumsOf(parameters: Parameters, evidence: TableEvidence, groups: Groups): Sums {
  const { conditions, emptyWeight } = parameters;
  const walk = walkOf(parameters, evidence, groups);
  const { units, start } = walk;
  const size = start.length;
  // Forward through the units, keeping each table; then back with the weight of completing it.
  const tables = [start];
  for (const unit of units) tables.push(pass(unit, walk, tables.at(-1) as Float64Array));
  const all = (tables.at(-1) as Float64Array)[size - 1] as number;
  const withCondition = new Float64Array(conditions);
  const last = new Float64Array(size);
  last[size - 1] = 1;
  const completing = [last];
  for (let index = units.length - 1; index >= 0; index--) {
    const before = tables[index] as Float64Array;
    completing.push(passBack(units[index] as Unit, walk, completing.at(-1) as Float64Array, before, withCondition));
  }
  completing.reverse();
  const empty = start[size - 1] as number;
  const extra = (emptyWeight - 1) * empty;
  const without = groups.map((group) => {
    const first = units.findIndex((unit) => holds(unit, group));
    const end = units.findLastIndex((unit) => holds(unit, group)) + 1;
    if (first < 0) return all;
    const kept = units.slice(first, end).map((unit) => withoutMembers(unit, group));
    const table = kept.reduce((moved, unit) => pass(unit, walk, moved), tables[first] as Float64Array);
    return dot(table, completing[end] as Float64Array);
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

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let at = 0; at < a.length; at++) sum += (a[at] as number) * (b[at] as number);
  return sum;
}

/** Conditions that come and go together in the walk: states as lists of members, each with a weight. */
interface Unit {
  readonly states: readonly State[];
}

interface State {
  readonly members: readonly number[];
  readonly weight: number;
}

const singleUnit = (condition: number): Unit => ({
  states: [
    { members: [], weight: 1 },
    { members: [condition], weight: 1 },
  ],
});

const blockUnit = ({ members, weight }: Parameters["blocks"][number]): Unit => ({
  states: [...weight].map((each, state) => ({
    members: [...members].filter((_, index) => ((state >> index) & 1) === 1),
    weight: each,
  })),
});

const isIn = ({ members }: State, group: Int32Array): boolean => members.some((member) => group.includes(member));
const holds = ({ states }: Unit, group: Int32Array): boolean => states.some((state) => isIn(state, group));
const withoutMembers = ({ states }: Unit, group: Int32Array): Unit => ({
  states: states.filter((state) => !isIn(state, group)),
});

/** The table moved by one state of a unit, but for the state's weight; it lies in the room, or is the table itself. */
function moved({ members }: State, { steps, room }: Walk, table: Float64Array, move: Move): Float64Array {
  const touches = members.flatMap((member) => (steps[member] as Step).touches);
  if (touches.length === 0) return table;
  room.copy.set(table);
  for (const touch of touches) move(room.copy, touch, room.spare);
  return room.copy;
}

const weightOf = ({ members, weight }: State, { steps }: Walk): number =>
  members.reduce((product, member) => product * (steps[member] as Step).odds, weight);

function addTo(sum: Float64Array, weight: number, table: Float64Array): void {
  for (let at = 0; at < sum.length; at++) sum[at] = (sum[at] as number) + weight * (table[at] as number);
}

function pass({ states }: Unit, walk: Walk, table: Float64Array): Float64Array<ArrayBuffer> {
  const sum = new Float64Array(table.length);
  for (const state of states) addTo(sum, weightOf(state, walk), moved(state, walk, table, explain));
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
  const sum = new Float64Array(complete.length);
  for (const state of states) {
    const back = moved(state, walk, complete, explainBack);
    const weight = weightOf(state, walk);
    addTo(sum, weight, back);
    if (state.members.length === 0) continue;
    const all = weight * dot(before, back);
    for (const member of state.members) withCondition[member] = (withCondition[member] as number) + all;
  }
  return sum;
}
