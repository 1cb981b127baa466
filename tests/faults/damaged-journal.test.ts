import { describe, expect, it } from "vitest";
import { decodeJournal, type Entry, encodeJournal, headsOf, verifyChain } from "../../src/journal/index.ts";
import { everyKind } from "../journals/every-kind.ts";

const story = everyKind();
const file = encodeJournal(story);
const heads = headsOf(story);
const lines = file.split("\n");

/** What a reader of the file would be told: the line, or the entry, or nothing at all. */
function findings(text: string): readonly string[] {
  const read = decodeJournal(text);
  if (!read.ok) return read.problems.map((problem) => `${problem.code} ${problem.field}`);
  return verifyChain(read.value, heads).faults.map((fault) => `${fault.reason} ${fault.device} ${fault.seq}`);
}

/** Another byte that is text as well, so that the line may still be JSON. */
const flipped = (text: string, at: number): string =>
  text.slice(0, at) + String.fromCharCode(text.charCodeAt(at) ^ 1) + text.slice(at + 1);

/** Whether two texts of JSON mean the same. */
const meansTheSame = (one: string, other: string): boolean => {
  try {
    return JSON.stringify(JSON.parse(one)) === JSON.stringify(JSON.parse(other));
  } catch {
    return false;
  }
};

describe("a damaged journal file", () => {
  it("is found out whichever byte is flipped, and the damage is named near its place", () => {
    let tried = 0;
    for (const [number, line] of lines.entries()) {
      const { header } = number > 0 && line ? (JSON.parse(line) as Entry) : { header: null };
      for (let at = number % 7; at < line.length; at += 41) {
        const damaged = flipped(line, at);
        if (meansTheSame(line, damaged)) continue;
        tried += 1;
        const found = findings(lines.with(number, damaged).join("\n"));
        expect(found, `line ${number + 1}, byte ${at}: ${damaged.slice(at - 10, at + 10)}`).not.toEqual([]);
        const told = found.join("; ");
        const places = header
          ? [`line ${number + 1}`, ` ${header.device} ${header.seq}`, ` ${header.device} ${header.seq + 1}`]
          : ["line "];
        expect(
          places.some((place) => told.includes(place)),
          `${told} for line ${number + 1}`,
        ).toBe(true);
      }
    }
    expect(tried).toBeGreaterThan(400);
  });

  it("is found out when any one line is lost, wherever the first line is mended", () => {
    for (let gone = 1; gone < lines.length - 1; gone += 1) {
      const rest = lines.filter((_, index) => index !== gone);
      expect(findings(rest.join("\n"))[0]).toMatch(/^journal-cut-short/);
      const mended = rest.with(0, (rest[0] ?? "").replace(`${story.length}`, `${story.length - 1}`)).join("\n");
      const { header } = JSON.parse(lines[gone] ?? "") as Entry;
      expect(findings(mended)).toContainEqual(
        expect.stringMatching(new RegExp(`^(gap|head-missing) ${header.device} ${header.seq}$`)),
      );
    }
  });

  it("is as good as new when lines are doubled or in another order", () => {
    const [first, ...rest] = story.map((entry) => entry);
    expect(findings(encodeJournal([...rest, first as Entry, ...rest]))).toEqual([]);
    expect(findings(encodeJournal(story.toReversed()))).toEqual([]);
  });
});
