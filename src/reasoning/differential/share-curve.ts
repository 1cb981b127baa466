/** A judged share as a curve over a standard normal number: what a draw takes its value from. */
import { betaQuantile, betaUpperQuantile, normalCdf, normalSf } from "../../numerics/index.ts";
import { startCounts } from "./start-counts.ts";

/** Where the curve is known: from −`edge` to `edge`. No draw of 32 random bits lies beyond 6.8. */
const [edge, step] = [7.5, 0.5];
/** Points of a curve. */
export const curvePoints = (2 * edge) / step + 1;
/** A share this near to 0 has lost its digits. */
const smallest = 1e-300;

const kept = new Map<string, Float64Array>();
/** More curves than one laboratory's evidence can hold at once. */
const mostKept = 20_000;

/**
 * Log odds of a beta share at the points where a standard normal number has the same probability below it.
 *
 * Model: the beta with mean `value` and counts by its width `sd` (`startCounts`). Normal numbers put through the curve
 * are draws of that beta, exact at the points and to 1e-3 of the log odds between them.
 *
 * @throws DomainError unless 0 < value < 1 and 0.01 ≤ sd ≤ 10
 */
export function shareCurve(value: number, sd: number): Float64Array {
  const key = `${value} ${sd}`;
  const known = kept.get(key);
  if (known) return known;
  const { present: a, looked } = startCounts(value, sd);
  const b = looked - a;
  const curve = Float64Array.from({ length: curvePoints }, (_, index) => {
    const z = index * step - edge;
    const x = z < 0 ? betaQuantile({ p: normalCdf(z), a, b }) : betaUpperQuantile({ p: normalSf(z), a, b });
    const within = Math.min(Math.max(x, smallest), 1 - Number.EPSILON);
    return Math.log(within / (1 - within));
  });
  if (kept.size >= mostKept) kept.clear();
  kept.set(key, curve);
  return curve;
}

/** The share at a standard normal number; `curves` holds one curve after the other, this one begins at `from`. */
export function shareAt(curves: Float64Array, from: number, z: number): number {
  const place = (z + edge) / step;
  const cell = Math.min(Math.max(Math.floor(place), 1), curvePoints - 3);
  const t = place - cell;
  const at = from + cell;
  const [before, here, next, after] = [curves[at - 1], curves[at], curves[at + 1], curves[at + 2]] as [
    number,
    number,
    number,
    number,
  ];
  // Lagrange's cubic through the four points about it.
  const logOdds =
    here +
    t *
      (next -
        before / 3 -
        here / 2 -
        after / 6 +
        t * ((before + next) / 2 - here + t * ((after - before) / 6 + (here - next) / 2)));
  return 1 / (1 + Math.exp(-logOdds));
}
