/** What can go wrong with the service's database and its backups: the service and the commands say these, no page does. */
import type { Slots } from "./index.ts";
import { unended } from "./records.ts";

export const databaseProblems = {
  "records-unavailable": (slots: Slots) =>
    `The records cannot be reached now (${slots.reason}). Try again later: what was acknowledged before is safe, and what was sent now may be sent again.`,
  "records-damaged": (slots: Slots) =>
    `The records are damaged (${unended(slots.reason)}). Stop the service, keep the damaged files, run skepsis verify to see what is touched, and restore the newest backup: devices send again what came after it.`,
  "records-newer": () =>
    "The records were written by a newer version of this program. Use that version; nothing was changed.",
  "not-a-backup": () => "This file is not a backup of this tool.",
  "backup-damaged": (slots: Slots) =>
    `The backup is not whole: ${unended(slots.reason)}. Nothing was taken from it; use another one.`,
  "store-not-empty": () =>
    "There are records here already. A backup is restored only where there are none: it would not be told what came from where.",
};
