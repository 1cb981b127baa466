/** What the printed label in the user's hand allows, and whether its record can be used. */
import type { Kept, LabelRecordState } from "../../casebook/index.ts";
import { daysBetween, ensure, isDay, type Problem } from "../../units/index.ts";
import { controlProblem } from "./control-problem.ts";

/** A label record as the journal keeps it. Typed from the printed label, never supplied by this program. */
export type LabelRecord = NonNullable<LabelRecordState["record"]> extends Kept<infer Body> ? Body : never;

/** What of a label record decides on which days a treatment may lie in a hive. */
export type LabelLimits = Pick<
  LabelRecord,
  | "activeIngredient"
  | "applications"
  | "daysBetweenApplications"
  | "minDailyHighCelsius"
  | "maxDailyHighCelsius"
  | "durationDays"
  | "supersAllowed"
  | "daysBeforeSupers"
>;

/** Age after which a label record is warned of: labels change, most often by the season. Judgement, no source. */
export const oldLabelDays = 365;

/**
 * Days on which something of the treatment lies in the hive, first to last: `durationDays` for each application,
 * which follow each other every `daysBetweenApplications` days.
 *
 * @throws DomainError for numbers below 1, or several applications without days between them
 *
 * @example
 * treatmentDays({ applications: 3, daysBetweenApplications: 7, durationDays: 7 })  // → 21
 */
export function treatmentDays({
  applications,
  daysBetweenApplications,
  durationDays,
}: Pick<LabelLimits, "applications" | "daysBetweenApplications" | "durationDays">): number {
  ensure(applications >= 1, "applications", applications, "1 or more");
  ensure(durationDays >= 1, "durationDays", durationDays, "1 or more");
  ensure(
    applications === 1 || daysBetweenApplications >= 1,
    "daysBetweenApplications",
    daysBetweenApplications,
    "1 or more when there are several applications",
  );
  return (applications - 1) * daysBetweenApplications + durationDays;
}

/** Problems that keep the record's limits from being used; empty when they can. */
export function limitProblems(label: LabelLimits): readonly Problem[] {
  const { durationDays, applications, daysBetweenApplications, daysBeforeSupers } = label;
  const problems = [...temperatureProblems(label)];
  if (!(Number.isInteger(durationDays) && durationDays >= 1))
    problems.push(
      controlProblem("label-duration-out-of-range", "blocked", "labelRecord.durationDays", {
        given: durationDays,
        slots: { durationDays },
      }),
    );
  if (!(Number.isInteger(applications) && applications >= 1))
    problems.push(
      controlProblem("label-applications-out-of-range", "blocked", "labelRecord.applications", {
        given: applications,
        slots: { applications },
      }),
    );
  else if (applications > 1 && !(daysBetweenApplications >= 1))
    problems.push(
      controlProblem("label-applications-without-days-between", "blocked", "labelRecord.daysBetweenApplications", {
        given: daysBetweenApplications,
        slots: { applications },
      }),
    );
  if (!(daysBeforeSupers >= 0))
    problems.push(
      controlProblem("label-days-before-supers-out-of-range", "blocked", "labelRecord.daysBeforeSupers", {
        given: daysBeforeSupers,
        slots: { daysBeforeSupers },
      }),
    );
  return problems;
}

function temperatureProblems({
  minDailyHighCelsius: least,
  maxDailyHighCelsius: greatest,
}: LabelLimits): readonly Problem[] {
  const field = "labelRecord.minDailyHighCelsius";
  const detail = { given: least, slots: { least, greatest } };
  if (!(Number.isFinite(least) && Number.isFinite(greatest)))
    return [controlProblem("label-temperatures-missing", "blocked", field, { given: least })];
  if (least >= greatest) return [controlProblem("label-temperatures-crossed", "blocked", field, detail)];
  // No label asks for days above 45 °C or allows 60 °C; limits typed in Fahrenheit do. Judgement.
  return least > 45 || greatest > 60
    ? [controlProblem("label-temperatures-look-like-fahrenheit", "blocked", field, detail)]
    : [];
}

/** Doubts about a label record on the day a plan is made: read long ago, read in the future, invented. */
export function recordDoubts(label: LabelRecord, madeOn: string): readonly Problem[] {
  if (!isDay(label.readOn))
    return [controlProblem("label-read-date-unknown", "blocked", "labelRecord.readOn", { given: label.readOn })];
  const age = daysBetween(label.readOn, madeOn);
  const problems: Problem[] = [];
  if (age < 0)
    problems.push(
      controlProblem("label-read-in-future", "blocked", "labelRecord.readOn", {
        given: label.readOn,
        slots: { readOn: label.readOn, madeOn },
      }),
    );
  if (age > oldLabelDays)
    problems.push(
      controlProblem("label-record-old", "warned", "labelRecord.readOn", {
        given: label.readOn,
        slots: { readOn: label.readOn, days: age },
      }),
    );
  if (label.invented) problems.push(controlProblem("label-record-invented", "warned", "labelRecord"));
  return problems;
}
