/** What adapters do with a Result: rename its value, or hand on the problems as they are. */
import type { Result } from "../../src/units/index.ts";

/** The value under the names of the cases; a refusal stays a refusal, which expected nulls ask for. */
export const given = <T, U>(result: Result<T>, rename: (value: T) => U): U | Result<T> =>
  result.ok ? rename(result.value) : result;
