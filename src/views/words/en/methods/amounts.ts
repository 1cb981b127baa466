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
  const text =
    Math.abs(value) >= 1000
      ? String(Math.round(value)).replace(/\B(?=(\d{3})+(?!\d))/g, ",")
      : String(Number(value.toPrecision(3)));
  return text.replaceAll("-", "−");
}

/**
 * A share that may lie below 0, as so many in 100 with its sign.
 * @example
 * signed(-0.125)  // → "−12.5"
 */
export const signed = (share: number): string =>
  share < -1 ? figure(100 * share) : share < 0 ? `−${hundred(-share)}` : hundred(share);

/**
 * How often chance alone would give as much.
 * @example
 * chanceTimes(0.0235)  // → "2.35 times in 100"
 * chanceTimes(0.00169)  // → "1.69 times in 1,000"
 * chanceTimes(0.00002)  // → "less than 1 time in 1,000"
 */
export const chanceTimes = (chance: number): string =>
  chance < 0.001
    ? "less than 1 time in 1,000"
    : chance < 0.01
      ? `${figure(1000 * chance)} times in 1,000`
      : `${figure(100 * chance)} times in 100`;

/** Above this chance a sentence says that it may be chance. Common practice, no source. */
const smallChance = 0.05;

/**
 * Whether chance alone gives as much too often for a plain statement.
 * @example
 * mayBeChance(0.3)  // → true
 */
export const mayBeChance = (chance: number): boolean => chance > smallChance;
