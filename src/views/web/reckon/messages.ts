/** What the page and its reckoner say to each other. */
import type { differential, nextStep, OwnEvidence } from "../../../reasoning/index.ts";
import type { Result } from "../../../units/index.ts";

export interface Question {
  /** Grows with each question: an older answer is dropped. */
  readonly number: number;
  readonly input: differential.AnyInput;
  /** What the programme changed and learnt; null for the published evidence. */
  readonly own: OwnEvidence | null;
  /** Draws for the ranges that are final. */
  readonly fullDraws: number;
  /** Two causes to be set side by side; the likeliest two when null. */
  readonly compare: readonly [string, string] | null;
}

export interface Reply {
  readonly number: number;
  readonly result: Result<differential.AnyAnswer>;
  /** Twenty points of each condition, each 1 in 20 of how the answer could fall; null until the ranges are full. */
  readonly dots: Readonly<Record<string, readonly number[]>> | null;
  /** Looks and tests, worth most first, what would change the first place, one visit; null until they are reckoned. */
  readonly steps: nextStep.NextSteps<string, string> | null;
  /** Two causes side by side; null until they are reckoned. */
  readonly comparison: differential.CauseComparison<string, string> | null;
  readonly draws: number;
  /** False while the ranges are drawn again in full. */
  readonly isFinal: boolean;
}
