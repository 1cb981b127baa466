/** The same sums without a single subtraction: condition by condition, which present findings are explained so far. */

import type { Groups, Sums } from "./expansion.ts";
import type { NetworkEvidence } from "./network.ts";
import type { Parameters } from "./parameters.ts";
import { byGroup, type GroupEvidence, isSuppressed } from "./terms.ts";

/**
 * Exact sums over all sets, from tables indexed by the subset of present findings explained so far.
 *
 * Every step multiplies and adds numbers that are not negative, so nothing cancels however unlikely the evidence is.
 * Slower than the expansion by about the number of findings a condition can bring. A finding that is absent although
 * something can suppress it enters as "not looked for" less "present": the only differences taken.
 */
export function unionTables(parameters: Parameters, evidence: NetworkEvidence, groups: Groups = []): Sums {
  const parts = signedParts(parameters, evidence).map(({ sign, part }) => ({
    sign,
    sums: positiveSums(parameters, part, groups),
  }));
  return parts
    .slice(1)
    .reduce((sums, part) => added(sums, part.sums, part.sign), (parts[0] as (typeof parts)[number]).sums);
}

/** Weight of all sets alone: one walk through the tables, of which only one is kept. */
export function unionTotal(parameters: Parameters, evidence: NetworkEvidence): number {
  return signedParts(parameters, evidence).reduce(
    (sum, { sign, part }) => sum + sign * positiveTotal(parameters, part),
    0,
  );
}

/** The evidence as parts to add and subtract, in none of which a suppressed finding is absent. */
function signedParts(
  parameters: Parameters,
  evidence: NetworkEvidence,
): readonly { readonly sign: 1 | -1; readonly part: NetworkEvidence }[] {
  const suppressed = evidence.absent.filter((finding) => isSuppressed(parameters, finding));
  const absent = evidence.absent.filter((finding) => !suppressed.includes(finding));
  return Array.from({ length: 1 << suppressed.length }, (_, chosen) => {
    const asPresent = suppressed.filter((_finding, index) => ((chosen >> index) & 1) === 1);
    const present = [...evidence.present, ...asPresent];
    return { sign: asPresent.length % 2 === 0 ? 1 : -1, part: { ...evidence, present, absent } };
  });
}

function added(a: Sums, b: Sums, sign: number): Sums {
  const total = a.total + sign * b.total;
  return {
    total,
    withCondition: a.withCondition.map((each, index) => each + sign * (b.withCondition[index] ?? 0)),
    withoutGroup: a.withoutGroup.map((each, index) => each + sign * (b.withoutGroup[index] ?? 0)),
    empty: a.empty + sign * b.empty,
    relativeError:
      total > 0 ? (a.relativeError * Math.abs(a.total) + b.relativeError * b.total) / total : Number.POSITIVE_INFINITY,
  };
}

/** What one condition does to a table: its odds, and how it explains each group's findings. */
interface Step {
  readonly odds: number;
  readonly touches: readonly Touch[];
}

interface Touch {
  readonly gate: number;
  /** Probability that it brings none of the absent findings, given that it touches the group. */
  readonly spares: number;
  readonly bits: Int32Array;
  readonly brings: Float64Array;
}

/** What a walk through the tables needs. A block of tied conditions is one unit of the walk. */
interface Walk {
  readonly steps: readonly Step[];
  readonly units: readonly Unit[];
  /** The table before any condition: what the leak explains. */
  readonly start: Float64Array<ArrayBuffer>;
}

function walkOf(parameters: Parameters, evidence: NetworkEvidence): Walk {
  const found = byGroup(parameters, evidence);
  const bitOf = new Map(evidence.present.map((finding, index) => [finding, index]));
  const start = new Float64Array(1 << evidence.present.length);
  start[0] = 1;
  explain(start, leakTouches(parameters, found, bitOf));
  return {
    steps: Array.from({ length: parameters.conditions }, (_, condition) =>
      stepOf(parameters, evidence, found, bitOf, condition),
    ),
    units: [...[...parameters.singles].map(singleUnit), ...parameters.blocks.map(blockUnit)],
    start,
  };
}

function positiveTotal(parameters: Parameters, evidence: NetworkEvidence): number {
  const { steps, units, start } = walkOf(parameters, evidence);
  const all = units.reduce((table, unit) => pass(unit, steps, table), start).at(-1) as number;
  return all + (parameters.emptyWeight - 1) * (start.at(-1) as number);
}

function positiveSums(parameters: Parameters, evidence: NetworkEvidence, groups: Groups): Sums {
  const { conditions, emptyWeight } = parameters;
  const { steps, units, start } = walkOf(parameters, evidence);
  const size = start.length;
  // Forward through the units, keeping each table; then back with the weight of completing it.
  const tables = [start];
  for (const unit of units) tables.push(pass(unit, steps, tables.at(-1) as Float64Array));
  const all = (tables.at(-1) as Float64Array)[size - 1] as number;
  const withCondition = new Float64Array(conditions);
  let complete = new Float64Array(size);
  complete[size - 1] = 1;
  for (let index = units.length - 1; index >= 0; index--) {
    const unit = units[index] as Unit;
    addShares(unit, steps, tables[index] as Float64Array, complete, withCondition);
    complete = passBack(unit, steps, complete);
  }
  const empty = start[size - 1] as number;
  const extra = (emptyWeight - 1) * empty;
  const without = groups.map((group) => {
    const kept = units.map((unit) => withoutMembers(unit, group));
    return kept.reduce((table, unit) => pass(unit, steps, table), start)[size - 1] as number;
  });
  const total = all + extra;
  const roundings = 4 * conditions * (evidence.present.length + 1);
  return {
    total,
    withCondition,
    withoutGroup: Float64Array.from(without, (each) => each + extra),
    empty: emptyWeight * empty,
    // One rounding for each product and sum on a path through the tables; the weight of the empty set may take away.
    relativeError: (roundings * Number.EPSILON * (all + Math.abs(extra))) / total,
  };
}

