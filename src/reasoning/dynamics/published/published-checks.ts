/** What was published about colonies with tracheal mites, beside what the model gives, and whether it was tuned to it. */
import { addDays, type Day, dayNumber } from "../../../units/index.ts";
import type { Action } from "../actions.ts";
import { type CourseDay, type CourseQuestion, colonyCourse } from "../course.ts";
import { specified } from "../parameters.ts";

/**
 * tuned: the model was tuned to the figure, or to its direction. by-construction: the figure went into the model.
 * prediction: not used in tuning. partial: not used, and met in part only. not-comparable: the model cannot give it.
 */
export type CheckStatus = "tuned" | "by-construction" | "prediction" | "partial" | "not-comparable";

/** One published figure and the model's. */
export interface PublishedCheck {
  readonly id: (typeof checkIds)[number];
  readonly status: CheckStatus;
  /** Null where every handbook says so and none is cited. */
  readonly source: string | null;
  /** Published range in `unit`; equal ends for one figure, null end for none; null where only a direction was seen. */
  readonly published: { readonly low: number | null; readonly high: number | null } | null;
  readonly unit: "bees" | "infested-in-100" | "lower-in-100" | "lost-in-100";
  /** What the model gives, in the order the sentence of the check tells it. */
  readonly model: readonly number[];
}

/** Every check, in the order it is told. */
export const checkIds = [
  "summer-peak",
  "late-winter",
  "winter-rise",
  "summer-fall",
  "untreated-august",
  "menthol-may",
  "menthol-may-susceptible",
  "formic-kill",
  "formic-two-months",
  "menthol-late",
  "patty-all-year",
  "patty-twice",
  "patty-deaths",
  "clean-loss",
] as const;

const newYork = "Otis, Bath, Randall & Grant 1988, New York: the direction was seen, not the sizes";
const handbook = "Sammataro and others 2013, BEEBOOK II, tracheal mites";
const alberta = "Nelson and others 1993, Apidologie 24:549, Alberta";
const clark = "Clark, Canadian Beekeeping 17(4):86";
const herbert = "Herbert, Shimanuki & Matthenius 1988: no effect below highs of 21 °C";
const ohio1994 = "Sammataro and others 1994, Ohio; dates and length of the patties assumed";
const frazier = "Frazier 1994, from an extension page";

/** The autumn the model was tuned from: own numbers. */
const november: CourseQuestion = {
  site: {},
  start: { date: "2025-11-01", bees: 22000, infestedShare: 0.16, brood: "none" },
  actions: [],
  until: "2027-11-01",
};
const startingAt = (infestedShare: number) => ({ ...november, start: { ...november.start, infestedShare } });
const menthol = (from: Day): readonly Action[] => [{ kind: "menthol", from }];
/** Alberta: an untreated colony of a stock chosen so that it ends August as those did. */
const susceptible = 1.25;
const mostSusceptible = 1.35;

/**
 * The model's figures beside the published ones, reckoned now.
 *
 * Meeting a figure it was tuned to says nothing for the model. Not for months of a course: no published table of one
 * colony's infestation by month was found.
 */
