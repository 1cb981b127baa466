/** Binomial counts at a steady cost whatever their size: a day of whole bees needs hundreds of them. */
import { logFactorial, type RandomStream } from "../../numerics/index.ts";
import { ensure } from "../../units/index.ts";

/** Below this many expected, running down the chances of 0, 1, 2, … is the shorter way; the rejection needs at least 10. */
const fewExpected = 10;

/**
 * How many of n bees something happens to that happens to each with chance p.
 *
 * Transformed rejection: about 1.2 pairs of numbers of the stream a draw. The general draw of numerics halves large
 * counts by beta variables, which costs some twenty times more here.
 *
 * @throws DomainError unless n is a whole number ≥ 0 and 0 ≤ p ≤ 1
 * @source Hörmann 1993, Journal of Statistical Computation and Simulation 46:101–110, algorithm BTRS [memory; held to the exact chances by a test]
 */
export function drawBees(stream: RandomStream, n: number, p: number): number {
  ensure(Number.isInteger(n) && n >= 0, "n", n, "a whole number of 0 or more");
  ensure(p >= 0 && p <= 1, "p", p, "from 0 to 1");
  if (n === 0 || p === 0) return 0;
  if (p === 1) return n;
  return p > 0.5 ? n - rarer(stream, n, 1 - p) : rarer(stream, n, p);
}

const rarer = (stream: RandomStream, n: number, p: number): number =>
  n * p < fewExpected ? few(stream, n, p) : many(stream, n, p);

function few(stream: RandomStream, n: number, p: number): number {
  const odds = p / (1 - p);
  let left = stream.next();
  let chance = Math.exp(n * Math.log1p(-p));
  for (let k = 0; k < n; k++) {
    if (left <= chance) return k;
    left -= chance;
    chance *= ((n - k) / (k + 1)) * odds;
    // Rounding may leave a crumb of `left` that no later count can use up.
    if (k > n * p && chance < 1e-18) return k + 1;
  }
  return n;
}

function many(stream: RandomStream, n: number, p: number): number {
  const spread = Math.sqrt(n * p * (1 - p));
  const b = 1.15 + 2.53 * spread;
  const a = -0.0873 + 0.0248 * b + 0.01 * p;
  const centre = n * p + 0.5;
  const quick = 0.92 - 4.2 / b;
  const alpha = (2.83 + 5.1 / b) * spread;
  for (;;) {
    const u = stream.next() - 0.5;
    const v = stream.next();
    const us = 0.5 - Math.abs(u);
    const k = Math.floor(((2 * a) / us + b) * u + centre);
    if (us >= 0.07 && v <= quick) return k;
    if (k < 0 || k > n) continue;
    const mode = Math.floor((n + 1) * p);
    const logRatio =
      logFactorial(mode) +
      logFactorial(n - mode) -
      logFactorial(k) -
      logFactorial(n - k) +
      (k - mode) * Math.log(p / (1 - p));
    if (Math.log((v * alpha) / (a / (us * us) + b)) <= logRatio) return k;
  }
}