/** Conditions that come and go together in the walk: states as lists of members, each with a weight. */
interface Unit {
  readonly states: readonly { readonly members: readonly number[]; readonly weight: number }[];
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

const withoutMembers = ({ states }: Unit, group: Int32Array): Unit => ({
  states: states.filter(({ members }) => !members.some((member) => group.includes(member))),
});

function stepOf(
  parameters: Parameters,
  evidence: NetworkEvidence,
  found: readonly GroupEvidence[],
  bitOf: ReadonlyMap<number, number>,
  condition: number,
): Step {
  const { conditions, link, keep, gate } = parameters;
  let odds = (parameters.odds[condition] ?? 0) * (evidence.oddsFactor[condition] ?? 1);
  for (const finding of evidence.present) odds *= keep[finding * conditions + condition] ?? 1;
  const touches = found.map(({ group, present, absent }) => {
    const open = gate[group * conditions + condition] ?? 1;
    const rate = (finding: number) => (link[finding * conditions + condition] ?? 0) / open;
    return touchOf(open, present, absent, rate, bitOf);
  });
  return { odds, touches: touches.filter(({ spares, bits }) => spares < 1 || bits.length > 0) };
}

const leakTouches = (
  parameters: Parameters,
  found: readonly GroupEvidence[],
  bitOf: ReadonlyMap<number, number>,
): readonly Touch[] =>
  found.map(({ group, present, absent }) => {
    const open = parameters.healthyGate[group] ?? 1;
    return touchOf(open, present, absent, (finding) => (parameters.healthy[finding] ?? 0) / open, bitOf);
  });

function touchOf(
  gate: number,
  present: readonly number[],
  absent: readonly number[],
  rate: (finding: number) => number,
  bitOf: ReadonlyMap<number, number>,
): Touch {
  const brought = present.filter((finding) => rate(finding) > 0);
  return {
    gate,
    spares: absent.reduce((product, finding) => product * (1 - rate(finding)), 1),
    bits: Int32Array.from(brought, (finding) => bitOf.get(finding) ?? 0),
    brings: Float64Array.from(brought, rate),
  };
}

/** The table after the condition is present, in place. */
function explain(table: Float64Array, touches: readonly Touch[]): void {
  for (const { gate, spares, bits, brings } of touches) {
    const before = gate < 1 ? table.slice() : null;
    for (let index = 0; index < bits.length; index++) {
      const bit = 1 << (bits[index] as number);
      const rate = brings[index] as number;
      for (let subset = 0; subset < table.length; subset++) {
        if ((subset & bit) !== 0) continue;
        const unexplained = table[subset] as number;
        table[subset | bit] = (table[subset | bit] as number) + rate * unexplained;
        table[subset] = (1 - rate) * unexplained;
      }
    }
    for (let at = 0; at < table.length; at++) {
      const touched = spares * (table[at] as number);
      table[at] = before === null ? touched : (1 - gate) * (before[at] as number) + gate * touched;
    }
  }
}

/** The transpose of `explain`: weight of completing each table entry once the condition is present. */
function explainBack(table: Float64Array, touches: readonly Touch[]): void {
  for (const { gate, spares, bits, brings } of touches.toReversed()) {
    const before = gate < 1 ? table.slice() : null;
    for (let index = bits.length - 1; index >= 0; index--) {
      const bit = 1 << (bits[index] as number);
      const rate = brings[index] as number;
      for (let subset = 0; subset < table.length; subset++) {
        if ((subset & bit) !== 0) continue;
        table[subset] = (1 - rate) * (table[subset] as number) + rate * (table[subset | bit] as number);
      }
    }
    for (let at = 0; at < table.length; at++) {
      const touched = spares * (table[at] as number);
      table[at] = before === null ? touched : (1 - gate) * (before[at] as number) + gate * touched;
    }
  }
}

function afterState(
  state: Unit["states"][number],
  steps: readonly Step[],
  table: Float64Array,
  move: typeof explain,
): Float64Array {
  const moved = table.slice();
  let weight = state.weight;
  for (const member of state.members) {
    const step = steps[member] as Step;
    move(moved, step.touches);
    weight *= step.odds;
  }
  for (let at = 0; at < moved.length; at++) moved[at] = weight * (moved[at] as number);
  return moved;
}

function summed(
  unit: Unit,
  steps: readonly Step[],
  table: Float64Array,
  move: typeof explain,
): Float64Array<ArrayBuffer> {
  const sum = new Float64Array(table.length);
  for (const state of unit.states) {
    const moved = afterState(state, steps, table, move);
    for (let at = 0; at < sum.length; at++) sum[at] = (sum[at] as number) + (moved[at] as number);
  }
  return sum;
}

const pass = (unit: Unit, steps: readonly Step[], table: Float64Array) => summed(unit, steps, table, explain);
// Steps of one state commute, so each may be transposed in the order it came.
const passBack = (unit: Unit, steps: readonly Step[], table: Float64Array) => summed(unit, steps, table, explainBack);

function addShares(
  unit: Unit,
  steps: readonly Step[],
  before: Float64Array,
  complete: Float64Array,
  into: Float64Array,
): void {
  for (const state of unit.states) {
    if (state.members.length === 0) continue;
    const moved = afterState(state, steps, before, explain);
    let weight = 0;
    for (let at = 0; at < moved.length; at++) weight += (moved[at] as number) * (complete[at] as number);
    for (const member of state.members) into[member] = (into[member] as number) + weight;
  }
}
