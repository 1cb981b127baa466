/** How a share depends on covariates when units of one group are alike: logistic regression with a random intercept. */
import { cholesky, gaussHermiteRule, normalUpperQuantile, type QuadratureRule } from "../../numerics/index.ts";
import { answered, blocked, type Estimate, ensure, type Problem, type Result } from "../../units/index.ts";
import { type GroupRows, groupLikelihood, type Slopes, zeroSlopes } from "./group-likelihood.ts";
import { surveillanceProblem } from "./problems.ts";

export interface GroupedCount {
  readonly positive: number;
  readonly examined: number;
  /** Herd, apiary or colony: what its rows share. */
  readonly group: string;
  /** One number for each coefficient, the same in every row; a 1 for the intercept is not put in by itself. */
  readonly covariates: readonly number[];
}

interface CoefficientFit {
  /** On the logit scale, in the order of the covariates, with limits by the normal curve. */
  readonly coefficients: readonly Estimate[];
  readonly standardErrors: readonly number[];
  /** Standard deviation of the intercepts between groups, on the logit scale. */
  readonly sigma: number;
  readonly logLikelihood: number;
  /** Log-likelihood without any difference between groups. */
  readonly logLikelihoodPlain: number;
  readonly rounds: number;
  /** Largest slope of the log-likelihood left. */
  readonly slopeLeft: number;
}

export type RandomInterceptFit =
  | (CoefficientFit & { readonly kind: "spread"; readonly seLogSigma: number })
  /** The spread is likeliest at 0: the figures are those of plain logistic regression, and σ has no standard error. */
  | (CoefficientFit & { readonly kind: "no-spread"; readonly sigma: 0 });

/** A logit this far out is no longer told from 0 or 1. */
const farthestLogit = 25;
/** ln σ outside these: groups differ no more than chance, or each is all or none. */
const sigmaEnds = { least: -7, most: 4 } as const;
const mostRounds = 40;
/** A log-likelihood that moves by this much with even steps was not yet integrated by the nodes. */
const quadratureShows = 1e-6;

/**
 * Maximum-likelihood fit of logit(share) = covariates·β + σ·z, z standard normal for each group.
 *
 * The integral over z is taken by adaptive Gauss–Hermite quadrature (25 nodes unless asked otherwise; where they leave an
 * error or do not settle, by even steps until nothing is left); slopes and curvature by the same places, so the search is
 * Newton's. Coefficients are those of a unit in a given group. Where groups differ no more than chance σ is likeliest at
 * 0: the answer is then plain logistic regression, with a warning. A search that does not settle is refused.
 *
 * @returns the fit, with the warning `groups-no-more-than-chance` where it is the plain one; or `too-few-groups`,
 *   `covariates-redundant`, `covariates-separate`, `one-unit-a-group`, `groups-all-or-none`, `fit-did-not-settle`
 * @throws DomainError for counts that are not whole, positives above examined, rows of unequal length, or a covariate that is not finite
 * @source adaptive quadrature: Pinheiro & Bates 1995, Journal of Computational and Graphical Statistics 4:12–35; curvature: Louis 1982, Journal of the Royal Statistical Society B 44:226–233 (both from memory)
 *
 * @example
 * logisticRandomIntercept([{ positive: 1, examined: 20, group: "a", covariates: [1] }, { positive: 9, examined: 20, group: "b", covariates: [1] }, { positive: 4, examined: 20, group: "c", covariates: [1] }]).value.sigma > 0.5  // → true
 */
