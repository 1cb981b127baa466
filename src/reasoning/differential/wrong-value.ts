/** Problems of single fields, in the words of the person who fills them in. */
import { type Problem, problem } from "../../units/index.ts";

/** A value that is not what the field expects. */
export const wrong = (field: string, given: unknown, expected: string): Problem =>
  problem("wrong-value", "blocked", field, { given, expected, slots: { field } });

/** A choice of words, as a person would say it. */
export const words = (allowed: readonly string[]): string =>
  allowed.length < 2 ? allowed.join("") : `${allowed.slice(0, -1).join(", ")} or ${allowed.at(-1)}`;

/** Fields that no one asked for: a slip of the pen must not pass in silence. */
export const unknownFields = (
  given: Readonly<Record<string, unknown>>,
  allowed: readonly string[],
  path: string,
): Problem[] =>
  Object.keys(given)
    .filter((field) => !allowed.includes(field))
    .map((field) => wrong(`${path}${field}`, given[field], `one of ${words(allowed)}`));
