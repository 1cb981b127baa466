/** What can go wrong with the service's database: the service and the commands say these, no page does. */
import type { Slots } from "./index.ts";
import { unended } from "./records.ts";

export const databaseProblems = {
  "records-unavailable": (slots: Slots) =>
    `The records cannot be reached now (${slots.reason}). Try again later: what was acknowledged before is safe, and what was sent now may be sent again.`,
  "records-damaged": (slots: Slots) =>
    `The records are damaged (${unended(slots.reason)}). Stop the service, keep the damaged files, run skepsis verify to see what is touched, and restore the newest backup: devices send again what came after it.`,
  "only-demonstration-removable": () =>
    "Only the demonstration can be removed. Real records are never removed this way.",
  "records-newer": () =>
    "The records were written by a newer version of this program. Use that version; nothing was changed.",
};
