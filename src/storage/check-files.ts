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
  const names = Map.groupBy(kept, (each) => each.sha256);
  const files = await database.selectFrom("files").selectAll().execute();
  const shelf = new Set(files.map(({ sha256 }) => sha256));
  for (const { sha256, bytes: said } of files) {
    if (!names.get(sha256)?.some(hasCome)) tell(`file ${sha256}: no entry names it whose writer sent it`);
    const bytes = await bytesOf(database, sha256);
    if (nativeDigest(bytes) !== sha256) tell(`file ${sha256}: not what was written`);
    else if (bytes.length !== said) tell(`file ${sha256}: not as long as written down`);
    else whole += 1;
  }
  for (const [sha256, all] of names) {
    if (!shelf.has(sha256) && all.some(hasCome)) tell(`file ${sha256}: was here and is gone`);
    const late = all.filter((name) => !shelf.has(sha256) || !hasCome(name));
    for (const device of new Set(late.map((name) => name.device ?? "")))
      waiting.set(device, (waiting.get(device) ?? 0) + 1);
  }
  const chunks = await database.selectFrom("chunks").select("sha256").distinct().execute();
  for (const { sha256 } of chunks) if (!shelf.has(sha256)) tell(`chunks of ${sha256}: of no file`);
  await checkUploads(database, names, tell);
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
  (["root", "sha256", "bytes", "media_type"] as const).every((column) => said?.[column] === row[column]) &&
  (row.arrived === 0 || row.arrived === 1);

const hasCome = ({ arrived }: Pick<Attached, "arrived">): boolean => arrived === 1;

/** Whether what is on its way is of a file that is named, and its pieces make up what is written down of it. */
async function checkUploads(
  database: Database,
  names: ReadonlyMap<string, readonly Attached[]>,
  tell: (what: string) => void,
): Promise<void> {
  for (const upload of await database.selectFrom("uploads").selectAll().execute()) {
    const named = names.get(upload.sha256) ?? [];
    if (!named.some(({ bytes }) => bytes === upload.bytes)) tell(`upload of ${upload.sha256}: no entry names it so`);
    if (!(await isHeldSo(database, upload))) tell(`upload of ${upload.sha256}: not as much here as written down`);
  }
  const loose = await database
    .selectFrom("pieces")
    .leftJoin("uploads", (join) =>
      join.onRef("uploads.sha256", "=", "pieces.sha256").onRef("uploads.sender", "=", "pieces.sender"),
    )
    .select("pieces.sha256")
    .distinct()
    .where("uploads.sha256", "is", null)
    .execute();
  for (const { sha256 } of loose) tell(`pieces of ${sha256}: of no upload`);
}

/** Whether the pieces of an upload lie one after another and make up what is held of it. */
async function isHeldSo(database: Database, { sha256, sender, held }: Tables["uploads"]): Promise<boolean> {
  const pieces = await database
    .selectFrom("pieces")
    .select(["start", "data"])
    .where((row) => row.and({ sha256, sender }))
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
