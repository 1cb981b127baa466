/** Sentences of the page that brings a table in. */
import { list, some, whole } from "./numbers.ts";
import { countColumns } from "./problems/imports.ts";

/** Names that are told one by one. */
const mostNamed = 12;

function named(names: readonly string[], one: string, many: string): string {
  if (names.length === 0) return "";
  const more = names.length - mostNamed;
  const told = more > 0 ? [...names.slice(0, mostNamed), `${whole(more)} more`] : names;
  return `${names.length === 1 ? one : many} ${list(told)}`;
}

export const table = {
  title: "Bring in a table",
  under:
    "Counts and findings that stand in a spreadsheet, a CSV or a JSON file. It is tried first: nothing is written until you press Add, and then all of it or nothing.",
  fileHead: "The file",
  file: "A table",
  fileHint: "XLSX, CSV or JSON, at most 64 megabytes. One row a colony, names of columns in the first row.",
  mapping: "A mapping saved before",
  mappingHint: "Only when there is one: it says what each column is, and which cells were mended.",
  reading: "Reading the table …",
  failed: "The table could not be looked at: an error of ours. Nothing was written; load the page again.",
  rows: (slots: { readonly file: string; readonly rows: number; readonly columns: number }) =>
    `${slots.file}: **${some(slots.rows, "row", "rows")}, ${some(slots.columns, "column", "columns")}.**`,
  columnsHead: "What each column is",
  columnsUnder: "Proposed by the names. Change what is wrong; what is left out is not brought in.",
  remembered: "A table with these columns was brought in before: the same mapping is used.",
  anew: "Choose the columns anew",
  column: "Column",
  first: "First values",
  is: "Is",
  isOf: (slots: { readonly column: string }) => `What the column ${slots.column} is`,
  uses: {
    "left-out": "left out",
    place: "apiary",
    colony: "colony",
    day: "day it was seen or sampled",
    positive: countColumns.positive,
    examined: countColumns.examined,
    mites: countColumns.mites,
    bees: countColumns.bees,
    laboratory: "laboratory of the result",
  },
  finding: (slots: { readonly term: string }) => `finding: ${slots.term}`,
  states: (slots: { readonly present: string; readonly absent: string; readonly notLooked: string }) =>
    [
      slots.present ? `Present: ${slots.present}.` : "",
      slots.absent ? `Absent: ${slots.absent}.` : "",
      slots.notLooked ? `Not looked: ${slots.notLooked}.` : "",
    ]
      .filter(Boolean)
      .join(" "),
  placesHead: "Apiaries in the table",
  placesUnder:
    "One that stands on record gets the results; a new one is registered, and found again when the table comes a second time.",
  noPlace:
    "No column is the apiary: all rows are of the one named here. Where they are of several, choose the column above.",
  meant: (slots: { readonly name: string }) => `What ${slots.name} is`,
  newApiary: "a new apiary",
  goesTo: (slots: { readonly name: string }) => `Case that ${slots.name} goes to`,
  newCase: "a new case",
  placeCode: (slots: { readonly name: string }) => `Code of ${slots.name}`,
  placeName: (slots: { readonly name: string }) => `Name of ${slots.name}`,
  district: "Where they are",
  districtHint: "County or district, for all of them.",
  tableHead: "The table itself",
  key: "Short name of the table",
  keyHint: "Stays the same when it comes again: small letters, digits and hyphens.",
  source: "Where it is from",
  asOf: "Day it was made",
  question: "What the cases are about",
  try: "Try it",
  trying: "Trying …",
  triedHead: "What would be added",
  would: (slots: {
    readonly rows: number;
    readonly colonies: number;
    readonly results: number;
    readonly findings: number;
    readonly added: number;
  }) =>
    `**${some(slots.added, "entry", "entries")} would be added**, from ${some(slots.rows, "row", "rows")}: ${some(slots.colonies, "colony", "colonies")}, ${some(slots.results, "test result", "test results")}, ${some(slots.findings, "finding", "findings")}.`,
  newHere: (slots: { readonly apiaries: readonly string[]; readonly colonies: readonly string[] }) =>
    `Not on record before: ${[named(slots.apiaries, "apiary", "apiaries"), named(slots.colonies, "colony", "colonies")]
      .filter(Boolean)
      .join("; ")}. Where one of them stands there by another name, mend the name first.`,
  nothingNew: "**Nothing new.** All of it stands on record already.",
  standing: (slots: { readonly standing: number; readonly differing: number }) =>
    [
      slots.standing > 0 ? `${some(slots.standing, "entry stands", "entries stand")} on record already.` : "",
      slots.differing > 0
        ? `${some(slots.differing, "value stands", "values stand")} differently on record: nothing is overwritten; correct it in the case.`
        : "",
    ]
      .filter(Boolean)
      .join(" "),
  blocked: (slots: { readonly blocked: number }) =>
    `**${some(slots.blocked, "place stands", "places stand")} in the way.** Nothing is brought in until each is mended here, or in the file and chosen again.`,
  heed: (slots: { readonly heed: number }) => `${some(slots.heed, "thing", "things")} to look at before you add:`,
  at: (slots: { readonly line: number; readonly column: string }) =>
    slots.column === "" ? `Row ${whole(slots.line)}` : `Row ${whole(slots.line)}, ${slots.column}`,
  given: (slots: { readonly given: string }) => `“${slots.given}”`,
  more: (slots: { readonly count: number }) => `${whole(slots.count)} more like these.`,
  mends: {
    use: (slots: { readonly use: string }) => `Read it as ${slots.use}`,
    "nothing-recorded": (slots: { readonly use: string }) => `“${slots.use}” is nothing recorded`,
    swap: () => "Swap the two",
    "leave-out": () => "Leave the count out",
    delimiter: () => "Part the columns so",
    "date-order": () => "The day comes first",
    unit: () => "They are Fahrenheit",
  },
  monthFirst: "The month comes first",
  states3: { present: "present", absent: "absent", notLooked: "not looked" },
  wordIs: (slots: { readonly word: string; readonly state: string }) => `“${slots.word}” is ${slots.state}`,
  mendReason: "agreed to when the table was brought in",
  add: (slots: { readonly added: number }) => `Add ${some(slots.added, "entry", "entries")}`,
  adding: "Adding …",
  added: (slots: { readonly added: number }) =>
    `**${some(slots.added, "entry was", "entries were")} added.** They are sent with the next exchange.`,
  toCases: "To the cases",
  saveMapping: "Save the mapping",
  mappingUnfit: "This file is no mapping.",
};
