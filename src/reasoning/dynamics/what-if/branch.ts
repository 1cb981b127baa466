/** The past of a colony is run once; each choice branches from it, with the same chance for each draw. */
import { addDays, answered, type Day, daysBetween, type Problem, type Result } from "../../../units/index.ts";
import type { Action } from "../actions.ts";
import { dayOfYear } from "../calendar.ts";
import { readyRun } from "../course.ts";
import { assumedDoubt } from "../filter/colony-particles.ts";
import {
  type CountTaken,
  type ForecastDay,
  type ForecastQuestion,
  filteredCloud,
  rangeOf,
} from "../filter/forecast.ts";
import { kernelFor } from "../kernel/kernel.ts";
import { seenWidth } from "../kernel/memory-map.ts";
import { at, type Layout } from "../layout.ts";
import { assumedNoise } from "../particles.ts";
import { widened } from "./widen.ts";

/** What every draw is on one morning, one number a draw. */
export interface Row {
  readonly bees: Float64Array;
  readonly infestedShare: Float64Array;
  readonly survival: Float64Array;
}

/** Colonies held to the counts, on the morning the choice is made, and the noise that is to come for each. */
export interface Trunk {
  readonly question: ForecastQuestion;
  readonly decideOn: Day;
  readonly draws: number;
  readonly states: Float64Array;
  readonly layout: Layout;
  /** Mornings up to the choice, that of the choice included; empty unless asked for. */
  readonly past: readonly ForecastDay[];
  /** Mean survival on every one of them. */
  readonly alive: readonly number[];
  readonly counts: readonly CountTaken[];
  readonly learnt: Learnt;
}

/** How unsure the contact rate is before the counts and after: standard deviations of its logarithm over the draws. */
export interface Learnt {
  readonly contactBefore: number;
  readonly contactAfter: number;
}

/** Runs a colony to the day of the choice. The question's own actions are those that are done whatever is chosen. */
export function trunkOf(
  question: ForecastQuestion,
  { decideOn, every }: { readonly decideOn: Day; readonly every: number | null },
  tell: (share: number) => void = () => undefined,
): Result<Trunk> {
  const ready = readyRun(question);
  if (!ready.ok) return ready;
  const filtered = filteredCloud({ ...question, until: decideOn }, tell);
  if (!filtered.ok) return filtered;
  const { cloud, counts } = filtered.value;
  const { layout } = ready.value.model;
  const { start, doubt = assumedDoubt } = question;
  const contacts = Float64Array.from({ length: cloud.particles }, (_, each) =>
    Math.log(cloud.states[each * layout.length + at.contactRate] as number),
  );
  const learnt = { contactBefore: doubt.contact, contactAfter: deviationOf(contacts) };
  const mornings = daysBetween(start.date, decideOn) + 1;
  const path = (of: Float64Array, morning: number) =>
    of.subarray(morning * cloud.particles, (morning + 1) * cloud.particles);
  const alive = Array.from({ length: mornings }, (_, morning) => meanOf(path(cloud.paths.survival, morning)));
  const told = every === null ? [] : Array.from({ length: mornings }, (_, morning) => morning);
  const past = told
    .filter((morning) => isTold(morning, mornings - 1, every))
    .map((morning) =>
      seenOn(addDays(start.date, morning), {
        bees: path(cloud.paths.bees, morning),
        infestedShare: path(cloud.paths.infestedShare, morning),
        survival: path(cloud.paths.survival, morning),
      }),
    );
  const problems = filtered.problems.filter(({ code }) => code !== "season-action-after-end");
  return answered(
    { question, decideOn, draws: cloud.particles, states: cloud.states, layout, past, alive, counts, learnt },
    [...problems, ...ready.problems.filter(({ code }) => code === "season-action-after-end")],
  );
}

/** What one choice leads to. */
export interface Branch {
  /** Mornings from the choice on; empty unless they were asked for. */
  readonly days: readonly ForecastDay[];
  /** Every draw on the days to keep. */
  readonly kept: ReadonlyMap<Day, Row>;
  readonly problems: readonly Problem[];
}

