/** What to believe about the share infested, given a prior and a test whose errors are known or believed. */
import { type BetaShape, betaRule, gaussLegendreRule, root } from "../../numerics/index.ts";
import { answered, blocked, ensure, type Problem, type Result } from "../../units/index.ts";
import { benchProblem } from "./problems.ts";
import { countsTrouble } from "./true-prevalence.ts";

export interface PosteriorRequest {
  readonly positive: number;
  readonly examined: number;
  /** Prior of the prevalence; flat when not given. Shapes of 0.05 or more. */
  readonly prevalence?: BetaShape;
  /** Probability that an infested one tests positive: a number when known, else a beta prior. */
  readonly sensitivity: number | BetaShape;
  /** Probability that one not infested tests negative: a number when known, else a beta prior. */
  readonly specificity: number | BetaShape;
  /** Probability content of the credible interval; 0.95 when not given. */
  readonly level?: number;
  /** Prevalences for which the chance to lie above is wanted. */
  readonly thresholds?: readonly number[];
  /** Fixes the work: nodes for each error of the test, points along the prevalence. Else both grow until they agree. */
  readonly work?: { readonly nodes: number; readonly points: number };
}

/** Proportions; equal tails. */
export interface PrevalencePosterior {
  readonly mean: number;
  readonly standardDeviation: number;
  readonly low: number;
  readonly median: number;
  readonly high: number;
  readonly level: number;
  /** P(prevalence > threshold), in the order asked. */
  readonly above: readonly { readonly threshold: number; readonly probability: number }[];
  /** Nodes used for each error of the test: 1 where it is known. */
  readonly nodes: number;
}

/** Between two rounds of work every figure must agree to this. */
const agreement = 1e-7;

/**
 * Posterior of the true prevalence: positives ~ binomial(n, p·Se + (1 − p)(1 − Sp)), beta priors, all independent.
 *
 * Integrated, not drawn: Gauss rules of the beta priors for Se and Sp, Gauss–Legendre panels in s for the prevalence
 * p = 1/(1 + exp(−π sinh s)), which takes priors that are infinite at 0 or 1. The data also speak about Se and Sp;
 * a vague prior of Sp with few positives leaves the prior of the prevalence in charge.
 *
 * @returns PrevalencePosterior; or `nothing-examined`, `positives-exceed-examined`, `test-no-better-than-chance` (by
 *   the means of what is believed), `posterior-did-not-settle`
 * @throws DomainError for numbers outside their range
 * @source Joseph, Gyorkos & Coupal 1995, American Journal of Epidemiology 141:263–272 (model); own integration
 *
 * @example
 * prevalencePosterior({ positive: 0, examined: 9, sensitivity: 1, specificity: 1 }).value.mean  // → 0.0909090909
 */
export function prevalencePosterior(request: PosteriorRequest): Result<PrevalencePosterior> {
  check(request);
  const trouble = countsTrouble(request) ?? chanceTrouble(request);
  if (trouble) return blocked(trouble);
  if (request.work) return answered(posterior(request, request.work));
  const figures = (each: PrevalencePosterior) => [
    each.mean,
    each.standardDeviation,
    each.low,
    each.median,
    each.high,
    ...each.above.map(({ probability }) => probability),
  ];
  let before = posterior(request, { nodes: 12, points: 80 });
  for (const nodes of [24, 48, 96]) {
    const now = posterior(request, { nodes, points: 5 * nodes });
    const old = figures(before);
    if (figures(now).every((figure, i) => Math.abs(figure - (old[i] as number)) <= agreement)) return answered(now);
    before = now;
  }
  return blocked(benchProblem("posterior-did-not-settle", "blocked", null, { nodes: before.nodes }));
}

/** A test known, or believed on average, to be no better than chance. */
function chanceTrouble(request: PosteriorRequest): Problem | null {
  const mean = (error: number | BetaShape) => (typeof error === "number" ? error : error.a / (error.a + error.b));
  const [sensitivity, specificity] = [mean(request.sensitivity), mean(request.specificity)];
  if (sensitivity + specificity > 1) return null;
  return benchProblem("test-no-better-than-chance", "blocked", "sensitivity", { sensitivity, specificity });
}

