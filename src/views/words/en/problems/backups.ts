/** What can go wrong with a backup: the command line says these, no page does. */
import type { Slots } from "./index.ts";
import { unended } from "./records.ts";

export const backupProblems = {
  "not-a-backup": () => "This file is not a backup of this tool.",
  "backup-damaged": (slots: Slots) =>
    `The backup is not whole: ${unended(slots.reason)}. Nothing was taken from it; use another one.`,
  "backup-beyond": (slots: Slots) =>
    `This file would unpack to more than any backup has: ${slots.reason}. Nothing was taken from it.`,
  "store-not-empty": () =>
    "There are records here already. A backup is restored only where there are none: it would not be told what came from where.",
};
