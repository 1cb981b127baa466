/** What is believed about the share of infested bees, and what a sample would tell about it. */
import { betaBinomial, betaQuantile, binomial, regularizedBeta } from "../../numerics/index.ts";
import { type Estimate, ensure } from "../../units/index.ts";

/** Share of infested bees as a beta distribution. */
export interface BetaBelief {
  readonly a: number;
  readonly b: number;
}

/** Infested at one known prevalence, or not at all. */
export interface TwoStateBelief {
  /** Probability that the colony is infested, 0–1. */
  readonly probability: number;
  /** Share of infested bees if it is, 0 < p ≤ 1. */
  readonly prevalence: number;
}

export type Belief = BetaBelief | TwoStateBelief;

export interface BenchTest {
  /** Bees to examine, a whole number ≥ 1. */
  readonly bees: number;
  /** Probability that an infested bee is called positive, 0 < Se ≤ 1. */
  readonly sensitivity: number;
  /** Probability that a clear bee is called clear, 0 < Sp ≤ 1. */
  readonly specificity: number;
}

/** Straight lines between points of rising prevalence from 0 to 1. */
export type BrokenLine = readonly { readonly prevalence: number; readonly value: number }[];

/** Per number of positives x = 0 … bees: its chance, and the expectation of the line over the cases with that x. */
export interface Signals {
  readonly chance: readonly number[];
  readonly weighted: readonly number[];
}

export const isBeta = (belief: Belief): belief is BetaBelief => "a" in belief;

/** @throws DomainError when a belief lies outside its range */
export function ensureBelief(belief: Belief): void {
  if (isBeta(belief)) {
    ensure(belief.a > 0 && Number.isFinite(belief.a), "belief.a", belief.a, "above 0");
    ensure(belief.b > 0 && Number.isFinite(belief.b), "belief.b", belief.b, "above 0");
    return;
  }
  const { probability, prevalence } = belief;
  ensure(probability >= 0 && probability <= 1, "belief.probability", probability, "in [0, 1]");
  ensure(prevalence > 0 && prevalence <= 1, "belief.prevalence", prevalence, "in (0, 1]");
}

/**
 * Belief after counting: Jeffreys's prior Beta(½, ½) and the bees read.
 *
 * @throws DomainError for counts that are not whole or positive > examined
 * @source Jeffreys's prior for a share
 *
 * @example
 * beliefFromCounts({ positive: 3, examined: 50 })  // → {"a":3.5,"b":47.5}
 */
export function beliefFromCounts(counts: { readonly positive: number; readonly examined: number }): BetaBelief {
  const { positive, examined } = counts;
  ensure(Number.isInteger(examined) && examined >= 0, "examined", examined, "a whole number ≥ 0");
  ensure(Number.isInteger(positive) && positive >= 0 && positive <= examined, "positive", positive, "0 to examined");
  return { a: positive + 0.5, b: examined - positive + 0.5 };
}

/** What the strip runs over: the mean share of infested bees, or the probability of being infested. */
export const centreOf = (belief: Belief): number =>
  isBeta(belief) ? belief.a / (belief.a + belief.b) : belief.probability;

/** The same belief moved to another centre, equally firm. */
export const movedTo = (belief: Belief, centre: number): Belief =>
  isBeta(belief)
    ? { a: centre * (belief.a + belief.b), b: (1 - centre) * (belief.a + belief.b) }
    : { ...belief, probability: centre };

/** The middle 90 % of a beta belief about the mean; null for a belief of two states. */
export function rangeOf(belief: Belief): Estimate | null {
  if (!isBeta(belief)) return null;
  return {
    value: centreOf(belief),
    low: betaQuantile({ p: 0.05, ...belief }),
    high: betaQuantile({ p: 0.95, ...belief }),
    level: 0.9,
    interval: "credible",
    method: "beta-quantiles",
    rule: "DE5",
    n: null,
  };
}

/** Expectation of a broken line under a belief; exact, by incomplete beta functions piece by piece. */
export function expectation(belief: Belief, line: BrokenLine): number {
  if (!isBeta(belief)) {
    const { probability, prevalence } = belief;
    return (1 - probability) * lineAt(line, 0) + probability * lineAt(line, prevalence);
  }
  const { a, b } = belief;
  const mean = a / (a + b);
  let [total, below, belowWeighted] = [0, 0, 0];
  for (let i = 1; i < line.length; i++) {
    const [left, right] = [line[i - 1] as BrokenLine[number], line[i] as BrokenLine[number]];
    const isLast = i === line.length - 1;
    const upTo = isLast ? 1 : regularizedBeta(right.prevalence, a, b);
    const upToWeighted = isLast ? 1 : regularizedBeta(right.prevalence, a + 1, b);
    const slope = (right.value - left.value) / (right.prevalence - left.prevalence);
    const atZero = left.value - slope * left.prevalence;
    total += atZero * (upTo - below) + slope * mean * (upToWeighted - belowWeighted);
    [below, belowWeighted] = [upTo, upToWeighted];
  }
  return total;
}

