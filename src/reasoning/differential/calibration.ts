/** Whether stated probabilities can be taken at their word: scores, bins, discrimination. */
import { clopperPearsonInterval } from "../../numerics/index.ts";
import { answered, blocked, type Estimate, ensure, problem, type Result } from "../../units/index.ts";
import { type Recalibration, recalibration, recalibrationInTheLarge } from "./recalibration.ts";

/** What was said before, and what turned out; one entry each per case, in the same order. */
export interface Forecasts {
  /** Stated probabilities, 0–1. */
  readonly stated: readonly number[];
  readonly outcomes: readonly boolean[];
}

export interface CalibrationBin {
  /** From 0 on; bins without a case are left out. */
  readonly bin: number;
  readonly n: number;
  readonly meanStated: number;
  /** Share that came true, with Clopper–Pearson's limits. */
  readonly observed: Estimate;
}

export interface Calibration {
  /** Mean of (p − y)²: 0 is perfect, 0.25 is what always saying one half earns. */
  readonly brier: number;
  /** 1 − brier/uncertainty: 0 for always saying the overall share; undefined where all came out alike. */
  readonly brierSkill: Result<number>;
  /** Mean of −ln of the probability given to what happened, probabilities held inside [1e-15, 1 − 1e-15]. */
  readonly logLoss: number;
  /** Cases whose probability was held for the logarithm: without it one certain and wrong word is infinitely bad. */
  readonly held: number;
  /** Mean distance of stated and observed over bins of equal width, each by its cases. */
  readonly expectedError: number;
  /** The same over bins with equal numbers of cases. */
  readonly expectedErrorEqualMass: number;
  /** The largest distance of one bin of equal width. */
  readonly largestError: number;
  /** Murphy's parts over the bins: brier ≈ reliability − resolution + uncertainty, but for the spread within bins. */
  readonly murphy: { readonly reliability: number; readonly resolution: number; readonly uncertainty: number };
  /** Chance that a case that came true was given more than one that did not, ties by half; undefined where all came out alike. */
  readonly areaUnderCurve: Result<number>;
  /** Intercept and slope of the logit; undefined where the outcomes are parted by the stated probability. */
  readonly recalibration: Result<Recalibration>;
  /** Shift of the logit at slope 1; undefined where all came out alike. */
  readonly inTheLarge: Result<number>;
  readonly bins: readonly CalibrationBin[];
}

/** Probabilities are held this far from 0 and 1 before a logarithm is taken. */
export const logClip = 1e-15;

/**
 * Scores of stated probabilities against outcomes.
 *
 * Bins of equal width hold p from i/bins on, 1 in the last; bins of equal mass split the cases in the order of p.
 * With few cases per bin the errors are mostly chance: the limits of the bins show it.
 *
 * @returns Calibration, or `no-forecasts`
 * @throws DomainError for probabilities outside [0, 1], lists of unequal length or bins that are not a whole number ≥ 1
 * @source Brier 1950; Murphy 1973; Cox 1958 (slope and intercept); Hanley & McNeil 1982 (area by ranks)
 *
 * @example
 * calibration({ stated: [0.2, 0.8, 0.6, 0.4], outcomes: [false, true, true, true] }).value.brier  // → 0.15
 * calibration({ stated: [0.2, 0.8, 0.6, 0.4], outcomes: [false, true, true, true] }).value.areaUnderCurve.value  // → 1
 */
