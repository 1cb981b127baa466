/** Flags written by hand, for the commands that are no verbs of the reasoning. */

import { programmeName } from "../../journal/index.ts";
import type { Shape } from "../../reasoning/index.ts";
import { type Problem, problem } from "../../units/index.ts";
import type { Given } from "./arguments.ts";
import type { Flag } from "./flags.ts";
import { flagHelp } from "./help.ts";

/** A flag with one value. */
export const valueFlag = (name: string, description: string, shape: Shape = { type: "string" }): Flag => ({
  name,
  path: [name],
  kind: "value",
  required: false,
  shape: { ...shape, description },
});

/** A flag that is true when named. */
export const switchFlag = (name: string, description: string): Flag => ({
  name,
  path: [name],
  kind: "switch",
  required: false,
  shape: { type: "boolean", description },
});

/** The last words given to a flag; null when it was not given. */
export const wordsOf = (given: Given, name: string): string | null =>
  given.flags.findLast(({ flag }) => flag.name === name)?.words ?? null;

export const programmeFlag = valueFlag("programme", "Programme whose records are meant.", {
  type: "string",
  default: "main",
});

/** The programme meant, or what is wrong with its name. */
export function programmeOf(given: Given): string | Problem {
  const name = wordsOf(given, "programme") ?? "main";
  if (programmeName.safeParse(name).success) return name;
  return problem("field-unfit", "blocked", "--programme", {
    given: name,
    expected: "lower-case letters and digits joined by single hyphens",
  });
}

/** The help page of a command with hand-written flags. */
export const handHelp = (title: string, flags: readonly Flag[], text: string): string =>
  `skepsis ${title}\n\nFlags\n${flags.map(flagHelp).join("")}  --json\n      One JSON value on standard output.\n\n${text}`;
