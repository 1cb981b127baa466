/** Logarithms of gamma, beta, factorial and binomial coefficient. */
import { ensure } from "../units/index.ts";

const halfLog2Pi = 0.9189385332046728;

/** (ζ(k) − 1)/k for k = 2 … 27: the Taylor coefficients of ln Γ about 2, signs left out. */
const zetaShares: readonly number[] = [
  0.3224670334241132, 0.0673523010531981, 0.020580808427784546, 0.007385551028673986, 0.0028905103307415234,
  0.001192753911703261, 0.0005096695247430425, 0.00022315475845357939, 9.945751278180853e-5, 4.492623673813314e-5,
  2.050721277567069e-5, 9.439488275268397e-6, 4.374866789907488e-6, 2.039215753801366e-6, 9.55141213040742e-7,
  4.492469198764566e-7, 2.1207184805554665e-7, 1.0043224823968099e-7, 4.7698101693639804e-8, 2.2711094608943164e-8,
  1.0838659214896955e-8, 5.183475041970047e-9, 2.4836745438024785e-9, 1.1921401405860912e-9, 5.731367241678862e-10,
  2.7595228851242334e-10,
];

/** B₂ₖ/(2k(2k − 1)) for k = 1 … 9: the Stirling series. */
const stirling: readonly number[] = [
  1 / 12,
  -1 / 360,
  1 / 1260,
  -1 / 1680,
  1 / 1188,
  -691 / 360360,
  1 / 156,
  -3617 / 122400,
  43867 / 244188,
];

/** μ(x) at x = ½, 1, 1½, … 8: where counts and half-counts need it most. */
const errorsAtHalves: readonly number[] = [
  0.15342640972002736, 0.08106146679532726, 0.05481412105191765, 0.0413406959554093, 0.03316287351993629,
  0.02767792568499834, 0.023746163656297496, 0.020790672103765093, 0.018488450532673187, 0.016644691189821193,
  0.015134973221917378, 0.013876128823070748, 0.012810465242920227, 0.01189670994589177, 0.011104559758206917,
  0.010411265261972096,
];

/**
 * ln Γ(x), relative error below 1e-14 also about the zeros at 1 and 2.
 *
 * Below 10 by the Taylor series about 2 after shifting, above by Stirling's series.
 *
 * @throws DomainError unless x is finite and above 0
 * @source Abramowitz & Stegun 6.1.33 (series), 6.1.41 (Stirling)
 * @example
 * logGamma(5)  // → 3.1780538303479458
 * logGamma(1)  // → 0
 */
export function logGamma(x: number): number {
  ensure(x > 0 && x < Infinity, "x", x, "a finite number above 0");
  if (x < 0.5) return aboutTwo(x) - Math.log1p(x) - Math.log(x);
  if (x < 1.5) return aboutTwo(x - 1) - Math.log1p(x - 1);
  if (x < 2.5) return aboutTwo(x - 2);
  if (x < 10) {
    const steps = Math.round(x) - 2;
    let product = 1;
    for (let step = 1; step <= steps; step += 1) product *= x - step;
    return Math.log(product) + aboutTwo(x - steps - 2);
  }
  return (x - 0.5) * (Math.log(x) - 1) + (halfLog2Pi - 0.5) + stirlingSeries(x);
}

/**
 * ln Γ(1 + x), which keeps its digits for a tiny x where 1 + x would lose them.
 *
 * @throws DomainError unless x is finite and ≥ 0
 * @example
 * logGammaOnePlus(1e-20)  // → -5.77215664902e-21
 */
export function logGammaOnePlus(x: number): number {
  ensure(x >= 0 && x < Infinity, "x", x, "a finite number of 0 or more");
  return x < 0.5 ? aboutTwo(x) - Math.log1p(x) : logGamma(1 + x);
}

/** ln Γ(2 + z) for |z| ≤ 0.5. */
function aboutTwo(z: number): number {
  let sum = 0;
  for (let k = zetaShares.length - 1; k >= 0; k -= 1) sum = (zetaShares[k] as number) - z * sum;
  const oneMinusEuler = 0.42278433509846713;
  return z * (oneMinusEuler + z * sum);
}

function stirlingSeries(x: number): number {
  const square = 1 / (x * x);
  let sum = 0;
  for (let k = stirling.length - 1; k >= 0; k -= 1) sum = (stirling[k] as number) + square * sum;
  return sum / x;
}

