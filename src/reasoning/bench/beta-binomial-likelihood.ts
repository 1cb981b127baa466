/** The likelihood of a share that differs between colonies, written as sums of logarithms that hold at no spread too. */
import { logChoose } from "../../numerics/index.ts";
import { countsAbove } from "./counts-above.ts";

export interface ColonyCount {
  /** Bees infested; whole, ≥ 0. */
  readonly positive: number;
  /** Bees read; whole, ≥ positive. A colony without any is left out. */
  readonly examined: number;
}

/** Log-likelihood with its first and second derivatives by the mean share μ and the spread φ = ρ/(1 − ρ). */
export interface Likelihood {
  readonly value: number;
  readonly byMean: number;
  readonly bySpread: number;
  readonly byMeanTwice: number;
  readonly byBoth: number;
  readonly bySpreadTwice: number;
}

/** The whole at a mean and a spread; the slopes alone cost far less, and a search asks for nothing else. */
export interface LikelihoodAt {
  (mean: number, spread: number): Likelihood;
  readonly byMean: (mean: number, spread: number) => number;
  readonly bySpread: (mean: number, spread: number) => number;
}

/**
 * Σ_j A_j ln(μ + jφ) + B_j ln(1 − μ + jφ) − C_j ln(1 + jφ) + Σ ln C(n, x): A_j, B_j, C_j are the colonies with more than j
 * infested, more than j clear, more than j read. The cost is the bees of the largest sample, however many colonies.
 */
export function betaBinomialLikelihood(colonies: readonly ColonyCount[]): LikelihoodAt {
  const infested = countsAbove(colonies.map(({ positive }) => positive));
  const clear = countsAbove(colonies.map(({ positive, examined }) => examined - positive));
  const read = countsAbove(colonies.map(({ examined }) => examined));
  const ways = colonies.reduce((sum, { positive, examined }) => sum + logChoose(examined, positive), 0);
  const whole = (mean: number, spread: number): Likelihood => {
    const total = { value: ways, byMean: 0, bySpread: 0, byMeanTwice: 0, byBoth: 0, bySpreadTwice: 0 };
    const add = (tally: Float64Array, start: number, slope: number, sign: number) => {
      for (let j = 0; j < tally.length; j += 1) {
        const weight = sign * (tally[j] as number);
        const at = start + j * spread;
        const share = weight / at;
        total.value += weight * Math.log(at);
        total.byMean += slope * share;
        total.bySpread += j * share;
        total.byMeanTwice -= (slope * slope * share) / at;
        total.byBoth -= (slope * j * share) / at;
        total.bySpreadTwice -= (j * j * share) / at;
      }
    };
    add(infested, mean, 1, 1);
    add(clear, 1 - mean, -1, 1);
    add(read, 1, 0, -1);
    return total;
  };
  const sum = (tally: Float64Array, start: number, spread: number): number => {
    let total = 0;
    for (let j = 0; j < tally.length; j += 1) total += (tally[j] as number) / (start + j * spread);
    return total;
  };
  const weighted = (tally: Float64Array, start: number, spread: number): number => {
    let total = 0;
    for (let j = 1; j < tally.length; j += 1) total += (j * (tally[j] as number)) / (start + j * spread);
    return total;
  };
  return Object.assign(whole, {
    byMean: (mean: number, spread: number) => sum(infested, mean, spread) - sum(clear, 1 - mean, spread),
    bySpread: (mean: number, spread: number) =>
      weighted(infested, mean, spread) + weighted(clear, 1 - mean, spread) - weighted(read, 1, spread),
  });
}
