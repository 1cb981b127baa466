/** A backup: one archive with the journal in parts and a list of what must be in it; checked when read, restored whole. */
import { strToU8, Zip, ZipDeflate, ZipPassThrough } from "fflate";
import { type Casebook, foldVersion } from "../casebook/index.ts";
import {
  canonicalJson,
  chainWalk,
  decodeJournal,
  type Entry,
  type EntryId,
  encodeJournal,
  type Hash,
  type Head,
  headsOf,
  textHash,
} from "../journal/index.ts";
import { answered, blocked, type Problem, problem, type Result } from "../units/index.ts";
import { type Accounts, accountsHash, accountsIn } from "./accounts.ts";
import { type ArchiveFile, openArchive } from "./archive-file.ts";
import { nativeDigest } from "./native-digest.ts";
import { serviceDevice } from "./own-devices.ts";
import type { Records } from "./records.ts";
import type { ServerStore } from "./server-store.ts";

/** What a backup says of itself. */
export interface BackupManifest {
  readonly format: "skepsis-backup";
  /**
   * 2 since the hash of what the entries amount to is made root by root, 3 since it carries accounts and files, 4 since
   * it says which entries open a file.
   */
  readonly schema: 1 | 2 | 3 | 4;
  readonly programme: string;
  /** Instant at which it was begun; what came in later is not in it. */
  readonly created: string;
  readonly entries: number;
  readonly parts: number;
  /** Entries that claim a number which another entry has, kept apart. */
  readonly apart: number;
  readonly heads: readonly Head[];
  /** Hash of what the entries amount to, and the version of the fold that made it. */
  readonly casebook: { readonly fold: number; readonly hash: Hash };
  /** Who may come in; absent from an older backup. */
  readonly accounts?: { readonly members: number; readonly devices: number; readonly hash: Hash };
  /** Photos and voice notes; absent from an older backup. */
  readonly files?: readonly ArchivedFile[];
}

interface ArchivedFile {
  readonly sha256: Hash;
  readonly bytes: number;
  /** The entries that open it; absent from an older backup, where all that name it do. */
  readonly openedBy?: readonly EntryId[];
}

/** Entries in a part: a part is a text in memory. */
const partSize = 20_000;
const partName = (part: number): string => `journal-${String(part + 1).padStart(5, "0")}.jsonl`;
const [manifestName, apartName, accountsName] = ["manifest.json", "apart.jsonl", "accounts.json"] as const;
const fileName = (sha256: Hash): string => `files/${sha256}`;
/** The day that all files of an archive carry: the manifest itself says when it was made. */
const mtime = new Date(Date.UTC(1980, 0, 1, 12));

/** Hash of what entries amount to: the same for the same entries, in whatever order they came. */
export const casebookHash = (casebook: Casebook): Hash => textHash(canonicalJson(casebook));

/** Something was erased while the backup was written: it holds some entries as they were before, and some after. */
export class ErasedMeanwhile extends Error {
  override name = "ErasedMeanwhile";
}

/**
 * Writes everything that is in the store now to `sink`, chunk by chunk. The store may take entries in meanwhile: the
 * backup holds what was there when it began.
 * @throws ErasedMeanwhile when it has to be begun again
 */
export async function writeBackup(
  store: ServerStore,
  created: string,
  sink: (chunk: Uint8Array) => void,
): Promise<BackupManifest> {
  const { add, addPacked, end } = archive(sink);
  const erased = await store.erasures();
  const { accounts, position: last } = await store.accounts();
  let [cursor, entries, parts] = [0, 0, 0];
  const heads = new Map<string, Head>();
  while (cursor < last) {
    const page = await store.pull(cursor, Math.min(partSize, last - cursor));
    const taken = page.entries;
    add(partName(parts), encodeJournal(taken));
    for (const head of headsOf(taken)) heads.set(head.device, head);
    [cursor, entries, parts] = [page.cursor, entries + taken.length, parts + 1];
    if (!page.more) break;
  }
  const apart = await store.quarantined();
  add(apartName, encodeJournal(apart));
  add(accountsName, JSON.stringify(accounts));
  const files: ArchivedFile[] = [];
  for (const { sha256, openedBy } of await store.files.upTo(last)) {
    const file = await store.files.read(sha256);
    if (file === null) continue; // erased since
    addPacked(fileName(sha256), file.bytes);
    files.push({ sha256, bytes: file.bytes.length, openedBy });
  }
  const hash = await store.fingerprint(cursor);
  if ((await store.erasures()) !== erased)
    throw new ErasedMeanwhile("something was erased while the backup was written");
  const manifest: BackupManifest = {
    ...{ format: "skepsis-backup", schema: 4, programme: store.programme, created, entries, parts },
    apart: apart.length,
    heads: [...heads.values()].sort((one, other) => (one.device < other.device ? -1 : 1)),
    casebook: { fold: foldVersion, hash },
    accounts: summaryOf(accounts),
    files,
  };
  add(manifestName, `${JSON.stringify(manifest, null, 2)}\n`);
  end();
  return manifest;
}

