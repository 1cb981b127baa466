/** The same colonies before and after: sign test, Wilcoxon's signed ranks, and sign-flip permutation, all exact. */
import { binomial } from "../../numerics/index.ts";
import { answered, blocked, ensure, type Result } from "../../units/index.ts";
import { efficacyProblem } from "./problems.ts";

/** One number per colony in each list, in the same order. */
export interface Pairs {
  readonly before: readonly number[];
  readonly after: readonly number[];
}

export interface PairedTest {
  /** What the test counts or sums; see the test. */
  readonly statistic: number;
  /** Two-sided chance if before and after were exchangeable in every colony. */
  readonly pValue: number;
  /** Pairs that differ: the others say nothing and are left out. */
  readonly differing: number;
}

/**
 * Sign test: of the colonies that changed, as many should have risen as fallen. Statistic: how many fell.
 *
 * @returns PairedTest, or `no-pair-differs`
 * @throws DomainError unless both lists are finite and of one length
 * @source binomial law; Arbuthnott's idea, standard text
 *
 * @example
 * signTest({ before: [12, 30, 7, 22, 18, 9, 40, 15], after: [3, 12, 9, 5, 10, 3, 16, 14] }).value.pValue  // → 0.0703125
 */
export function signTest(pairs: Pairs): Result<PairedTest> {
  const changes = changesOf(pairs);
  if (changes.length === 0) return nothingDiffers(pairs);
  const n = changes.length;
  const fell = changes.filter((change) => change > 0).length;
  const pValue = Math.min(1, 2 * binomial({ n, p: 0.5 }).cdf(Math.min(fell, n - fell)));
  return answered({ statistic: fell, pValue, differing: n });
}

/**
 * Wilcoxon's signed-rank test from the exact law of the ranks. Statistic: the smaller of the two rank sums.
 *
 * The exact law needs changes of different size: with ties it is refused, and `signFlipTest` serves.
 *
 * @returns PairedTest; or `no-pair-differs`, `changes-tie`
 * @throws DomainError unless both lists are finite and of one length
 * @source Wilcoxon 1945; number of subsets of 1 … n by their sum
 *
 * @example
 * wilcoxonTest({ before: [12, 30, 7, 22, 18, 9, 40, 15], after: [3, 12, 9, 5, 10, 3, 16, 14] }).value.pValue  // → 0.0234375
 */
export function wilcoxonTest(pairs: Pairs): Result<PairedTest> {
  const changes = changesOf(pairs);
  const n = changes.length;
  if (n === 0) return nothingDiffers(pairs);
  const bySize = [...changes].sort((one, other) => Math.abs(one) - Math.abs(other));
  if (new Set(bySize.map(Math.abs)).size < n) {
    return blocked(efficacyProblem("changes-tie", "blocked", "after", { pairs: n }));
  }
  const fell = bySize.reduce((sum, change, i) => sum + (change > 0 ? i + 1 : 0), 0);
  const largest = (n * (n + 1)) / 2;
  const statistic = Math.min(fell, largest - fell);
  const share = shareOfSubsets(n);
  let tail = 0;
  for (let sum = 0; sum <= statistic; sum++) tail += share[sum] as number;
  return answered({ statistic, pValue: Math.min(1, 2 * tail), differing: n });
}

/** Pairs up to which every flip of signs is listed. */
export const mostPairsListed = 16;

/** Sums closer than this count as equal; counts are whole, so this only absorbs rounding of measured values. */
const tieSlack = 1e-9;

/**
 * Permutation test of the mean change: all flips of signs are equally likely. Statistic: the mean change of the
 * pairs that differ, before less after. Two-sided by the size of the sum; ties do no harm.
 *
 * @returns PairedTest; or `no-pair-differs`, `too-many-pairs-to-list`
 * @throws DomainError unless both lists are finite and of one length
 * @source Fisher 1935, The design of experiments
 *
 * @example
 * signFlipTest({ before: [12, 30, 7, 22, 18, 9, 40, 15], after: [3, 12, 8, 5, 9, 2, 18, 14] }).value.pValue  // → 0.0234375
 */
export function signFlipTest(pairs: Pairs): Result<PairedTest> {
  const changes = changesOf(pairs);
  const n = changes.length;
  if (n === 0) return nothingDiffers(pairs);
  if (n > mostPairsListed) {
    return blocked(efficacyProblem("too-many-pairs-to-list", "blocked", "after", { pairs: n, most: mostPairsListed }));
  }
  const sizes = changes.map(Math.abs);
  const total = changes.reduce((sum, change) => sum + change, 0);
  const bound = Math.abs(total) - tieSlack;
  const extreme = (place: number, sum: number): number =>
    place === n
      ? Number(Math.abs(sum) >= bound)
      : extreme(place + 1, sum + (sizes[place] as number)) + extreme(place + 1, sum - (sizes[place] as number));
  return answered({ statistic: total / n, pValue: extreme(0, 0) / 2 ** n, differing: n });
}

/** Before less after in the pairs that differ. */
function changesOf({ before, after }: Pairs): readonly number[] {
  ensure(before.length === after.length, "after", after.length, `as many as before: ${before.length}`);
  for (const [name, values] of Object.entries({ before, after })) {
    for (const value of values) ensure(Number.isFinite(value), name, value, "a finite number");
  }
  return before.map((each, i) => each - (after[i] as number)).filter((change) => change !== 0);
}

const nothingDiffers = ({ before }: Pairs) =>
  blocked(efficacyProblem("no-pair-differs", "blocked", "after", { pairs: before.length }));

/** Of all subsets of 1 … n, the share with each sum. */
function shareOfSubsets(n: number): Float64Array {
  const share = new Float64Array((n * (n + 1)) / 2 + 1);
  share[0] = 1;
  let reached = 0;
  for (let rank = 1; rank <= n; rank++) {
    reached += rank;
    for (let sum = reached; sum >= 0; sum--) {
      share[sum] = ((share[sum] as number) + (sum >= rank ? (share[sum - rank] as number) : 0)) / 2;
    }
  }
  return share;
}
