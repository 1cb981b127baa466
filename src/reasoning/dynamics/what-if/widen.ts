/** Records of colonies with few daily ages turned into records with more, for a choice that needs them. */
import { at, broodDays, classes, type Layout } from "../layout.ts";

/**
 * The same colonies in a layout with at least as many ages. Bees of the oldest age, which stands for all older ones,
 * stay in the oldest: no rate of theirs changes any more, and their susceptibility is that of all.
 *
 * Not for colonies that were requeened before: their cohorts differ.
 */
export function widened(states: Float64Array, from: Layout, to: Layout): Float64Array {
  if (from.length === to.length) return states.slice();
  const count = states.length / from.length;
  const wide = new Float64Array(count * to.length);
  for (let each = 0; each < count; each++) {
    const [old, fresh] = [each * from.length, each * to.length];
    const move = (offset: number, length: number, place: number) =>
      wide.set(states.subarray(old + offset, old + offset + length), fresh + place);
    move(0, from.brood + broodDays, 0);
    const oldest = states[old + from.susceptibility + from.cohorts - 1] as number;
    wide.fill(oldest, fresh + to.susceptibility, fresh + to.susceptibility + to.cohorts);
    move(from.susceptibility, from.cohorts, to.susceptibility);
    move(from.summer, (from.summerAges - 1) * classes, to.summer);
    move(from.summer + (from.summerAges - 1) * classes, classes, to.summer + (to.summerAges - 1) * classes);
    move(from.winter, (from.winterAges - 1) * classes, to.winter);
    move(from.winter + (from.winterAges - 1) * classes, classes, to.winter + (to.winterAges - 1) * classes);
    if (states[old + at.youngestWinter] === from.winterAges - 1) wide[fresh + at.youngestWinter] = to.winterAges - 1;
  }
  return wide;
}
