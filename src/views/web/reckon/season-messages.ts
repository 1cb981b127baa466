/** What a page and the worker that compares choices of a season say to each other. */
import type { dynamics } from "../../../reasoning/index.ts";
import type { Problem } from "../../../units/index.ts";

export interface SeasonQuestion {
  /** Grows with each question: what belongs to an older one is dropped, and what is not done of it is left. */
  readonly number: number;
  /** Null: the one that runs is no longer wanted. */
  readonly question: dynamics.ChoicesQuestion | null;
  /** Cores of the device, by which the first question sizes the pool; undefined where it does not say. */
  readonly cores: number | undefined;
}

export type SeasonAnswer = { readonly number: number } & (
  | { readonly kind: "progress"; readonly share: number }
  | { readonly kind: "past"; readonly past: readonly dynamics.ForecastDay[] }
  | { readonly kind: "choice"; readonly outcome: dynamics.ChoiceOutcome }
  | {
      readonly kind: "done";
      readonly settling: dynamics.Settling | null;
      readonly learnt: dynamics.Learnt;
      readonly problems: readonly Problem[];
    }
  | { readonly kind: "unfit"; readonly problems: readonly Problem[] }
  | { readonly kind: "broke" }
);
