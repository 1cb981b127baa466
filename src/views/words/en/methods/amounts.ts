/** How the methods write shares and limits. */

/**
 * A share as so many in 100, with the digits it needs and no more.
 * @example
 * hundred(0.05)  // → "5"
 * hundred(0.21205)  // → "21.2"
 * hundred(0.0036)  // → "0.36"
 * hundred(0.99997)  // → "over 99.99"
 */
export function hundred(share: number): string {
  const per = 100 * share;
  if (share < 1 && per > 99.99) return "over 99.99";
  if (share > 0 && per < 0.001) return "under 0.001";
  if (per > 99) return String(Number(per.toFixed(2)));
  return figure(per);
}

/**
 * A number to three digits.
 * @example
 * figure(4.28947)  // → "4.29"
 * figure(1234.5)  // → "1,235"
 */
export function figure(value: number): string {
  if (Math.abs(value) >= 1000) return String(Math.round(value)).replace(/\B(?=(\d{3})+(?!\d))/g, ",");
  return String(Number(value.toPrecision(3))).replace("-", "−");
}
