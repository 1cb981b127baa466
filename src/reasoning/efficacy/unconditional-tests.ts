/** Barnard's and Boschloo's exact tests of two shares: no margin is held fixed but the sizes of the groups. */
import { answered, blocked, ensure, type Result } from "../../units/index.ts";
import { fisherTests, type TwoByTwo } from "../bench/index.ts";
import { type Share, shareProblem } from "./group.ts";
import { largestChance } from "./nuisance.ts";

/** Which way the first share is thought to lie from the second. */
export type Alternative = "less" | "greater" | "two-sided";

export interface UnconditionalTest {
  /** What orders the tables: the score of the difference (Barnard), or Fisher's one-sided P (Boschloo). */
  readonly statistic: number;
  /** Chance of a table as extreme, at the common share where it is largest. */
  readonly pValue: number;
  /** The common share at which it is largest. */
  readonly commonShare: number;
}

export interface ComparedShares {
  readonly first: Share;
  readonly second: Share;
  /** Two-sided when not given. */
  readonly alternative?: Alternative;
}

/**
 * The two groups of a table as shares: each row is a group, the first column those with the outcome.
 *
 * @returns first and second share
 * @throws DomainError for counts that are not whole numbers ≥ 0
 * @source definition of the table
 *
 * @example
 * sharesOfTable({ a: 7, b: 8, c: 12, d: 3 }).first  // → {"infested":7,"examined":15}
 */
export function sharesOfTable({ a, b, c, d }: TwoByTwo): { readonly first: Share; readonly second: Share } {
  for (const [cell, count] of Object.entries({ a, b, c, d })) {
    ensure(Number.isInteger(count) && count >= 0, cell, count, "a whole number ≥ 0");
  }
  return { first: { infested: a, examined: a + b }, second: { infested: c, examined: c + d } };
}

/** Statistics that differ by a smaller share count as equal: rounding must not part tables that tie. */
const usualTieSlack = 1e-10;

/**
 * Barnard's test: tables ordered by the difference over its pooled standard error, the chance maximised over the
 * common share. Stronger than Fisher's test in small groups; cost grows with the product of the two sizes.
 *
 * Turned around and mirrored, a table has the same statistic, so ties are the rule and are counted. SciPy compares
 * doubles as they come and can drop a tie to rounding (7/15 against 12/15: 0.03407672 for 0.03410915); a `tieSlack`
 * of 0 does the same, for comparison with such programs only.
 *
 * @returns UnconditionalTest; or `infested-exceed-examined`, `group-not-examined`
 * @throws DomainError for counts that are not whole or a slack outside [0, 1e-6]
 * @source Barnard 1947, Biometrika 34:123; score statistic as in Mehta & Senchaudhuri 2003
 *
 * @example
 * barnardTest({ first: { infested: 7, examined: 15 }, second: { infested: 12, examined: 15 }, alternative: "less" }).value.pValue  // → 0.034109155
 */
export function barnardTest(
  shares: ComparedShares & {
    /** Share by which two statistics may differ and still tie. */
    readonly tieSlack?: number;
  },
): Result<UnconditionalTest> {
  const { first, second, alternative = "two-sided", tieSlack = usualTieSlack } = shares;
  ensure(tieSlack >= 0 && tieSlack <= 1e-6, "tieSlack", tieSlack, "from 0 to 1e-6");
  const troubles = troublesOf(first, second);
  if (troubles.length > 0) return blocked(...troubles);
  const [n1, n2] = [first.examined, second.examined];
  const score = (x1: number, x2: number) => {
    const pooled = (x1 + x2) / (n1 + n2);
    const gap = x1 / n1 - x2 / n2;
    return gap === 0 ? 0 : gap / Math.sqrt(pooled * (1 - pooled) * (1 / n1 + 1 / n2));
  };
  const statistic = score(first.infested, second.infested);
  const slack = tieSlack * (1 + Math.abs(statistic));
  const extreme = {
    less: (found: number) => found <= statistic + slack,
    greater: (found: number) => found >= statistic - slack,
    "two-sided": (found: number) => Math.abs(found) >= Math.abs(statistic) - slack,
  }[alternative];
  const largest = largestChance({ n1, n2, isExtreme: (x1, x2) => extreme(score(x1, x2)) });
  return answered({ statistic, pValue: largest.chance, commonShare: largest.share });
}

/**
 * Boschloo's test: tables ordered by Fisher's one-sided P, the chance maximised over the common share. Never weaker
 * than Fisher's test. Two-sided: twice the smaller one-sided P, at most 1.
 *
 * @returns UnconditionalTest; or `infested-exceed-examined`, `group-not-examined`
 * @throws DomainError for counts that are not whole
 * @source Boschloo 1970, Statistica Neerlandica 24:1
 *
 * @example
 * boschlooTest({ first: { infested: 7, examined: 15 }, second: { infested: 12, examined: 15 }, alternative: "less" }).value.pValue  // → 0.034109155
 */
export function boschlooTest(shares: ComparedShares): Result<UnconditionalTest> {
  const { first, second, alternative = "two-sided" } = shares;
  const troubles = troublesOf(first, second);
  if (troubles.length > 0) return blocked(...troubles);
  if (alternative !== "two-sided") return answered(oneSidedBoschloo(first, second, alternative));
  const [less, greater] = (["less", "greater"] as const).map((side) => oneSidedBoschloo(first, second, side)) as [
    UnconditionalTest,
    UnconditionalTest,
  ];
  const smaller = less.pValue < greater.pValue ? less : greater;
  return answered({ ...smaller, pValue: Math.min(1, 2 * smaller.pValue) });
}

function oneSidedBoschloo(first: Share, second: Share, side: "less" | "greater"): UnconditionalTest {
  const [n1, n2] = [first.examined, second.examined];
  const laws = Array.from({ length: n1 + n2 + 1 }, (_, withOutcome) =>
    fisherTests({ first: n1, second: n2, withOutcome }),
  ).map(({ law }) => law);
  const fisher = (x1: number, x2: number): number => {
    const law = laws[x1 + x2] as (typeof laws)[number];
    return side === "less" ? law.cdf(x1) : law.sf(x1 - 1);
  };
  const statistic = fisher(first.infested, second.infested);
  const bound = statistic * (1 + usualTieSlack);
  const largest = largestChance({ n1, n2, isExtreme: (x1, x2) => fisher(x1, x2) <= bound });
  return { statistic, pValue: largest.chance, commonShare: largest.share };
}

const troublesOf = (first: Share, second: Share) =>
  [shareProblem("first", first), shareProblem("second", second)].filter((each) => each !== null);
