/** Share of bees infested, with the interval that the number of bees allows. */
import {
  agrestiCoullInterval,
  blakerInterval,
  clopperPearsonInterval,
  type Interval,
  jeffreysInterval,
  likelihoodRatioInterval,
  midPInterval,
  type ProportionData,
  wilsonCorrectedInterval,
  wilsonInterval,
} from "../../numerics/index.ts";
import { answered, blocked, type Estimate, ensure, type Problem, type Result } from "../../units/index.ts";
import { benchProblem } from "./problems.ts";

export const prevalenceMethods = [
  "clopper-pearson",
  "blaker",
  "mid-p",
  "wilson",
  "wilson-corrected",
  "agresti-coull",
  "likelihood-ratio",
  "jeffreys",
] as const;
export type PrevalenceMethod = (typeof prevalenceMethods)[number];

export interface PrevalenceRequest {
  /** Bees with mites; a whole number ≥ 0. */
  readonly positive: number;
  /** Bees that count: positive + clear; a whole number ≥ 0. */
  readonly examined: number;
  /** Probability content, 0 < level < 1; 0.95 when not given. */
  readonly level?: number;
  readonly method?: PrevalenceMethod;
  /** True when reading stopped because of what had been found. */
  readonly stoppedEarly?: boolean;
}

/** The limits of a share by method, and what they are limits of. */
export const shareLimits: Readonly<
  Record<
    PrevalenceMethod,
    { readonly limits: (data: ProportionData) => Interval; readonly interval: Estimate["interval"] }
  >
> = {
  "clopper-pearson": { limits: clopperPearsonInterval, interval: "confidence" },
  blaker: { limits: blakerInterval, interval: "confidence" },
  "mid-p": { limits: midPInterval, interval: "confidence" },
  wilson: { limits: wilsonInterval, interval: "confidence" },
  "wilson-corrected": { limits: wilsonCorrectedInterval, interval: "confidence" },
  "agresti-coull": { limits: agrestiCoullInterval, interval: "confidence" },
  "likelihood-ratio": { limits: likelihoodRatioInterval, interval: "confidence" },
  jeffreys: { limits: jeffreysInterval, interval: "credible" },
};

/**
 * Apparent prevalence: positive bees among the bees read.
 *
 * Model: bees drawn at random from a large colony. Nothing is corrected for mites that the bench misses.
 * Clopper–Pearson keeps at least its level whatever the truth and is the default; Blaker's does too and lies inside it.
 * The others are shorter and close to their level on average, below it for some shares.
 * A reading that stopped because of what was found gives an interval of a stopped sample: the answer says so.
 *
 * @returns Estimate of a proportion, or `nothing-examined`, `positives-exceed-examined`
 * @throws DomainError for counts that are not whole or a level outside (0, 1)
 * @source Clopper & Pearson 1934; Blaker 2000; Wilson 1927; Newcombe 1998; Brown, Cai & DasGupta 2001
 *
 * @example
 * prevalence({ positive: 17, examined: 50 }).value.low  // → 0.2120547134
 * prevalence({ positive: 5, examined: 50, method: "wilson" }).value.high  // → 0.2136023144
 */
export function prevalence(request: PrevalenceRequest): Result<Estimate> {
  const { positive, examined, level = 0.95, method = "clopper-pearson", stoppedEarly = false } = request;
  ensure(Number.isInteger(positive) && positive >= 0, "positive", positive, "a whole number ≥ 0");
  ensure(Number.isInteger(examined) && examined >= 0, "examined", examined, "a whole number ≥ 0");
  ensure(level > 0 && level < 1, "level", level, "in (0, 1)");
  if (examined === 0 && positive === 0) return blocked(benchProblem("nothing-examined", "blocked", "examined", {}));
  if (positive > examined) {
    return blocked(benchProblem("positives-exceed-examined", "blocked", "positive", { positive, examined }));
  }
  const { limits, interval } = shareLimits[method];
  const { low, high } = limits({ x: positive, n: examined, level });
  const problems: Problem[] = stoppedEarly
    ? [benchProblem("stopped-early", "warned", "stoppedEarly", { positive, examined })]
    : [];
  return answered(
    { value: positive / examined, low, high, level, interval, method, rule: "BE5", n: examined },
    problems,
  );
}
