/** Abbott's efficacy: treated against untreated, both looked at once, after the treatment. */
import { answered, blocked, type Estimate, ensure, type Problem, type Result } from "../../units/index.ts";
import { type Share, shareProblem } from "./group.ts";
import { efficacyProblem } from "./problems.ts";
import { allInfested, katzRatio, koopmanRatio } from "./share-ratio.ts";

/**
 * Efficacy 1 − T/C of the shares infested (or surviving) after treatment.
 *
 * Assumes that both groups started alike; with counts from before use `hendersonTilton`. Limits: Katz's on the
 * logarithm of the ratio, half a bee added everywhere when none is left in the treated group (the high end is
 * then 1); or Koopman's score limits, which need no half bees and stand in
 * for Katz's where all were infested in both groups. A negative value, the treated doing worse, is reported as it is.
 *
 * @returns Estimate of a proportion ≤ 1; or `no-comparator`, `efficacy-undefined`, `infested-exceed-examined`,
 *   `group-not-examined`
 * @throws DomainError for counts that are not whole, a level outside (0, 1) or a design effect below 1
 * @source Abbott 1925, Journal of Economic Entomology 18:265; Katz et al. 1978 (limits)
 *
 * @example
 * abbott({ treated: { infested: 12, examined: 100 }, control: { infested: 80, examined: 100 } }).value.value  // → 0.85
 * abbott({ treated: { infested: 12, examined: 100 }, control: null }).problems[0].code  // → no-comparator
 */
export function abbott(trial: {
  readonly treated: Share;
  /** The untreated group; null when there is none. */
  readonly control: Share | null;
  readonly level?: number;
  /** Limits by Katz (default) or by Koopman's score test, which needs no half bees. */
  readonly method?: "katz" | "koopman";
  /** Variance of the counts over that of bees drawn alone, 1 or more; 1 when not given. */
  readonly designEffect?: number;
}): Result<Estimate> {
  const { treated, control, level = 0.95, designEffect = 1 } = trial;
  ensure(level > 0 && level < 1, "level", level, "in (0, 1)");
  ensure(designEffect >= 1 && Number.isFinite(designEffect), "designEffect", designEffect, "1 or more");
  if (control === null) return blocked(efficacyProblem("no-comparator", "blocked", "control", {}));
  const troubles = [shareProblem("treated", treated), shareProblem("control", control)].filter((each) => each !== null);
  if (troubles.length > 0) return blocked(...troubles);
  if (control.infested === 0)
    return blocked(efficacyProblem("efficacy-undefined", "blocked", "control", { group: "control" }));

  const method = allInfested(treated, control) ? "koopman" : (trial.method ?? "katz");
  const limits = (method === "katz" ? katzRatio : koopmanRatio)({
    first: treated,
    second: control,
    level,
    designEffect,
  });
  const estimate: Estimate = {
    value: 1 - limits.ratio,
    low: 1 - limits.high,
    high: limits.ratio === 0 ? 1 : 1 - limits.low,
    level,
    interval: "confidence",
    method: limits.halfAdded ? "abbott-katz-half" : `abbott-${method}`,
    rule: "EF1",
    n: treated.examined + control.examined,
  };
  const problems: Problem[] = [];
  if (limits.halfAdded)
    problems.push(efficacyProblem("half-added-for-limits", "noted", "treated", { group: "treated" }));
  if (estimate.value < 0) {
    problems.push(efficacyProblem("negative-efficacy", "warned", "treated", { efficacy: estimate.value }));
  }
  return answered(estimate, problems);
}
