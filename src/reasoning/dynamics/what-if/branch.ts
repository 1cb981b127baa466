/** The past of a colony is run once; each choice branches from it, with the same chance for each draw. */
import { addDays, answered, type Day, daysBetween, type Problem, type Result } from "../../../units/index.ts";
import type { Action } from "../actions.ts";
import { readyRun } from "../course.ts";
import type { MorningAlive } from "../decline.ts";
import { assumedDoubt, type Paths } from "../filter/colony-particles.ts";
import { type CountTaken, type ForecastDay, type ForecastQuestion, rangeOf, survivalOf } from "../filter/forecast.ts";
import { filterSteps } from "../filter/forecast-steps.ts";
import { joiningSteps, joinsFor } from "../filter/joining.ts";
import { type MorningSeen, type MovePiece, noteMorning } from "../filter/pieces.ts";
import { type Cutting, cut, pathsFor, rangeSteps, roomFor, type Span, type Steps } from "../filter/steps.ts";
import { at, type Layout } from "../layout.ts";
import { deviationOf, meanOf, middleOf } from "./spread.ts";
import { widened } from "./widen.ts";

/** What every draw is on one morning, one number a draw. */
export type Row = Paths;

/** Colonies held to the counts, on the morning the choice is made. */
export interface Trunk {
  readonly question: ForecastQuestion;
  readonly decideOn: Day;
  readonly draws: number;
  readonly states: Float64Array;
  readonly layout: Layout;
  /** Mornings up to the choice, that of the choice included; empty unless asked for. */
  readonly past: readonly ForecastDay[];
  /** Mean survival on every one of them, and the middle of bees once a week: ranges want sorting. */
  readonly alive: readonly MorningAlive[];
  readonly counts: readonly CountTaken[];
  readonly learnt: Learnt;
}

/** How unsure the contact rate is before the counts and after: standard deviations of its logarithm over the draws. */
export interface Learnt {
  readonly contactBefore: number;
  readonly contactAfter: number;
}

/** The steps to the day of the choice. The question's own actions are those that are done whatever is chosen. */
export function* trunkSteps(
  question: ForecastQuestion,
  { decideOn, every, span }: { readonly decideOn: Day; readonly every: number | null; readonly span: Span },
  cutting: Cutting,
): Steps<Result<Trunk>> {
  const ready = readyRun(question);
  if (!ready.ok) return ready;
  const filtered = yield* filterSteps({ ...question, until: decideOn }, cutting, span);
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
  const alive = Array.from({ length: mornings }, (_, morning) => ({
    date: addDays(start.date, morning),
    survival: meanOf(path(cloud.paths.survival, morning)),
    ...(morning % 7 === 0 ? { bees: middleOf(path(cloud.paths.bees, morning)) } : {}),
  }));
  const told = Array.from({ length: mornings }, (_, morning) => morning).filter((morning) =>
    isTold(morning, mornings - 1, every),
  );
  // Rows that are told are gathered, so that their ranges are reckoned in pieces.
  const gathered = pathsFor(cutting, told.length * cloud.particles);
  for (const name of ["bees", "infestedShare", "survival"] as const)
    for (const [row, morning] of told.entries())
      gathered[name].set(path(cloud.paths[name], morning), row * cloud.particles);
  const seen = yield* rangeSteps(
    { ...question, until: decideOn },
    { particles: cloud.particles, paths: gathered, rows: told.length, share: span[1] },
    cutting,
  );
  const past = told.map((morning, row) => ({ date: addDays(start.date, morning), ...seenIn(seen, row) }));
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

/** The steps from the trunk with a choice's actions to the end of the question. */
export function* branchSteps(
  trunk: Trunk,
  actions: readonly Action[],
  { keep, every, span }: { readonly keep: ReadonlySet<Day>; readonly every: number | null; readonly span: Span },
  cutting: Cutting,
): Steps<Result<Branch>> {
  const { decideOn, draws } = trunk;
  const question = { ...trunk.question, actions: [...trunk.question.actions, ...actions] };
  const ready = readyRun(question);
  if (!ready.ok) return ready;
  const { model, days } = ready.value;
  const { length } = model.layout;
  const from = daysBetween(question.start.date, decideOn);
  const joinings = yield* joiningSteps(question, ready.value, { from, share: span[0] }, cutting);
  if (!joinings.ok) return joinings;
  const wide = widened(trunk.states, trunk.layout, model.layout);
  const states = roomFor(cutting, wide.length);
  states.set(wide);
  const all = Array.from({ length: days - from + 1 }, (_, passed) => passed);
  // Mornings that are told come first, so that their rows lie together; then those kept beside them.
  const told = all.filter((passed) => isTold(passed, days - from, every));
  const beside = all.filter((passed) => !told.includes(passed) && keep.has(addDays(decideOn, passed)));
  const rowOf = new Map([...told, ...beside].map((passed, row) => [passed, row] as const));
  const paths = pathsFor(cutting, rowOf.size * draws);
  const first = rowOf.get(0);
  if (first !== undefined) noteMorning(states, model.layout, paths, first * draws);
  const rows = Int32Array.from({ length: days - from }, (_, day) => rowOf.get(day + 1) ?? -1);
  // Noise comes from streams of draw and day: the same for every choice, and for a forecast of one alone.
  yield {
    question,
    share: span[1],
    pieces: cut(draws, days === from ? 0 : cutting.pieces).map(
      ([begin, after]): MovePiece => ({
        ...{ kind: "move", first: begin, count: after - begin, from, to: days, isFirst: false },
        ...{ paths, particles: draws, column: begin, rows },
        joins: joinsFor(joinings.value, [begin, after], [from, days]),
        states: states.subarray(begin * length, after * length),
      }),
    ),
  };
  const seen = yield* rangeSteps(question, { particles: draws, paths, rows: told.length, share: span[1] }, cutting);
  const kept = new Map<Day, Row>();
  for (const [passed, row] of rowOf) {
    const today = addDays(decideOn, passed);
    const of = (path: Float64Array) => path.subarray(row * draws, (row + 1) * draws);
    if (keep.has(today))
      kept.set(today, {
        bees: of(paths.bees),
        infestedShare: of(paths.infestedShare),
        survival: of(paths.survival),
      });
  }
  const inOrder = told.map((passed, row) => ({ date: addDays(decideOn, passed), ...seenIn(seen, row) }));
  return answered({ days: inOrder, kept, problems: [...ready.problems, ...joinings.problems] });
}

const seenIn = (seen: readonly MorningSeen[], row: number): MorningSeen => {
  const morning = seen[row];
  if (morning === undefined) throw new RangeError(`no ranges of row ${row}`);
  return morning;
};

/** Every so many mornings, the first and the last among them. Ranges want sorting, which costs as much as some days of the draws. */
const isTold = (morning: number, last: number, every: number | null): boolean =>
  every !== null && (morning % every === 0 || morning === last);

/** The ranges of a morning. */
export function seenOn(date: Day, row: Row): ForecastDay {
  return {
    date,
    bees: rangeOf(row.bees.slice().sort()),
    infestedShare: rangeOf(row.infestedShare.slice().sort()),
    survival: survivalOf(row.survival.slice().sort()),
  };
}
