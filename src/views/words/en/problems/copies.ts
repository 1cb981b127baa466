/** What can go wrong with a journal in a file: the page of the records and the commands say these. */
import type { Slots } from "./index.ts";

export const copyProblems = {
  "copy-empty": () => "This copy holds no entry.",
  "copy-of-another-programme": (slots: Slots) =>
    `This copy is of the programme ${slots.programme}; here it is ${slots.here}. Nothing was added.`,
  "not-a-journal": () => "This file is not a journal of this tool.",
  "newer-journal-file": () => "This journal was written by a newer version. Use that version to read it.",
  "journal-cut-short": () => "The journal ends before its last line: the file was cut. Copy it again.",
  "journal-too-long": () => "The journal holds more lines than it says. It was changed after it was written.",
  "journal-line-unreadable": () => "A line of the journal cannot be read.",
};
