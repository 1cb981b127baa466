/** What every page may ask of the records on this device. */
import { createContext, useContext } from "react";
import type { Casebook } from "../../../casebook/index.ts";
import type { Entry, EntryDraft, Head } from "../../../journal/index.ts";
import type { DeviceFile, PushReply } from "../../../storage/device.ts";
import type { Day, Problem } from "../../../units/index.ts";

/** One's own records, or the invented ones. */
export type Casebooks = "own" | "demonstration";

/** What was kept and sent. */
export interface Keeping {
  /** Instant at which the newest recording was on the disk of this device; null before the first. */
  readonly savedAt: string | null;
  readonly unsent: number;
  /** Photos and voice notes that the service does not have yet. */
  readonly unsentFiles: number;
  /** Entries the service did not take at the last exchange. */
  readonly refused: number;
  /** Whether the service answered at the last exchange; null before the first. */
  readonly reached: boolean | null;
  /** What the last exchange warned of, such as a clock that is off. */
  readonly troubles: readonly Problem[];
  /** Whether the service asks to sign in before it exchanges anything. */
  readonly needsSignIn: boolean;
  /** Why the last thing that was entered is not kept; null when it is. */
  readonly notKept: Problem | null;
  /** Whether the browser promised not to clear what is kept; null while it has not answered. */
  readonly persisted: boolean | null;
  /** Why this device may not record; null when it may. */
  readonly stopped: Problem | null;
}

export interface CasebookAccess {
  /** Name of the programme: the demonstration's for the invented records. */
  readonly programme: string;
  readonly isDemonstration: boolean;
  readonly casebook: Casebook;
  readonly keeping: Keeping;
  /** The reader's calendar day. */
  readonly today: Day;
  /** Who writes, as it stands on entries; empty until someone said. */
  readonly author: string;
  readonly signAs: (author: string) => Promise<void>;
  /** Writes entries; they are on the disk of the device when the promise settles. Rejected, and told by `notKept`, when they are not. */
  readonly record: (drafts: readonly EntryDraft[], files?: readonly DeviceFile[]) => Promise<readonly Entry[]>;
  /** A photo or a voice note that is on this device; null when it is not. */
  readonly file: (sha256: string) => Promise<DeviceFile | null>;
  /** The same from the service, kept here from then on; null when it is not to be had. */
  readonly fetchFile: (sha256: string) => Promise<DeviceFile | null>;
  /** Whether whoever is signed in may write entries of this kind; true where nobody needs to sign in. */
  readonly may: (kind: EntryDraft["kind"]) => boolean;
  /** Every entry of this casebook, in the order this device took them in. */
  readonly entries: () => Promise<readonly Entry[]>;
  /** Adds entries of a saved copy, to be sent with the next exchange; what does not follow is refused by name. */
  readonly takeCopy: (
    entries: readonly Entry[],
    files?: readonly DeviceFile[],
  ) => Promise<PushReply & { readonly files: number }>;
  /** Id of this device. */
  readonly device: string;
  /** The newest entry of each device that wrote here. */
  readonly heads: () => Promise<readonly Head[]>;
  readonly openCasebook: (which: Casebooks) => void;
  /** Removes the demonstration from this device and goes back to the real records. */
  readonly removeDemonstration: () => Promise<void>;
}

export const CasebookContext = createContext<CasebookAccess | null>(null);

/** The records. Only inside the provider. */
export function useCasebook(): CasebookAccess {
  const access = useContext(CasebookContext);
  if (!access) throw new Error("useCasebook stands outside its provider");
  return access;
}
