/** Fisher's exact test of a two-by-two table, with its mid-P forms; one table, or all tables of the same margins. */
import { hypergeometric } from "../../numerics/index.ts";
import { ensure } from "../../units/index.ts";

/** Counts: first group with (a) and without (b) the outcome, second group with (c) and without (d). */
export interface TwoByTwo {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
}

/** Chances of tables with the same margins, the groups being alike. */
export interface FisherTest {
  /** P of a or fewer in the first cell, given the margins. */
  readonly less: number;
  /** P of a or more. */
  readonly greater: number;
  /** P of all tables no likelier than this one. */
  readonly twoSided: number;
  /** The same with tables as likely as this one counted by half: closer to the level on average, no longer sure. */
  readonly midP: {
    readonly less: number;
    readonly greater: number;
    readonly twoSided: number;
    /** Twice the smaller of the one-sided mid-P. */
    readonly doubled: number;
  };
}

/**
 * Fisher's exact test: all tables with the same margins.
 *
 * Two-sided by probability: a table counts as no likelier within a relative slack of 1e-7, as R and SciPy do.
 *
 * @throws DomainError for counts that are not whole numbers ≥ 0
 * @source Fisher 1935; convention of R's fisher.test; mid-P: Lancaster 1961
 *
 * @example
 * fisherTest({ a: 8, b: 1, c: 2, d: 5 }).twoSided  // → 0.03496503497
 * fisherTest({ a: 8, b: 1, c: 2, d: 5 }).midP.twoSided  // → 0.023164335664
 */
export function fisherTest(table: TwoByTwo): FisherTest {
  checkCounts(table);
  const { a, b, c, d } = table;
  const { law, twoSided, midTwoSided } = fisherTests({ first: a + b, second: c + d, withOutcome: a + c });
  const here = law.pmf(a);
  const [less, greater] = [law.cdf(a), law.sf(a - 1)];
  return {
    less,
    greater,
    twoSided: twoSided(a),
    midP: {
      less: less - here / 2,
      greater: greater - here / 2,
      twoSided: midTwoSided(a),
      doubled: 2 * Math.min(less, greater) - here,
    },
  };
}

/** Chances within this share of each other count as equal: the slack of R and SciPy. */
const tieSlack = 1e-7;

/**
 * The two-sided tests of all tables of the same margins at once: what a power calculation walks through.
 *
 * @returns the law of the first cell, and the two-sided P and mid-P of each of its values
 * @throws DomainError for margins that are not whole numbers ≥ 0 or contradict each other
 * @source as for `fisherTest`
 *
 * @example
 * fisherTests({ first: 9, second: 7, withOutcome: 10 }).twoSided(8)  // → 0.03496503497
 */
export function fisherTests(margins: {
  /** Size of each group. */
  readonly first: number;
  readonly second: number;
  /** How many of both together have the outcome. */
  readonly withOutcome: number;
}): {
  readonly law: ReturnType<typeof hypergeometric>;
  readonly twoSided: (a: number) => number;
  readonly midTwoSided: (a: number) => number;
} {
  const { first, second, withOutcome } = margins;
  const law = hypergeometric({ population: first + second, marked: withOutcome, drawn: first });
  const { low, high } = law.support;
  const rising = Float64Array.from({ length: high - low + 1 }, (_, i) => law.pmf(low + i)).sort();
  const running = new Float64Array(rising.length + 1);
  for (const [i, chance] of rising.entries()) running[i + 1] = (running[i] as number) + chance;
  /** Chance of all tables whose own chance is at most, or below, the bound. */
  const upTo = (bound: number) => {
    let [from, to] = [0, rising.length];
    while (from < to) {
      const middle = (from + to) >> 1;
      if ((rising[middle] as number) <= bound) from = middle + 1;
      else to = middle;
    }
    return running[from] as number;
  };
  return {
    law,
    twoSided: (a) => Math.min(1, upTo(law.pmf(a) * (1 + tieSlack))),
    midTwoSided: (a) => {
      const here = law.pmf(a);
      return (upTo(here * (1 + tieSlack)) + upTo(here * (1 - tieSlack))) / 2;
    },
  };
}

/** @throws DomainError unless all four are whole numbers ≥ 0 */
export function checkCounts({ a, b, c, d }: TwoByTwo): void {
  for (const [cell, count] of Object.entries({ a, b, c, d })) {
    ensure(Number.isInteger(count) && count >= 0, cell, count, "a whole number ≥ 0");
  }
}
