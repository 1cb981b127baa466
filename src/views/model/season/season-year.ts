/**
 * The year beneath a season's picture, as the model takes it: warmth and nectar of the place, and what they say to an
 * action.
 *
 * @module views/model
 */
import { dynamics } from "../../../reasoning/index.ts";
import { addDays, type Day } from "../../../units/index.ts";
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
  /** No highs are on record: they are assumed to lie so far above the means. */
  readonly isAssumed: boolean;
}

/** Highs below this are too cool for menthol: Herbert, Shimanuki & Matthenius 1988. */
const coolBelowCelsius = 21;
/** Below this a cluster is left alone: common practice, no source. */
const coldBelowCelsius = 13;
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
    isAssumed: highs.method === "assumed",
  };
}

/** What the warmth of an action's first days says against it; null for nothing the model or its sources know. */
export function warmthNote(action: dynamics.Action, year: SeasonYear | null): string | null {
  if (action.kind === "brood-break") return seasonWords.breakUnmeasured;
  const day = year?.days.findLast(({ date }) => date <= action.from);
  if (!day) return null;
  const say = seasonWords;
  const then = { high: day.high, isAssumed: year?.isAssumed ?? false };
  if (action.kind === "menthol") return day.isCool ? say.tooCool({ ...then, least: coolBelowCelsius }) : null;
  if (action.kind === "requeen") return day.high < coldBelowCelsius ? say.tooCold(then) : null;
  if (action.kind === "unite") return day.high < coldBelowCelsius ? say.tooColdToUnite(then) : null;
  return action.kind === "formic" ? say.anyWarmth(then) : null;
}
