/** A colony's expected course from a day to another, with what is done to it, day by day. */
import {
  addDays,
  answered,
  blocked,
  type Day,
  daysBetween,
  isDay,
  type Problem,
  type Result,
} from "../../units/index.ts";
import { type Action, measuresOf, stockFault } from "./actions.ts";
import { dayOfYear } from "./calendar.ts";
import { placeWinterColony } from "./colony.ts";
import { coupleVarroa, type VarroaStart } from "./companions/varroa.ts";
import { type Engine, engine, oneDay } from "./day.ts";
import { declineWarnings } from "./decline.ts";
import { expectedEnd, type ReadyUniting, unitingsOf } from "./interventions/ready-uniting.ts";
import { unite } from "./interventions/uniting.ts";
import type { Warmth } from "./interventions/warmth.ts";
import { fullLayout, type Layout, shortestLayout } from "./layout.ts";
import { type ColonySeen, mostCounted, seeColony } from "./observe.ts";
import { type DynamicsParameters, inUse } from "./parameters.ts";
import { type CourseSite, type Highs, placeOf } from "./place.ts";
import { dynamicsProblem } from "./problems.ts";
import { bringTo, mostInfestedShare, usualColony } from "./start-colony.ts";
import { widened } from "./what-if/widen.ts";

export interface CourseStart {
  readonly date: Day;
  readonly bees: number;
  readonly infestedShare: number;
  /** usual: brood and ages of that day. none: a cluster of old winter bees without brood. */
  readonly brood: "usual" | "none";
}

export interface CourseQuestion {
  readonly site: CourseSite;
  readonly start: CourseStart;
  readonly actions: readonly Action[];
  /** Last morning seen. */
  readonly until: Day;
  /** Susceptibility of the colony's stock; 1 as specified. */
  readonly stockSusceptibility?: number;
  /** Varroa of the colony, which makes its bees more susceptible; left out: none. */
  readonly varroa?: VarroaStart;
  /** Left out: those in use. */
  readonly parameters?: DynamicsParameters;
  /** Something was seen that is to be reported: then nothing may be united. Left out: no. */
  readonly isStopped?: boolean;
}

/** One morning of the course. */
export interface CourseDay extends ColonySeen {
  readonly date: Day;
}

/** Fewest and most bees a run may start with. Judgement: a handful to beyond the largest colonies. */
export const startBees = { least: 500, most: mostCounted } as const;
/** Longest run, days. Judgement: beyond ten years the invented year repeats itself. */
export const longestDays = 3653;

/** A model and a colony ready to run, for whoever steps it otherwise than `colonyCourse` does. */
export interface ReadyRun {
  readonly model: Engine;
  /** Record of the colony on the first morning. */
  readonly colony: Float64Array;
  readonly days: number;
  /** Colonies that are united with it, by their day. */
  readonly unitings: readonly ReadyUniting[];
  readonly highs: Highs;
}

/**
 * The expected course of a colony: each morning from the first to the last, both included.
 *
 * One course, no interval: it is what the model expects, not what will happen. Shows shapes and differences; contact
 * between bees was tuned by hand, and the peak falls about a month late beside New York. Not for single colonies
 * without a count to hold it to.
 *
 * Blocked for a start, span, place or plan that cannot be. Warned when the colony is likely lost to cold, or dwindles.
 */
export function colonyCourse(question: CourseQuestion): Result<readonly CourseDay[]> {
  const ready = readyRun(question);
  if (!ready.ok) return ready;
  const { model, colony, days, unitings } = ready.value;
  const { date } = question.start;
  const course: CourseDay[] = [];
  for (let elapsed = 0; elapsed <= days; elapsed++) {
    const today = addDays(date, elapsed);
    course.push({ date: today, ...seeColony(colony, 0, model.layout) });
    for (const { kept, donor, action } of unitings.filter((each) => each.elapsed === elapsed))
      unite(colony, 0, model.layout, {
        ...{
          states: widened(expectedEnd(donor, action.donor.start.date), donor.model.layout, model.layout),
          start: 0,
          kept,
        },
      });
    if (elapsed < days) oneDay(colony, 0, model, { dayOfYear: dayOfYear(today), elapsed });
  }
  return answered(course, [...ready.problems, ...declineWarnings(course, question.start.bees)]);
}

