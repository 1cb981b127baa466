/** What the page and its reckoner say to each other. */
import type { differential, nextStep } from "../../../reasoning/index.ts";
import type { Result } from "../../../units/index.ts";

export interface Question {
  /** Grows with each question: an older answer is dropped. */
  readonly number: number;
  readonly input: differential.DifferentialInput;
  /** Draws for the ranges that are final. */
  readonly fullDraws: number;
}

export interface Reply {
  readonly number: number;
  readonly result: Result<differential.DifferentialAnswer>;
  /** Twenty points of each condition, each 1 in 20 of how the answer could fall; null until the ranges are full. */
  readonly dots: Readonly<Record<string, readonly number[]>> | null;
  /** Looks and tests, worth most first; null until they are reckoned. */
  readonly next: readonly nextStep.NextStep[] | null;
  readonly draws: number;
  /** False while the ranges are drawn again in full. */
  readonly isFinal: boolean;
}
