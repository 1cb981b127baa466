/** What is asked when choices for a colony are compared. */
import type { Day } from "../../../units/index.ts";
import type { Action } from "../actions.ts";
import type { ForecastQuestion } from "../filter/forecast.ts";

/** Name of the choice that is always there: none of the listed actions. */
export const noAction = "no action";

/** A named list of actions, each on or after the day the choice is made. */
export interface Choice {
  readonly name: string;
  readonly actions: readonly Action[];
}

/** A forecast's question and what to choose from. Its own actions are done whatever is chosen. */
export interface ChoicesQuestion extends ForecastQuestion {
  readonly choices: readonly Choice[];
  /** Day of the choice; no count lies after it and no choice acts before it. Left out: day of the last count or size. */
  readonly decideOn?: Day;
  /** Days to tell beside the last one. */
  readonly dates?: readonly Day[];
  /** Most infested bees at the end that are good enough. Left out: nothing is said of settling. */
  readonly line?: number;
  /** Share of decisions that shall stand. Left out: 0.9, judgement. */
  readonly sure?: number;
  /** Bees of a further count. Left out: 50. */
  readonly moreBees?: number;
}
