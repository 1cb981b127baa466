/** A backup: one archive with the journal in parts and a list of what must be in it; checked when read, restored whole. */
import { strFromU8, strToU8, unzipSync, Zip, ZipDeflate } from "fflate";
import { advance, type Casebook, foldVersion, nothingFolded } from "../casebook/index.ts";
import {
  canonicalJson,
  decodeJournal,
  type Entry,
  encodeJournal,
  type Hash,
  type Head,
  headsOf,
  textHash,
  verifyChain,
} from "../journal/index.ts";
import { answered, blocked, type Problem, problem, type Result } from "../units/index.ts";
import type { JournalStore } from "./contract.ts";

/** What a backup says of itself. */
export interface BackupManifest {
  readonly format: "skepsis-backup";
  readonly schema: 1;
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
}

/** A backup that was read and is whole. */
export interface Backup {
  readonly manifest: BackupManifest;
  readonly entries: readonly Entry[];
  readonly apart: readonly Entry[];
}

/** Entries in a part: a part is a text in memory. */
const partSize = 20_000;
const partName = (part: number): string => `journal-${String(part + 1).padStart(5, "0")}.jsonl`;
const [manifestName, apartName] = ["manifest.json", "apart.jsonl"] as const;
/** The day that all files of an archive carry: the manifest itself says when it was made. */
const mtime = new Date(Date.UTC(1980, 0, 1, 12));

/** Hash of what entries amount to: the same for the same entries, in whatever order they came. */
export const casebookHash = (casebook: Casebook): Hash => textHash(canonicalJson(casebook));

/**
 * Writes everything that is in the store now to `sink`, chunk by chunk. The store may take entries in meanwhile: the
 * backup holds what was there when it began.
 */
export async function writeBackup(
  store: JournalStore,
  created: string,
  sink: (chunk: Uint8Array) => void,
): Promise<BackupManifest> {
  const { add, end } = archive(sink);
  // Past the end the cursor comes back as the end.
  const { cursor: last } = await store.pull(Number.MAX_SAFE_INTEGER, 1);
  let [cursor, entries, parts, folded] = [0, 0, 0, nothingFolded];
  const heads = new Map<string, Head>();
  while (cursor < last) {
    const page = await store.pull(cursor, partSize);
    const taken = page.entries;
    add(partName(parts), encodeJournal(taken));
    for (const head of headsOf(taken)) heads.set(head.device, head);
    folded = advance(folded, taken);
    [cursor, entries, parts] = [page.cursor, entries + taken.length, parts + 1];
    if (!page.more) break;
  }
  const apart = await store.quarantined();
  add(apartName, encodeJournal(apart));
  const manifest: BackupManifest = {
    ...{ format: "skepsis-backup", schema: 1, programme: store.programme, created, entries, parts },
    apart: apart.length,
    heads: [...heads.values()].sort((one, other) => (one.device < other.device ? -1 : 1)),
    casebook: { fold: foldVersion, hash: casebookHash(folded.casebook) },
  };
  add(manifestName, `${JSON.stringify(manifest, null, 2)}\n`);
  end();
  return manifest;
}

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
    end: () => zip.end(),
  };
}

const damaged = (reason: string): Problem =>
  problem("backup-damaged", "blocked", "backup", { expected: reason, slots: { reason } });

/**
 * The backup in these bytes, when it is whole: every part there, every chain without a fault, as many entries and the
 * same heads as it says, and, by the same version of the fold, the same casebook.
 */
export function readBackup(bytes: Uint8Array): Result<Backup> {
  const files = unzipped(bytes);
  if (files === null) return blocked(problem("not-a-backup", "blocked", "backup"));
  const manifest = manifestIn(files);
  if (manifest === null) return blocked(problem("not-a-backup", "blocked", "backup"));
  const entries: Entry[] = [];
  for (let part = 0; part < manifest.parts; part += 1) {
    const read = partOf(files, partName(part));
    if (!read.ok) return read;
    for (const entry of read.value) entries.push(entry);
  }
  const apart = partOf(files, apartName);
  if (!apart.ok) return apart;
  const trouble = differences({ manifest, entries, apart: apart.value });
  return trouble === null ? answered({ manifest, entries, apart: apart.value }) : blocked(damaged(trouble));
}

function unzipped(bytes: Uint8Array): Readonly<Record<string, Uint8Array>> | null {
  try {
    return unzipSync(bytes);
  } catch {
    return null;
  }
}

function manifestIn(files: Readonly<Record<string, Uint8Array>>): BackupManifest | null {
  try {
    const read = JSON.parse(strFromU8(files[manifestName] ?? new Uint8Array())) as BackupManifest;
    return read.format === "skepsis-backup" && read.schema === 1 ? read : null;
  } catch {
    return null;
  }
}

function partOf(files: Readonly<Record<string, Uint8Array>>, name: string): Result<readonly Entry[]> {
  const file = files[name];
  return file === undefined ? blocked(damaged(`${name} is missing`)) : decodeJournal(strFromU8(file));
}

/** The first way in which the entries are not what the manifest says; null when there is none. */
function differences({ manifest, entries, apart }: Backup): string | null {
  if (entries.length !== manifest.entries) return `${entries.length} entries in place of ${manifest.entries}`;
  if (apart.length !== manifest.apart) return `${apart.length} entries apart in place of ${manifest.apart}`;
  const { faults } = verifyChain(entries, manifest.heads);
  const [fault] = faults;
  if (fault) return `entry ${fault.seq} of ${fault.device}: ${fault.reason}`;
  if (manifest.casebook.fold !== foldVersion) return null;
  const { casebook } = advance(nothingFolded, entries);
  return casebookHash(casebook) === manifest.casebook.hash ? null : "the entries amount to something else";
}

/**
 * Puts a backup into an empty store, whole or not at all, and checks that the same stands there then.
 * Refused when the store holds anything, is of another programme, or took less in than the backup has.
 */
export async function restoreBackup(backup: Backup, store: JournalStore): Promise<Result<BackupManifest>> {
  const { manifest, entries, apart } = backup;
  if (manifest.programme !== store.programme)
    return blocked(
      problem("copy-of-another-programme", "blocked", "backup", {
        slots: { programme: manifest.programme, here: store.programme },
      }),
    );
  if ((await store.pull(0, 1)).entries.length > 0) return blocked(problem("store-not-empty", "blocked", "programme"));
  const { refused } = await store.push(entries);
  const [first] = refused;
  if (first) return blocked(damaged(`entry ${first.id}: ${first.problem.code}`));
  await store.push(apart);
  const heads = await store.heads();
  if (canonicalJson([...heads]) !== canonicalJson([...manifest.heads])) return blocked(damaged("other heads"));
  const isSame =
    manifest.casebook.fold !== foldVersion || casebookHash(await store.states()) === manifest.casebook.hash;
  return isSame ? answered(manifest) : blocked(damaged("another casebook"));
}
