/** What a page and the worker that ranks several colonies say to each other. */
import type { differential } from "../../../reasoning/index.ts";

export interface RankQuestion {
  /** Grows with each question: an older answer is dropped. */
  readonly number: number;
  readonly inputs: readonly differential.DifferentialInput[];
}

export interface Ranked {
  readonly number: number;
  /** One for each input; null where it could not be reckoned. */
  readonly answers: readonly (differential.DifferentialAnswer | null)[];
}
