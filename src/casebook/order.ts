/** The order of codes as people read them. */

/**
 * Compares two codes: digits by their number, the rest by letter, so that A-2 stands before A-10.
 * Negative, zero or positive, as `sort` wants it.
 * @example
 * compareCodes("A-2", "A-10") < 0  // → true
 */
export function compareCodes(one: string, other: string): number {
  const [left, right] = [parts(one), parts(other)];
  for (let index = 0; index < Math.min(left.length, right.length); index += 1) {
    const [a, b] = [left[index] ?? "", right[index] ?? ""];
    const bothNumbers = /^\d/.test(a) && /^\d/.test(b);
    const difference = bothNumbers ? Number(a) - Number(b) : a < b ? -1 : a > b ? 1 : 0;
    if (difference !== 0) return difference;
  }
  return left.length - right.length || (one < other ? -1 : one > other ? 1 : 0);
}

const parts = (code: string): readonly string[] => code.match(/\d+|\D+/g) ?? [];
