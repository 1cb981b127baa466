/** The root of a function between two places where its sign differs. */
import { ensure } from "../units/index.ts";

export interface RootSearch {
  readonly f: (x: number) => number;
  readonly low: number;
  readonly high: number;
  /** Wanted half-width of the answer, besides the rounding of x. Default 1e-15 of the bracket; 0 for as near as doubles go. */
  readonly tolerance?: number;
}

/**
 * An x between low and high where f changes sign, by Brent's method: sure as halving, fast on smooth functions.
 *
 * @throws DomainError unless low < high are finite and f has different signs (or a zero) at the two
 * @source Brent 1973, Algorithms for minimization without derivatives, chapter 4 (from memory)
 * @example
 * root({ f: (x) => x * x - 2, low: 0, high: 2 })  // → 1.41421356237
 */
export function root({ f, low, high, tolerance = 1e-15 * (high - low) }: RootSearch): number {
  ensure(Number.isFinite(low) && Number.isFinite(high) && low < high, "low", low, "finite and below high");
  let a = low;
  let b = high;
  let fa = f(a);
  let fb = f(b);
  if (fa === 0) return a;
  if (fb === 0) return b;
  ensure(
    fa < 0 !== fb < 0 && !Number.isNaN(fa) && !Number.isNaN(fb),
    "f",
    `${fa} and ${fb}`,
    "of different sign at low and high",
  );
  let c = a;
  let fc = fa;
  let step = b - a;
  let before = step;
  for (let round = 0; round < 5000; round += 1) {
    if (Math.abs(fc) < Math.abs(fb)) {
      [a, b, c] = [b, c, b];
      [fa, fb, fc] = [fb, fc, fb];
    }
    const near = 2 * Number.EPSILON * Math.abs(b) + tolerance / 2;
    const half = (c - b) / 2;
    if (Math.abs(half) <= near || fb === 0) return b;
    const guess = Math.abs(before) >= near && Math.abs(fa) > Math.abs(fb) ? interpolated({ a, b, c, fa, fb, fc }) : NaN;
    const usable = Math.abs(guess) < Math.min(1.5 * Math.abs(half), Math.abs(before) / 2) && guess * half > 0;
    before = usable ? step : half;
    step = usable ? guess : half;
    a = b;
    fa = fb;
    b += Math.abs(step) > near ? step : Math.sign(half) * Math.max(near, Number.MIN_VALUE);
    fb = f(b);
    if (fb < 0 === fc < 0) {
      c = a;
      fc = fa;
      step = b - a;
      before = step;
    }
  }
  throw new Error(`the search for a root did not settle between ${low} and ${high}`);
}

type Points = Readonly<Record<"a" | "b" | "c" | "fa" | "fb" | "fc", number>>;

/** Step from b to the zero of the inverse parabola through three points, or of the line through two. */
function interpolated({ a, b, c, fa, fb, fc }: Points): number {
  const s = fb / fa;
  if (a === c) return ((c - b) * s) / (s - 1);
  const q = fa / fc;
  const r = fb / fc;
  return ((s * ((c - b) * q * (q - r) - (b - a) * (r - 1))) / ((q - 1) * (r - 1) * (s - 1))) * -1;
}
