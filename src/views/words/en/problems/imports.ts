/** What can go wrong with bringing in a table: no page but that one says these. */
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
