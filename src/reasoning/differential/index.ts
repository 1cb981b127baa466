/** The differential: what could explain a failing colony, several causes at once, and when nobody can tell yet. */
export type * from "./answer.ts";
export { type Belief, belief, type Candidate, type MadeTest, statedPosteriors } from "./belief.ts";
export { type Calibration, type CalibrationBin, calibration, type Forecasts, logClip } from "./calibration.ts";
export { type CauseComparison, compareCauses, type SeenBetween, type WouldPart } from "./compare-causes.ts";
export { confirmingRatio, confirms } from "./confirming.ts";
export { differential } from "./differential.ts";
export type * from "./input.ts";
export { defaultThresholds, mostSporesMillions } from "./judgements.ts";
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
export { isPossible } from "./possible-looks.ts";
export { quantiles } from "./quantiles.ts";
export { type RankingScores, rankingScores } from "./ranking-scores.ts";
export { readInput as readCase } from "./read-input.ts";
export { needsWhich, unfitTest } from "./read-tests.ts";
export type { Recalibration } from "./recalibration.ts";
export { type SingleFaultModel, singleFault } from "./single-fault.ts";
export { countsSpread, type JudgedKind, startCounts, startOf } from "./start-counts.ts";
export { posteriorsUnder, type StatedPosteriors } from "./stated-posteriors.ts";
export { groupOfTest } from "./weighed-tests.ts";
