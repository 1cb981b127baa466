/** The shape of the device's database: one for each programme, so that programmes cannot mix. */
import { type DBSchema, type IDBPDatabase, type IDBPTransaction, openDB, type StoreNames } from "idb";
import type { Entry, EntryId, Hash, Head } from "../journal/index.ts";
import type { Problem } from "../units/index.ts";
import type { Erasure } from "./admission.ts";

/** An entry word for word, beside what it is looked up by. */
export interface EntryRow {
  readonly id: EntryId;
  readonly device: string;
  readonly seq: number;
  readonly root: string;
  readonly kind: string;
  readonly hash: Hash;
  /** 1, 2, 3 … as taken in on this device. */
  readonly position: number;
  /** 1 until the service has acknowledged it, then left out, which takes it out of the index too. */
  readonly unsent?: 1;
  readonly entry: Entry;
}

/** The kept state of a root. */
export interface StateRow {
  readonly root: string;
  /** Position of the newest entry that it holds. */
  readonly position: number;
  /** The state as JSON: a browser reads one long text sooner than as many objects as bees were read. */
  readonly words: string;
}

/** A photo or a voice note; its bytes lie apart, so that a list of many fits the memory of a phone. */
export interface FileRow {
  readonly sha256: Hash;
  readonly mediaType: string;
  /** 1 until the service has all of it, then left out. */
  readonly unsent?: 1;
  /** Why the service will not have it. */
  readonly refused?: string;
  /** Recorded on this device, not fetched. */
  readonly isFromHere: boolean;
}

/** What the device knows of itself and of its exchange. */
export interface DeviceRecord {
  readonly device: string;
  readonly author: string;
  /** Position of the newest entry. */
  readonly position: number;
  /** Where the next pull from the service starts. */
  readonly cursor: number;
  readonly foldVersion: number;
  /** Instant at which the newest recording was on this device's disk. */
  readonly lastSafeAt: string | null;
  /** Instant of the last exchange that the service answered. */
  readonly lastExchangeAt: string | null;
  /** Why this device may not record; null when it may. */
  readonly stopped: Problem | null;
}

export interface Schema extends DBSchema {
  entries: {
    key: EntryId;
    value: EntryRow;
    indexes: { "by-place": [string, number]; "by-root": string; "by-position": number; "by-unsent": 1 };
  };
  heads: { key: string; value: Head };
  states: { key: string; value: StateRow; indexes: { "by-position": number } };
  /** Which entry an erasure names, and the root it must belong to. */
  erased: { key: [EntryId, string]; value: Erasure };
  quarantine: { key: Hash; value: { readonly hash: Hash; readonly entry: Entry } };
  device: { key: "this"; value: DeviceRecord };
  files: { key: Hash; value: FileRow; indexes: { "by-unsent": 1 } };
  "file-bytes": { key: Hash; value: Uint8Array<ArrayBuffer> };
}

export type Database = IDBPDatabase<Schema>;
export const allStores = [
  "entries",
  "heads",
  "states",
  "erased",
  "quarantine",
  "device",
  "files",
  "file-bytes",
] as const;
export type Writing = IDBPTransaction<Schema, typeof allStores, "readwrite">;
type Upgrading = IDBPTransaction<Schema, StoreNames<Schema>[], "versionchange">;

/** Name of a database; each member who signs in on a device has one of his own. No programme's name holds a space. */
export const databaseName = (programme: string, owner?: string): string =>
  owner === undefined ? `skepsis-${programme}` : `skepsis-${programme} ${owner}`;

/** States kept in another form are dropped, and those of no fold are made anew when the store is opened. */
async function statesAnew(tx: Upgrading): Promise<void> {
  const known = await tx.objectStore("device").get("this");
  await tx.objectStore("states").clear();
  if (known) await tx.objectStore("device").put({ ...known, foldVersion: 0 }, "this");
}

/** Opens the programme's database, made when it is not there. Gives way, and says so, when another tab removes it. */
export function openDatabase(programme: string, onClosed: () => void, owner?: string): Promise<Database> {
  return openDB<Schema>(databaseName(programme, owner), 3, {
    async upgrade(database, before, _now, tx) {
      if (before < 2) {
        database.createObjectStore("files", { keyPath: "sha256" }).createIndex("by-unsent", "unsent");
        database.createObjectStore("file-bytes");
      }
      if (before > 0) return statesAnew(tx);
      const entries = database.createObjectStore("entries", { keyPath: "id" });
      entries.createIndex("by-place", ["device", "seq"], { unique: true });
      entries.createIndex("by-root", "root");
      entries.createIndex("by-position", "position", { unique: true });
      entries.createIndex("by-unsent", "unsent");
      database.createObjectStore("heads", { keyPath: "device" });
      database.createObjectStore("states", { keyPath: "root" }).createIndex("by-position", "position");
      database.createObjectStore("erased", { keyPath: ["id", "root"] });
      database.createObjectStore("quarantine", { keyPath: "hash" });
      database.createObjectStore("device");
    },
    blocking(_current, _wanted, event) {
      (event.target as IDBDatabase).close();
      onClosed();
    },
    terminated: onClosed,
  });
}

/**
 * Runs work in one read-write transaction that is on the disk before it is reported done. Work may await nothing but
 * requests of this transaction. Whatever it throws undoes all of it.
 */
export async function inOneTransaction<T>(database: Database, work: (tx: Writing) => Promise<T>): Promise<T> {
  const tx = database.transaction(allStores, "readwrite", { durability: "strict" });
  try {
    const result = await work(tx);
    await tx.done;
    return result;
  } catch (trouble) {
    try {
      tx.abort();
    } catch {
      // it is over already
    }
    await tx.done.catch(() => {});
    // A device without room ends the transaction, and each request then only says that it was ended.
    throw tx.error?.name === "QuotaExceededError" ? tx.error : trouble;
  }
}
