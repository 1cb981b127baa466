/** What can go wrong with keeping, sending and reading the journal: what it means, what to do. */
import { some } from "../numbers.ts";
import type { Slots } from "./index.ts";

const n = (slots: Slots, name: string): number => Number(slots[name] ?? 0);

/** A sentence that someone else wrote, without its own full stop. */
export const unended = (text: string | number | undefined): string => String(text ?? "").replace(/\.+$/, "");

export const recordProblems = {
  "store-closed": () =>
    "The records were closed while this was written. Load the page again; nothing written before is lost.",
  "device-full": () =>
    "This device has no room left. What you have just entered is not kept; it still stands in its form. Save a copy of the records, make room on the device, and enter it again.",
  "device-not-written": (slots: Slots) =>
    `What you have just entered could not be written on this device (${slots.reason}) and is not kept. Save a copy of the records, load the page again, and enter it again.`,
  "device-cleared": (slots: Slots) =>
    n(slots, "unsent") === 0
      ? "The browser has cleared the records of this device. All of them had been sent: they come back with the next exchange."
      : `The browser has cleared the records of this device. ${some(n(slots, "unsent"), "entry that had not been sent is", "entries that had not been sent are")} gone unless there is a saved copy: open it under Records. The rest comes back with the next exchange.`,
  "store-removed": () => "The records of this device were removed while the page was open. Load the page again.",
  "two-entries-one-number": () =>
    "This device wrote two different entries under one number, as happens after a restore or a copy. It may not record until it is registered anew; both entries are kept.",
  "entry-unfit": () => "This has not the shape of an entry. It was not taken in.",
  "other-programme": () => "It belongs to another programme. It was not taken in.",
  "entry-id-taken": () => "Another entry has its id. It was not taken in.",
  "entries-missing-before": () => "Entries before this one are missing. Send them first.",
  "chain-broken": () => "It does not follow the entry before it: something was lost or changed.",
  "body-missing": () => "It came without its body and was not taken in.",
  "body-damaged": () => "The body of an entry was damaged or changed. It was not taken in.",
  "service-refused": (slots: Slots) =>
    `The service answered ${slots.status}. The entries stay here and are sent again later.`,
  "service-unreadable": () =>
    "Something other than the service answered, such as the sign-in page of a network. The entries stay here.",
  "service-unreached": () => "No connection to the service. The entries stay here.",
  "clock-off": (slots: Slots) =>
    `The clock of this device is ${some(Math.abs(n(slots, "minutes")), "minute", "minutes")} ${n(slots, "minutes") < 0 ? "behind" : "ahead of"} the service’s. Set it right; nothing was changed.`,
  "file-not-taken": (slots: Slots) =>
    `A photo or voice note was not sent: ${unended(slots.reason)}. It stays on this device.`,
};
