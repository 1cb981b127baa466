/** When an answer agrees with what an example shows of it: shared by examples in comments and in documents. */

/** One line `expression // → value` of an example. */
export interface Shown {
  readonly call: string;
  readonly value: string;
}

/** The expression and the value shown of one line, without its comment marks; null when the line shows no value. */
export function shownIn(line: string): Shown | null {
  const [, call, value] = /^(\S.*?)\s+\/\/ →\s*(.+?)\s*$/.exec(line) ?? [];
  return call === undefined || value === undefined ? null : { call, value };
}

/** Numbers agree when they agree to the significant digits that the example shows; everything else must be the same. */
export function agrees(actual: unknown, shown: unknown): boolean {
  if (typeof actual === "number" && typeof shown === "number") {
    if (actual === shown) return true;
    const digits = String(Math.abs(shown)).replace(/e.*$/, "").replace(".", "").replace(/^0+/, "").length;
    return (
      digits > 0 &&
      Math.abs(actual - shown) <= 0.5000001 * 10 ** (Math.floor(Math.log10(Math.abs(shown) || 1)) - digits + 1)
    );
  }
  if (actual !== null && shown !== null && typeof actual === "object" && typeof shown === "object") {
    const keys = Object.keys(shown);
    return (
      keys.length === Object.keys(actual).length &&
      keys.every((key) => agrees(Reflect.get(actual, key), Reflect.get(shown, key)))
    );
  }
  return Object.is(actual, shown);
}

/** The value shown: a JavaScript value, or the bare words themselves where they are none. */
export function valueShown(text: string): unknown {
  try {
    return evaluate(text, {});
  } catch (trouble) {
    if (trouble instanceof ReferenceError || trouble instanceof SyntaxError) return text;
    throw trouble;
  }
}

/** The value of an expression seen from a scope. */
export const evaluate = (text: string, scope: Readonly<Record<string, unknown>>): unknown =>
  new Function(...Object.keys(scope), `return (${text.replace(/;$/, "")});`)(...Object.values(scope));
