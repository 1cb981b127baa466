/** A part of an answer that may be refused by itself: null in the answer, and its problem a notice beside it. */
import type { Problem, Result } from "../../units/index.ts";

/** What was found; null where it was refused. */
export const foundOf = <T>(result: Result<T>): T | null => (result.ok ? result.value : null);

/** What a part reports: what stands in the way of the part does not stand in the way of the answer. */
export const noticesOf = (result: Result<unknown>): readonly Problem[] =>
  result.problems.map((each): Problem => (each.severity === "blocked" ? { ...each, severity: "unknown" } : each));

/** The problems of a step under the field of the question that they are about. */
export const underField = <T>(result: Result<T>, from: string, to: string): Result<T> => ({
  ...result,
  problems: result.problems.map((each) =>
    each.field === from || each.field?.startsWith(`${from}[`)
      ? { ...each, field: `${to}${each.field.slice(from.length)}` }
      : each,
  ),
});