/** Goes on from the trunk with a choice's actions, to the end of the question. */
export function branchOf(
  trunk: Trunk,
  actions: readonly Action[],
  { keep, every }: { readonly keep: ReadonlySet<Day>; readonly every: number | null },
  tell: (share: number) => void = () => undefined,
): Result<Branch> {
  const { question, decideOn, draws } = trunk;
  const ready = readyRun({ ...question, actions: [...question.actions, ...actions] });
  if (!ready.ok) return ready;
  const { model, days } = ready.value;
  const { length } = model.layout;
  const states = widened(trunk.states, trunk.layout, model.layout);
  const from = daysBetween(question.start.date, decideOn);
  const kept = new Map<Day, Row>();
  const seen: ForecastDay[] = [];
  const inOrder = Array.from({ length: days }, (_, elapsed) => ({
    dayOfYear: dayOfYear(addDays(question.start.date, elapsed)),
    elapsed,
  }));
  const { seed, noise = assumedNoise } = question;
  // Noise comes from streams of draw and day: the same for every choice, and for a forecast of one alone.
  const kernel = kernelFor({ model, days: inOrder, seed, noise });
  const mornings = Array.from({ length: days - from + 1 }, (_, passed) => passed).filter(
    (passed) => isTold(passed, days - from, every) || keep.has(addDays(decideOn, passed)),
  );
  const rows = mornings.map((passed) => (passed === 0 ? rowOf(states, length, draws) : emptyRow(draws)));
  // A draw goes through all its days at once: it is brought to the kernel a single time.
  for (let each = 0, start = 0; each < draws; each++, start += length) {
    if (each % drawsBetweenWords === 0) tell(each / draws);
    if (days === from) continue;
    kernel.run(states, start, { from, to: days, particle: each });
    for (const [place, passed] of mornings.entries()) {
      if (passed === 0) continue;
      const row = rows[place] as Row;
      const seen = (passed - 1) * seenWidth;
      row.bees[each] = kernel.seen[seen] as number;
      row.infestedShare[each] = kernel.seen[seen + 1] as number;
      row.survival[each] = kernel.seen[seen + 2] as number;
    }
  }
  tell(1);
  for (const [place, passed] of mornings.entries()) {
    const today = addDays(decideOn, passed);
    const row = rows[place] as Row;
    if (keep.has(today)) kept.set(today, row);
    if (isTold(passed, days - from, every)) seen.push(seenOn(today, row));
  }
  return answered({ days: seen, kept, problems: ready.problems });
}

/** Draws between two words of how far it is. */
const drawsBetweenWords = 50;

/** Every so many mornings, the first and the last among them. Ranges want sorting, which costs as much as some days of the draws. */
const isTold = (morning: number, last: number, every: number | null): boolean =>
  every !== null && (morning % every === 0 || morning === last);

const emptyRow = (draws: number): Row => {
  const room = () => new Float64Array(draws);
  return { bees: room(), infestedShare: room(), survival: room() };
};

function rowOf(states: Float64Array, length: number, draws: number): Row {
  const row = emptyRow(draws);
  for (let each = 0; each < draws; each++) {
    const record = each * length;
    const bees = states[record + at.bees] as number;
    row.bees[each] = bees;
    row.infestedShare[each] = bees > 0 ? (states[record + at.infested] as number) / bees : 0;
    row.survival[each] = Math.exp(-(states[record + at.hazard] as number));
  }
  return row;
}

/** The ranges of a morning. */
export function seenOn(date: Day, row: Row): ForecastDay {
  const survival = row.survival.slice().sort();
  return {
    date,
    bees: rangeOf(row.bees.slice().sort()),
    infestedShare: rangeOf(row.infestedShare.slice().sort()),
    survival: { ...rangeOf(survival), mean: meanOf(survival) },
  };
}

function deviationOf(values: Float64Array): number {
  const mean = meanOf(values);
  return Math.sqrt(meanOf(values.map((each) => (each - mean) ** 2)));
}

/** Mean over the draws. */
export const meanOf = (values: Float64Array): number => values.reduce((sum, each) => sum + each, 0) / values.length;