export function publishedChecks(): readonly PublishedCheck[] {
  const base = courseOf(november);
  const stock = courseOf({ ...november, stockSusceptibility: susceptible });
  const formic = courseOf({ ...november, actions: [{ kind: "formic", from: "2026-09-01" }] });
  const pattyAllYear: readonly Action[] = [{ kind: "oil-patty", from: "2025-11-01", to: "2027-11-01", reduction: 0.4 }];
  const twice: readonly Action[] = [
    { kind: "oil-patty", from: "2026-06-01", to: "2026-06-30", reduction: 0.4 },
    { kind: "oil-patty", from: "2026-07-15", to: "2026-08-13", reduction: 0.4 },
  ];
  const always = courseOf({ ...november, actions: pattyAllYear, stockSusceptibility: susceptible });
  const ohio = courseOf({ ...november, actions: twice, stockSusceptibility: susceptible });
  const menthols = (share: number, stockSusceptibility: number) =>
    per100(courseOf({ ...startingAt(share), actions: menthol("2026-05-17"), stockSusceptibility }), "2026-09-01");
  const lower = (day: Day) => 100 * (1 - share(formic, day) / share(base, day));
  return [
    row("summer-peak", "tuned", null, [30_000, 60_000], "bees", [on(base, "2026-08-01").bees]),
    row("late-winter", "tuned", null, [8_000, 15_000], "bees", [
      on(base, "2026-03-01").bees,
      on(base, "2027-03-01").bees,
    ]),
    row("winter-rise", "tuned", newYork, null, "infested-in-100", [
      per100(base, "2026-11-01"),
      per100(base, "2027-02-01"),
    ]),
    row("summer-fall", "tuned", handbook, null, "infested-in-100", [
      per100(base, "2026-04-01"),
      per100(base, "2026-08-01"),
    ]),
    row("untreated-august", "tuned", alberta, [25, 25], "infested-in-100", [
      per100(stock, "2026-09-01"),
      per100(courseOf({ ...startingAt(0.2), stockSusceptibility: susceptible }), "2026-09-01"),
    ]),
    row("menthol-may", "tuned", alberta, [null, 1], "infested-in-100", [menthols(0.2, susceptible)]),
    row(
      "menthol-may-susceptible",
      "tuned",
      alberta,
      [null, 1],
      "infested-in-100",
      [0.05, 0.1, 0.2].map((each) => menthols(each, mostSusceptible)),
    ),
    row("formic-kill", "by-construction", clark, [95, null], "lower-in-100", [lower("2026-09-22")]),
    row("formic-two-months", "prediction", clark, [95, 95], "lower-in-100", [lower("2026-11-21")]),
    row("menthol-late", "by-construction", herbert, null, "infested-in-100", [
      ...["08-15", "09-01", "09-16", "10-01", "10-15"].map((day) =>
        per100(courseOf({ ...november, actions: menthol(`2026-${day}`) }), "2026-12-01"),
      ),
      per100(base, "2026-12-01"),
    ]),
    row("patty-all-year", "tuned", handbook, [10, 10], "infested-in-100", [
      highest(always, "2026-11-01"),
      highest(stock, "2026-11-01"),
    ]),
    row("patty-twice", "partial", ohio1994, null, "infested-in-100", [
      ...[per100(ohio, "2026-11-01"), per100(stock, "2026-11-01")],
      ...[per100(ohio, "2027-04-01"), per100(stock, "2027-04-01")],
    ]),
    row("patty-deaths", "not-comparable", ohio1994, [0, 45], "lost-in-100", []),
    row("clean-loss", "tuned", frazier, [11, 11], "lost-in-100", [
      100 *
        (1 -
          on(
            courseOf({
              ...november,
              until: "2026-05-01",
              start: { ...november.start, bees: 24_000, infestedShare: 0 },
            }),
            "2026-05-01",
          ).survival),
    ]),
  ];
}

function row(
  id: PublishedCheck["id"],
  status: CheckStatus,
  source: string | null,
  range: readonly [number | null, number | null] | null,
  unit: PublishedCheck["unit"],
  model: readonly number[],
): PublishedCheck {
  return { id, status, source, published: range === null ? null : { low: range[0], high: range[1] }, unit, model };
}

type Course = readonly CourseDay[];

function courseOf(question: CourseQuestion): Course {
  const course = colonyCourse({ ...question, parameters: specified });
  if (!course.ok) throw new RangeError(`a check cannot be asked: ${course.problems[0]?.code}`);
  return course.value;
}

function on(course: Course, date: Day): CourseDay {
  const found = course[dayNumber(date) - dayNumber(course[0]?.date ?? date)];
  if (!found) throw new RangeError(`no ${date} in the course`);
  return found;
}

const share = (course: Course, date: Day): number => on(course, date).infestedShare;
const per100 = (course: Course, date: Day): number => 100 * share(course, date);

/** Highest on a first of a month of the year that begins on a day, as the independent program prints. */
const highest = (course: Course, from: Day): number =>
  Math.max(
    ...course
      .filter(({ date }) => date >= from && date < addDays(from, 365) && date.endsWith("-01"))
      .map(({ infestedShare }) => 100 * infestedShare),
  );
