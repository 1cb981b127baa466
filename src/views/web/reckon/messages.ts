/** What the page and its reckoner say to each other. */
import type { differential } from "../../../reasoning/index.ts";
import type { Result } from "../../../units/index.ts";

export interface Question {
  /** Grows with each question: an older answer is dropped. */
  readonly number: number;
  readonly input: differential.DifferentialInput;
}

export interface Reply {
  readonly number: number;
  readonly result: Result<differential.DifferentialAnswer>;
  readonly draws: number;
  /** False while the ranges are drawn again in full. */
  readonly isFinal: boolean;
}