export function logisticRandomIntercept(
  rows: readonly GroupedCount[],
  { nodes = 25, level = 0.95 }: { readonly nodes?: number; readonly level?: number } = {},
): Result<RandomInterceptFit> {
  ensure(level > 0 && level < 1, "level", level, "in (0, 1)");
  const size = rows[0]?.covariates.length ?? 0;
  ensure(size >= 1, "covariates", size, "at least one");
  checkRows(rows, size);
  const groups = gathered(rows.filter(({ examined }) => examined > 0));
  if (groups.length < 2) {
    return blocked(surveillanceProblem("too-few-groups", "blocked", "rows", { groups: groups.length }));
  }
  // With one unit from each nothing tells a spread between groups from chance.
  if (groups.every((group) => group.reduce((sum, each) => sum + each.examined, 0) === 1)) {
    return blocked(surveillanceProblem("one-unit-a-group", "blocked", "rows", { groups: groups.length }));
  }
  const plain = plainFit(groups, size);
  if (!plain.ok) return plain;

  const slots = { groups: groups.length };
  const [flat, full] = [
    surveillanceProblem("groups-no-more-than-chance", "warned", "rows", slots),
    surveillanceProblem("groups-all-or-none", "blocked", "rows", slots),
  ];
  const off = (point: readonly number[]) => {
    const logSigma = point[size] as number;
    if (logSigma < sigmaEnds.least) return flat;
    return logSigma > sigmaEnds.most ? full : null;
  };
  const slopesBy = (rule: QuadratureRule | "even") => (point: readonly number[]) => {
    const total = zeroSlopes(size + 1);
    for (const group of groups) groupLikelihood(group, { point, rule, total });
    return total;
  };
  const start = [...plain.value.point, -0.5];
  let fit = climbed(slopesBy(gaussHermiteRule(nodes)), start, off);
  // Groups without a positive have a lopsided integrand, which few nodes miss: even steps do not.
  const evenly = slopesBy("even");
  const shows = fit.ok
    ? Math.abs(evenly(fit.value.point).value - fit.value.at.value) >= quadratureShows
    : fit.problems[0] !== flat;
  if (shows) fit = climbed(evenly, fit.ok ? fit.value.point : start, off);
  const examined = rows.reduce((sum, each) => sum + each.examined, 0);
  const logLikelihoodPlain = plain.value.at.value;
  if (!fit.ok && fit.problems[0] === flat) {
    const told = withErrors(plain.value, { size, level, examined, rule: "SV168" });
    if (!told.ok) return told;
    const { standardErrors, ...shared } = told.value;
    return answered({ kind: "no-spread", sigma: 0, ...shared, standardErrors, logLikelihoodPlain }, [flat]);
  }
  if (!fit.ok) return fit;
  const told = withErrors(fit.value, { size, level, examined, rule: "SV166" });
  if (!told.ok) return told;
  const { standardErrors, ...shared } = told.value;
  return answered({
    kind: "spread",
    sigma: Math.exp(fit.value.point[size] as number),
    seLogSigma: standardErrors[size] as number,
    ...shared,
    standardErrors: standardErrors.slice(0, size),
    logLikelihoodPlain,
  });
}

/** What a climb tells of its coefficients; standard errors of every parameter, from the curvature at the top. */
function withErrors(
  { point, at, rounds }: Climb,
  told: { readonly size: number; readonly level: number; readonly examined: number; readonly rule: string },
): Result<Omit<CoefficientFit, "sigma" | "logLikelihoodPlain">> {
  const { size, level, examined, rule } = told;
  const information = cholesky(at.curvature.map((row) => row.map((each) => -each)));
  if (!information.isPositiveDefinite) return blocked(unsettled(rounds));
  const standardErrors = information.inverseDiagonal().map(Math.sqrt);
  const reach = normalUpperQuantile((1 - level) / 2);
  const coefficients = point.slice(0, size).map((value, i): Estimate => {
    const half = reach * (standardErrors[i] as number);
    return {
      value,
      low: value - half,
      high: value + half,
      level,
      interval: "confidence",
      method: "wald",
      rule,
      n: examined,
    };
  });
  const slopeLeft = Math.max(...at.slope.map(Math.abs));
  return answered({ coefficients, standardErrors, logLikelihood: at.value, rounds, slopeLeft });
}

function checkRows(rows: readonly GroupedCount[], size: number): void {
  for (const { positive, examined, covariates } of rows) {
    ensure(Number.isInteger(examined) && examined >= 0, "examined", examined, "a whole number ≥ 0");
    ensure(Number.isInteger(positive) && positive >= 0 && positive <= examined, "positive", positive, "0 to examined");
    const fits = covariates.length === size && covariates.every(Number.isFinite);
    ensure(fits, "covariates", covariates, `${size} finite numbers`);
  }
}

