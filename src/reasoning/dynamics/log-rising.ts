/** ln of a(a + 1)…(a + n − 1), as a count's chance is made of. */
import { logGammaStep } from "../../numerics/index.ts";

/** Up to so many terms the product is as quick as anything, and keeps every digit. */
const fewTerms = 256;
/** From here on a difference of log-gammas loses no digit: all terms are of one sign. */
const largeEnough = 10;

/**
 * ln of a(a + 1)…(a + n − 1) for a above 0. Few terms are multiplied; of many, those below 10 are, and the rest is one
 * difference of log-gammas. A ratio of gamma functions alone loses digits for shapes near 0, met in clean colonies.
 *
 * @example
 * logRising(1, 5)  // → 4.787491742782
 */
export function logRising(a: number, n: number): number {
  if (n <= fewTerms) return logProduct(a, n);
  const first = Math.max(0, Math.ceil(largeEnough - a));
  return logProduct(a, first) + logGammaStep(a + first, n - first);
}

/** By products that neither overflow nor vanish: a logarithm a term costs ten times as much. */
function logProduct(a: number, n: number): number {
  let [total, product] = [0, 1];
  for (let i = 0; i < n; i++) {
    product *= a + i;
    if (product > 1e200 || product < 1e-200) {
      total += Math.log(product);
      product = 1;
    }
  }
  return total + Math.log(product);
}
