/** Log-likelihood, slopes and curvature of one group's rows, its random intercept integrated out. */
import { logChoose, type QuadratureRule } from "../../numerics/index.ts";

export type GroupRows = readonly {
  readonly positive: number;
  readonly examined: number;
  readonly covariates: readonly number[];
}[];

/** Sums over groups; `slope` and `curvature` by the coefficients and, when intercepts are random, by ln σ as the last. */
export interface Slopes {
  value: number;
  readonly slope: number[];
  readonly curvature: number[][];
}

/** Slopes of nothing, to add to. */
export const zeroSlopes = (size: number): Slopes => ({
  value: 0,
  slope: new Array<number>(size).fill(0),
  curvature: Array.from({ length: size }, () => new Array<number>(size).fill(0)),
});

export interface GroupTask {
  /** Coefficients, and ln σ when there is a rule. */
  readonly point: readonly number[];
  /** A Gauss–Hermite rule; "even" for even steps from the mode until nothing is left; null for no random intercept. */
  readonly rule: QuadratureRule | "even" | null;
  /** What is added to. */
  readonly total: Slopes;
}

/**
 * Adds one group to `total`.
 *
 * With nodes z_k about the mode of the integrand, Gauss–Hermite's or even, the slope of the integral's logarithm is the mean of the slopes of the
 * integrand's logarithm, and its curvature the mean of theirs plus the variance of the slopes.
 */
export function groupLikelihood(rows: GroupRows, { point, rule, total }: GroupTask): void {
  const size = rows[0]?.covariates.length ?? 0;
  const fixed = rows.map(({ covariates }) => covariates.reduce((sum, x, j) => sum + x * (point[j] as number), 0));
  const ways = rows.reduce((sum, { positive, examined }) => sum + logChoose(examined, positive), 0);
  if (!rule) {
    const at = integrandAt(rows, { fixed, shift: 0 });
    total.value += ways + at.value;
    addTo(total, [slopesOf(rows, at, { size, perLogSigma: null })], [1]);
    return;
  }
  const sigma = Math.exp(point[size] as number);
  const { mode, spread } = peak(rows, { fixed, sigma });
  const placed = (z: number, logWeight: number): Place => {
    const at = integrandAt(rows, { fixed, shift: sigma * z });
    return { z, at, log: at.value - (z * z) / 2 + logWeight };
  };
  const step = Math.min(spread / 4, logitStep / sigma);
  const evenWeight = Math.log(step / spread / Math.SQRT2);
  const places =
    rule === "even"
      ? evenPlaces((z) => placed(z, evenWeight), { mode, step })
      : rule.nodes.map((node, k) =>
          placed(mode + Math.SQRT2 * spread * node, node * node + Math.log(rule.weights[k] as number)),
        );
  const logs = places.map(({ log }) => log);
  const parts = places.map(({ z, at }) => slopesOf(rows, at, { size, perLogSigma: sigma * z }));
  const largest = Math.max(...logs);
  const weights = logs.map((each) => Math.exp(each - largest));
  const sum = weights.reduce((all, each) => all + each, 0);
  total.value += ways + largest + Math.log((sum * spread) / Math.sqrt(Math.PI));
  addTo(
    total,
    parts,
    weights.map((each) => each / sum),
  );
}

/** A place on the line of intercepts, with the logarithm of the integrand and of the place's weight. */
interface Place {
  readonly z: number;
  readonly at: Integrand;
  readonly log: number;
}

/**
 * Longest even step in the logit. The integrand of a group without a positive keeps its size up to π/2 off the line of
 * logits, so what such steps lose is about e^(−π²/0.3), 1e-14.
 */
const logitStep = 0.3;
/** A place this far below the mode, on the scale of logarithms, adds nothing that a double holds. */
const nothingLeft = 45;

/** From the mode outwards on both sides: the logarithm of the integrand is concave, so what fell away stays away. */
function evenPlaces(
  placed: (z: number) => Place,
  { mode, step }: { readonly mode: number; readonly step: number },
): readonly Place[] {
  const top = placed(mode);
  const places = [top];
  for (const direction of [-1, 1]) {
    for (let steps = 1; ; steps += 1) {
      const place = placed(mode + direction * steps * step);
      if (!(place.log > top.log - nothingLeft)) break;
      places.push(place);
    }
  }
  return places;
}

