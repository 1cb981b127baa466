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

/** What a problem says to a person, as views/words has it; null where it has no sentence for the code. */
export type Sentence = (problem: Problem) => string | null;
const unspoken: Sentence = () => null;

/** Names the field, what was given and what is expected; serves where no better sentence is known. */
export function plainSentence({ code, field, given, expected, slots }: Problem): string {
  const place = field ?? "The input";
  if (missing.includes(code)) return `${place} is missing. Expected: ${expected}.`;
  if (unknown.includes(code)) return `${place} is not known here. Expected: ${expected}.`;
  if (expected !== undefined) return `${place}: given ${shown(given)}, expected ${expected}.`;
  const details = Object.entries(slots).map(([name, value]) => `${name} ${value}`);
  return `${field ? `${field}: ` : ""}${code.replaceAll("-", " ")}${details.length > 0 ? ` (${details.join(", ")})` : ""}.`;
}

const missing: readonly string[] = ["field-missing", "flag-empty", "request-body-missing"];
const unknown: readonly string[] = ["field-unknown", "flag-unknown"];

/** A problem that does not stand in the way, as programs read it. */
export const noticeOf = (problem: Problem, sentence: Sentence = unspoken): Notice => ({
  code: problem.code,
  severity: problem.severity,
  field: problem.field,
  message: sentence(problem) ?? plainSentence(problem),
});

/** A value as it was given, shortened to 80 signs. */
export function shown(value: unknown): string {
  if (value === undefined) return "nothing";
  const text = JSON.stringify(value) ?? String(value);
  return text.length > 80 ? `${text.slice(0, 79)}…` : text;
}

/** One problem as programs read it. Its message names the field, what was given and what is expected. */
export function problemLine(problem: Problem, sentence: Sentence = unspoken): ProblemLine {
  const { field, given = null, expected = null } = problem;
  const said = expected === null ? sentence(problem) : null;
  const message = said === null ? plainSentence(problem) : `${field === null ? "" : `${field}: `}${said}`;
  return { field, given, expected, message };
}

/**
 * The one JSON value of a reply. Answered: the answer, and `notices` when there are any. Refused: `refused`, a list of
 * rule and reason, beside what can be said all the same. Unfit: `problems`.
 */
export function replyBody(reply: Reply, sentence: Sentence = unspoken): object {
  if (reply.kind === "unfit") return { problems: reply.problems.map((each) => problemLine(each, sentence)) };
  const by = reply.kind === "refused" ? reply.by : [];
  const refused = reply.problems
    .filter((each) => by.includes(each.code))
    .map((each) => ({ rule: each.code, reason: sentence(each) ?? plainSentence(each) }));
  const notices = reply.problems.filter((each) => !by.includes(each.code)).map((each) => noticeOf(each, sentence));
  return { ...reply.value, ...(refused.length > 0 ? { refused } : {}), ...(notices.length > 0 ? { notices } : {}) };
}
