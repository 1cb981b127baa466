/** The differential: what could explain a failing colony, several causes at once, and when nobody can tell yet. */
export type * from "./answer.ts";
export { type Belief, belief, type Candidate } from "./belief.ts";
export { differential } from "./differential.ts";
export type * from "./input.ts";
export type { Setting } from "./network-for.ts";
export {
  type FindingOutlook,
  type NoisyOrAnswer,
  type NoisyOrNetwork,
  type NoisyOrPosterior,
  noisyOr,
  quickscore,
} from "./noisy-or.ts";
export { quantiles } from "./quantiles.ts";
