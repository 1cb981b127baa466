/** What every store of a journal can do, whether it keeps in memory, in a browser or in SQLite. */
import type { Casebook } from "../casebook/index.ts";
import type { Entry, EntryId, Head } from "../journal/index.ts";
import { type Problem, problem } from "../units/index.ts";

/** The programme of invented examples. It has a store of its own, and is the only one that can be removed. */
export const demonstration = "demonstration";

/** An entry that was not taken in, and why. */
export interface Refusal {
  readonly id: EntryId;
  readonly problem: Problem;
}

export interface PushReply {
  /** The newest kept entry of each device met: everything up to it is safe here. */
  readonly heads: readonly Head[];
  readonly refused: readonly Refusal[];
}

export interface Page {
  /** In the order they were taken in. */
  readonly entries: readonly Entry[];
  /** Where the next page starts. */
  readonly cursor: number;
  readonly more: boolean;
}

/** One programme's journal. */
export interface JournalStore {
  readonly programme: string;
  /**
   * Takes entries in, all checks and writing in one transaction. Entries already here count as taken in, so that a
   * push can be repeated. Each device's entries are taken in without a gap; what does not follow is refused by name.
   */
  push(entries: readonly Entry[]): Promise<PushReply>;
  /**
   * Entries taken in after the cursor; 0 is the beginning. A cursor past the end comes back as the end: that tells
   * the asker that this is not all that it was once given.
   */
  pull(cursor: number, limit?: number): Promise<Page>;
  /** All entries about one root, in the order they were taken in. */
  entriesOf(root: string): Promise<readonly Entry[]>;
  /** All entries, in the order they were taken in. */
  all(): Promise<readonly Entry[]>;
  /** The newest entry of every device. */
  heads(): Promise<readonly Head[]>;
  /** What the entries amount to, from the kept states of the roots. */
  states(): Promise<Casebook>;
  /** Entries that claim a number which another entry has. Kept apart, word for word, for a person to settle. */
  quarantined(): Promise<readonly Entry[]>;
  close(): Promise<void>;
}

/** Entries in a page when nothing else is asked. */
export const pageSize = 500;

/** Most entries in one push. */
export const largestPush = 5000;

/** Why a store is not removed: records never are, only the invented ones. */
export const onlyDemonstration = (programme: string): Problem =>
  problem("only-demonstration-removable", "blocked", "programme", {
    given: programme,
    expected: demonstration,
    slots: { programme },
  });
