/** A treatment checked: what fell, what would have fallen anyway, and what is left to the treatment. */
import { answered, blocked, type Estimate, ensure, type Problem, type Result } from "../../units/index.ts";
import { type Share, shareProblem } from "./group.ts";
import { hendersonTilton } from "./henderson-tilton.ts";
import { efficacyProblem } from "./problems.ts";
import { allInfested, katzRatio, koopmanRatio } from "./share-ratio.ts";

export interface TreatmentCheck {
  readonly treated: { readonly before: Share; readonly after: Share };
  /** Untreated colonies looked at on the same days; null when there are none. */
  readonly control: { readonly before: Share; readonly after: Share } | null;
  /** What counted as infested after the treatment. */
  readonly scored: "any-mite" | "living-mites";
  /** Days from the end of treatment to the look after it. */
  readonly daysAfter: number;
  readonly level?: number;
}

export interface TreatmentOutcome {
  /** Relative fall in the treated group, 1 − after/before: no efficacy. */
  readonly apparentFall: Estimate;
  /** Against the untreated group; null when there is none or the figures do not allow it. */
  readonly efficacy: Estimate | null;
  /** Share infested expected by now without treatment: before, times what the untreated group did. */
  readonly expectedWithout: number | null;
  /** Fall of the share that the untreated group's course explains: before − expectedWithout. Not the treatment's. */
  readonly fallNotByTreatment: number | null;
}

/**
 * Before and after, and efficacy only where there is a comparator.
 *
 * The apparent fall is Katz's ratio of two shares. Efficacy is Henderson and Tilton's. Bees scored for any mite may
 * carry dead ones from before: a warning says so. The limits speak for the bees examined, not for other colonies.
 *
 * @returns TreatmentOutcome; `no-comparator` rides along as a problem when there is none, and `efficacy` is null
 * @throws DomainError for counts that are not whole, days below 0 or a level outside (0, 1)
 * @source Henderson & Tilton 1955; Katz et al. 1978; dead mites stay in place: COLOSS BEEBOOK, tracheal mite methods
 *
 * @example
 * treatmentOutcome({ treated: { before: { infested: 20, examined: 50 }, after: { infested: 5, examined: 50 } }, control: { before: { infested: 18, examined: 50 }, after: { infested: 9, examined: 50 } }, scored: "living-mites", daysAfter: 28 }).value.expectedWithout  // → 0.2
 */
export function treatmentOutcome(check: TreatmentCheck): Result<TreatmentOutcome> {
  const { treated, control, scored, daysAfter, level = 0.95 } = check;
  ensure(daysAfter >= 0 && daysAfter < Infinity, "daysAfter", daysAfter, "0 or more");
  const apparent = apparentFall(treated, level);
  if (!apparent.ok) return apparent;
  const problems: Problem[] = [...apparent.problems];
  if (scored === "any-mite") {
    problems.push(efficacyProblem("dead-mites-still-counted", "warned", "scored", { daysAfter }));
  }
  const corrected = hendersonTilton({ kind: "shares", treated, control, level });
  const unusable = corrected.problems.find(
    ({ code }) => code === "infested-exceed-examined" || code === "group-not-examined",
  );
  if (unusable) return blocked(...corrected.problems);
  const known = new Set(problems.map(({ code }) => code));
  for (const each of corrected.problems) {
    if (each.code === "no-comparator" || each.code === "efficacy-undefined")
      problems.push({ ...each, severity: "warned" });
    else if (!known.has(each.code)) problems.push(each);
  }
  const share = ({ infested, examined }: Share) => infested / examined;
  const before = share(treated.before);
  const course = control && control.before.infested > 0 ? share(control.after) / share(control.before) : null;
  return answered(
    {
      apparentFall: apparent.value,
      efficacy: corrected.ok ? corrected.value : null,
      expectedWithout: course === null ? null : before * course,
      fallNotByTreatment: course === null ? null : before * (1 - course),
    },
    problems,
  );
}

/**
 * Relative fall in one group, 1 − after/before, with Katz's limits, or Koopman's where all were infested both times. No efficacy: it may have fallen anyway.
 *
 * The two samples are taken as independent.
 *
 * @returns Estimate of a proportion ≤ 1; or `efficacy-undefined` when none was infested before
 * @throws DomainError for counts that are not whole, a level outside (0, 1) or a design effect below 1
 * @source Katz et al. 1978; Koopman 1984
 *
 * @example
 * apparentFall({ before: { infested: 20, examined: 50 }, after: { infested: 5, examined: 50 } }).value.value  // → 0.75
 */
export function apparentFall(
  group: {
    readonly before: Share;
    readonly after: Share;
    /** Variance of the counts over that of bees drawn alone, 1 or more; 1 when not given. */
    readonly designEffect?: number;
  },
  level = 0.95,
): Result<Estimate> {
  ensure(level > 0 && level < 1, "level", level, "in (0, 1)");
  const { before, after, designEffect = 1 } = group;
  ensure(designEffect >= 1 && Number.isFinite(designEffect), "designEffect", designEffect, "1 or more");
  const troubles = [shareProblem("treated.before", before), shareProblem("treated.after", after)];
  const found = troubles.filter((each) => each !== null);
  if (found.length > 0) return blocked(...found);
  if (before.infested === 0) {
    return blocked(efficacyProblem("efficacy-undefined", "blocked", "treated.before", { group: "treated.before" }));
  }
  const method = allInfested(after, before) ? "koopman" : "katz";
  const pair = { first: after, second: before, level, designEffect };
  const { ratio, low, high, halfAdded } = method === "koopman" ? koopmanRatio(pair) : katzRatio(pair);
  return answered(
    {
      value: 1 - ratio,
      low: 1 - high,
      high: ratio === 0 ? 1 : 1 - low,
      level,
      interval: "confidence",
      method: halfAdded ? "before-after-katz-half" : `before-after-${method}`,
      rule: "EF6",
      n: before.examined + after.examined,
    },
    halfAdded ? [efficacyProblem("half-added-for-limits", "noted", "treated.after", { group: "treated.after" })] : [],
  );
}
