/** The troubles of importing: code → the slots its sentence needs. Each also has `line` and `column` (may be empty). */

/** Codes of the `ImportProblem`s this folder returns. */
export interface TransferProblems {
  /** blocked: the mapping itself; has no line or column. */
  readonly "mapping-does-not-fit": { readonly field: string; readonly message: string };
  /** blocked: the file as a whole. */
  readonly "not-a-text-file": Record<never, never>;
  readonly "not-a-workbook": Record<never, never>;
  readonly "workbook-too-large": { readonly most: number };
  readonly "file-too-large": { readonly megabytes: number; readonly most: number };
  readonly "table-too-large": { readonly rows: number; readonly columns: number };
  readonly "sheet-missing": { readonly sheet: string; readonly sheets: string };
  /** noted: the workbook has several sheets, and the mapping names none. */
  readonly "sheet-chosen": { readonly sheet: string; readonly others: string };
  readonly "json-unreadable": { readonly reason: string };
  readonly "json-without-rows": Record<never, never>;
  readonly "json-row-not-flat": Record<never, never>;
  readonly "table-empty": Record<never, never>;
  readonly "table-without-rows": Record<never, never>;
  readonly "other-delimiter": { readonly delimiter: string; readonly other: string };
  readonly "column-without-name": { readonly place: number };
  readonly "column-twice": Record<never, never>;
  readonly "column-missing": Record<never, never>;
  /** warned: a column that the mapping neither uses nor leaves out. */
  readonly "column-not-mapped": Record<never, never>;
  /** noted */
  readonly "blank-rows-skipped": { readonly rows: number };
  /** noted: rows of places that the mapping does not name. */
  readonly "places-left-out": { readonly places: number };
  /** noted: the last row has no line end; if its last cell looks short, the file was cut. */
  readonly "no-line-end-at-end": Record<never, never>;
  /** blocked: a row. */
  readonly "file-cut-short": { readonly cells: number; readonly columns: number };
  readonly "file-cut-in-quotes": Record<never, never>;
  readonly "row-too-short": { readonly cells: number; readonly columns: number };
  readonly "row-too-long": { readonly cells: number; readonly columns: number };
  readonly "row-twice": { readonly first: number };
  readonly "quote-inside-cell": { readonly place: number };
  readonly "text-after-quote": { readonly place: number };
  /** blocked: a cell. */
  readonly "text-garbled": Record<never, never>;
  readonly "text-missing": Record<never, never>;
  readonly "text-too-long": { readonly longest: number };
  readonly "formula-cell": Record<never, never>;
  /** warned: the value that a formula was last shown with. */
  readonly "formula-value-taken": Record<never, never>;
  /** blocked: a cell that shows an error of the spreadsheet. */
  readonly "cell-error": Record<never, never>;
  /** warned: a code that a spreadsheet may have made into a date or a number. */
  readonly "code-looks-changed": Record<never, never>;
  readonly "number-unreadable": Record<never, never>;
  readonly "number-not-whole": Record<never, never>;
  readonly "number-out-of-range": { readonly least: number; readonly greatest: number };
  readonly "word-unknown": { readonly known: string };
  readonly "id-unknown": { readonly id: string };
  readonly "positive-above-examined": { readonly positive: number; readonly examined: number };
  readonly "half-a-count": { readonly missing: string };
  /** blocked: a column that no other completes. */
  readonly "count-column-alone": { readonly missing: string };
  /** blocked: the case on record that was chosen is about other colonies. */
  readonly "colony-not-of-case": Record<never, never>;
  readonly "counted-on-no-bees": Record<never, never>;
  readonly "date-missing": Record<never, never>;
  readonly "date-unreadable": Record<never, never>;
  readonly "date-does-not-exist": Record<never, never>;
  readonly "date-not-iso": { readonly iso: string };
  /** Either order of day and month gives a date; nobody guesses. */
  readonly "date-ambiguous": { readonly dayFirst: string; readonly monthFirst: string };
  readonly "date-in-future": { readonly today: string };
  readonly "temperatures-look-like-fahrenheit": { readonly highest: number };
  readonly "month-missing": { readonly months: string };
  readonly "month-twice": { readonly month: number };
  readonly "mend-does-not-fit": { readonly expected: string; readonly found: string };
  /** noted: a mend of the mapping was used. */
  readonly mended: { readonly use: string; readonly reason: string };
  /** warned: the casebook holds another value in this place; nothing is overwritten. */
  readonly "stands-differently": { readonly what: string };
}
