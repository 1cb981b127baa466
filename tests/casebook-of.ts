/** Casebooks for tests: from drafts as one device would seal them, and that of the demonstration. */
import { readFileSync } from "node:fs";
import path from "node:path";
import { type Casebook, fold } from "../src/casebook/index.ts";
import { decodeJournal, type EntryDraft, newEntryId, newSalt, sealChain } from "../src/journal/index.ts";

const root = path.join(import.meta.dirname, "..");

/** Seals drafts one after the other as one device and folds them. */
export function casebookOf(drafts: readonly EntryDraft[], recordedAt = "2026-03-04T10:00:00.000Z"): Casebook {
  const end = { device: "device-1", head: null, programme: "main", author: "reader 1", recordedAt };
  const chances = drafts.map((_, index) => {
    const random = new Uint8Array(16).fill(index % 256);
    random[0] = index >> 8;
    return { id: newEntryId(Date.parse(recordedAt) + index, random), salt: newSalt(random) };
  });
  return fold(sealChain(drafts, end, chances));
}

/** The demonstration casebook. */
export function demonstrationCasebook(): Casebook {
  const journal = decodeJournal(readFileSync(path.join(root, "examples", "demonstration", "journal.jsonl"), "utf8"));
  if (!journal.ok) throw new Error("the demonstration journal cannot be read");
  return fold(journal.value);
}
