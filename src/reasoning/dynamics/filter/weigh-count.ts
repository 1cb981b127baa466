/** What a count says of each particle, and how far it lies from what all of them expect. */
import { type BenchCount, type CountError, logChanceOfCount } from "../observe.ts";
import type { Cloud } from "./colony-particles.ts";

/** ln of the chance of a count under each particle, on a morning that was noted. */
export function logChancesOf(
  { particles, paths }: Cloud,
  morning: number,
  { count, error }: { readonly count: BenchCount; readonly error: CountError },
): Float64Array {
  return Float64Array.from({ length: particles }, (_, each) =>
    logChanceOfCount(count, paths.infestedShare[morning * particles + each] as number, error),
  );
}

/**
 * How far a count lies from what the particles expect of it, in standard deviations of that: scatter of the count about
 * each particle's share, and of the shares.
 */
export function surpriseOf(
  { particles, paths }: Cloud,
  morning: number,
  { count, error }: { readonly count: BenchCount; readonly error: CountError },
): number {
  const { sensitivity, specificity, overdispersion } = error;
  const { infested, examined } = count;
  const alike = 1 + (examined - 1) * overdispersion;
  let [sum, squares, within] = [0, 0, 0];
  for (let each = 0; each < particles; each++) {
    const share = paths.infestedShare[morning * particles + each] as number;
    const positive = sensitivity * share + (1 - specificity) * (1 - share);
    sum += positive;
    squares += positive * positive;
    within += positive * (1 - positive);
  }
  const mean = sum / particles;
  const between = Math.max(0, squares / particles - mean * mean);
  const variance = (examined * alike * within) / particles + examined * examined * between;
  const off = infested - examined * mean;
  return variance > 0 ? off / Math.sqrt(variance) : off === 0 ? 0 : Math.sign(off) * Infinity;
}
