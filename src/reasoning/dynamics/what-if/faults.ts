/** What a comparison of choices cannot be asked, beside what a single forecast cannot. */
import { addDays, type Day, daysBetween, isDay, type Problem } from "../../../units/index.ts";
import { laterOf } from "../../site/index.ts";
import type { ReadyRun } from "../course.ts";
import { keptOf, ofMorning, tooLarge } from "../filter/memory-kept.ts";
import { dynamicsProblem } from "../problems.ts";
import { choiceProblem } from "./problems.ts";
import { type ChoicesQuestion, noAction } from "./question.ts";
import { usualMoreBees } from "./settling-days.ts";
import { mostMoreBees } from "./weigh-counts.ts";

/** The day the choice is made: as asked, else that of the last count or size; at least a day after the first. */
export function decisionDay({ decideOn, counts, sizes = [], start }: ChoicesQuestion): Day {
  if (decideOn !== undefined) return decideOn;
  const first = addDays(start.date, 1);
  const seen = [...counts, ...sizes].filter(({ date }) => isDay(date));
  return seen.reduce((latest, { date }) => laterOf(latest, date), first);
}

/** Days of start, end and counts must be sound before this: the forecast's own faults come first. */
export function choiceFaults(question: ChoicesQuestion): readonly Problem[] {
  const { start, until, counts, choices, dates = [], line, sure, moreBees } = question;
  const problems: Problem[] = [];
  const unknownDay = (date: unknown, field: string) =>
    dynamicsProblem("season-day-unknown", "blocked", field, { date: String(date) });
  const decideOn = decisionDay(question);
  if (!isDay(decideOn)) return [unknownDay(decideOn, "decideOn")];
  if (!(decideOn > start.date && decideOn < until))
    return [choiceProblem("season-decide-outside", "blocked", "decideOn", { date: decideOn, from: start.date, until })];
  counts.forEach(({ date }, index) => {
    if (date > decideOn)
      problems.push(choiceProblem("season-count-after-choice", "blocked", `counts[${index}].date`, { date, decideOn }));
  });
  dates.forEach((date, index) => {
    if (!isDay(date)) problems.push(unknownDay(date, `dates[${index}]`));
    else if (date < decideOn || date > until)
      problems.push(
        choiceProblem("season-date-outside", "blocked", `dates[${index}]`, { date, from: decideOn, until }),
      );
  });
  const names = new Set<string>([noAction]);
  choices.forEach(({ name, actions }, index) => {
    if (names.has(name))
      problems.push(choiceProblem("season-choice-name-twice", "blocked", `choices[${index}].name`, { name }));
    names.add(name);
    actions.forEach(({ kind, from }, place) => {
      if (isDay(from) && from < decideOn)
        problems.push(
          choiceProblem("season-choice-too-early", "blocked", `choices[${index}].actions[${place}].from`, {
            ...{ name, action: kind, date: from, decideOn },
          }),
        );
    });
  });
  if (line !== undefined && !(line >= 0 && line <= 1))
    problems.push(choiceProblem("season-line-out-of-range", "blocked", "line", { line }));
  if (sure !== undefined && !(sure >= 0.5 && sure < 1))
    problems.push(choiceProblem("season-sure-out-of-range", "blocked", "sure", { sure }));
  if (moreBees !== undefined && !(Number.isInteger(moreBees) && moreBees >= 1 && moreBees <= mostMoreBees))
    problems.push(
      choiceProblem("season-more-bees-out-of-range", "blocked", "moreBees", { bees: moreBees, most: mostMoreBees }),
    );
  return problems;
}

/** Told when what is kept of a choice is more than can be: the past and the choice, doing nothing beside it, and a further count. */
export function largeFaults(question: ChoicesQuestion, run: ReadyRun): readonly Problem[] {
  const { fixed, days, unitings } = keptOf(run);
  const past = daysBetween(question.start.date, decisionDay(question));
  const copies = 2 * run.model.layout.length;
  const counted = (question.moreBees ?? usualMoreBees) + 1;
  return tooLarge(question.draws, {
    fixed: fixed + copies + counted - ofMorning * past,
    ...{ ofDay: 2 * ofMorning, days, unitings },
  });
}
