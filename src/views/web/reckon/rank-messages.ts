/** What a page and the worker that ranks several colonies say to each other. */
import type { differential, OwnEvidence } from "../../../reasoning/index.ts";

export interface RankQuestion {
  /** Grows with each question: an older answer is dropped. */
  readonly number: number;
  readonly inputs: readonly differential.AnyInput[];
  /** What the programme changed and learnt; null for the published evidence. */
  readonly own: OwnEvidence | null;
}

export interface Ranked {
  readonly number: number;
  /** One for each input; null where it could not be reckoned. */
  readonly answers: readonly (differential.AnyAnswer | null)[];
}
