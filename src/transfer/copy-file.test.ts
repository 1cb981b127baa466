import { strFromU8, strToU8, zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { fileStory, photo, sha256Of, voice } from "../../tests/journals/file-story.ts";
import { encodeJournal, largestFile } from "../journal/index.ts";
import { filesNamedBy, isArchive, readSavedCopy, savedCopy } from "./copy-file.ts";

const story = fileStory();
const file = (bytes: Uint8Array<ArrayBuffer>) => ({ sha256: sha256Of(bytes), bytes });

describe("a saved copy with files", () => {
  it("[TR38] gives back the journal and the files, byte for byte", () => {
    const copy = savedCopy(encodeJournal(story), [file(photo), file(voice)]);
    expect(isArchive(copy)).toBe(true);
    expect(isArchive(strToU8(encodeJournal(story)))).toBe(false);
    expect(readSavedCopy(copy)).toEqual({ journal: encodeJournal(story), files: [file(photo), file(voice)] });
    expect(filesNamedBy(story)).toEqual([sha256Of(photo), sha256Of(voice), sha256Of(voice.slice(0, 1500))]);
  });

  it("[TR39] takes nothing but a journal and files of lawful size out of an archive, and nothing out of a damaged one", () => {
    const journal = strToU8(encodeJournal(story));
    const hash = "a".repeat(64);
    const inside = {
      "journal.jsonl": journal,
      [`files/${hash}`]: new Uint8Array(largestFile + 1),
      [`files/../../${hash}`]: photo,
      "files/passwd": photo,
      "page.html": strToU8("<script>"),
    };
    expect(readSavedCopy(zipSync(inside))).toEqual({ journal: encodeJournal(story), files: [] });
    const copy = savedCopy(encodeJournal(story), [file(photo)]);
    for (let length = 0; length < copy.length; length += 97) expect(readSavedCopy(copy.slice(0, length))).toBeNull();
    expect(readSavedCopy(zipSync({ "other.txt": journal }))).toBeNull();
    expect(readSavedCopy(journal)).toBeNull();
    // Each of lawful size, all together far more than the archive: made to fill the memory.
    const many = Object.fromEntries(
      Array.from({ length: 16 }, (_, index) => [`files/${index.toString(16).repeat(64)}`, new Uint8Array(1024 * 1024)]),
    );
    expect(readSavedCopy(zipSync({ "journal.jsonl": journal, ...many }))).toBeNull();
    // Two journals under one name: each would be unpacked, and which of them counts is anybody's guess.
    const two = strFromU8(zipSync({ "journal.jsonl": journal, "journal.json2": journal }), true);
    expect(readSavedCopy(strToU8(two.replaceAll("journal.json2", "journal.json3"), true))?.files).toEqual([]);
    expect(readSavedCopy(strToU8(two.replaceAll("journal.json2", "journal.jsonl"), true))).toBeNull();
  });
});
