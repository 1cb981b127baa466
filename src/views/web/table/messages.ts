/** What the page that brings a table in and its worker say to each other. */
import type {
  ColumnUse,
  ImportAnswer,
  ImportProblem,
  Mapping,
  PlannedImport,
  Reading,
  StateWords,
} from "../../../transfer/index.ts";

export type TableQuestion =
  | { readonly kind: "open"; readonly given: Uint8Array; readonly reading: Reading }
  | { readonly kind: "try"; readonly given: Uint8Array; readonly mapping: Mapping; readonly today: string }
  | {
      readonly kind: "agree";
      readonly given: Uint8Array;
      readonly mapping: Mapping;
      readonly problem: ImportProblem;
      readonly reason: string;
    };

/** A table as the page shows it before it is tried. */
export interface OpenedTable {
  readonly header: readonly string[];
  readonly rows: number;
  /** By column, the first different texts. */
  readonly first: ReadonlyMap<string, readonly string[]>;
  readonly uses: ReadonlyMap<string, ColumnUse>;
  /** By column, its words sorted into the three states. */
  readonly words: ReadonlyMap<string, StateWords>;
  /** Ids and names of the findings a column may be. */
  readonly findings: readonly (readonly [string, string])[];
}

export interface AnswerTo {
  readonly open: ImportAnswer<OpenedTable>;
  readonly try: ImportAnswer<PlannedImport>;
  readonly agree: Mapping | null;
}
