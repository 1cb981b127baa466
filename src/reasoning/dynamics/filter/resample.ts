/** Systematic resampling: which particles go on, each about as often as its weight says. */
import { ensure } from "../../../units/index.ts";

/**
 * Number of the ancestor of each particle: with weights that sum to 1, a particle of weight w goes on ⌊Pw⌋ or ⌈Pw⌉
 * times.
 *
 * @param weights one a particle, 0 or more; their sum need not be 1
 * @param uniform where the comb begins, 0 ≤ uniform < 1
 * @throws DomainError when no weight is above 0, or for a uniform outside its range
 * @source Kitagawa 1996; Arulampalam et al. 2002 (from memory)
 * @example
 * systematic(Float64Array.of(0, 1, 0, 1), 0.5)  // → [1,1,3,3]
 */
export function systematic(weights: Float64Array, uniform: number): Int32Array {
  ensure(uniform >= 0 && uniform < 1, "uniform", uniform, "from 0 to below 1");
  const total = weights.reduce((sum, each) => sum + each, 0);
  ensure(total > 0 && Number.isFinite(total), "weights", total, "a finite sum above 0");
  const { length } = weights;
  const ancestors = new Int32Array(length);
  let [below, from] = [0, 0];
  for (let each = 0; each < length; each++) {
    below += weights[each] as number;
    // The last particle with weight takes what rounding leaves over.
    const to = Math.ceil((below / total) * length - uniform);
    for (; from < Math.min(to, length); from++) ancestors[from] = each;
  }
  const last = weights.findLastIndex((weight) => weight > 0);
  return ancestors.fill(last, from);
}

/**
 * Particles that the weights are worth: 1 / Σw², with weights scaled to sum to 1; from 1 to their number.
 *
 * @example
 * effectiveParticles(Float64Array.of(1, 1, 0, 0))  // → 2
 */
export function effectiveParticles(weights: Float64Array): number {
  const total = weights.reduce((sum, each) => sum + each, 0);
  const squares = weights.reduce((sum, each) => sum + each * each, 0);
  return squares > 0 ? (total * total) / squares : 0;
}