export function calibration({
  stated,
  outcomes,
  bins = 10,
  level = 0.95,
}: Forecasts & { readonly bins?: number; readonly level?: number }): Result<Calibration> {
  ensure(stated.length === outcomes.length, "outcomes", outcomes.length, `as many as stated: ${stated.length}`);
  for (const p of stated) ensure(p >= 0 && p <= 1, "stated", p, "in [0, 1]");
  ensure(Number.isInteger(bins) && bins >= 1, "bins", bins, "a whole number of 1 or more");
  const n = stated.length;
  if (n === 0) return blocked(problem("no-forecasts", "blocked", "stated"));
  const cases = stated.map((p, i): Case => ({ p, y: Number(outcomes[i]) }));
  const overall = meanOf(cases, ({ y }) => y);
  const uncertainty = overall * (1 - overall);
  const brier = meanOf(cases, ({ p, y }) => (p - y) ** 2);
  const held = cases.map(({ p, y }): Case => ({ p: Math.min(1 - logClip, Math.max(logClip, p)), y }));
  const wide = equalWidth(cases, bins);
  const gap = (bin: readonly Case[]) => Math.abs(meanOf(bin, ({ p }) => p) - meanOf(bin, ({ y }) => y));
  const weighted = (groups: readonly (readonly Case[])[], of: (bin: readonly Case[]) => number) =>
    groups.reduce((sum, bin) => sum + (bin.length / n) * of(bin), 0);
  const filled = wide.filter((bin) => bin.length > 0);
  const allAlike = uncertainty === 0 ? blocked(problem("outcomes-all-alike", "unknown", "outcomes")) : null;
  return answered({
    brier,
    brierSkill: allAlike ?? answered(1 - brier / uncertainty),
    logLoss: -meanOf(held, ({ p, y }) => (y === 1 ? Math.log(p) : Math.log1p(-p))),
    held: held.filter(({ p }, i) => p !== stated[i]).length,
    expectedError: weighted(filled, gap),
    expectedErrorEqualMass: weighted(equalMass(cases, bins), gap),
    largestError: Math.max(...filled.map(gap)),
    murphy: {
      reliability: weighted(filled, (bin) => gap(bin) ** 2),
      resolution: weighted(filled, (bin) => (meanOf(bin, ({ y }) => y) - overall) ** 2),
      uncertainty,
    },
    areaUnderCurve: allAlike ?? answered(areaByRanks(cases)),
    recalibration: recalibration(held),
    inTheLarge: allAlike ?? recalibrationInTheLarge(held),
    bins: wide.flatMap((each, bin) => (each.length === 0 ? [] : [binOf(each, bin, level)])),
  });
}

/** A stated probability and what came of it, 0 or 1. */
export interface Case {
  readonly p: number;
  readonly y: number;
}

const meanOf = (cases: readonly Case[], of: (each: Case) => number): number =>
  cases.reduce((sum, each) => sum + of(each), 0) / cases.length;

function equalWidth(cases: readonly Case[], bins: number): readonly (readonly Case[])[] {
  const found: Case[][] = Array.from({ length: bins }, () => []);
  for (const each of cases) found[Math.min(Math.floor(each.p * bins), bins - 1)]?.push(each);
  return found;
}

/** The cases in order of p, split so that the first bins hold one more where the number does not divide. */
function equalMass(cases: readonly Case[], bins: number): readonly (readonly Case[])[] {
  const inOrder = [...cases].sort((one, other) => one.p - other.p);
  const [small, more] = [Math.floor(cases.length / bins), cases.length % bins];
  let from = 0;
  return Array.from({ length: Math.min(bins, cases.length) }, (_, bin) => {
    const start = from;
    from += small + Number(bin < more);
    return inOrder.slice(start, from);
  });
}

function binOf(cases: readonly Case[], bin: number, level: number): CalibrationBin {
  const n = cases.length;
  const x = cases.filter(({ y }) => y === 1).length;
  const { low, high } = clopperPearsonInterval({ x, n, level });
  return {
    bin,
    n,
    meanStated: meanOf(cases, ({ p }) => p),
    observed: {
      value: x / n,
      low,
      high,
      level,
      interval: "confidence",
      method: "clopper-pearson",
      rule: "DX203",
      n,
    },
  };
}

/** Mann and Whitney's count over all pairs, from the ranks of the cases that came true; ties share their ranks. */
function areaByRanks(cases: readonly Case[]): number {
  const inOrder = [...cases].sort((one, other) => one.p - other.p);
  const trues = cases.filter(({ y }) => y === 1).length;
  let ranks = 0;
  for (let from = 0; from < inOrder.length; ) {
    let to = from;
    while (to < inOrder.length && inOrder[to]?.p === inOrder[from]?.p) to += 1;
    const shared = (from + 1 + to) / 2;
    ranks += shared * inOrder.slice(from, to).filter(({ y }) => y === 1).length;
    from = to;
  }
  return (ranks - (trues * (trues + 1)) / 2) / (trues * (cases.length - trues));
}
