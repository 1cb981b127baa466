/** On which day a further count would settle a choice. */
import { addDays, type Day, daysBetween } from "../../../units/index.ts";
import { assumedError } from "../filter/forecast.ts";
import type { Branch, Row } from "./branch.ts";
import { type ChoicesQuestion, noAction } from "./question.ts";
import { alikeAtEnd, bestChoices, chancesOfBest, heldAfter } from "./settling.ts";

/** A day on which a further count could be made. */
export interface SettlingDay {
  readonly date: Day;
  /** Share of decisions after it that would stand. */
  readonly held: number;
  /** No choice has begun by then. */
  readonly isInTime: boolean;
}

/** When a further count settles the choice. */
export interface Settling {
  readonly line: number;
  readonly sure: number;
  readonly bees: number;
  /** Chance that each choice is best, as things stand. */
  readonly best: readonly { readonly name: string; readonly chance: number }[];
  /** Choices whose end the draws cannot tell from that of the likeliest, by name. */
  readonly alike: readonly string[];
  readonly days: readonly SettlingDay[];
  /** The choice is settled already, without a count. */
  readonly isSettled: boolean;
  /** First of the days on which a count would settle it; null for none. */
  readonly earliest: Day | null;
}

const usualSure = 0.9;
/** Bees of a further count where nobody says. */
export const usualMoreBees = 50;
/** Days on which a further count is thought of: at most so many, then day by day before the first that settles. */
const mostSettlingDays = 16;

/** When a count settles the choice, from what each leads to in each draw at the end. */
export function settlingOf(
  question: ChoicesQuestion,
  of: {
    readonly line: number;
    readonly decideOn: Day;
    readonly without: Branch;
    readonly ends: readonly Float64Array[];
  },
): Settling {
  const { line, decideOn, without, ends } = of;
  const { choices, until, sure = usualSure, moreBees = usualMoreBees, error = assumedError } = question;
  const best = bestChoices(ends, line);
  const chances = chancesOfBest(best, ends.length);
  const begins = choices.flatMap(({ actions }) => actions.map(({ from }) => from)).sort()[0];
  const settlingDay = (date: Day): SettlingDay => ({
    date,
    held: heldAfter(rowOn(without, date).infestedShare, best, { choices: ends.length, bees: moreBees, error }),
    isInTime: begins === undefined || date <= begins,
  });
  const apart = Math.max(1, Math.ceil(daysBetween(decideOn, until) / mostSettlingDays));
  const days = daysFrom(decideOn, until, apart).map(settlingDay);
  const names = [noAction, ...choices.map(({ name }) => name)];
  const most = Math.max(...chances);
  return {
    ...{ line, sure, bees: moreBees, days, isSettled: most >= sure },
    best: names.map((name, each) => ({ name, chance: chances[each] as number })),
    alike: alikeAtEnd(ends, chances.indexOf(most)).map((each) => names[each] as string),
    earliest: earliestOf(days, sure, settlingDay),
  };
}

/** The first of the days that settles, then the days before it back to the one that did not. */
function earliestOf(days: readonly SettlingDay[], sure: number, settlingDay: (date: Day) => SettlingDay): Day | null {
  const first = days.findIndex(({ held }) => held >= sure);
  const [before, found] = [days[first - 1], days[first]];
  if (found === undefined) return null;
  if (before === undefined) return found.date;
  const between = daysFrom(addDays(before.date, 1), addDays(found.date, -1), 1);
  return between.find((date) => settlingDay(date).held >= sure) ?? found.date;
}

/** Days from one to another, so many apart. */
export const daysFrom = (from: Day, to: Day, apart: number): readonly Day[] =>
  Array.from({ length: Math.max(0, Math.floor(daysBetween(from, to) / apart) + 1) }, (_, each) =>
    addDays(from, each * apart),
  );

/** The draws of a day that was kept. */
export function rowOn({ kept }: Branch, day: Day): Row {
  const row = kept.get(day);
  if (!row) throw new RangeError(`no draws were kept of ${day}`);
  return row;
}
