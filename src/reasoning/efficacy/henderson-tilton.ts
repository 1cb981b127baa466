/** Henderson and Tilton's efficacy: the change in the treated against the change in the untreated. */
import { answered, blocked, type Estimate, ensure, type Problem, type Result } from "../../units/index.ts";
import { type Share, shareProblem } from "./group.ts";
import { efficacyProblem } from "./problems.ts";
import { koopmanRatio, type RatioLimits, twoSidedQuantile } from "./share-ratio.ts";

/** Mites counted, and what they were counted on: bees washed, boards. Groups counted on equal effort may leave it 1. */
export interface MiteCount {
  /** Whole number ≥ 0. */
  readonly mites: number;
  /** Bees washed or another measure of effort, above 0; 1 when not given. */
  readonly effort?: number;
}

interface BeforeAfter<Look> {
  readonly before: Look;
  readonly after: Look;
}

export type HendersonTiltonTrial =
  | {
      readonly kind: "counts";
      readonly treated: BeforeAfter<MiteCount>;
      /** The untreated group; null when there is none. */
      readonly control: BeforeAfter<MiteCount> | null;
      /** Variance of the counts over their mean; 1 is Poisson. Multiplies the variance. */
      readonly overdispersion?: number;
      readonly level?: number;
    }
  | {
      readonly kind: "shares";
      readonly treated: BeforeAfter<Share>;
      readonly control: BeforeAfter<Share> | null;
      /** Variance of the counts over that of bees drawn alone, 1 or more; multiplies the variance. */
      readonly designEffect?: number;
      readonly level?: number;
    };

/**
 * Efficacy 1 − (Ta/Tb)·(Cb/Ca).
 *
 * Mites counted: the logarithm has variance Σ 1/count (Poisson), times the overdispersion when it is given; without
 * one a note says that the limits are too narrow. Shares of bees: Σ (1/x − 1/n), times the design effect when it is given. None left in the treated group:
 * efficacy 1, half added everywhere for the low end, which is cautious: it can lie below that of one left. A zero before treatment, or in the untreated group after it,
 * leaves the quantity undefined. Where all were infested at all four looks that variance is 0: Koopman's limits of the two
 * groups, joined, take its place. A negative value is reported as it is.
 *
 * @returns Estimate of a proportion ≤ 1; or `no-comparator`, `efficacy-undefined`, `infested-exceed-examined`,
 *   `group-not-examined`
 * @throws DomainError for counts that are not whole, effort or overdispersion not above 0, a design effect below 1, a level outside (0, 1)
 * @source Henderson & Tilton 1955, Journal of Economic Entomology 48:157; limits by the delta method
 *
 * @example
 * hendersonTilton({ kind: "counts", treated: { before: { mites: 300 }, after: { mites: 15 } }, control: { before: { mites: 250 }, after: { mites: 300 } } }).value.value  // → 0.9583333333
 */
export function hendersonTilton(trial: HendersonTiltonTrial): Result<Estimate> {
  const change = changeRatio(trial);
  if (!change.ok) return change;
  const { ratio, low, high, halfAdded, method, n } = change.value;
  const estimate: Estimate = {
    value: 1 - ratio,
    low: 1 - high,
    high: halfAdded ? 1 : 1 - low,
    level: trial.level ?? 0.95,
    interval: "confidence",
    method: halfAdded ? `${method}-half` : method,
    rule: "EF3",
    n,
  };
  const problems: Problem[] = [...change.problems];
  if (halfAdded)
    problems.push(efficacyProblem("half-added-for-limits", "noted", "treated.after", { group: "treated.after" }));
  if (estimate.value < 0) {
    problems.push(efficacyProblem("negative-efficacy", "warned", "treated", { efficacy: estimate.value }));
  }
  return answered(estimate, problems);
}

export interface ChangeRatio extends RatioLimits {
  /** Standard error of the logarithm of the ratio, the overdispersion in it; 0 where all were infested at all looks. */
  readonly logStandardError: number;
  readonly method: "henderson-tilton-poisson" | "henderson-tilton-shares" | "henderson-tilton-shares-score";
  /** Bees or colonies examined; null for counts of mites. */
  readonly n: number | null;
}

/**
 * (Ta/Tb)·(Cb/Ca) with its limits as they come: how the change in the treated compares with that in the untreated.
 *
 * @returns ChangeRatio; refusals and models as for `hendersonTilton`
 * @throws DomainError as for `hendersonTilton`
 * @source Henderson & Tilton 1955; limits by the delta method
 *
 * @example
 * changeRatio({ kind: "counts", treated: { before: { mites: 300 }, after: { mites: 15 } }, control: { before: { mites: 250 }, after: { mites: 300 } } }).value.logStandardError  // → 0.27808871486
 */
