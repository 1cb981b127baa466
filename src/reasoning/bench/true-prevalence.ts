/** Share truly infested, from the share found positive by a test that errs: sensitivity and specificity known. */
import {
  blakerInterval,
  clopperPearsonInterval,
  type Interval,
  normalUpperQuantile,
  wilsonInterval,
} from "../../numerics/index.ts";
import { answered, blocked, ensure, type Problem, type Result } from "../../units/index.ts";
import { benchProblem } from "./problems.ts";

export interface TestErrors {
  /** Probability that an infested one tests positive, 0 < Se ≤ 1. */
  readonly sensitivity: number;
  /** Probability that one not infested tests negative, 0 < Sp ≤ 1. */
  readonly specificity: number;
}

/** A corrected share: as the formula gives it, and cut to what a share can be. */
export interface Corrected {
  readonly raw: number;
  /** `raw` cut to 0–1. */
  readonly value: number;
}

/** Proportions. The limits named by method are those of the apparent share, corrected the same way and cut to 0–1. */
export interface TruePrevalence extends Corrected {
  readonly apparent: number;
  /** Standard error of `raw`, from the sample alone. */
  readonly standardError: number;
  /** raw ± z·standard error, not cut: of use only far from 0 and 1. */
  readonly wald: Interval;
  readonly clopperPearson: Interval;
  readonly blaker: Interval;
  readonly wilson: Interval;
  readonly level: number;
}

/**
 * Rogan and Gladen's correction of one apparent share: (AP + Sp − 1)/(Se + Sp − 1).
 *
 * @returns raw and cut value, or `test-no-better-than-chance` when Se + Sp ≤ 1
 * @throws DomainError for a share outside [0, 1] or errors outside (0, 1]
 * @source Rogan & Gladen 1978, American Journal of Epidemiology 107:71–76
 *
 * @example
 * correctedShare({ apparent: 0.18, sensitivity: 0.9, specificity: 1 }).value.raw  // → 0.2
 */
export function correctedShare(share: TestErrors & { readonly apparent: number }): Result<Corrected> {
  const { apparent, sensitivity, specificity } = share;
  ensure(apparent >= 0 && apparent <= 1, "apparent", apparent, "in [0, 1]");
  const trouble = errorsTrouble(share);
  if (trouble) return blocked(trouble);
  const raw = (apparent - (1 - specificity)) / (sensitivity - (1 - specificity));
  return answered({ raw, value: cut(raw) });
}

/**
 * True prevalence by Rogan and Gladen, sensitivity and specificity taken as known exactly.
 *
 * The limits of the apparent share are put through the same formula, so they keep their coverage. Fewer positives than
 * the test gives among clean ones, or more than it gives among infested ones, is told: the value is then 0 or 1 and
 * says more about the test than about the bees.
 *
 * @returns TruePrevalence with the warnings `fewer-than-false-positives`, `more-than-sensitivity`, `limits-cut-to-a-point`; or
 *   `nothing-examined`, `positives-exceed-examined`, `test-no-better-than-chance`
 * @throws DomainError for counts that are not whole, errors outside (0, 1] or a level outside (0, 1)
 * @source Rogan & Gladen 1978, American Journal of Epidemiology 107:71–76; Reiczigel, Földi & Ózsvári 2010,
 *   Epidemiology and Infection 138:1674–1678 (limits)
 *
 * @example
 * truePrevalence({ positive: 45, examined: 150, sensitivity: 0.96, specificity: 0.89 }).value.value  // → 0.223529411765
 */
export function truePrevalence(
  request: TestErrors & { readonly positive: number; readonly examined: number; readonly level?: number },
): Result<TruePrevalence> {
  const { positive, examined, sensitivity, specificity, level = 0.95 } = request;
  ensure(level > 0 && level < 1, "level", level, "in (0, 1)");
  const trouble = countsTrouble(request) ?? errorsTrouble(request);
  if (trouble) return blocked(trouble);
  const apparent = positive / examined;
  const youden = sensitivity - (1 - specificity);
  const correct = (share: number) => (share - (1 - specificity)) / youden;
  const limits = ({ low, high }: Interval) => ({ low: cut(correct(low)), high: cut(correct(high)) });
  const counts = { x: positive, n: examined, level };
  const raw = correct(apparent);
  const standardError = Math.sqrt((apparent * (1 - apparent)) / examined) / youden;
  const reach = normalUpperQuantile((1 - level) / 2) * standardError;
  const byMethod = {
    clopperPearson: limits(clopperPearsonInterval(counts)),
    blaker: limits(blakerInterval(counts)),
    wilson: limits(wilsonInterval(counts)),
  };
  return answered(
    {
      apparent,
      raw,
      value: cut(raw),
      standardError,
      wald: { low: raw - reach, high: raw + reach },
      ...byMethod,
      level,
    },
    misfits(request, Object.values(byMethod)),
  );
}

/** What is told where counts do not fit the errors of the test, and where its limits, cut to 0–1, close on one point. */
export function misfits(
  counts: TestErrors & { readonly positive: number; readonly examined: number },
  limits: readonly Interval[],
): readonly Problem[] {
  const { positive, examined, sensitivity, specificity } = counts;
  const problems: Problem[] = [];
  const told = (code: "fewer-than-false-positives" | "more-than-sensitivity", expected: number) =>
    problems.push(benchProblem(code, "warned", "positive", { positive, examined, expected }));
  if (positive / examined < 1 - specificity) told("fewer-than-false-positives", (1 - specificity) * examined);
  if (positive / examined > sensitivity) told("more-than-sensitivity", sensitivity * examined);
  const closed = limits.find(({ low, high }) => low === high);
  if (closed) problems.push(benchProblem("limits-cut-to-a-point", "warned", "positive", { at: closed.low }));
  return problems;
}

/** Cut to 0–1; whoever shows the result shows the raw value beside it. */
export const cut = (share: number): number => Math.min(1, Math.max(0, share));

/** What stands in the way of a share of counts. */
export function countsTrouble(counts: { readonly positive: number; readonly examined: number }): Problem | null {
  const { positive, examined } = counts;
  ensure(Number.isInteger(positive) && positive >= 0, "positive", positive, "a whole number ≥ 0");
  ensure(Number.isInteger(examined) && examined >= 0, "examined", examined, "a whole number ≥ 0");
  if (positive > examined) {
    return benchProblem("positives-exceed-examined", "blocked", "positive", { positive, examined });
  }
  return examined === 0 ? benchProblem("nothing-examined", "blocked", "examined", {}) : null;
}

function errorsTrouble({ sensitivity, specificity }: TestErrors): Problem | null {
  ensure(sensitivity > 0 && sensitivity <= 1, "sensitivity", sensitivity, "in (0, 1]");
  ensure(specificity > 0 && specificity <= 1, "specificity", specificity, "in (0, 1]");
  if (sensitivity + specificity > 1) return null;
  return benchProblem("test-no-better-than-chance", "blocked", "sensitivity", { sensitivity, specificity });
}