/** One round with a given amount of work. */
function posterior(request: PosteriorRequest, { nodes, points }: NonNullable<PosteriorRequest["work"]>) {
  const { level = 0.95, thresholds = [] } = request;
  const density = densityAlong(request, nodes);
  const [low, high] = support(densityAlong(request, Math.min(nodes, 8)).log);
  const width = (high - low) / Math.ceil(points / 10);
  const rule = gaussLegendreRule(10);
  const top = peak(density.log, [low, high]);
  const panel = (from: number, to: number) =>
    rule.nodes.map((node, i) => {
      const s = (from + to) / 2 + (node * (to - from)) / 2;
      return {
        p: share(s),
        mass: (((rule.weights[i] as number) * (to - from)) / 2) * Math.exp(density.log(s) - top),
      };
    });
  const panels = Array.from({ length: Math.ceil(points / 10) }, (_, i) =>
    panel(low + i * width, low + (i + 1) * width),
  );
  const masses = panels.map((each) => each.reduce((sum, { mass }) => sum + mass, 0));
  const whole = masses.reduce((sum, mass) => sum + mass, 0);
  const all = panels.flat();
  const mean = all.reduce((sum, { p, mass }) => sum + p * mass, 0) / whole;
  const variance = all.reduce((sum, { p, mass }) => sum + (p - mean) ** 2 * mass, 0) / whole;
  const starts = masses.map((_, i) => masses.slice(0, i).reduce((sum, mass) => sum + mass, 0));
  /** Share of the mass below s, which lies in the panel of that index. */
  const within = (s: number, index: number): number => {
    const rest = panel(low + index * width, s).reduce((sum, { mass }) => sum + mass, 0);
    return ((starts[index] as number) + rest) / whole;
  };
  const below = (s: number): number => {
    if (s <= low) return 0;
    return s >= high ? 1 : within(s, Math.min(panels.length - 1, Math.floor((s - low) / width)));
  };
  const quantile = (wanted: number): number => {
    const index = starts.findLastIndex((start) => start <= wanted * whole);
    const [from, to] = [low + index * width, low + (index + 1) * width];
    return share(root({ f: (s) => within(s, index) - wanted, low: from, high: to, tolerance: 1e-12 }));
  };
  return {
    mean,
    standardDeviation: Math.sqrt(variance),
    low: quantile((1 - level) / 2),
    median: quantile(0.5),
    high: quantile((1 + level) / 2),
    level,
    above: thresholds.map((threshold) => ({ threshold, probability: 1 - below(placeOf(threshold)) })),
    nodes: density.nodes,
  };
}

/** ln of the posterior density in s, up to a constant. */
function densityAlong(request: PosteriorRequest, nodes: number) {
  const { positive: x, examined: n, prevalence: { a, b } = { a: 1, b: 1 }, sensitivity, specificity } = request;
  // A node with less weight than the rounding of the sum cannot be seen in it.
  const rule = (error: number | BetaShape): readonly { readonly node: number; readonly weight: number }[] => {
    if (typeof error === "number") return [{ node: error, weight: 1 }];
    const { nodes: places, weights } = betaRule({ ...error, points: nodes });
    return places.map((node, i) => ({ node, weight: weights[i] as number })).filter(({ weight }) => weight > 1e-17);
  };
  const [found, cleared] = [rule(sensitivity), rule(specificity)];
  const times = (count: number, value: number) => (count === 0 ? 0 : count * Math.log(value));
  const best = times(x, x / n) + times(n - x, 1 - x / n);
  const log = (s: number): number => {
    const [p, q] = [share(s), share(-s)];
    // Relative to the largest term met so far: data far from the priors would else sum to 0.
    let [sum, largest] = [0, -Infinity];
    for (const { node: se, weight } of found) {
      for (const { node: sp, weight: other } of cleared) {
        const fit = times(x, p * se + q * (1 - sp)) + times(n - x, p * (1 - se) + q * sp) - best;
        if (fit > largest) {
          sum *= Math.exp(largest - fit);
          largest = fit;
        }
        sum += weight * other * Math.exp(fit - largest);
      }
    }
    return a * Math.log(p) + b * Math.log(q) + Math.log(Math.cosh(s)) + Math.log(sum) + largest;
  };
  return { log, nodes: typeof sensitivity === "number" && typeof specificity === "number" ? 1 : nodes };
}

/** Prevalence at s; 1 − prevalence is that at −s. */
const share = (s: number): number => 1 / (1 + Math.exp(-Math.PI * Math.sinh(s)));
const placeOf = (p: number): number => Math.asinh(Math.log(p / (1 - p)) / Math.PI);

/** Beyond this p or 1 − p is no double any more. */
const edge = 6.1;
const steps = 300;

/** Where the density is not below e^−50 of its peak, by looking closer three times. */
function support(log: (s: number) => number): readonly [number, number] {
  let range: readonly [number, number] = [-edge, edge];
  for (let round = 0; round < 3; round += 1) {
    const step = (range[1] - range[0]) / steps;
    const places = Array.from({ length: steps + 1 }, (_, i) => (range[0] as number) + i * step);
    const values = places.map(log);
    const top = Math.max(...values);
    const within = places.filter((_, i) => (values[i] as number) > top - 50);
    range = [
      Math.max(range[0], (within[0] as number) - step),
      Math.min(range[1], (within[within.length - 1] as number) + step),
    ];
  }
  return range;
}

function peak(log: (s: number) => number, [low, high]: readonly [number, number]): number {
  return Math.max(...Array.from({ length: 51 }, (_, i) => log(low + ((high - low) * i) / 50)));
}

function check(request: PosteriorRequest): void {
  const { prevalence = { a: 1, b: 1 }, sensitivity, specificity, level = 0.95, thresholds = [], work } = request;
  ensure(level > 0 && level < 1, "level", level, "in (0, 1)");
  for (const shape of [prevalence.a, prevalence.b]) {
    ensure(shape >= 0.05 && shape < Infinity, "prevalence", shape, "shapes of 0.05 or more");
  }
  for (const [name, error] of Object.entries({ sensitivity, specificity })) {
    if (typeof error === "number") ensure(error > 0 && error <= 1, name, error, "in (0, 1]");
  }
  for (const each of thresholds) ensure(each >= 0 && each <= 1, "thresholds", each, "in [0, 1]");
  for (const [name, value] of Object.entries(work ?? {})) {
    ensure(Number.isInteger(value) && value >= 1 && value <= mostWork, `work.${name}`, value, `from 1 to ${mostWork}`);
  }
}

/** Nodes or points beyond which nothing is gained. */
const mostWork = 10_000;
