/** The differential: what could explain a failing colony, several causes at once, and when nobody can tell yet. */
export type * from "./answer.ts";
export { type Belief, belief, type Candidate } from "./belief.ts";
export { type Calibration, type CalibrationBin, calibration, type Forecasts, logClip } from "./calibration.ts";
export { confirmingRatio, confirms } from "./confirming.ts";
export { differential } from "./differential.ts";
export type * from "./input.ts";
export type { Setting } from "./network-for.ts";
export { priorProbabilities } from "./network-for.ts";
export {
  type FindingOutlook,
  type NoisyOrAnswer,
  type NoisyOrNetwork,
  type NoisyOrPosterior,
  noisyOr,
  quickscore,
} from "./noisy-or.ts";
export { quantiles } from "./quantiles.ts";
export { type RankingScores, rankingScores } from "./ranking-scores.ts";
export { readInput as readCase } from "./read-input.ts";
export type { Recalibration } from "./recalibration.ts";
export { type SingleFaultModel, singleFault } from "./single-fault.ts";
export { countsSpread, type JudgedKind, startCounts, startOf } from "./start-counts.ts";
export { type StatedPosteriors, statedPosteriors } from "./stated-posteriors.ts";
