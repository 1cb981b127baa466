/** Trouble in an imported table, by line and column, with the mend that would set it right. */
import type { Problem, Severity } from "../units/index.ts";
import type { TransferProblems } from "./problems.ts";

/** A change a person may agree to; nothing is mended unasked. */
export type Mend =
  | { readonly kind: "use"; readonly use: string }
  /** Read this word as nothing recorded, wherever it stands. */
  | { readonly kind: "nothing-recorded"; readonly use: string }
  | { readonly kind: "swap"; readonly column: string; readonly with: string }
  | { readonly kind: "leave-out" }
  | { readonly kind: "delimiter"; readonly use: string }
  | { readonly kind: "date-order"; readonly use: string }
  | { readonly kind: "unit"; readonly use: "fahrenheit" };

/** A `Problem` that knows its place in the table. `field` is `line 12, d2_bees`. */
export interface ImportProblem extends Problem {
  readonly code: keyof TransferProblems;
  /** Line of the file, 1 for the header. */
  readonly line: number;
  readonly column: string | null;
  /** Null when we know of none. */
  readonly mend: Mend | null;
}

export type ImportAnswer<T> =
  | { readonly ok: true; readonly value: T; readonly problems: readonly ImportProblem[] }
  | { readonly ok: false; readonly problems: readonly ImportProblem[] };

export interface ImportProblemDetail {
  readonly severity?: Severity;
  readonly line: number;
  readonly column?: string | null;
  readonly given?: unknown;
  readonly slots?: Readonly<Record<string, string | number>>;
  readonly mend?: Mend;
}

/** Builds an ImportProblem; blocked unless said otherwise. Its slots always hold line and column. */
export function importProblem(code: keyof TransferProblems, detail: ImportProblemDetail): ImportProblem {
  const { severity = "blocked", line, column = null, given, slots = {}, mend = null } = detail;
  return {
    code,
    severity,
    field: column === null ? `line ${line}` : `line ${line}, ${column}`,
    ...(given === undefined ? {} : { given }),
    slots: { line, column: column ?? "", ...slots },
    line,
    column,
    mend,
  };
}
