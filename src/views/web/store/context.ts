/** What every page may ask of the records on this device. */
import { createContext, useContext } from "react";
import type { Casebook } from "../../../casebook/index.ts";
import type { Entry, EntryDraft } from "../../../journal/index.ts";
import type { Day } from "../../../units/index.ts";

export type Programme = "main" | "demonstration";

/** What was kept and sent. */
export interface Keeping {
  /** Clock time of the last entry written here in this session or before; null when there is none. */
  readonly savedAt: string | null;
  readonly unsent: number;
  /** Entries the service did not take. */
  readonly refused: number;
  /** Whether the browser promised not to clear what is kept; null while it has not answered. */
  readonly persisted: boolean | null;
}

export interface CasebookAccess {
  readonly programme: Programme;
  readonly casebook: Casebook;
  readonly keeping: Keeping;
  /** The reader's calendar day. */
  readonly today: Day;
  /** Who writes, as it stands on entries. */
  readonly author: string;
  readonly setAuthor: (author: string) => void;
  /** Writes entries; they are on the device when the promise settles. */
  readonly record: (drafts: readonly EntryDraft[]) => Promise<readonly Entry[]>;
  readonly openProgramme: (programme: Programme) => Promise<void>;
  readonly removeDemonstration: () => Promise<void>;
}

export const CasebookContext = createContext<CasebookAccess | null>(null);

/** The records. Only inside the provider. */
export function useCasebook(): CasebookAccess {
  const access = useContext(CasebookContext);
  if (!access) throw new Error("useCasebook stands outside its provider");
  return access;
}
