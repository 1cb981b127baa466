/** What a condition does to a table of weights, indexed by the subset of present findings explained so far. */
import type { NetworkEvidence } from "./network.ts";
import type { Parameters } from "./parameters.ts";
import { byGroup, type GroupEvidence } from "./terms.ts";

/** Evidence as the tables take it: what is absent is uncaused, but for the findings that something blocks. */
export interface TableEvidence extends NetworkEvidence {
  /** Absent because some condition suppressed them, caused or not. */
  readonly blocked: readonly number[];
}

/** What one condition does: what it weighs, and how it explains present findings, group by group. */
export interface Step {
  /** Odds, times what it makes of the findings that are absent in groups where it explains nothing. */
  readonly odds: number;
  readonly touches: readonly Touch[];
}

/** One group with present findings, seen from one condition: it touches the group or not, and then brings findings. */
export interface Touch {
  /** Probability that it does not touch the group. */
  readonly missed: number;
  /** Probability that it touches the group and brings none of the absent findings. */
  readonly touched: number;
  /** The present findings it can bring, as bits of the table's index. */
  readonly bits: Int32Array;
  /** Probability that it brings each of them, given that it touches the group. */
  readonly brings: Float64Array;
}

/** The step of each condition, and that of the leak, whose odds are a weight of every set. */
export function stepsOf(
  parameters: Parameters,
  evidence: TableEvidence,
): { readonly steps: readonly Step[]; readonly leak: Step } {
  const { conditions, odds, link, keep, gate, healthy, healthyGate } = parameters;
  const { present, absent, blocked, oddsFactor } = evidence;
  const found = byGroup(parameters, evidence);
  const bitOf = new Map([...present, ...blocked].map((finding, index) => [finding, 1 << index]));
  const steps = Array.from({ length: conditions }, (_, condition): Step => {
    const keepOf = (finding: number) => keep[finding * conditions + condition] ?? 1;
    const step = stepOf(found, bitOf, {
      gate: (group) => gate[group * conditions + condition] ?? 1,
      rate: (finding) => link[finding * conditions + condition] ?? 0,
    });
    const kept = [...present, ...absent].reduce((product, finding) => product * keepOf(finding), 1);
    return {
      odds: (odds[condition] ?? 0) * (oddsFactor[condition] ?? 1) * kept * step.odds,
      touches: [...step.touches, ...blockingTouches(blocked, bitOf, keepOf)],
    };
  });
  const leak = stepOf(found, bitOf, {
    gate: (group) => healthyGate[group] ?? 1,
    rate: (finding) => healthy[finding] ?? 0,
  });
  return { steps, leak };
}

/** How often a cause touches a group and brings a finding. */
interface Cause {
  readonly gate: (group: number) => number;
  readonly rate: (finding: number) => number;
}

function stepOf(found: readonly GroupEvidence[], bitOf: ReadonlyMap<number, number>, { gate, rate }: Cause): Step {
  let odds = 1;
  const touches: Touch[] = [];
  for (const { group, present, absent, absentSuppressed } of found) {
    const open = gate(group);
    let touched = open;
    for (const finding of absent) touched *= 1 - rate(finding) / open;
    for (const finding of absentSuppressed) touched *= 1 - rate(finding) / open;
    const brought = present.filter((finding) => rate(finding) > 0);
    if (brought.length === 0) odds *= 1 - open + touched;
    else {
      const bits = Int32Array.from(brought, (finding) => bitOf.get(finding) ?? 0);
      touches.push({
        missed: 1 - open,
        touched,
        bits,
        brings: Float64Array.from(brought, (each) => rate(each) / open),
      });
    }
  }
  return { odds, touches };
}

/** A condition blocks each finding that it suppresses, by itself: a bit of the table tells that some condition did. */
function blockingTouches(
  blocked: readonly number[],
  bitOf: ReadonlyMap<number, number>,
  keepOf: (finding: number) => number,
): readonly Touch[] {
  return blocked
    .filter((finding) => keepOf(finding) < 1)
    .map((finding) => ({
      missed: 0,
      touched: 1,
      bits: Int32Array.of(bitOf.get(finding) ?? 0),
      brings: Float64Array.of(1 - keepOf(finding)),
    }));
}

/** Moves a table in place by one group of one condition; `spare` is room of the table's length. */
export type Move = (table: Float64Array, touch: Touch, spare: Float64Array) => void;

/** The table after the condition is present. */
export const explain: Move = (table, touch, spare) => {
  const { missed, touched, bits, brings } = touch;
  if (bits.length === 1) {
    const [bit, rate] = [bits[0] as number, brings[0] as number];
    explainOne(table, bit, { stays: missed + touched, lacks: missed + touched * (1 - rate), brings: touched * rate });
    return;
  }
  spare.set(table);
  for (let index = 0; index < bits.length; index++) {
    const rate = brings[index] as number;
    explainOne(table, bits[index] as number, { stays: 1, lacks: 1 - rate, brings: rate });
  }
  mix(table, touch, spare);
};

/** The transpose of `explain`: weight of completing each table entry once the condition is present. */
export const explainBack: Move = (table, touch, spare) => {
  const { missed, touched, bits, brings } = touch;
  if (bits.length === 1) {
    const [bit, rate] = [bits[0] as number, brings[0] as number];
    completeOne(table, bit, { stays: missed + touched, lacks: missed + touched * (1 - rate), brings: touched * rate });
    return;
  }
  spare.set(table);
  for (let index = 0; index < bits.length; index++) {
    const rate = brings[index] as number;
    completeOne(table, bits[index] as number, { stays: 1, lacks: 1 - rate, brings: rate });
  }
  mix(table, touch, spare);
};

/** What becomes of an entry that has the finding, of one that still lacks it, and how much goes from this to that. */
interface OneFinding {
  readonly stays: number;
  readonly lacks: number;
  readonly brings: number;
}

function explainOne(table: Float64Array, bit: number, { stays, lacks, brings }: OneFinding): void {
  const half = table.length >> 1;
  for (let each = 0; each < half; each++) {
    const without = lacking(each, bit);
    const unexplained = table[without] as number;
    table[without + bit] = stays * (table[without + bit] as number) + brings * unexplained;
    table[without] = lacks * unexplained;
  }
}

function completeOne(table: Float64Array, bit: number, { stays, lacks, brings }: OneFinding): void {
  const half = table.length >> 1;
  for (let each = 0; each < half; each++) {
    const without = lacking(each, bit);
    const explained = table[without + bit] as number;
    table[without] = lacks * (table[without] as number) + brings * explained;
    table[without + bit] = stays * explained;
  }
}

/** The entry of this number among those without the bit: one loop over them all, since two are slow for low bits. */
const lacking = (each: number, bit: number): number => ((each & -bit) << 1) | (each & (bit - 1));

function mix(table: Float64Array, { missed, touched }: Touch, before: Float64Array): void {
  for (let at = 0; at < table.length; at++) {
    table[at] = missed * (before[at] as number) + touched * (table[at] as number);
  }
}
