/** What can go wrong with keeping, sending and reading the journal: what it means, what to do. */
import { some, whole } from "../numbers.ts";
import type { Slots } from "./index.ts";

const n = (slots: Slots, name: string): number => Number(slots[name] ?? 0);

/** A sentence that someone else wrote, without its own full stop. */
const unended = (text: string | number | undefined): string => String(text ?? "").replace(/\.+$/, "");

/** What the columns of a count are called. */
export const countColumns = {
  positive: "bees with tracheal mites",
  examined: "bees dissected",
  mites: "varroa mites washed off",
  bees: "bees washed",
} as const;

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
  "only-demonstration-removable": () =>
    "Only the demonstration can be removed. Real records are never removed this way.",
  "two-entries-one-number": () =>
    "This device wrote two different entries under one number, as happens after a restore or a copy. It may not record until it is registered anew; both entries are kept.",
  "records-unavailable": (slots: Slots) =>
    `The records cannot be reached now (${slots.reason}). Try again later: what was acknowledged before is safe, and what was sent now may be sent again.`,
  "records-damaged": (slots: Slots) =>
    `The records are damaged (${unended(slots.reason)}). Stop the service, keep the damaged files, run skepsis verify to see what is touched, and restore the newest backup: devices send again what came after it.`,
  "records-newer": () =>
    "The records were written by a newer version of this program. Use that version; nothing was changed.",
  "entry-unfit": () => "An entry does not have the shape of an entry. It was not taken in.",
  "other-programme": () => "An entry belongs to another programme. It was not taken in.",
  "entry-id-taken": () => "Another entry already has this id. Both are kept apart for a person to look at.",
  "entries-missing-before": () => "Entries that come before this one are missing. Send them first.",
  "chain-broken": () => "An entry does not follow the one before it: something between them was lost or changed.",
  "body-missing": () => "The entry came without its body. It was not taken in.",
  "body-damaged": () => "The body of an entry does not fit its seal: it was damaged or changed. It was not taken in.",
  "service-refused": (slots: Slots) =>
    `The service answered ${slots.status}. The entries stay here and are sent again later.`,
  "service-unreadable": () =>
    "Something other than the service answered, such as the sign-in page of a network. The entries stay here.",
  "service-unreached": () => "No connection to the service. The entries stay here.",
  "clock-off": (slots: Slots) =>
    `The clock of this device is ${some(Math.abs(n(slots, "minutes")), "minute", "minutes")} ${n(slots, "minutes") < 0 ? "behind" : "ahead of"} the service’s. Set it right; nothing was changed.`,
  "not-a-backup": () => "This file is not a backup of this tool.",
  "backup-damaged": (slots: Slots) =>
    `The backup is not whole: ${unended(slots.reason)}. Nothing was taken from it; use another one.`,
  "store-not-empty": () =>
    "There are records here already. A backup is restored only where there are none: it would not be told what came from where.",
  "copy-empty": () => "This copy holds no entry.",
  "copy-of-another-programme": (slots: Slots) =>
    `This copy is of the programme ${slots.programme}; here it is ${slots.here}. Nothing was added.`,
  "not-a-journal": () => "This file is not a journal of this tool.",
  "newer-journal-file": () => "This journal was written by a newer version. Use that version to read it.",
  "journal-cut-short": () => "The journal ends before its last line: the file was cut. Copy it again.",
  "journal-too-long": () => "The journal holds more lines than it says. It was changed after it was written.",
  "journal-line-unreadable": () => "A line of the journal cannot be read.",
};