/** Value of a broken line at one prevalence. */
export function lineAt(line: BrokenLine, prevalence: number): number {
  for (let i = 1; i < line.length; i++) {
    const [left, right] = [line[i - 1] as BrokenLine[number], line[i] as BrokenLine[number]];
    if (prevalence <= right.prevalence) {
      const along = (prevalence - left.prevalence) / (right.prevalence - left.prevalence);
      return left.value + along * (right.value - left.value);
    }
  }
  return (line.at(-1) as BrokenLine[number]).value;
}

/** Chance of x positives among the bees when k are infested: rows by k, columns by x. Null for a perfect bench. */
export type BenchChances = readonly Float64Array[] | null;

/** What the bench makes of k infested bees among n, for every k; the same whatever is believed. */
export function benchChances({ bees: n, sensitivity, specificity }: BenchTest): BenchChances {
  if (sensitivity === 1 && specificity === 1) return null;
  const [found, falsely] = [binomialRows(n, sensitivity), binomialRows(n, 1 - specificity)];
  return Array.from({ length: n + 1 }, (_, k) => {
    const row = new Float64Array(n + 1);
    const [ofInfested, ofClear] = [found[k] as Float64Array, falsely[n - k] as Float64Array];
    // Plain loops: this is the one place where the work grows with the cube of the bees.
    for (let i = 0; i <= k; i++) {
      const chance = ofInfested[i] as number;
      if (chance < negligible) continue;
      for (let j = 0; j <= n - k; j++) {
        const other = ofClear[j] as number;
        if (other >= negligible) row[i + j] = (row[i + j] as number) + chance * other;
      }
    }
    return row;
  });
}

/** Chances this small cannot move a sum of chances in its sixteen digits. */
const negligible = 1e-25;

/** Binomial chances of 0 … k among k bees for every k up to n, each row from the one before: only sums of positives. */
function binomialRows(n: number, p: number): readonly Float64Array[] {
  const rows = [Float64Array.of(1)];
  for (let k = 1; k <= n; k++) {
    const [before, row] = [rows[k - 1] as Float64Array, new Float64Array(k + 1)];
    for (let x = 0; x <= k; x++) row[x] = (before[x] ?? 0) * (1 - p) + (x > 0 ? (before[x - 1] as number) * p : 0);
    rows.push(row);
  }
  return rows;
}

/**
 * How a test's outcomes look from a belief.
 *
 * Exact: k truly infested among n is beta-binomial, the belief given k is Beta(a + k, b + n − k), and of the k
 * Se are called positive besides 1 − Sp of the others. No integration.
 */
export function signals(belief: Belief, test: BenchTest, bench: BenchChances, line: BrokenLine): Signals {
  const { bees: n, sensitivity, specificity } = test;
  if (!isBeta(belief)) {
    const { probability, prevalence } = belief;
    const called = prevalence * sensitivity + (1 - prevalence) * (1 - specificity);
    const [clear, infested] = [binomial({ n, p: 1 - specificity }), binomial({ n, p: called })];
    const parts = Array.from(
      { length: n + 1 },
      (_, x) => [(1 - probability) * clear.pmf(x), probability * infested.pmf(x)] as const,
    );
    return {
      chance: parts.map(([c, i]) => c + i),
      weighted: parts.map(([c, i]) => c * lineAt(line, 0) + i * lineAt(line, prevalence)),
    };
  }
  const chanceOfTruth = infestedChances(belief, n);
  const weightOfTruth = chanceOfTruth.map((chance, k) =>
    chance === 0 ? 0 : chance * expectation({ a: belief.a + k, b: belief.b + n - k }, line),
  );
  if (bench === null) return { chance: chanceOfTruth, weighted: weightOfTruth };
  const chance = new Array<number>(n + 1).fill(0);
  const weighted = new Array<number>(n + 1).fill(0);
  for (const [k, row] of bench.entries()) {
    const [ofTruth, weight] = [chanceOfTruth[k] as number, weightOfTruth[k] as number];
    for (let x = 0; x <= n; x++) {
      const share = row[x] as number;
      chance[x] = (chance[x] as number) + share * ofTruth;
      weighted[x] = (weighted[x] as number) + share * weight;
    }
  }
  return { chance, weighted };
}

/** Beta-binomial chances of 0 … n infested, each from its neighbour, outwards from the mean: products only, so no digits cancel. */
function infestedChances({ a, b }: BetaBelief, n: number): readonly number[] {
  const chances = new Array<number>(n + 1).fill(0);
  const top = Math.max(0, Math.min(n, Math.round((n * a) / (a + b))));
  const up = (k: number) => ((n - k) * (a + k)) / ((k + 1) * (b + n - k - 1));
  chances[top] = betaBinomial({ n, a, b }).pmf(top);
  for (let k = top; k < n; k++) chances[k + 1] = (chances[k] as number) * up(k);
  for (let k = top - 1; k >= 0; k--) chances[k] = (chances[k + 1] as number) / up(k);
  return chances;
}