function gathered(rows: readonly GroupedCount[]): readonly GroupRows[] {
  const groups = new Map<string, GroupedCount[]>();
  for (const row of rows) groups.set(row.group, [...(groups.get(row.group) ?? []), row]);
  return [...groups.values()];
}

interface Climb {
  readonly point: readonly number[];
  readonly at: Slopes;
  readonly rounds: number;
}

/** The fit without random intercepts: where to start, and where separation shows. */
function plainFit(groups: readonly GroupRows[], size: number): Result<Climb> {
  const slopesAt = (point: readonly number[]): Slopes => {
    const total = zeroSlopes(size);
    for (const group of groups) groupLikelihood(group, { point, rule: null, total });
    return total;
  };
  const start = new Array<number>(size).fill(0);
  if (!cholesky(slopesAt(start).curvature.map((row) => row.map((each) => -each))).isPositiveDefinite) {
    return blocked(surveillanceProblem("covariates-redundant", "blocked", "rows", { covariates: size }));
  }
  const rows = groups.flat();
  return climbed(slopesAt, start, (point) => {
    const logits = rows.map(({ covariates }) => covariates.reduce((sum, x, j) => sum + x * (point[j] as number), 0));
    if (Math.max(...logits.map(Math.abs)) <= farthestLogit) return null;
    const sizes = point.map(Math.abs);
    const covariate = sizes.indexOf(Math.max(...sizes)) + 1;
    return surveillanceProblem("covariates-separate", "blocked", "rows", { covariate });
  });
}

/** Newton's search for a maximum, held back where the curvature or the step is bad; `off` says where to stop. */
function climbed(
  slopesAt: (point: readonly number[]) => Slopes,
  start: readonly number[],
  off: (point: readonly number[]) => Problem | null,
): Result<Climb> {
  let point = start;
  let at = slopesAt(point);
  for (let rounds = 1; rounds <= mostRounds; rounds += 1) {
    const step = newtonStep(at);
    const slopeLeft = Math.max(...at.slope.map(Math.abs));
    const moved = Math.max(...step.map(Math.abs));
    const trouble = off(point);
    if (trouble) return blocked(trouble);
    if (slopeLeft < 1e-7 && moved < 1e-8) return answered({ point, at, rounds });
    let share = Math.min(1, 3 / moved);
    let next = at;
    let there = point;
    let climbs = false;
    for (let halving = 0; halving < 40 && !climbs; halving += 1, share /= 2) {
      there = point.map((each, i) => each + share * (step[i] as number));
      next = slopesAt(there);
      // Value and slopes are sums over nodes that move with the point, so near the top they part by the rule's error:
      // a step that loses no more than such an error but brings the slopes down is a step towards the top.
      const flatter = Math.max(...next.slope.map(Math.abs)) < 0.9 * slopeLeft;
      const lost = (at.value - next.value) / Math.abs(at.value);
      climbs = lost <= 1e-12 || (flatter && lost <= 1e-4);
    }
    // No step climbs and the slope is not 0.
    if (!climbs) return blocked(unsettled(rounds));
    [point, at] = [there, next];
  }
  return blocked(unsettled(mostRounds));
}

const unsettled = (rounds: number): Problem => surveillanceProblem("fit-did-not-settle", "blocked", "rows", { rounds });

/** The step to the top of the local parabola; where there is none, the curvature is made steeper until there is. */
function newtonStep({ slope, curvature }: Slopes): readonly number[] {
  const widest = Math.max(...curvature.map((row, i) => Math.abs(row[i] as number)), 1e-12);
  for (let ridge = 0; ; ridge = ridge === 0 ? 1e-3 * widest : 10 * ridge) {
    const steeper = curvature.map((row, i) => row.map((each, j) => (i === j ? ridge : 0) - each));
    const factor = cholesky(steeper);
    if (factor.isPositiveDefinite) return factor.solve(slope);
  }
}
