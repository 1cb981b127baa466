/** How likely counts of bees with mites, or of mites on bees, are at each level of the agent. */
import { betaBinomial, binomial, logFactorial, logGamma } from "../../numerics/index.ts";
import { trachealShare, varroaLoad } from "./judgements.ts";
import { jointCount, type LoadModel, type PooledCount } from "./shared-load.ts";

/** Probability of a count at each level. */
export interface LevelLikelihood {
  readonly none: number;
  readonly background: number;
  readonly clinical: number;
}

interface BetaShape {
  readonly a: number;
  readonly b: number;
}

/** Probability of so many bees with mites among those examined, at each level; several pools share the load. */
export function trachealCount(pools: readonly PooledCount[], inSummer: boolean): LevelLikelihood {
  const none = ({ count, size }: PooledCount) => binomial({ n: size, p: trachealShare.mistaken }).pmf(count);
  const at = (start: BetaShape) => jointCount(pools, shareOfBees(start, none));
  return {
    none: pools.reduce((product, pool) => product * none(pool), 1),
    background: at(trachealShare.background),
    clinical: at(inSummer ? trachealShare.clinicalInSummer : trachealShare.clinical),
  };
}

/** Share of bees with mites as a beta shape. */
const shareOfBees = (start: BetaShape, none: (pool: PooledCount) => number): LoadModel<BetaShape> => ({
  start,
  chance: ({ count, size }, shape) => betaBinomial({ n: size, ...shape }).pmf(count),
  after: ({ count, size }, { a, b }) => ({ a: a + count, b: b + size - count }),
  none,
});

interface GammaShape {
  readonly shape: number;
  readonly mean: number;
}

/** Probability of so many mites from so many hundred bees, at each level; several pools share the load. */
export function varroaCount(pools: readonly PooledCount[]): LevelLikelihood {
  const none = ({ count, size }: PooledCount) => {
    const stray = size * varroaLoad.strayPerHundred;
    return Math.exp(-stray + count * Math.log(stray) - logFactorial(count));
  };
  const at = (start: GammaShape) => jointCount(pools, mitesPerHundred(start, none));
  return {
    none: pools.reduce((product, pool) => product * none(pool), 1),
    background: at(varroaLoad.background),
    clinical: at(varroaLoad.clinical),
  };
}

/** Mites on 100 bees as a gamma shape. */
const mitesPerHundred = (start: GammaShape, none: (pool: PooledCount) => number): LoadModel<GammaShape> => ({
  start,
  chance: ({ count, size }, { shape, mean }) => gammaPoisson(count, shape, mean * size),
  after: ({ count, size }, { shape, mean }) => {
    const rate = shape / mean + size;
    return { shape: shape + count, mean: (shape + count) / rate };
  },
  none,
});

/** Probability of a count whose mean varies as a gamma variable from colony to colony. */
function gammaPoisson(count: number, shape: number, mean: number): number {
  const log = logGamma(count + shape) - logGamma(shape) - logFactorial(count);
  return Math.exp(log + shape * Math.log(shape / (shape + mean)) + count * Math.log(mean / (shape + mean)));
}
