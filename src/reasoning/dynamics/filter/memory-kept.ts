/** How many numbers a run keeps at once, and what is more than that. */
import type { Problem } from "../../../units/index.ts";
import type { ReadyRun } from "../course.ts";
import { dynamicsProblem } from "../problems.ts";

/** Numbers kept at most, 256 MB: a run of a year with 20,000 particles of the fewest ages. */
const mostKept = 32_000_000;
/** Numbers of a morning's path: bees, share, survival. */
export const ofMorning = 3;

/** Numbers that a run keeps of each particle: so many, and so many more for each day. */
export interface KeptOfEach {
  /** Colonies that are united with it, which a refusal names. */
  readonly unitings: number;
  readonly fixed: number;
  readonly ofDay: number;
  readonly days: number;
}

/** What a run keeps: its records and its paths, and the records of colonies that are united with it. */
export function keptOf({ model, days, unitings }: ReadyRun): KeptOfEach {
  // Paths of other colonies are let go one after another; their records are widened to those of this one.
  const longest = Math.max(0, ...unitings.map(({ donor }) => donor.days + 1));
  const fixed = model.layout.length * (1 + unitings.length) + ofMorning * (longest + 1);
  return { fixed, ofDay: ofMorning, days, unitings: unitings.length };
}

/** Told when particles that keep so many numbers each are more than can be kept: fewer draws, or fewer days. */
export function tooLarge(draws: number, { fixed, ofDay, days, unitings }: KeptOfEach): readonly Problem[] {
  const each = fixed + ofDay * days;
  if (draws * each <= mostKept) return [];
  const longest = Math.max(0, Math.floor((mostKept / draws - fixed) / ofDay));
  const slots = { draws, days, most: Math.floor(mostKept / each), longest, unitings };
  return [dynamicsProblem("season-run-too-large", "blocked", "until", slots)];
}
