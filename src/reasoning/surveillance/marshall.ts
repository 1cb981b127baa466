/** Rates of small areas drawn towards the mean of all, or of their neighbours, as far as chance explains them. */
import { answered, blocked, ensure, type Problem, type Result } from "../../units/index.ts";
import { surveillanceProblem } from "./problems.ts";

export interface AreaCount {
  /** Cases (infested colonies, dead colonies); whole, ≥ 0. */
  readonly cases: number;
  /** Colonies or colony-years at risk, > 0. */
  readonly population: number;
}

export interface NeighbouredArea extends AreaCount {
  /** Places of the neighbours in the list, counted from 0; the area itself need not stand among them. */
  readonly neighbours: readonly number[];
}

export interface GlobalSmoothing {
  /** Cases over population, all areas together. */
  readonly mean: number;
  /** Variance of the rates between areas, weighted by population. */
  readonly variance: number;
  /** What of it chance does not explain, as it comes: below 0 when chance explains more than all. */
  readonly excessVariance: number;
  readonly rates: readonly number[];
  /** One for each area: m + A/(A + m/n)·(rate − m), A no less than 0. */
  readonly smoothed: readonly number[];
}

/**
 * Marshall's global empirical Bayes rates.
 *
 * Model: true rates vary about one mean with variance A; counts are Poisson. Method of moments, nothing assumed of the
 * shape. A below 0 is taken as 0, every rate becomes the mean, and the answer says so.
 *
 * @returns rates, or `too-few-areas`, `area-without-population`, `nothing-counted`
 * @throws DomainError for cases that are not whole or ≥ 0
 * @source Marshall 1991, Applied Statistics 40:283–294
 *
 * @example
 * marshallGlobal([{ cases: 1, population: 100 }, { cases: 9, population: 100 }, { cases: 5, population: 50 }]).value.smoothed[0]  // → 0.0292307692
 */
export function marshallGlobal(areas: readonly AreaCount[]): Result<GlobalSmoothing> {
  const trouble = areaTrouble(areas);
  if (trouble) return blocked(trouble);
  const rates = areas.map(({ cases, population }) => cases / population);
  const all = moments(areas, rates, () => null);
  const smoothed = areas.map((area, i) => drawn(all, area, rates[i] as number));
  const { mean, variance, excessVariance } = all;
  const problems =
    excessVariance <= 0
      ? [surveillanceProblem("areas-no-more-than-chance", "noted", "areas", { areas: areas.length })]
      : [];
  return answered({ mean, variance, excessVariance, rates, smoothed }, problems);
}

export interface LocalSmoothing {
  /** Rate of each area with its neighbours. */
  readonly means: readonly number[];
  /** Squares about the mean of the area's own neighbourhood. */
  readonly byFocalMean: readonly number[];
  /** Squares about the mean of each member's own neighbourhood. */
  readonly byOwnMeans: readonly number[];
}

/**
 * Marshall's local empirical Bayes rates: the same within each area and its neighbours.
 *
 * The local variance has two published readings, both given. An area without neighbours keeps its own rate; where mean
 * and variance of a neighbourhood are both 0 the answer is 0.
 *
 * @returns rates under both readings, or `too-few-areas`, `area-without-population`, `nothing-counted`, `neighbour-unknown`
 * @throws DomainError for cases that are not whole or ≥ 0
 * @source Marshall 1991, Applied Statistics 40:283–294; both readings are in use
 *
 * @example
 * marshallLocal([{ cases: 1, population: 100, neighbours: [1] }, { cases: 9, population: 100, neighbours: [0] }, { cases: 5, population: 50, neighbours: [] }]).value.byFocalMean[2]  // → 0.1
 */
export function marshallLocal(areas: readonly NeighbouredArea[]): Result<LocalSmoothing> {
  const trouble = areaTrouble(areas) ?? neighbourTrouble(areas);
  if (trouble) return blocked(trouble);
  const rates = areas.map(({ cases, population }) => cases / population);
  const groups = areas.map(({ neighbours }, i) => [...new Set([i, ...neighbours])]);
  const means = groups.map((group) => moments(pick(areas, group), pick(rates, group), () => null).mean);
  const smoothed = (centre: (member: number) => number | null) =>
    groups.map((group, i) => {
      const local = moments(pick(areas, group), pick(rates, group), (place) => centre(group[place] as number));
      return drawn(local, areas[i] as AreaCount, rates[i] as number);
    });
  return answered({
    means,
    byFocalMean: smoothed(() => null),
    byOwnMeans: smoothed((member) => means[member] as number),
  });
}

interface Moments {
  readonly mean: number;
  readonly variance: number;
  readonly excessVariance: number;
}

/** Mean, weighted variance about `centre` (the mean where that is null), and what of it chance does not explain. */
function moments(
  areas: readonly AreaCount[],
  rates: readonly number[],
  centre: (place: number) => number | null,
): Moments {
  const population = areas.reduce((sum, each) => sum + each.population, 0);
  const mean = areas.reduce((sum, each) => sum + each.cases, 0) / population;
  const squares = areas.reduce(
    (sum, each, i) => sum + each.population * ((rates[i] as number) - (centre(i) ?? mean)) ** 2,
    0,
  );
  const variance = squares / population;
  return { mean, variance, excessVariance: variance - mean / (population / areas.length) };
}

/** The rate drawn towards the mean. */
function drawn({ mean, excessVariance }: Moments, { population }: AreaCount, rate: number): number {
  const between = Math.max(0, excessVariance);
  const total = between + mean / population;
  return total > 0 ? mean + (between / total) * (rate - mean) : mean;
}

const pick = <T>(list: readonly T[], places: readonly number[]): readonly T[] => places.map((i) => list[i] as T);

/** What stands in the way of any smoothing. Throws for cases that are no counts. */
export function areaTrouble(areas: readonly AreaCount[]): Problem | null {
  for (const { cases } of areas) ensure(Number.isInteger(cases) && cases >= 0, "cases", cases, "a whole number ≥ 0");
  if (areas.length < 2) return surveillanceProblem("too-few-areas", "blocked", "areas", { areas: areas.length });
  const countable = ({ cases, population }: AreaCount) =>
    population > 0 && population < Infinity && (cases / population) ** 2 < Infinity;
  const empty = areas.findIndex((area) => !countable(area));
  if (empty >= 0)
    return surveillanceProblem("area-without-population", "blocked", `areas[${empty}]`, { area: empty + 1 });
  if (areas.every(({ cases }) => cases === 0)) {
    return surveillanceProblem("nothing-counted", "blocked", "areas", { areas: areas.length });
  }
  return null;
}

function neighbourTrouble(areas: readonly NeighbouredArea[]): Problem | null {
  for (const [i, { neighbours }] of areas.entries()) {
    const unknown = neighbours.find((each) => areas[each] === undefined);
    if (unknown !== undefined) {
      const slots = { area: i + 1, neighbour: unknown };
      return surveillanceProblem("neighbour-unknown", "blocked", `areas[${i}].neighbours`, slots);
    }
  }
  return null;
}
