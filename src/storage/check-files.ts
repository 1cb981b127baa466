/** Is every file here that an entry names, with its hash; and which have not been sent yet. */
import { bytesOf } from "./file-shelf.ts";
import type { FilesReport } from "./files-contract.ts";
import { nativeDigest } from "./native-digest.ts";
import type { Database, Tables } from "./tables.ts";

/** Holds the files against what the entries name, file by file, never all at once. */
export async function checkFiles(
  database: Database,
  named: ReadonlyMap<string, Tables["attached"]>,
  tell: (what: string) => void,
): Promise<FilesReport> {
  const kept = await database
    .selectFrom("attached")
    .leftJoin("entries", "entries.id", "attached.entry")
    .selectAll("attached")
    .select("entries.device")
    .execute();
  for (const row of kept)
    if (!isNamedSo(row, named.get(row.entry))) tell(`file ${row.sha256}: not what entry ${row.entry} names`);
  const known = new Set(kept.map(({ entry }) => entry));
  for (const { entry, sha256 } of named.values()) if (!known.has(entry)) tell(`file ${sha256}: lost to entry ${entry}`);

  let whole = 0;
  const waiting = new Map<string, number>();
  const files = await database.selectFrom("files").selectAll().execute();
  const shelf = new Map(files.map((file) => [file.sha256, file]));
  for (const [sha256, names] of Map.groupBy(kept, (each) => each.sha256)) {
    const file = shelf.get(sha256);
    shelf.delete(sha256);
    if (file?.is_whole === 1) {
      const bytes = await bytesOf(database, sha256);
      if (nativeDigest(bytes) === sha256) whole += 1;
      else tell(`file ${sha256}: not what was written`);
      if (file.held !== bytes.length || file.bytes !== bytes.length || names.some(({ arrived }) => arrived !== 1))
        tell(`file ${sha256}: here, and not so written down`);
      continue;
    }
    if (file && !(await isHeldSo(database, file))) tell(`file ${sha256}: not as much of it here as written down`);
    if (names.some(({ arrived }) => arrived === 1)) tell(`file ${sha256}: was here and is gone`);
    const device = names[0]?.device ?? "";
    waiting.set(device, (waiting.get(device) ?? 0) + 1);
  }
  for (const sha256 of shelf.keys()) tell(`file ${sha256}: no entry names it`);
  const chunks = await database.selectFrom("chunks").select("sha256").distinct().execute();
  for (const { sha256 } of chunks)
    if (!files.some((file) => file.sha256 === sha256)) tell(`pieces of ${sha256}: of no file`);
  const { erased } = await database
    .selectFrom("entries")
    .select((row) => row.fn.countAll<number>().as("erased"))
    .where("kind", "=", "file-attached")
    .where("body", "is", null)
    .executeTakeFirstOrThrow();
  return {
    whole,
    waiting: [...waiting].map(([device, count]) => ({ device, files: count })).toSorted(byDevice),
    erased: Number(erased),
  };
}

type Attached = Tables["attached"];

/** Whether the row of a name says what its entry says: of which root too, since that decides who is given the file. */
const isNamedSo = (row: Attached, said: Attached | undefined): boolean =>
  (["root", "sha256", "bytes", "media_type"] as const).every((column) => said?.[column] === row[column]);

/** Whether the pieces of a file on its way lie one after another and make up what is held of it. */
async function isHeldSo(database: Database, { sha256, held }: Tables["files"]): Promise<boolean> {
  const pieces = await database
    .selectFrom("chunks")
    .selectAll()
    .where("sha256", "=", sha256)
    .orderBy("start")
    .execute();
  let end = 0;
  for (const { start, data } of pieces) {
    if (start !== end) return false;
    end += data.length;
  }
  return end === held;
}

const byDevice = (one: { readonly device: string }, other: { readonly device: string }): number =>
  one.device < other.device ? -1 : 1;
