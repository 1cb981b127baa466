/**
 * The year beneath a season's picture, as the model takes it: warmth and nectar of the place, and what they say to an
 * action.
 *
 * @module views/model
 */
import { dynamics } from "../../../reasoning/index.ts";
import { addDays, type Day, type Problem } from "../../../units/index.ts";
import { seasonWords } from "../../words/index.ts";
import type { SeasonAsk } from "./season-form.ts";

/** The year beneath the fan: mean temperatures, highs, nectar, day by day as the model takes them. */
export interface SeasonYear {
  readonly days: readonly {
    readonly date: Day;
    readonly celsius: number;
    readonly flow: number;
    /** High of the day, Celsius. */
    readonly high: number;
    /** Too low for menthol to leave its crystals. */
    readonly isCool: boolean;
  }[];
  readonly warmth: dynamics.Warmth;
  /** No highs are on record: they are assumed to lie so far above the means. */
  readonly isAssumed: boolean;
}

/** Highs below this are too cool for menthol: Herbert, Shimanuki & Matthenius 1988. */
const coolBelowCelsius = 21;
const yearStep = 3;

/** Weather and forage of the days of a question; null for one that cannot be. */
export function seasonYear(ask: SeasonAsk): SeasonYear | null {
  const ready = dynamics.readyRun({ ...ask, actions: [] });
  if (!ready.ok) return null;
  const { model, days, highs } = ready.value;
  const places = Array.from({ length: Math.floor(days / yearStep) + 1 }, (_, place) => place * yearStep);
  return {
    days: places.map((elapsed) => {
      const date = addDays(ask.start.date, elapsed);
      const { celsius, flow } = model.rates[dynamics.dayOfYear(date)]?.drivers ?? { celsius: 0, flow: 0 };
      const high = highs.on(elapsed);
      return { date, celsius, flow, high, isCool: high < coolBelowCelsius };
    }),
    warmth: {
      ...{ from: ask.start.date, days, highs },
      formicLeastCelsius: model.parameters.formicLeastCelsius,
    },
    isAssumed: highs.method === "assumed",
  };
}

/** What the warmth of an action's days says against it; null for nothing the model or its sources know. */
export function warmthNote(
  action: dynamics.Action,
  year: SeasonYear | null,
  sentence: (problem: Problem) => string,
): string | null {
  if (action.kind === "brood-break") return seasonWords.breakUnmeasured;
  if (year === null) return null;
  const day = year.days.findLast(({ date }) => date <= action.from);
  if (action.kind === "menthol" && day?.isCool)
    return seasonWords.tooCool({ high: day.high, isAssumed: year.isAssumed, least: coolBelowCelsius });
  return dynamics.warmthTroubles(action, "", year.warmth).map(sentence).join(" ") || null;
}
