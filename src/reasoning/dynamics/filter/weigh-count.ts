/** What a count says of each particle, and how far it lies from what all of them expect. */
import { type BenchCount, type CountError, logChanceOfCount, onOneSide } from "../observe.ts";
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
 * each particle's share, and of the shares. A count that was stopped is taken as if its bees had been planned. Null
 * where nothing scatters and the count lies off it.
 */
export function surpriseOf(
  { particles, paths }: Cloud,
  morning: number,
  { count, error }: { readonly count: BenchCount; readonly error: CountError },
): number | null {
  const parts = [{ ...count, ...error }];
  if (count.oneSided !== undefined) parts.push({ ...count.oneSided, ...onOneSide(error) });
  let [sum, squares, within] = [0, 0, 0];
  for (let each = 0; each < particles; each++) {
    const share = paths.infestedShare[morning * particles + each] as number;
    let expected = 0;
    for (const { examined, sensitivity, specificity, overdispersion } of parts) {
      const positive = sensitivity * share + (1 - specificity) * (1 - share);
      expected += examined * positive;
      within += examined * (1 + (examined - 1) * overdispersion) * positive * (1 - positive);
    }
    sum += expected;
    squares += expected * expected;
  }
  const mean = sum / particles;
  const variance = within / particles + Math.max(0, squares / particles - mean * mean);
  const off = parts.reduce((total, { infested }) => total + infested, 0) - mean;
  return variance > 0 ? off / Math.sqrt(variance) : off === 0 ? 0 : null;
}
