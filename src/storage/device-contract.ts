/** What the device's store can do beyond every store: record, tell views, and take part in the exchange. */
import type { Casebook } from "../casebook/index.ts";
import type { Entry, EntryDraft, Hash, Head } from "../journal/index.ts";
import type { Problem } from "../units/index.ts";
import type { JournalStore, PushReply } from "./contract.ts";
import type { DeviceFile, UnsentFile } from "./device-files.ts";

export type { DeviceFile, UnsentFile };

/** What a view shows of the store. A new object after each change, the same one between changes. */
export interface DeviceSnapshot {
  readonly casebook: Casebook;
  /** Entries that the service has not acknowledged. */
  readonly unsentCount: number;
  /** Photos and voice notes that the service does not have yet. */
  readonly unsentFiles: number;
  /** Instant at which the newest recording was on this device's disk; null before the first. */
  readonly lastSafeAt: string | null;
  /** Instant of the last exchange that the service answered; null before the first. */
  readonly lastExchangeAt: string | null;
  /** Why this device may not record; null when it may. */
  readonly stopped: Problem | null;
}

export interface DeviceStore extends JournalStore {
  /** Id of this device. */
  device(): string;
  /** Name that stands on what is recorded from here on. */
  author(): string;
  signAs(author: string): Promise<void>;
  /**
   * Seals the drafts onto this device's chain and writes them, with head, states and the files that they name, in one
   * transaction. Resolved only when they are on the disk; all of them or none.
   * @throws StoreStopped when the device may not record; DomainError when a draft does not fit its kind
   */
  record(drafts: readonly EntryDraft[], files?: readonly DeviceFile[]): Promise<readonly Entry[]>;
  /** A file that is here; null when it is not. */
  file(sha256: Hash): Promise<DeviceFile | null>;
  /** Keeps a file that was fetched from the service, so that it is here without a net. */
  keepFile(file: DeviceFile): Promise<void>;
  /** Keeps the files of a copy that entries here name; returns how many were new. Their hashes are the caller's to check. */
  takeFiles(files: readonly DeviceFile[]): Promise<number>;
  unsentFiles(): Promise<readonly UnsentFile[]>;
  /** Notes that the service has a file, or for what reason it will not have it. */
  settleFile(sha256: Hash, refused: string | null): Promise<void>;
  snapshot(): DeviceSnapshot;
  /** Calls the listener after each change of the snapshot, also by another tab; returns how to stop it. */
  subscribe(listener: () => void): () => void;
  /** Oldest first. */
  unsent(limit?: number): Promise<readonly Entry[]>;
  unsentCount(): Promise<number>;
  lastSafeAt(): string | null;
  /** Where the next pull from the service starts. */
  cursor(): Promise<number>;
  /** Takes in a page pulled from the service and moves the cursor, in one transaction. */
  takePage(page: { readonly entries: readonly Entry[]; readonly cursor: number }): Promise<PushReply>;
  /** Marks as sent what the service has acknowledged; stops the device when the service knows another entry there. */
  acknowledge(heads: readonly Head[]): Promise<void>;
  /**
   * Marks a device's entries from this number on as unsent and starts pulling from the beginning, since the service
   * has lost them; returns how many that had been sent. None: nothing changes.
   */
  sendAgain(device: string, from: number): Promise<number>;
  /** Stops recording on this device until it is registered anew. */
  stop(reason: Problem): Promise<void>;
  /**
   * Registers a stopped device anew, under a new id. What the service had not acknowledged is sealed again on the new
   * chain; the old copies are kept apart, and the next pull starts from the beginning. Resolves to what was sealed.
   */
  registerAnew(device?: string): Promise<readonly Entry[]>;
}

/** The device may not record: a person must look at it first. */
export class StoreStopped extends Error {
  override name = "StoreStopped";
  readonly problem: Problem;
  constructor(reason: Problem) {
    super(`recording is stopped on this device: ${reason.code}`);
    this.problem = reason;
  }
}

/** The service answered an exchange, and not as it was asked. */
export class ServiceRefused extends Error {
  readonly status: number;
  constructor(status: number) {
    super(`the service answered ${status}`);
    this.status = status;
  }
}

export interface DeviceSettings {
  readonly programme: string;
  /** Member whose records these are, where members sign in: nobody else's are opened in their place. */
  readonly owner?: string;
  /** Name of who records, until `signAs` changes it. Used on the first run. */
  readonly author: string;
  /** Id of the device. Used on the first run; drawn at random when left out. */
  readonly device?: string;
  /** Milliseconds since 1970 UTC; the machine's clock when left out. */
  readonly now?: () => number;
}