const summaryOf = (accounts: Accounts): NonNullable<BackupManifest["accounts"]> => ({
  members: accounts.members.length,
  devices: accounts.devices.length,
  hash: accountsHash(accounts),
});

/** An archive that is written as it grows. */
function archive(sink: (chunk: Uint8Array) => void) {
  const zip = new Zip((error, chunk) => {
    if (error) throw error;
    sink(chunk);
  });
  return {
    add: (name: string, text: string) => {
      const file = new ZipDeflate(name, { level: 6 });
      file.mtime = mtime;
      zip.add(file);
      file.push(strToU8(text), true);
    },
    /** Photos and sound are packed already. */
    addPacked: (name: string, bytes: Uint8Array) => {
      const file = new ZipPassThrough(name);
      file.mtime = mtime;
      zip.add(file);
      file.push(bytes, true);
    },
    end: () => zip.end(),
  };
}

const damaged = (reason: string): Problem =>
  problem("backup-damaged", "blocked", "backup", { expected: reason, slots: { reason } });

/**
 * What the backup in this file says of itself, when it is whole: every part there, every chain without a fault, as
 * many entries and the same heads as it says. Part after part, never all at once.
 * @throws an error of the file system when the file may not be read
 */
export const readBackup = (file: string): Result<BackupManifest> =>
  inArchive(file, (archived, manifest) => {
    const walk = chainWalk(manifest.heads, nativeDigest);
    let entries = 0;
    for (let part = 0; part < manifest.parts; part += 1) {
      const read = partOf(archived, partName(part));
      if (!read.ok) return read;
      for (const entry of read.value) walk.take(entry);
      entries += read.value.length;
    }
    const apart = partOf(archived, apartName);
    if (!apart.ok) return apart;
    if (entries !== manifest.entries) return blocked(damaged(`${entries} entries in place of ${manifest.entries}`));
    if (apart.value.length !== manifest.apart)
      return blocked(damaged(`${apart.value.length} entries apart in place of ${manifest.apart}`));
    const { faults, missingBodies } = walk.report();
    const [fault] = faults;
    if (fault) return blocked(damaged(`entry ${fault.seq} of ${fault.device}: ${fault.reason}`));
    // The service keeps no entry whose body is withheld: a body that no erasure names was taken out of the backup.
    const bare = missingBodies.find(({ why }) => why === "withheld");
    if (bare) return blocked(damaged(`entry ${bare.seq} of ${bare.device}: its body is gone`));
    const accounts = accountsFrom(archived, manifest);
    if (!accounts.ok) return accounts;
    for (const { sha256, bytes } of manifest.files ?? []) {
      const file = archived.bytes(fileName(sha256));
      if (file?.length !== bytes || nativeDigest(file) !== sha256)
        return blocked(damaged(`${fileName(sha256)} is missing or changed`));
    }
    return answered(manifest);
  });

/** The accounts in the archive; null in an older one, which carries none. */
function accountsFrom(archived: ArchiveFile, { accounts }: BackupManifest): Result<Accounts | null> {
  if (accounts === undefined) return answered(null);
  const read = accountsIn(archived.text(accountsName) ?? "");
  return read !== null && accountsHash(read) === accounts.hash
    ? answered(read)
    : blocked(damaged(`${accountsName} is missing or changed`));
}

