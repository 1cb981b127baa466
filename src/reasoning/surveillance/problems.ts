/** Every trouble the surveillance step can report, with the slots its sentence needs. */
import { type Problem, problem, type Severity } from "../../units/index.ts";

/** Codes of surveillance with their slots; views/words holds one sentence for each. */
export interface SurveillanceProblems {
  /** Certain to be infested and certain to be found, yet nothing was found: one of the two figures is wrong. */
  readonly "zero-contradicts-certainty": { readonly round: number };
  /** Shares of the strata must make 1. */
  readonly "shares-not-whole": { readonly total: number };
  /** A risk carries the share of infested ones of a stratum above 1. */
  readonly "infested-share-above-one": { readonly stratum: number; readonly share: number };
  readonly "more-infested-than-places": { readonly infested: number; readonly places: number };
  readonly "more-tested-than-places": { readonly tested: number; readonly places: number };
  readonly "nothing-tested": Readonly<Record<never, never>>;
  /** Strata and rounds are taken as independent; the figure is too high where they are not. */
  readonly "parts-taken-as-independent": { readonly parts: number };
  /** Even everything there is to test does not reach the target. */
  readonly "target-out-of-reach": { readonly target: number; readonly reachable: number };
  /** The exact search would visit too many combinations. */
  readonly "search-too-wide": { readonly strata: number };
  readonly "too-few-areas": { readonly areas: number };
  readonly "area-without-population": { readonly area: number };
  readonly "nothing-counted": { readonly areas: number };
  /** A neighbour that is no area of the list. */
  readonly "neighbour-unknown": { readonly area: number; readonly neighbour: number };
  /** Areas differ no more than chance: every smoothed rate is the mean. */
  readonly "areas-no-more-than-chance": { readonly areas: number };
  /** The moment estimate did not settle. */
  readonly "fit-did-not-settle": { readonly rounds: number };
  readonly "trend-not-defined": { readonly positive: number; readonly examined: number };
  /** Every group has the same score. */
  readonly "scores-all-alike": { readonly score: number };
  readonly "too-few-groups": { readonly groups: number };
  /** Some combination of the covariates is always or never positive: its coefficient has no finite maximum. */
  readonly "covariates-separate": { readonly covariate: number };
  /** A covariate follows from the others. */
  readonly "covariates-redundant": { readonly covariates: number };
  /** One unit a group: what differs between groups cannot be told from what differs between units. */
  readonly "one-unit-a-group": { readonly groups: number };
  /** Groups differ no more than chance: the spread is likeliest at 0, and the fit is that without groups. */
  readonly "groups-no-more-than-chance": { readonly groups: number };
  /** Each group is all or none: the spread has no finite maximum. */
  readonly "groups-all-or-none": { readonly groups: number };
}

/** All codes of `SurveillanceProblems`, for tests of completeness. */
export const surveillanceProblemCodes = [
  "zero-contradicts-certainty",
  "shares-not-whole",
  "infested-share-above-one",
  "more-infested-than-places",
  "more-tested-than-places",
  "nothing-tested",
  "parts-taken-as-independent",
  "target-out-of-reach",
  "search-too-wide",
  "too-few-areas",
  "area-without-population",
  "nothing-counted",
  "neighbour-unknown",
  "areas-no-more-than-chance",
  "fit-did-not-settle",
  "trend-not-defined",
  "scores-all-alike",
  "too-few-groups",
  "covariates-separate",
  "covariates-redundant",
  "one-unit-a-group",
  "groups-no-more-than-chance",
  "groups-all-or-none",
] as const satisfies readonly (keyof SurveillanceProblems)[];

/** A Problem of this step: code and slots must fit each other. */
export const surveillanceProblem = <Code extends keyof SurveillanceProblems>(
  code: Code,
  severity: Severity,
  field: string | null,
  slots: SurveillanceProblems[Code],
): Problem => problem(code, severity, field, { slots: { ...slots } });