/** Checks a question and readies model and colony; the same troubles as `colonyCourse` but for the colony's loss. */
export function readyRun(question: CourseQuestion): Result<ReadyRun> {
  const { start, until, actions, varroa, parameters = inUse, stockSusceptibility = 1 } = question;
  const faults = [
    ...spanFaults(start.date, until),
    ...startFaults(start),
    ...stockFault(stockSusceptibility, "stockSusceptibility"),
    ...varroaFaults(varroa),
  ];
  if (faults.length > 0) return blocked(...faults);
  const place = placeOf(question.site, { from: start.date, to: until, parameters });
  if (!place.ok) return place;
  const { rates, highs, southern } = place.value;

  const days = daysBetween(start.date, until);
  const warmth: Warmth = {
    ...{ from: start.date, days, highs },
    formicLeastCelsius: parameters.formicLeastCelsius,
  };
  const measures = measuresOf({ actions, stockSusceptibility, warmth });
  if (!measures.ok) return measures;

  const unitings = unitingsOf(question, days);
  if (!unitings.ok) return unitings;

  const cohortsDiffer = varroa !== undefined || actions.some(({ kind }) => kind === "requeen");
  const layout = cohortsDiffer ? fullLayout : shortestLayout(parameters);
  const model = engine({ parameters, layout, rates, measures: measures.value });
  const colony = colonyAt(model, start, southern, stockSusceptibility);
  if (!colony.ok) return colony;
  if (varroa !== undefined) {
    const inOrder = Array.from({ length: days }, (_, elapsed) => ({
      dayOfYear: dayOfYear(addDays(start.date, elapsed)),
      elapsed,
    }));
    coupleVarroa(measures.value, model, colony.value, inOrder, varroa);
  }
  const notes = varroa === undefined ? [] : [dynamicsProblem("season-varroa-harm-left-out", "noted", "varroa", {})];
  return answered({ model, colony: colony.value, days, unitings: unitings.value, highs }, [
    ...place.problems.filter(({ code }) => code !== "season-highs-assumed" || hangsOnHighs(actions)),
    ...measures.problems,
    ...notes,
  ]);
}

/** Menthol and formic acid act by the day's high; nothing else here does. */
const hangsOnHighs = (actions: readonly Action[]): boolean =>
  actions.some(
    (action) =>
      action.kind === "menthol" ||
      action.kind === "formic" ||
      (action.kind === "unite" && hangsOnHighs(action.donor.actions ?? [])),
  );

function colonyAt(
  model: Engine,
  start: CourseStart,
  southern: boolean,
  stockSusceptibility: number,
): Result<Float64Array> {
  const { layout, parameters } = model;
  const { contactRate } = parameters;
  const { bees, infestedShare } = start;
  if (start.brood === "none") {
    const state = new Float64Array(layout.length);
    placeWinterColony(state, 0, layout, { bees, infestedShare, contactRate, stockSusceptibility });
    return answered(state);
  }
  const day = dayOfYear(start.date);
  const state = usualColony(model, { dayOfYear: day, southern, contactRate, stockSusceptibility });
  if (bringTo(state, 0, layout, start)) return answered(state);
  return blocked(shareFault(infestedShare, mostOf(state, layout)));
}

const mostOf = (state: Float64Array, layout: Layout): number => mostInfestedShare(state, 0, layout);

const shareFault = (share: number, most: number): Problem =>
  dynamicsProblem("season-share-out-of-range", "blocked", "start.infestedShare", { share, most });

function spanFaults(date: Day, until: Day): readonly Problem[] {
  const unknown = (field: string, day: unknown) =>
    dynamicsProblem("season-day-unknown", "blocked", field, { date: String(day) });
  const lost = [
    ...(isDay(date) ? [] : [unknown("start.date", date)]),
    ...(isDay(until) ? [] : [unknown("until", until)]),
  ];
  if (lost.length > 0) return lost;
  const days = daysBetween(date, until);
  return days >= 1 && days <= longestDays
    ? []
    : [dynamicsProblem("season-span-out-of-range", "blocked", "until", { days, most: longestDays })];
}

/** Most varroa on 100 bees, and most that leave a cell for each, that can be meant. Judgement. */
export const mostVarroa = { mitesPer100: 200, gain: 5 } as const;

function varroaFaults(varroa: VarroaStart | undefined): readonly Problem[] {
  return Object.entries(varroa ?? {}).flatMap(([name, value]) => {
    const most = mostVarroa[name as keyof typeof mostVarroa];
    return value >= 0 && value <= most
      ? []
      : [dynamicsProblem("season-varroa-out-of-range", "blocked", `varroa.${name}`, { value, most })];
  });
}

function startFaults({ bees, infestedShare }: CourseStart): readonly Problem[] {
  const problems: Problem[] = [];
  if (!(bees >= startBees.least && bees <= startBees.most))
    problems.push(dynamicsProblem("season-bees-out-of-range", "blocked", "start.bees", { bees, ...startBees }));
  if (!(infestedShare >= 0 && infestedShare <= 1)) problems.push(shareFault(infestedShare, 1));
  return problems;
}
