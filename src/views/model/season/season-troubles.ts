/**
 * Trouble of a season as the page tells it, where nobody can ask for other draws.
 *
 * @module views/model
 */
import { addDays, daysBetween, type Problem, problem } from "../../../units/index.ts";
import { seasonWords } from "../../words/index.ts";
import type { SeasonAsk } from "./season-form.ts";

/** What stands in the way of a question: too many draws for its days is told as the last day that can be asked about. */
export function troubleOf(each: Problem, { decideOn, until, draws }: SeasonAsk): Problem {
  if (each.code !== "season-draws-out-of-range") return each;
  // As many draws as fit these days, the other way round: days that fit these draws. Rounded down, so it is never too many.
  const days = Math.floor((Number(each.slots.most) * (daysBetween(decideOn, until) + 1)) / draws) - 1;
  const latest = addDays(decideOn, Math.max(1, days));
  return problem("season-too-long-here", "blocked", "until", { given: until, slots: { until, latest } });
}

/** A note of the reasoning that reads otherwise here; null for any other. */
export function noteHere({ code, slots }: Problem): string | null {
  const say = seasonWords;
  const number = (name: string): number => Number(slots[name]);
  if (code === "ordinary-year") return say.ordinaryYear;
  if (code === "season-particles-few") return say.fewWorth({ date: String(slots.date), worth: number("worth") });
  if (code === "season-draws-thin") return say.thin({ bees: number("bees"), worth: number("worth") });
  return null;
}
