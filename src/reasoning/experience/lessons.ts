/** What closed cases with a confirmed cause teach: counts of seen and looked for, and the cases that teach nothing. */
import type { Evidence, Seen } from "../../knowledge/index.ts";
import { ensure, type Problem, type Season } from "../../units/index.ts";
import { type AnyInput, confirms, priorProbabilities, readCase } from "../differential/index.ts";
import { type ClosedCase, unconfirmedCause } from "./closed-case.ts";
import { experienceProblem } from "./problems.ts";
import { settledFindings } from "./settled-findings.ts";

/** Counts of a programme's own cases. Members that nothing was seen of are left out. */
export interface ExperienceCounts {
  /** By condition, then by finding: cases of that single cause with the finding, of those looked at for it. */
  readonly frequencies: Readonly<Record<string, Readonly<Record<string, Seen>>>>;
  /** By season, then by finding: the same where the cause has no bearing on the finding. */
  readonly healthy: Readonly<Record<Season, Readonly<Record<string, Seen>>>>;
  /** By condition, then by season: cases with that cause, of the confirmed cases that can tell. */
  readonly priors: Readonly<Record<string, Readonly<Partial<Record<Season, Seen>>>>>;
}

/** What one case adds. */
export interface Lesson {
  readonly case: string;
  readonly counts: ExperienceCounts;
}

/** What was learnt, case by case, and what was refused. */
export interface Experience {
  readonly lessons: readonly Lesson[];
  readonly counts: ExperienceCounts;
  /** One for each case that teaches nothing, with the reason. */
  readonly refused: readonly Problem[];
}

/** The counts of no case. */
export const noCounts: ExperienceCounts = {
  frequencies: {},
  healthy: { winter: {}, spring: {}, summer: {}, autumn: {} },
  priors: {},
};

/**
 * What these cases teach under the evidence that they are held against.
 *
 * Rules: one case counts once, by the colony it is told of. Only cases with a cause that something confirms teach.
 * A finding counts for a pair only where that cause is the single confirmed one, and only where it was looked for; where
 * the pair is not in the evidence it counts for the healthy rate of the season. Each confirmed cause of a mixed case
 * counts for priors, in the season, and only where region and state of the colony, as they were on record before the result, leave that prior as it stands. A case
 * with a result that confirms a cause beside the ones named is a mixed case, and tells nothing of that cause's prior.
 *
 * Confirmed cases are no random sample of those referred: what is easy to confirm is over-represented.
 *
 * @throws DomainError for a case that is there twice
 */
export function experienceOf(cases: readonly ClosedCase[], evidence: Evidence): Experience {
  const twice = cases.find(({ id }, at) => cases.findIndex((each) => each.id === id) !== at);
  ensure(twice === undefined, "cases", twice?.id, "each there once");
  const lessons: Lesson[] = [];
  const refused: Problem[] = [];
  for (const each of cases) {
    const lesson = lessonOf(each, evidence);
    if ("code" in lesson) refused.push(lesson);
    else lessons.push(lesson);
  }
  return { lessons, counts: countsOf(lessons), refused };
}

function lessonOf(each: ClosedCase, evidence: Evidence): Lesson | Problem {
  const { id, confirmedCauses: causes } = each;
  if (causes.length === 0) return experienceProblem("case-without-cause", "noted", id, { case: id });
  const unknown = causes.find((cause) => !Object.hasOwn(evidence.conditions, cause));
  if (unknown !== undefined) return experienceProblem("cause-unknown", "warned", id, { case: id, cause: unknown });
  const unconfirmed = unconfirmedCause(each);
  if (unconfirmed !== null)
    return experienceProblem("cause-not-confirmed", "warned", id, { case: id, cause: unconfirmed });
  const read = readCase(each.whole, evidence);
  if (!read.ok) {
    const why = read.problems.map(({ code }) => code).join(", ");
    return experienceProblem("case-unreadable", "warned", id, { case: id, why });
  }
  const { season } = read.value;
  const settled = settledFindings(read.value, evidence);
  const unnamed = evidence.conditionIds.filter(
    (cause) => !causes.includes(cause) && each.results.some((result) => confirms(result, cause)),
  );
  const single = new Set(causes).size === 1 && unnamed.length === 0 ? causes[0] : undefined;
  const pairs = single === undefined ? {} : (evidence.frequencies[single] ?? {});
  const seen = (isPair: boolean): Readonly<Record<string, Seen>> =>
    Object.fromEntries(
      settled
        .filter(({ finding }) => single !== undefined && Object.hasOwn(pairs, finding) === isPair)
        .map(({ finding, isPresent }) => [finding, { present: Number(isPresent), looked: 1 }]),
    );
  const setting = readCase(askedBefore(each), evidence);
  const stated = setting.ok ? priorProbabilities(setting.value, evidence) : {};
  const telling = evidence.conditionIds.filter(
    (cause) => !unnamed.includes(cause) && stated[cause] === evidence.priors[cause]?.[season].value,
  );
  return {
    case: id,
    counts: {
      frequencies: single === undefined ? {} : { [single]: seen(true) },
      healthy: { ...noCounts.healthy, [season]: seen(false) },
      priors: Object.fromEntries(
        telling.map((cause) => [cause, { [season]: { present: Number(causes.includes(cause)), looked: 1 } }]),
      ),
    },
  };
}

/**
 * Region and state of the colony as they were on record before the confirming result. A region called infested because
 * of this very case would make its prior learn from cases that have the cause and from no others.
 */
function askedBefore({ before, whole }: ClosedCase): AnyInput {
  const { region: _, colony, ...asked } = whole;
  const { region, colony: known = before === null ? colony : undefined } = before ?? {};
  return { ...asked, ...(region === undefined ? {} : { region }), ...(known === undefined ? {} : { colony: known }) };
}

/** The counts of all lessons but those of one case: what a case that is being scored was not taught by. */
export const countsWithout = (lessons: readonly Lesson[], left: string): ExperienceCounts =>
  countsOf(lessons.filter((lesson) => lesson.case !== left));

/** The sum of the lessons. */
export const countsOf = (lessons: readonly Lesson[]): ExperienceCounts => ({
  frequencies: summed(lessons.map(({ counts }) => counts.frequencies)),
  healthy: { ...noCounts.healthy, ...summed(lessons.map(({ counts }) => counts.healthy)) },
  priors: summed(lessons.map(({ counts }) => counts.priors)),
});

type Counts = Readonly<Record<string, Readonly<Partial<Record<string, Seen>>>>>;

/** Member by member. */
function summed(parts: readonly Counts[]): Record<string, Record<string, Seen>> {
  const sums: Record<string, Record<string, Seen>> = {};
  for (const part of parts) {
    for (const [outer, members] of Object.entries(part)) {
      sums[outer] ??= {};
      const own = sums[outer];
      for (const [inner, seen] of Object.entries(members)) {
        if (seen === undefined) continue;
        const before = own[inner] ?? { present: 0, looked: 0 };
        own[inner] = { present: before.present + seen.present, looked: before.looked + seen.looked };
      }
    }
  }
  return sums;
}
