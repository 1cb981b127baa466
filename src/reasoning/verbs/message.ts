/** Replies as plain JSON, the same on the command line and over HTTP. */
import type { Problem } from "../../units/index.ts";
import type { Reply } from "./verb.ts";

export interface ProblemLine {
  readonly field: string | null;
  readonly given: unknown;
  readonly expected: string | null;
  readonly message: string;
}

export interface Notice {
  readonly code: string;
  readonly severity: Problem["severity"];
  readonly field: string | null;
  readonly message: string;
}

/** Turns a problem into a sentence; views/words has one for each code. */
export type Sentence = (problem: Problem) => string;

/** Names the field, what was given and what is expected; serves where no better sentence is known. */
export function plainSentence({ code, field, given, expected, slots }: Problem): string {
  const place = field ?? "The input";
  if (missing.includes(code)) return `${place} is missing. Expected: ${expected}.`;
  if (unknown.includes(code)) return `${place} is not known here. Expected: ${expected}.`;
  if (expected !== undefined) return `${place}: given ${shown(given)}, expected ${expected}.`;
  const details = Object.entries(slots).map(([name, value]) => `${name} ${value}`);
  return `${field ? `${field}: ` : ""}${code.replaceAll("-", " ")}${details.length > 0 ? ` (${details.join(", ")})` : ""}.`;
}

const missing: readonly string[] = ["field-missing", "flag-empty", "body-missing"];
const unknown: readonly string[] = ["field-unknown", "flag-unknown"];

/** A value as it was given, shortened to 80 signs. */
export function shown(value: unknown): string {
  if (value === undefined) return "nothing";
  const text = JSON.stringify(value) ?? String(value);
  return text.length > 80 ? `${text.slice(0, 79)}…` : text;
}

/** One problem as programs read it. */
export const problemLine = (problem: Problem, sentence: Sentence = plainSentence): ProblemLine => ({
  field: problem.field,
  given: problem.given ?? null,
  expected: problem.expected ?? null,
  message: sentence(problem),
});

/**
 * The one JSON value of a reply. Answered: the answer, and `notices` when there are any. Refused: `refused`, a list of
 * rule and reason, beside what can be said all the same. Unfit: `problems`.
 */
export function replyBody(reply: Reply, sentence: Sentence = plainSentence): object {
  if (reply.kind === "unfit") return { problems: reply.problems.map((each) => problemLine(each, sentence)) };
  const by = reply.kind === "refused" ? reply.by : [];
  const refused = reply.problems
    .filter((each) => by.includes(each.code))
    .map((each) => ({ rule: each.code, reason: sentence(each) }));
  const notices = reply.problems
    .filter((each) => !by.includes(each.code))
    .map((each): Notice => ({ code: each.code, severity: each.severity, field: each.field, message: sentence(each) }));
  return { ...reply.value, ...(refused.length > 0 ? { refused } : {}), ...(notices.length > 0 ? { notices } : {}) };
}