/** Work with the archive and what it says of itself. */
function inArchive<T>(file: string, work: (archived: ArchiveFile, manifest: BackupManifest) => T): T | Result<never> {
  const archived = openArchive(file);
  if (archived === null) return blocked(problem("not-a-backup", "blocked", "backup"));
  if (archived.beyond !== null) {
    archived.close();
    return blocked(problem("backup-beyond", "blocked", "backup", { slots: { reason: archived.beyond } }));
  }
  let result: T | Result<never>;
  try {
    const manifest = manifestIn(archived);
    result = manifest === null ? blocked(problem("not-a-backup", "blocked", "backup")) : work(archived, manifest);
  } catch (trouble) {
    archived.close();
    throw trouble;
  }
  if (result instanceof Promise) result.finally(archived.close).catch(() => {});
  else archived.close();
  return result;
}

function manifestIn(archived: ArchiveFile): BackupManifest | null {
  try {
    const read = JSON.parse(archived.text(manifestName) ?? "") as BackupManifest;
    return read.format === "skepsis-backup" && [1, 2, 3, 4].includes(read.schema) ? read : null;
  } catch {
    return null;
  }
}

function partOf(archived: ArchiveFile, name: string): Result<readonly Entry[]> {
  const text = archived.text(name);
  return text === null ? blocked(damaged(`${name} is missing or changed`)) : decodeJournal(text);
}

/**
 * Puts the backup in this file, which was read and is whole, among records that hold nothing of its programme. It is
 * built up aside, part by part, and held against what the backup says of heads and casebook; only then it becomes the
 * programme's records, in one step: whole or not at all, wherever it is cut off. Where an older backup has acts of the
 * service and no accounts, a new act says that they were left behind, at the instant `at`.
 */
export async function restoreBackup(file: string, records: Records, at: string): Promise<Result<BackupManifest>> {
  return inArchive(file, async (archived, manifest) => {
    const restored = await records.restore(manifest.programme, async (aside) => {
      for (let part = 0; part < manifest.parts; part += 1) {
        const trouble = await pushPart(aside, partOf(archived, partName(part)));
        if (trouble) return blocked(trouble);
      }
      const apart = partOf(archived, apartName);
      if (!apart.ok) return apart;
      await aside.restoreApart(apart.value); // some would go on a chain: what a lost device sent is no part of it
      const accounts = accountsFrom(archived, manifest);
      if (!accounts.ok) return accounts;
      if (accounts.value) await aside.restoreAccounts(accounts.value);
      const lost = await putFiles(archived, manifest, aside);
      const whole = lost ? blocked(lost) : await sameAs(manifest, aside);
      if (whole.ok && accounts.value === null && manifest.heads.some(({ device }) => device === serviceDevice))
        await aside.members.note({ act: "accounts-left-behind" }, { by: null, at });
      return whole;
    });
    return restored.ok ? answered(manifest) : restored;
  });
}

/** Entries pushed at once: a transaction's worth. */
const atOnce = 2000;

async function pushPart(aside: ServerStore, part: Result<readonly Entry[]>): Promise<Problem | null> {
  if (!part.ok) return part.problems[0] ?? damaged("a part cannot be read");
  // An entry whose body was erased is taken in only together with its erasure, which may stand far behind it.
  for (let from = 0; from < part.value.length; from += atOnce) {
    const [first] = (await aside.pushRestored(part.value.slice(from, from + atOnce))).refused;
    if (first) return damaged(`entry ${first.id}: ${first.problem.code}`);
  }
  return null;
}

/** Puts the files back on the shelf; returns what is wrong. */
async function putFiles(
  archived: ArchiveFile,
  { files = [] }: BackupManifest,
  aside: ServerStore,
): Promise<Problem | null> {
  for (const { sha256, openedBy = null } of files) {
    const bytes = archived.bytes(fileName(sha256));
    const taken = bytes === null ? null : await aside.files.putBack({ sha256, bytes, openedBy });
    if (!taken?.ok || !taken.value.isWhole) return damaged(`${fileName(sha256)} is missing or changed`);
  }
  return null;
}

async function sameAs(manifest: BackupManifest, aside: ServerStore): Promise<Result<null>> {
  if (canonicalJson([...(await aside.heads())]) !== canonicalJson([...manifest.heads]))
    return blocked(damaged("other heads"));
  if (manifest.casebook.fold !== foldVersion) return answered(null);
  const hash =
    manifest.schema === 1
      ? casebookHash(await aside.states())
      : await aside.fingerprint((await aside.pull(Number.MAX_SAFE_INTEGER, 1)).cursor);
  return hash === manifest.casebook.hash ? answered(null) : blocked(damaged("the entries amount to something else"));
}
