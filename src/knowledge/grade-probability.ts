/** What the words of frequency mean in numbers. */
import type { Grade } from "./fact.ts";

/**
 * Probability that a finding is present, if looked for, at the clinical stage. "never" is 0.005 and not 0: mixed
 * cases and wrong scoring are frequent, and a zero would veto a true cause. Judgement.
 *
 * @example
 * gradeProbability.usual  // → 0.65
 */
export const gradeProbability: Readonly<Record<Grade, number>> = {
  never: 0.005,
  rare: 0.02,
  occasional: 0.1,
  common: 0.35,
  usual: 0.65,
  typical: 0.9,
};
