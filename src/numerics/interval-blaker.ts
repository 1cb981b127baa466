/** Blaker's interval for a proportion: guaranteed like Clopper and Pearson's, and never wider. */
import { binomial } from "./binomial.ts";
import { checkedAlpha, clopperPearsonInterval, type Interval, type ProportionData } from "./intervals.ts";
import { root } from "./root.ts";

/**
 * Blaker's interval: every p at which x is not among the α most extreme outcomes, and what lies between such p.
 *
 * p is accepted when the smaller tail at x and the largest opposite tail that does not exceed it sum to α or more.
 * That sum jumps where an opposite tail begins to count, so the ends are solved piece by piece between the jumps;
 * stepping along p by a fixed width misses them by up to the step, and can step over a gap.
 *
 * @throws DomainError unless x and n are whole with 0 ≤ x ≤ n, n ≥ 1, and 0 < level < 1
 * @source Blaker 2000, Canadian Journal of Statistics 28:783–798; own solution by pieces
 * @example
 * blakerInterval({ x: 0, n: 20, level: 0.95 }).high  // → 0.160131133251
 */
export function blakerInterval(data: ProportionData): Interval {
  const { x, n, level } = data;
  return { low: lowEnd(data), high: 1 - lowEnd({ x: n - x, n, level }) };
}

/**
 * How well p agrees with x of n: the smaller tail plus the largest opposite tail that does not exceed it, at most 1.
 *
 * @throws DomainError unless x and n are whole with 0 ≤ x ≤ n, n ≥ 1, and 0 ≤ p ≤ 1
 * @source Blaker 2000, Canadian Journal of Statistics 28:783–798
 * @example
 * blakerAcceptability({ x: 0, n: 20, p: 0.1 })  // → 0.164751149875
 */
export function blakerAcceptability({ x, n, p }: Pick<ProportionData, "x" | "n"> & { readonly p: number }): number {
  checkedAlpha({ x, n, level: 0.5 });
  const { cdf, sf } = binomial({ n, p });
  const [below, above] = [cdf(x), x === 0 ? 1 : sf(x - 1)];
  const tail = Math.min(below, above);
  let opposite = 0;
  if (above <= below) for (let k = 0; k < x && cdf(k) <= tail; k += 1) opposite = cdf(k);
  else for (let k = n; k > x && sf(k - 1) <= tail; k -= 1) opposite = sf(k - 1);
  return Math.min(1, tail + opposite);
}

function lowEnd(data: ProportionData): number {
  const alpha = checkedAlpha(data);
  const { x, n } = data;
  if (x === 0) return 0;
  const above = (p: number) => binomial({ n, p }).sf(x - 1);
  const below = (p: number, k: number) => (k < 0 ? 0 : binomial({ n, p }).cdf(k));
  // Below Clopper and Pearson's end both tails together are less than alpha.
  let start = clopperPearsonInterval(data).low;
  let k = largestWithin({ tail: above(start), cdf: binomial({ n, p: start }).cdf, x });
  // The last piece, k = x − 1, accepts all: both tails together are everything.
  for (; ; k += 1) {
    const lacking = (p: number) => above(p) + below(p, k) - alpha;
    if (k === x - 1 || lacking(start) >= -alpha * 1e-13) return start;
    // The chance of what lies between the tails has one peak, so a sum below alpha at the start crosses it once at most.
    const next = k + 1;
    const jump = root({ f: (p) => below(p, next) - above(p), low: start, high: 1, tolerance: 0 });
    if (lacking(jump) >= 0) return root({ f: lacking, low: start, high: jump, tolerance: 0 });
    start = jump;
  }
}

/** The largest k below x with P(X ≤ k) within the tail, −1 for none. */
function largestWithin(request: { readonly tail: number; readonly cdf: (k: number) => number; readonly x: number }) {
  let [within, beyond] = [-1, request.x];
  while (beyond - within > 1) {
    const middle = Math.floor((within + beyond) / 2);
    if (request.cdf(middle) <= request.tail) within = middle;
    else beyond = middle;
  }
  return within;
}
