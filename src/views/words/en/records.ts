/** Sentences of the page about the records themselves: whether they are whole, sent, and kept elsewhere. */
import { some, whole } from "./numbers.ts";

const faults = {
  gap: "is missing",
  "wrong-prev": "does not follow the entry before it",
  "wrong-content": "is not as it was written",
  fork: "stands twice, with different words",
  "seq-restart": "begins the chain a second time",
  "head-missing": "was noted and is missing",
  "head-differs": "is not the one that was noted",
};

const filed = (files: number): string => some(files, "photo or voice note", "photos and voice notes");

export const records = {
  title: "Records",
  answer: (slots: { readonly entries: number; readonly devices: number; readonly unsent: number }) =>
    slots.entries === 0
      ? "**Nothing is on record on this device yet.**"
      : `**${some(slots.entries, "entry", "entries")} of ${some(slots.devices, "device", "devices")} on record here.** ${
          slots.unsent === 0 ? "All are sent." : `${whole(slots.unsent)} not yet sent.`
        }`,
  under: (slots: {
    readonly saved: string | null;
    readonly reached: boolean | null;
    readonly persisted: boolean | null;
  }) =>
    [
      slots.saved === null ? "" : `Last written here ${slots.saved}.`,
      slots.reached === null ? "" : slots.reached ? "The service answers." : "The service does not answer now.",
      slots.persisted === null
        ? ""
        : slots.persisted
          ? "The browser has promised to keep what is here."
          : "The browser has not promised to keep what is here: save a copy.",
    ]
      .filter(Boolean)
      .join(" "),
  wholeHead: "Are they whole?",
  wholeUnder:
    "Every entry is sealed onto the one before it, by the device that wrote it. The check walks each chain from its first entry.",
  check: "Check the chains",
  checking: "Checking …",
  intact: (slots: { readonly entries: number; readonly devices: number }) =>
    `**Whole.** ${some(slots.entries, "entry", "entries")} of ${some(slots.devices, "device", "devices")}, none missing and each as it was written.`,
  broken: (slots: { readonly faults: number }) =>
    `**${some(slots.faults, "place is", "places are")} not as they should be.** The rest can be used. Keep a copy, and tell the person who runs the service.`,
  fault: (slots: { readonly device: string; readonly seq: number; readonly reason: keyof typeof faults }) =>
    `Entry ${whole(slots.seq)} of device ${slots.device} ${faults[slots.reason]}.`,
  more: (slots: { readonly count: number }) => `${whole(slots.count)} more.`,
  bodiless: (slots: { readonly entries: number }) =>
    `${some(slots.entries, "entry has", "entries have")} no words any more: erased by a later entry, or withheld. That is no fault.`,
  holes: (slots: { readonly holes: number }) =>
    `${some(slots.holes, "stretch", "stretches")} of others’ entries were not given to you: your role does not include them. That is no fault.`,
  copyHead: "A copy elsewhere",
  copyUnder:
    "For a yard without a net, or a phone that is dying: save a copy as a file, carry it to another device, open it there. What is new there is added and sent; nothing is overwritten.",
  open: "Open a saved copy",
  openHint: "A file that was saved here or on another device.",
  reading: "Reading the copy …",
  brings: (slots: {
    readonly fresh: number;
    readonly known: number;
    readonly devices: number;
    readonly files: number;
  }) =>
    slots.fresh === 0 && slots.files > 0
      ? `**${filed(slots.files)} not on this device.** All ${some(slots.known, "entry is", "entries are")} here already.`
      : slots.fresh === 0
        ? `**Nothing new.** All ${some(slots.known, "entry is", "entries are")} here already.`
        : `**${some(slots.fresh, "entry is", "entries are")} new here**, ${whole(slots.known)} are here already. The copy holds ${some(slots.devices, "device", "devices")}${slots.files === 0 ? "" : ` and ${filed(slots.files)} not on this device`}.`,
  take: (slots: { readonly fresh: number; readonly files: number }) =>
    slots.files === 0
      ? `Add ${some(slots.fresh, "entry", "entries")}`
      : slots.fresh === 0
        ? `Add ${filed(slots.files)}`
        : `Add ${some(slots.fresh, "entry", "entries")} and ${filed(slots.files)}`,
  taken: (slots: { readonly taken: number; readonly files: number; readonly refused: number }) =>
    slots.refused === 0
      ? `**${some(slots.taken, "entry was", "entries were")} added${slots.files === 0 ? "" : `, and ${filed(slots.files)}`}.** They are sent with the next exchange.`
      : `**${some(slots.taken, "entry was", "entries were")} added, ${whole(slots.refused)} refused:**`,
  failed: "The check broke. Nothing was changed; load the page again.",
  apartHead: "Kept apart by the service",
  apartUnder: "Entries of a restored, copied or lost phone, for a person to judge.",
  apart: "See what is kept apart",
  tableHead: "A table of others",
  tableUnder: "Counts and findings that stand in a spreadsheet, a CSV or a JSON file.",
  bringTable: "Bring in a table",
  headsHead: "The newest entry of each device",
  headsUnder: "To note elsewhere: only a note kept elsewhere shows that the end of a chain was cut off.",
  heads: { device: "Device", entry: "Entry", seal: "Seal" },
  thisDevice: "this device",
};