/** Codes of importing tables; each also names its line and column. */
export const importProblems = {
  "mapping-does-not-fit": (slots: Slots) => `The mapping does not fit at ${slots.field}: ${unended(slots.message)}.`,
  "not-a-text-file": () => "This is not a text file. Expected: a table as comma-separated text.",
  "not-a-workbook": () => "This is not a spreadsheet file that can be read. Save it as .xlsx or as CSV.",
  "workbook-too-large": (slots: Slots) =>
    `The spreadsheet unpacks to more than ${slots.most} megabytes. Keep only the sheet that is wanted.`,
  "file-too-large": (slots: Slots) =>
    `The file has ${slots.megabytes} megabytes. Expected: at most ${slots.most}. Bring it in by parts.`,
  "table-too-large": (slots: Slots) =>
    `The table is too large. Expected: at most ${whole(n(slots, "rows"))} rows and ${whole(n(slots, "columns"))} columns. Bring it in by parts.`,
  "sheet-missing": (slots: Slots) => `There is no sheet “${slots.sheet}”. There are: ${slots.sheets}.`,
  "sheet-chosen": (slots: Slots) => `The sheet “${slots.sheet}” was read. Not read: ${slots.others}.`,
  "json-unreadable": (slots: Slots) =>
    `This is not JSON: ${unended(slots.reason)}. If the file was cut, copy it again.`,
  "json-without-rows": () => "There is no list of rows in this JSON. Expected: a list of objects.",
  "json-row-not-flat": () => "This is not one value. Expected: a text, a number, true, false or null.",
  "table-empty": () => "The table is empty.",
  "table-without-rows": () => "The table has a head and no rows.",
  "other-delimiter": (slots: Slots) =>
    `The columns seem to be parted by “${slots.other}”, not by “${slots.delimiter}”. Say so in the mapping.`,
  "column-without-name": (slots: Slots) => `Column ${slots.place} has no name.`,
  "column-twice": () => "Two columns have the same name.",
  "column-missing": () => "A column that the mapping names is missing.",
  "column-not-mapped": () => "This column is neither used nor left out by the mapping.",
  "blank-rows-skipped": (slots: Slots) => `${some(n(slots, "rows"), "blank row was", "blank rows were")} skipped.`,
  "places-left-out": (slots: Slots) =>
    `Rows of ${some(n(slots, "places"), "place", "places")} not named in the mapping were left out.`,
  "no-line-end-at-end": () => "The last row has no line end; if its last cell looks short, the file was cut.",
  "file-cut-short": (slots: Slots) =>
    `The file ends within a row: ${slots.cells} of ${slots.columns} cells. Copy it again.`,
  "file-cut-in-quotes": () => "The file ends within quotation marks: it was cut. Copy it again.",
  "row-too-short": (slots: Slots) => `The row has ${slots.cells} cells. Expected: ${slots.columns}.`,
  "row-too-long": (slots: Slots) => `The row has ${slots.cells} cells. Expected: ${slots.columns}.`,
  "row-twice": (slots: Slots) => `The row is the same as that of line ${slots.first}.`,
  "quote-inside-cell": () => "A quotation mark stands inside a cell that does not begin with one.",
  "text-after-quote": () => "Text follows the closing quotation mark of a cell.",
  "text-garbled": () => "Signs of another encoding were met. Save the file as UTF-8.",
  "text-missing": () => "The cell is empty; it is needed.",
  "text-too-long": (slots: Slots) => `The text is too long. Expected: at most ${whole(n(slots, "longest"))} signs.`,
  "formula-cell": () => "The cell begins like a formula of a spreadsheet. Expected: a value.",
  "formula-value-taken": () =>
    "A formula stands here: what it was last shown with is taken, and nothing is reckoned anew.",
  "cell-error": () => "The spreadsheet shows an error here. Mend it there, or empty the cell.",
  "code-looks-changed": () => "A spreadsheet may have made this code into a date or a number. Check it.",
  "number-unreadable": () => "This is not a number.",
  "number-not-whole": () => "This is not a whole number.",
  "number-out-of-range": (slots: Slots) => `Outside the range. Expected: from ${slots.least} to ${slots.greatest}.`,
  "word-unknown": (slots: Slots) => `This word is not known. Expected: one of ${slots.known}.`,
  "id-unknown": (slots: Slots) => `${slots.id} is not on record.`,
  "positive-above-examined": (slots: Slots) =>
    `${slots.positive} bees with mites cannot come from ${slots.examined} bees. Check both counts.`,
  "half-a-count": (slots: Slots) => `Half of the count is missing: ${slots.missing}.`,
  "count-column-alone": (slots: Slots) =>
    `This column is half of a count and tells nothing alone. Say which column is “${new Map(Object.entries<string>(countColumns)).get(String(slots.missing)) ?? slots.missing}”, or leave this one out.`,
  "colony-not-of-case": () =>
    "The case that was chosen is about other colonies. Choose a new case for this table, or leave the row out.",
  "counted-on-no-bees": () => "Mites were counted on no bees. Enter how many bees.",
  "date-missing": () => "The day is missing.",
  "date-unreadable": () => "This is not a day. Expected: year-month-day.",
  "date-does-not-exist": () => "This day does not exist.",
  "date-not-iso": (slots: Slots) => `This can only be ${slots.iso}; a day is written year-month-day.`,
  "date-ambiguous": (slots: Slots) =>
    `This can be ${slots.dayFirst} or ${slots.monthFirst}. Say in the mapping which comes first.`,
  "date-in-future": () => "This day lies in the future.",
  "month-missing": (slots: Slots) => `Months are missing: ${slots.months}.`,
  "month-twice": (slots: Slots) => `Month ${slots.month} stands twice.`,
  "mend-does-not-fit": (slots: Slots) => `A mend expects “${slots.expected}” and found “${slots.found}”.`,
  mended: (slots: Slots) => `Mended to “${slots.use}”: ${unended(slots.reason)}.`,
  "stands-differently": (slots: Slots) =>
    `The casebook holds another value for ${slots.what}; nothing was overwritten.`,
  "reckoning-too-long": () =>
    "This takes too long to be reckoned for you here. Ask for less, or ask at the command line.",
};