interface Integrand {
  readonly value: number;
  /** positive − expected, and the binomial variance, row by row. */
  readonly residuals: readonly number[];
  readonly variances: readonly number[];
}

function integrandAt(
  rows: GroupRows,
  { fixed, shift }: { readonly fixed: readonly number[]; readonly shift: number },
): Integrand {
  let value = 0;
  const residuals: number[] = [];
  const variances: number[] = [];
  for (const [i, { positive, examined }] of rows.entries()) {
    const logit = (fixed[i] as number) + shift;
    const small = Math.exp(-Math.abs(logit));
    const share = logit >= 0 ? 1 / (1 + small) : small / (1 + small);
    value += positive * logit - examined * (Math.max(logit, 0) + Math.log1p(small));
    residuals.push(positive - examined * share);
    variances.push((examined * small) / (1 + small) ** 2);
  }
  return { value, residuals, variances };
}

/** Where the integrand over z is highest, and the spread of the normal curve that fits it there. */
function peak(
  rows: GroupRows,
  { fixed, sigma }: { readonly fixed: readonly number[]; readonly sigma: number },
): { readonly mode: number; readonly spread: number } {
  let mode = 0;
  let bend = 1;
  let [low, high] = [-Infinity, Infinity];
  for (let round = 0; round < 100; round += 1) {
    const { residuals, variances } = integrandAt(rows, { fixed, shift: sigma * mode });
    const slope = sigma * residuals.reduce((sum, each) => sum + each, 0) - mode;
    bend = 1 + sigma * sigma * variances.reduce((sum, each) => sum + each, 0);
    // The slope falls all the way, so each place bounds the mode. Where the bend leaps, as for a large group without a
    // positive or one of many bees, a full step can go to and fro for ever: one that leaves the bounds is halved.
    if (slope > 0) low = mode;
    else high = mode;
    const full = Math.max(-2, Math.min(2, slope / bend));
    if (Math.abs(full) < 1e-12) break;
    const wanted = mode + full;
    mode = wanted > low && wanted < high ? wanted : (low + high) / 2;
  }
  return { mode, spread: 1 / Math.sqrt(bend) };
}

interface Part {
  readonly slope: readonly number[];
  readonly curvature: readonly (readonly number[])[];
}

/** Slopes and curvature of the integrand's logarithm; `perLogSigma` is what the logit gains per ln σ, σ·z. */
function slopesOf(
  rows: GroupRows,
  { residuals, variances }: Integrand,
  { size, perLogSigma }: { readonly size: number; readonly perLogSigma: number | null },
): Part {
  const all = perLogSigma === null ? size : size + 1;
  const { slope, curvature } = zeroSlopes(all);
  for (const [i, { covariates }] of rows.entries()) {
    const moves = perLogSigma === null ? covariates : [...covariates, perLogSigma];
    for (let a = 0; a < all; a += 1) {
      const move = moves[a] as number;
      if (move === 0) continue;
      slope[a] = (slope[a] as number) + move * (residuals[i] as number);
      const row = curvature[a] as number[];
      for (let b = 0; b < all; b += 1)
        row[b] = (row[b] as number) - move * (moves[b] as number) * (variances[i] as number);
    }
  }
  // The logit bends in ln σ itself: its second derivative is σ·z again.
  if (perLogSigma !== null)
    (curvature[size] as number[])[size] = (curvature[size]?.[size] as number) + (slope[size] as number);
  return { slope, curvature };
}

function addTo(total: Slopes, parts: readonly Part[], weights: readonly number[]): void {
  const size = total.slope.length;
  const mean = new Array<number>(size).fill(0);
  for (const [k, { slope }] of parts.entries()) {
    for (let a = 0; a < size; a += 1) mean[a] = (mean[a] as number) + (weights[k] as number) * (slope[a] as number);
  }
  for (let a = 0; a < size; a += 1) total.slope[a] = (total.slope[a] as number) + (mean[a] as number);
  for (const [k, { slope, curvature }] of parts.entries()) {
    for (let a = 0; a < size; a += 1) {
      const row = total.curvature[a] as number[];
      const ahead = (slope[a] as number) - (mean[a] as number);
      for (let b = 0; b < size; b += 1) {
        const spread = ahead * ((slope[b] as number) - (mean[b] as number));
        row[b] = (row[b] as number) + (weights[k] as number) * ((curvature[a]?.[b] as number) + spread);
      }
    }
  }
}
