/** What the printed label in the user's hand allows, and whether its record can be used. */
import type { Kept, LabelRecordState } from "../../casebook/index.ts";
import { daysBetween, ensure, isDay, type Problem, problem } from "../../units/index.ts";

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
  const problems: Problem[] = [];
  const block = (code: string, field: string, given: number, slots: Problem["slots"]) =>
    problems.push(problem(code, "blocked", `labelRecord.${field}`, { given, slots }));
  const { minDailyHighCelsius: least, maxDailyHighCelsius: greatest, durationDays, applications } = label;
  if (!(Number.isFinite(least) && Number.isFinite(greatest)))
    block("label-temperatures-missing", "minDailyHighCelsius", least, {});
  else if (least >= greatest) block("label-temperatures-crossed", "minDailyHighCelsius", least, { least, greatest });
  // No label asks for days above 45 °C or allows 60 °C; limits typed in Fahrenheit do. Judgement.
  else if (least > 45 || greatest > 60)
    block("label-temperatures-look-like-fahrenheit", "maxDailyHighCelsius", greatest, { least, greatest });
  if (!(Number.isInteger(durationDays) && durationDays >= 1))
    block("label-duration-out-of-range", "durationDays", durationDays, { durationDays });
  if (!(Number.isInteger(applications) && applications >= 1))
    block("label-applications-out-of-range", "applications", applications, { applications });
  else if (applications > 1 && !(label.daysBetweenApplications >= 1))
    block("label-applications-without-days-between", "daysBetweenApplications", label.daysBetweenApplications, {
      applications,
    });
  if (!(label.daysBeforeSupers >= 0))
    block("label-days-before-supers-out-of-range", "daysBeforeSupers", label.daysBeforeSupers, {
      daysBeforeSupers: label.daysBeforeSupers,
    });
  return problems;
}

/** Doubts about a label record on the day a plan is made: read long ago, read in the future, invented. */
export function recordDoubts(label: LabelRecord, madeOn: string): readonly Problem[] {
  if (!isDay(label.readOn))
    return [problem("label-read-date-unknown", "blocked", "labelRecord.readOn", { given: label.readOn })];
  const age = daysBetween(label.readOn, madeOn);
  const problems: Problem[] = [];
  if (age < 0)
    problems.push(
      problem("label-read-in-future", "blocked", "labelRecord.readOn", {
        given: label.readOn,
        slots: { readOn: label.readOn, madeOn },
      }),
    );
  if (age > oldLabelDays)
    problems.push(
      problem("label-record-old", "warned", "labelRecord.readOn", {
        given: label.readOn,
        slots: { readOn: label.readOn, days: age },
      }),
    );
  if (label.invented) problems.push(problem("label-record-invented", "warned", "labelRecord"));
  return problems;
}
