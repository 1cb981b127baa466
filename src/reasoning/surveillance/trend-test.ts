/** Does a share rise or fall over ordered groups? */
import { normalSf } from "../../numerics/index.ts";
import { answered, blocked, ensure, type Result } from "../../units/index.ts";
import { surveillanceProblem } from "./problems.ts";

export interface ScoredGroup {
  readonly positive: number;
  readonly examined: number;
  /** Where the group stands: year, dose, distance. */
  readonly score: number;
}

export interface TrendTest {
  /** Positive when the share rises with the score. */
  readonly z: number;
  readonly chiSquare: number;
  /** Two-sided. */
  readonly pValue: number;
}

/**
 * Cochran and Armitage's test for a linear trend of a share over scores.
 *
 * Model: units independent within and between groups; where they come in clusters the p-value is too small.
 *
 * @returns z, its square and p, or `too-few-groups`, `trend-not-defined`, `scores-all-alike`
 * @throws DomainError for counts that are not whole, positives above examined, or a score that is not finite
 * @source Cochran 1954, Biometrics 10:417–451; Armitage 1955, Biometrics 11:375–386
 *
 * @example
 * trendTest([{ positive: 12, examined: 200, score: 0 }, { positive: 18, examined: 210, score: 1 }, { positive: 22, examined: 190, score: 2 }, { positive: 30, examined: 205, score: 3 }]).value.z  // → 3.0414959079
 */
export function trendTest(groups: readonly ScoredGroup[]): Result<TrendTest> {
  for (const { positive, examined, score } of groups) {
    ensure(Number.isInteger(examined) && examined >= 0, "examined", examined, "a whole number ≥ 0");
    ensure(Number.isInteger(positive) && positive >= 0 && positive <= examined, "positive", positive, "0 to examined");
    ensure(Number.isFinite(score), "score", score, "a finite number");
  }
  const kept = groups.filter(({ examined }) => examined > 0);
  const total = (f: (group: ScoredGroup) => number) => kept.reduce((sum, each) => sum + f(each), 0);
  const [positive, examined] = [total((each) => each.positive), total((each) => each.examined)];
  const [first, second] = kept;
  if (!first || !second) {
    return blocked(surveillanceProblem("too-few-groups", "blocked", "groups", { groups: kept.length }));
  }
  if (positive === 0 || positive === examined) {
    return blocked(surveillanceProblem("trend-not-defined", "blocked", "groups", { positive, examined }));
  }
  if (kept.every(({ score }) => score === first.score)) {
    return blocked(surveillanceProblem("scores-all-alike", "blocked", "groups", { score: first.score }));
  }
  const share = positive / examined;
  // Scores about their mean, years near 2000 would lose the digits of the variance; and in units of their span, which
  // cancels out, so that none is too large or small to square.
  const [low, high] = [Math.min(...kept.map(({ score }) => score)), Math.max(...kept.map(({ score }) => score))];
  const placed = ({ score }: ScoredGroup) => (score / 2 - low / 2) / (high / 2 - low / 2);
  const centre = total((each) => each.examined * placed(each)) / examined;
  const excess = total((each) => (placed(each) - centre) * (each.positive - each.examined * share));
  const variance = share * (1 - share) * total((each) => each.examined * (placed(each) - centre) ** 2);
  const z = excess / Math.sqrt(variance);
  return answered({ z, chiSquare: z * z, pValue: 2 * normalSf(Math.abs(z)) });
}
