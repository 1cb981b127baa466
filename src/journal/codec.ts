/** A journal as a text file: JSON Lines, the first line telling how many entries follow. */
import { answered, blocked, problem, type Result } from "../units/index.ts";
import type { Entry } from "./entry.ts";
import { canonicalJson } from "./hash.ts";
import { entryMisfit } from "./shape.ts";

const format = "skepsis-journal";
const version = 1;

/**
 * The entries as text, one a line, in the order given, after a first line with their number.
 * The same entries always give the same bytes.
 * @throws DomainError when an entry has no JSON spelling
 */
export function encodeJournal(entries: readonly Entry[]): string {
  const first = { format, version, entries: entries.length };
  return [first, ...entries].map((line) => `${canonicalJson(line)}\n`).join("");
}

/**
 * The entries of a journal file, word for word, or what keeps it from being one, by line number.
 * A file that was cut short anywhere, even between two lines, is refused: nothing of it is taken over.
 * Says nothing about hashes; for those see `verifyChain`.
 */
export function decodeJournal(text: string): Result<readonly Entry[]> {
  const lines = text.replace(/^\uFEFF/, "").split("\n");
  const opening = readOpening(lines[0] ?? "");
  if (!opening.ok) return opening;
  const expected = opening.value;
  const wholeLines = lines.slice(1, -1);
  const rest = lines.length > 1 ? (lines.at(-1) ?? "") : "";

  if (rest !== "" || wholeLines.length < expected) {
    const complete = Math.min(wholeLines.length, expected);
    return blocked(
      problem("journal-cut-short", "blocked", `line ${complete + 2}`, {
        given: rest.slice(0, 80),
        expected: `${expected} entries, each on a line of its own that ends`,
        slots: { line: complete + 2, expected, complete },
      }),
    );
  }
  if (wholeLines.length > expected) {
    return blocked(
      problem("journal-too-long", "blocked", `line ${expected + 2}`, {
        given: wholeLines[expected]?.slice(0, 80),
        expected: `the end of the file after ${expected} entries`,
        slots: { line: expected + 2, expected, complete: wholeLines.length },
      }),
    );
  }
  const entries: Entry[] = [];
  for (const [index, line] of wholeLines.entries()) {
    const entry = readLine(line, index + 2);
    if (!entry.ok) return entry;
    entries.push(entry.value);
  }
  return answered(entries);
}

function readOpening(line: string): Result<number> {
  const value = parse(line);
  const opening = typeof value === "object" && value !== null ? (value as Record<string, unknown>) : {};
  if (opening.format !== format || !Number.isInteger(opening.entries) || Number(opening.entries) < 0) {
    return blocked(
      problem("not-a-journal", "blocked", "line 1", {
        given: line.slice(0, 80),
        expected: `a first line that names the format ${format} and the number of entries`,
        slots: { line: 1 },
      }),
    );
  }
  if (opening.version !== version) {
    return blocked(
      problem("newer-journal-file", "blocked", "line 1", {
        given: opening.version,
        expected: `version ${version} of the file format`,
        slots: { line: 1, version },
      }),
    );
  }
  return answered(Number(opening.entries));
}

function readLine(line: string, number: number): Result<Entry> {
  const value = parse(line);
  const misfit = value === undefined ? { path: "", expected: "one entry, spelt as JSON" } : entryMisfit(value);
  if (!misfit) return answered(value as Entry);
  return blocked(
    problem("journal-line-unreadable", "blocked", `line ${number}${misfit.path ? `: ${misfit.path}` : ""}`, {
      given: line.slice(0, 80),
      expected: misfit.expected,
      slots: { line: number, path: misfit.path },
    }),
  );
}

/** Undefined when the text is not JSON; JSON itself has no undefined. */
function parse(text: string): unknown {
  try {
    return JSON.parse(text) as unknown;
  } catch {
    return undefined;
  }
}
