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
    .select(["attached.entry", "attached.sha256", "attached.bytes", "attached.arrived", "entries.device"])
    .execute();
  for (const { entry, sha256, bytes } of kept) {
    const said = named.get(entry);
    if (said?.sha256 !== sha256 || said.bytes !== bytes) tell(`file ${sha256}: not what entry ${entry} names`);
  }
  const known = new Set(kept.map(({ entry }) => entry));
  for (const { entry, sha256 } of named.values()) if (!known.has(entry)) tell(`file ${sha256}: lost to entry ${entry}`);

  let whole = 0;
  const waiting = new Map<string, number>();
  const names = Map.groupBy(kept, (each) => each.sha256);
  const files = await database.selectFrom("files").select("sha256").execute();
  const shelf = new Set(files.map(({ sha256 }) => sha256));
  for (const sha256 of shelf)
    if (!names.get(sha256)?.some(hasCome)) tell(`file ${sha256}: no entry names it whose writer sent it`);
    else if (nativeDigest(await bytesOf(database, sha256)) === sha256) whole += 1;
    else tell(`file ${sha256}: not what was written`);
  for (const [sha256, all] of names) {
    if (!shelf.has(sha256) && all.some(hasCome)) tell(`file ${sha256}: was here and is gone`);
    const late = all.filter((name) => !shelf.has(sha256) || !hasCome(name));
    for (const device of new Set(late.map((name) => name.device ?? "")))
      waiting.set(device, (waiting.get(device) ?? 0) + 1);
  }
  const chunks = await database.selectFrom("chunks").select("sha256").distinct().execute();
  for (const { sha256 } of chunks) if (!shelf.has(sha256)) tell(`chunks of ${sha256}: of no file`);
  const uploads = await database.selectFrom("uploads").select("sha256").distinct().execute();
  for (const { sha256 } of uploads) if (!names.has(sha256)) tell(`upload of ${sha256}: no entry names it`);
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

const hasCome = ({ arrived }: { readonly arrived: number }): boolean => arrived === 1;

const byDevice = (one: { readonly device: string }, other: { readonly device: string }): number =>
  one.device < other.device ? -1 : 1;
