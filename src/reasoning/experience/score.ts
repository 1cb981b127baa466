/** How well past answers did: what was stated before the cause was confirmed, against the cause. */
import type { ExperienceUse } from "../../casebook/index.ts";
import { wilsonInterval } from "../../numerics/index.ts";
import { answered, blocked, type Estimate, ensure, type Problem, type Result } from "../../units/index.ts";
import { type CalibrationBin, calibration, logClip, posteriorsUnder } from "../differential/index.ts";
import { bootstrapMean } from "./bootstrap.ts";
import type { ClosedCase } from "./closed-case.ts";
import { askedUnder, type InUse } from "./in-use.ts";
import { countsWithout, type Lesson } from "./lessons.ts";
import { experienceProblem } from "./problems.ts";
import { isUsed, withExperience } from "./with-experience.ts";

/** A case that was scored: what had been stated of its confirmed causes. */
export interface ScoredCase {
  readonly case: string;
  readonly confirmed: readonly string[];
  /** The likeliest condition, and what it was given. */
  readonly likeliest: string;
  readonly posterior: number;
  /** Probability given to each confirmed cause, in the order of `confirmed`. */
  readonly given: readonly number[];
  /** Place in the list of the confirmed cause that stood highest, from 1. */
  readonly rank: number;
}

/** Scores over cases. */
export interface Scores {
  /** Mean over cases of the sum of (p − y)² over all conditions; 0 is perfect. Bootstrap limits over cases. */
  readonly brier: Estimate;
  /** Mean over cases of −ln of the probability given to a confirmed cause, held at `clip` from 0. Bootstrap limits. */
  readonly logScore: Estimate;
  readonly clip: number;
  /** Cases whose confirmed cause had been given less than `clip`. */
  readonly held: number;
  /** Share of cases whose confirmed cause stood first, and among the first three. Wilson's limits. */
  readonly topOne: Estimate;
  readonly topThree: Estimate;
  /** Reliability over all pairs of case and condition. The pairs of one case go together: the limits are too narrow. */
  readonly bins: readonly CalibrationBin[];
  /** Mean distance of stated and observed over the bins. */
  readonly expectedError: number;
}

/** The scores, or why there are none; and every case, scored or not. */
export interface CasebookScore {
  readonly scored: readonly ScoredCase[];
  readonly scores: Result<Scores>;
  /** Cases that were not scored, and why. */
  readonly notScored: readonly Problem[];
  /** True where each case was put to evidence that it had not taught. */
  readonly leftOut: boolean;
}

/** With fewer cases no score is given: its limits would say nothing. Judgement. */
export const fewestScored = 10;

/**
 * Scores of a programme's closed cases with a confirmed cause.
 *
 * Each case is asked anew with what was on record before the result that confirmed its cause, under the evidence in
 * use; where experience is used, under what all other cases taught (leave one out). A condition that was not confirmed
 * counts as not there: mild overstatement, since not all were looked for. Confirmed cases are no random sample.
 *
 * @throws DomainError for a level outside (0, 1)
 * @source Brier 1950; Good 1952 (logarithmic score); Wilson 1927; Clopper & Pearson 1934 (bins)
 */
export function scoreOf(
  cases: readonly ClosedCase[],
  inUse: InUse,
  { level = 0.95, seed = 1 }: { readonly level?: number; readonly seed?: number } = {},
): CasebookScore {
  ensure(level > 0 && level < 1, "level", level, "between 0 and 1");
  const { lessons, refused } = inUse.experience;
  const learns = isUsed(inUse.settings.experience);
  const notScored: Problem[] = [...refused];
  const rows = cases.flatMap((each) => {
    if (!lessons.some((lesson) => lesson.case === each.id)) return [];
    const row = rowOf(each, { inUse, lessons, use: inUse.settings.experience, learns });
    if ("code" in row) notScored.push(row);
    return "code" in row ? [] : [row];
  });
  return {
    scored: rows.map(({ scored }) => scored),
    scores: scoresOf(rows, level, seed),
    notScored,
    leftOut: learns,
  };
}

interface Row {
  readonly scored: ScoredCase;
  /** Stated and held, one per condition. */
  readonly stated: readonly number[];
  readonly outcomes: readonly boolean[];
}

interface Setting {
  readonly inUse: InUse;
  readonly lessons: readonly Lesson[];
  readonly use: ExperienceUse;
  readonly learns: boolean;
}

function rowOf(each: ClosedCase, { inUse, lessons, use, learns }: Setting): Row | Problem {
  const { id, before, confirmedCauses } = each;
  if (before === null) return experienceProblem("nothing-before-result", "noted", id, { case: id });
  const evidence = learns ? withExperience(inUse.start, countsWithout(lessons, id), use) : inUse.evidence;
  const answer = posteriorsUnder(askedUnder(before, inUse), evidence);
  if (!answer.ok) {
    const why = answer.problems.map(({ code }) => code).join(", ");
    return experienceProblem("case-unreadable", "warned", id, { case: id, why });
  }
  const { ids, posterior } = answer.value;
  const confirmed = [...new Set(confirmedCauses)];
  const of = (cause: string) => posterior[ids.indexOf(cause)] ?? 0;
  const given = confirmed.map(of);
  const highest = Math.max(...given);
  const most = Math.max(...posterior);
  return {
    scored: {
      case: id,
      confirmed,
      likeliest: ids[posterior.indexOf(most)] ?? "",
      posterior: most,
      given,
      // Of conditions given the same, the confirmed one stands last: no luck is counted.
      rank:
        posterior.filter((p, at) => p > highest || (p === highest && !confirmed.includes(ids[at] ?? ""))).length + 1,
    },
    stated: posterior,
    outcomes: ids.map((cause) => confirmed.includes(cause)),
  };
}

function scoresOf(rows: readonly Row[], level: number, seed: number): Result<Scores> {
  const cases = rows.length;
  if (cases < fewestScored)
    return blocked(experienceProblem("too-few-scored", "unknown", "cases", { cases, needed: fewestScored }));
  const bins = calibration({
    stated: rows.flatMap(({ stated }) => stated),
    outcomes: rows.flatMap(({ outcomes }) => outcomes),
    level,
  });
  if (!bins.ok) return bins;
  const boot = { level, seed, rule: "DX170" };
  const mean = (values: readonly number[]) => values.reduce((sum, each) => sum + each, 0) / values.length;
  const held = ({ given }: ScoredCase) => given.some((p) => p < logClip);
  return answered({
    brier: bootstrapMean(
      rows.map(({ stated, outcomes }) => stated.reduce((sum, p, at) => sum + (p - Number(outcomes[at])) ** 2, 0)),
      boot,
    ),
    logScore: bootstrapMean(
      rows.map(({ scored: { given } }) => mean(given.map((p) => -Math.log(Math.max(logClip, p))))),
      boot,
    ),
    clip: logClip,
    held: rows.filter(({ scored }) => held(scored)).length,
    topOne: shareWithin(rows, 1, level),
    topThree: shareWithin(rows, 3, level),
    bins: bins.value.bins,
    expectedError: bins.value.expectedError,
  });
}

function shareWithin(rows: readonly Row[], most: number, level: number): Estimate {
  const n = rows.length;
  const x = rows.filter(({ scored }) => scored.rank <= most).length;
  const { low, high } = wilsonInterval({ x, n, level });
  return { value: x / n, low, high, level, interval: "confidence", method: "wilson", rule: "DX172", n };
}
