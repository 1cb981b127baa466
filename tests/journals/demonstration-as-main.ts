/** The demonstration's journal as one device of an ordinary programme would have written it. */
import { readFileSync } from "node:fs";
import path from "node:path";
import { decodeJournal, type Entry, type EntryDraft, sealChain } from "../../src/journal/index.ts";

const file = path.join(import.meta.dirname, "..", "..", "examples", "demonstration", "journal.jsonl");

/** Entries of the programme `main`, with the ids and the words of the demonstration. */
export function demonstrationAsMain(): readonly Entry[] {
  const journal = decodeJournal(readFileSync(file, "utf8"));
  if (!journal.ok) throw new Error("the demonstration journal cannot be read");
  const whole = journal.value.flatMap(({ header, body }) => (body === null ? [] : [{ header, body }]));
  const drafts = whole.map(({ header, body }): EntryDraft => {
    const about = header.about.map((each) => (each === "demonstration" ? "main" : each));
    return {
      kind: header.kind,
      at: header.at,
      about,
      replaces: header.replaces,
      data: body.data,
    } as unknown as EntryDraft;
  });
  const end = { device: "device-1", head: null, programme: "main", author: "reader 1" };
  return sealChain(
    drafts,
    { ...end, recordedAt: "2026-11-19T10:00:00.000Z" },
    whole.map(({ header, body }) => ({ id: header.id, salt: body.salt })),
  );
}