export function changeRatio(trial: HendersonTiltonTrial): Result<ChangeRatio> {
  const { level = 0.95 } = trial;
  ensure(level > 0 && level < 1, "level", level, "in (0, 1)");
  if (trial.control === null) return blocked(efficacyProblem("no-comparator", "blocked", "control", {}));
  const looks = trial.kind === "counts" ? countLooks(trial) : shareLooks(trial);
  if (!looks.ok) return looks;
  const { cells, factor, method, n } = looks.value;

  const empty = cells.find(({ group, events }) => events === 0 && group !== "treated.after");
  if (empty) return blocked(efficacyProblem("efficacy-undefined", "blocked", empty.group, { group: empty.group }));
  const halfAdded = cells.some(({ events }) => events === 0);
  const half = halfAdded ? 0.5 : 0;
  const rate = (group: string, added: number) => {
    const cell = cells.find((each) => each.group === group) as Cell;
    return (cell.events + added) / (cell.of + (cell.isShare ? added : 0));
  };
  const ratio = (added: number) =>
    (rate("treated.after", added) / rate("treated.before", added)) *
    (rate("control.before", added) / rate("control.after", added));
  const logVariance = cells.reduce(
    (sum, { events, of, isShare }) => sum + 1 / (events + half) - (isShare ? 1 / (of + half) : 0),
    0,
  );
  const logStandardError = Math.sqrt(factor * logVariance);
  const closed = trial.kind === "shares" && logVariance === 0;
  const width = closed ? scoreWidth(trial, level) : twoSidedQuantile(level) * logStandardError;
  const high = ratio(half) * Math.exp(width);
  ensure(high < Infinity, "overdispersion", factor, "small enough for limits that can be told");
  return answered(
    {
      ratio: ratio(0),
      low: ratio(half) * Math.exp(-width),
      high,
      halfAdded,
      logStandardError,
      method: closed ? "henderson-tilton-shares-score" : method,
      n,
    },
    looks.problems,
  );
}

/**
 * Half width on the logarithmic scale when all were infested at all four looks: Koopman's for either group, joined as
 * the squares of two independent errors.
 */
function scoreWidth(trial: HendersonTiltonTrial & { readonly kind: "shares" }, level: number): number {
  const groups = [trial.treated, trial.control].filter((each) => each !== null);
  return Math.hypot(
    ...groups.map(({ before, after }) =>
      Math.log(koopmanRatio({ first: after, second: before, level, designEffect: trial.designEffect ?? 1 }).high),
    ),
  );
}

interface Cell {
  readonly group: string;
  readonly events: number;
  readonly of: number;
  readonly isShare: boolean;
}

interface Looks {
  readonly cells: readonly Cell[];
  readonly factor: number;
  readonly method: ChangeRatio["method"];
  readonly n: number | null;
}

function countLooks(trial: HendersonTiltonTrial & { readonly kind: "counts" }): Result<Looks> {
  const { overdispersion } = trial;
  const given = overdispersion === undefined || (overdispersion > 0 && Number.isFinite(overdispersion));
  ensure(given, "overdispersion", overdispersion, "above 0");
  const cells = fourLooks(trial).map(([group, { mites, effort = 1 }]): Cell => {
    ensure(Number.isInteger(mites) && mites >= 0, `${group}.mites`, mites, "a whole number ≥ 0");
    ensure(effort > 0 && Number.isFinite(effort), `${group}.effort`, effort, "above 0");
    return { group, events: mites, of: effort, isShare: false };
  });
  const total = cells.reduce((sum, { events }) => sum + events, 0);
  const problems =
    overdispersion === undefined
      ? [efficacyProblem("overdispersion-not-given", "warned", "overdispersion", { total })]
      : [];
  return answered({ cells, factor: overdispersion ?? 1, method: "henderson-tilton-poisson", n: null }, problems);
}

function shareLooks(trial: HendersonTiltonTrial & { readonly kind: "shares" }): Result<Looks> {
  const { designEffect = 1 } = trial;
  ensure(designEffect >= 1 && Number.isFinite(designEffect), "designEffect", designEffect, "1 or more");
  const looks = fourLooks(trial);
  const troubles = looks.map(([group, share]) => shareProblem(group, share)).filter((each) => each !== null);
  if (troubles.length > 0) return blocked(...troubles);
  const cells = looks.map(
    ([group, { infested, examined }]): Cell => ({ group, events: infested, of: examined, isShare: true }),
  );
  const n = cells.reduce((sum, { of }) => sum + of, 0);
  return answered({ cells, factor: designEffect, method: "henderson-tilton-shares", n });
}

function fourLooks<Look>(trial: {
  readonly treated: BeforeAfter<Look>;
  readonly control: BeforeAfter<Look> | null;
}): readonly (readonly [string, Look])[] {
  const { treated, control } = trial;
  ensure(control !== null, "control", control, "given");
  return [
    ["treated.before", treated.before],
    ["treated.after", treated.after],
    ["control.before", control.before],
    ["control.after", control.after],
  ];
}
