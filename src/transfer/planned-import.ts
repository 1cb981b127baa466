/** What a dry run would make. */
import type { EntryDraft } from "../journal/index.ts";

export interface PlannedImport {
  /** In the order they are to be recorded: apiaries, colonies, cases, then results and findings. */
  readonly drafts: readonly EntryDraft[];
  readonly counts: {
    readonly rows: number;
    readonly apiaries: number;
    readonly colonies: number;
    readonly results: number;
    readonly findings: number;
  };
}