/**
 * μ(x) = ln Γ(x) − (x − ½)·ln x + x − ½·ln 2π: what Stirling's formula leaves over. Absolute error about 1e-15.
 *
 * @throws DomainError unless x is finite and above 0
 * @source Loader 2000 (his δ), Abramowitz & Stegun 6.1.42
 * @example
 * stirlingError(100)  // → 0.000833330555635
 */
export function stirlingError(x: number): number {
  ensure(x > 0 && x < Infinity, "x", x, "a finite number above 0");
  const tabled = errorsAtHalves[2 * x - 1];
  if (tabled !== undefined) return tabled;
  if (x < 1) return logGamma(x) - (x - 0.5) * Math.log(x) + x - halfLog2Pi;
  let shifted = x;
  let sum = 0;
  while (shifted < 8) {
    sum += (shifted + 0.5) * Math.log1p(1 / shifted) - 1;
    shifted += 1;
  }
  return sum + stirlingSeries(shifted);
}

/**
 * ln Γ(x + step) − ln Γ(x) without subtracting the two: exact for a tiny step and for a huge x.
 *
 * @throws DomainError unless both are finite and above 0
 * @source Difference of Abramowitz & Stegun 6.1.41 taken term by term
 * @example
 * logGammaStep(1e6, 1)  // → 13.815510557964274
 */
export function logGammaStep(x: number, step: number): number {
  ensure(x > 0 && x < Infinity, "x", x, "a finite number above 0");
  ensure(step > 0 && step < Infinity, "step", step, "a finite number above 0");
  let base = x;
  let sum = 0;
  while (base < 10) {
    sum -= Math.log1p(step / base);
    base += 1;
  }
  const growth = Math.log1p(step / base);
  let series = 0;
  let power = 1 / base;
  for (const [k, coefficient] of stirling.entries()) {
    series += coefficient * power * Math.expm1(-(2 * k + 1) * growth);
    power /= base * base;
  }
  return sum + ((base - 0.5) * growth - step) + step * Math.log(base + step) + series;
}

/**
 * ln B(a, b), with B the beta function.
 *
 * @throws DomainError unless both are finite and above 0
 * @source DiDonato & Morris 1992, ACM TOMS 18:360–373 for the way of avoiding cancellation
 * @example
 * logBeta(2, 3)  // → -2.48490664979
 */
export function logBeta(a: number, b: number): number {
  ensure(a > 0 && a < Infinity, "a", a, "a finite number above 0");
  ensure(b > 0 && b < Infinity, "b", b, "a finite number above 0");
  const small = Math.min(a, b);
  const large = Math.max(a, b);
  if (small === 1) return -Math.log(large);
  if (large === 1) return -Math.log(small);
  const share = small / large;
  const entropy = -small * (Math.log(large / small) + Math.log1p(share)) - large * Math.log1p(share);
  const width = halfLog2Pi + 0.5 * (Math.log1p(share) - Math.log(small));
  return entropy + width + stirlingError(small) + (stirlingError(large) - stirlingError(a + b));
}

/**
 * ln n!
 *
 * @throws DomainError unless n is a whole number ≥ 0
 * @example
 * logFactorial(20)  // → 42.3356164608
 */
export function logFactorial(n: number): number {
  ensure(Number.isInteger(n) && n >= 0, "n", n, "a whole number of 0 or more");
  return logGamma(n + 1);
}

/**
 * Logarithm of the number of ways to choose k things out of n.
 *
 * @throws DomainError unless n and k are whole numbers with 0 ≤ k ≤ n
 * @example
 * logChoose(5, 2)  // → 2.302585092994046
 */
export function logChoose(n: number, k: number): number {
  ensure(Number.isInteger(n) && n >= 0, "n", n, "a whole number of 0 or more");
  ensure(Number.isInteger(k) && k >= 0 && k <= n, "k", k, "a whole number from 0 to n");
  const few = Math.min(k, n - k);
  if (few === 0) return 0;
  const many = n - few;
  if (few <= 20) {
    let sum = 0;
    for (let i = 1; i <= few; i += 1) sum += Math.log((many + i) / i);
    return sum;
  }
  const entropy = few * Math.log(n / few) - many * Math.log1p(-few / n);
  const width = 0.5 * Math.log(n / few / many) - halfLog2Pi;
  return entropy + width + stirlingError(n) - stirlingError(few) - stirlingError(many);
}
