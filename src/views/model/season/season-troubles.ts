/**
 * Notes of a season as the page tells them, where nobody can ask for other draws.
 *
 * @module views/model
 */
import type { Problem } from "../../../units/index.ts";
import { seasonWords } from "../../words/index.ts";

/** A note of the reasoning that reads otherwise here; null for any other. */
export function noteHere({ code, slots }: Problem): string | null {
  const say = seasonWords;
  const number = (name: string): number => Number(slots[name]);
  if (code === "ordinary-year") return say.ordinaryYear;
  if (code === "season-particles-few") return say.fewWorth({ date: String(slots.date), worth: number("worth") });
  if (code === "season-draws-thin") return say.thin({ bees: number("bees"), worth: number("worth") });
  return null;
}
