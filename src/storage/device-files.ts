/** The files on this device: put beside their entry in its transaction, sent later, and gone when the last entry that names one is erased. */
import { type Entry, fileNamedBy, type Hash } from "../journal/index.ts";
import type { Database, Writing } from "./indexed-db.ts";

/** A photo or a voice note, as it is recorded or was fetched. */
export interface DeviceFile {
  readonly sha256: Hash;
  readonly mediaType: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

/** A file that the service does not have yet. */
export interface UnsentFile {
  readonly sha256: Hash;
  /** What the service said of it when it was refused; null while it is to be sent. */
  readonly refused: string | null;
}

async function put(tx: Writing, { sha256, mediaType, bytes }: DeviceFile, isFromHere: boolean): Promise<void> {
  await tx.objectStore("file-bytes").put(bytes, sha256);
  await tx.objectStore("files").put({ sha256, mediaType, isFromHere, ...(isFromHere ? { unsent: 1 } : {}) });
}

const isHere = async (tx: Writing, sha256: Hash): Promise<boolean> =>
  (await tx.objectStore("files").getKey(sha256)) !== undefined;

/** Puts recorded files beside their entries; they wait to be sent. */
export async function putRecorded(tx: Writing, files: readonly DeviceFile[]): Promise<void> {
  for (const file of files) await put(tx, file, true);
}

/** Keeps the files of a copy that entries here name and that are not here; they wait to be sent. Returns how many. */
export async function putCopied(tx: Writing, files: readonly DeviceFile[]): Promise<number> {
  const named = await allNamed(tx);
  let kept = 0;
  for (const file of files) {
    if (!named.has(file.sha256) || (await isHere(tx, file.sha256))) continue;
    await put(tx, file, true);
    kept += 1;
  }
  return kept;
}

/** Keeps a file that was fetched, unless it is here. */
export async function putFetched(tx: Writing, file: DeviceFile): Promise<void> {
  if (!(await isHere(tx, file.sha256))) await put(tx, file, false);
}

/** A file with its bytes; null when it is not here. */
export async function fileIn(database: Database, sha256: Hash): Promise<DeviceFile | null> {
  const [row, bytes] = await Promise.all([database.get("files", sha256), database.get("file-bytes", sha256)]);
  return row && bytes ? { sha256, mediaType: row.mediaType, bytes } : null;
}

export async function unsentFiles(database: Database): Promise<readonly UnsentFile[]> {
  const rows = await database.getAllFromIndex("files", "by-unsent");
  return rows.map(({ sha256, refused }) => ({ sha256, refused: refused ?? null }));
}

/** Notes what became of a file that was sent. */
export async function settleFile(tx: Writing, sha256: Hash, refused: string | null): Promise<void> {
  const row = await tx.objectStore("files").get(sha256);
  if (!row) return;
  const { unsent: _, refused: __, ...sent } = row;
  await tx.objectStore("files").put(refused === null ? sent : { ...row, refused });
}

/** After the service was set back: what was recorded here may be the only copy. */
export async function markFilesUnsent(tx: Writing): Promise<void> {
  for (const row of await tx.objectStore("files").getAll()) {
    const { refused: _, ...again } = row;
    if (row.isFromHere) await tx.objectStore("files").put({ ...again, unsent: 1 });
  }
}

/** Takes the files of erased entries away, unless another entry names them too. The bodies of the erased are gone already. */
export async function dropNamed(tx: Writing, erased: readonly Entry[]): Promise<void> {
  const dropped = new Set(erased.flatMap((entry) => fileNamedBy(entry)?.sha256 ?? []));
  if (dropped.size === 0) return;
  const named = await allNamed(tx);
  for (const sha256 of dropped) {
    if (named.has(sha256)) continue;
    await tx.objectStore("files").delete(sha256);
    await tx.objectStore("file-bytes").delete(sha256);
  }
}

const allNamed = async (tx: Writing): Promise<ReadonlySet<Hash>> =>
  new Set((await tx.objectStore("entries").getAll()).flatMap((row) => fileNamedBy(row.entry)?.sha256 ?? []));
