/** What is kept apart, with all that a person needs to judge it, and what was decided on it. */
import {
  type Candidate,
  decisionOn,
  foldRoot,
  type KeptApart,
  rootOf,
  type Settlement,
  saysTheSame,
} from "../casebook/index.ts";
import type { Entry, EntryId, Hash } from "../journal/index.ts";
import { canBeLookedUp } from "./admission.ts";
import { entryOf, wordsOf } from "./rows.ts";
import type { Database } from "./tables.ts";

/** What stands of what was decided, by hash of the kept entry. */
export type Settlements = ReadonlyMap<Hash, readonly Candidate<Settlement>[]>;

/** Read from the entries themselves, by the fold: those that settle, and those that may take a settlement back. */
export async function settlementsIn(database: Database, programme: string): Promise<Settlements> {
  const rows = await database
    .selectFrom("entries")
    .select(["header", "body"])
    .where("root", "=", programme)
    .where("kind", "in", ["kept-apart-settled", "entry-withdrawn", "content-erased"])
    .execute();
  const { programmes } = foldRoot(programme, rows.map(entryOf));
  return new Map(
    Object.entries(programmes[programme]?.settlements ?? {}).map(([hash, { candidates }]) => [hash, candidates]),
  );
}

/** What is told of what is kept apart. */
export interface ApartPart {
  readonly apart: readonly KeptApart[];
  readonly more: number;
  /** Of all, told or not. */
  readonly waiting: number;
}

type Row = Pick<KeptApart, "hash" | "entry" | "settlements">;

/** What is kept apart: what waits for a person first, each part oldest first by the clocks of its devices. */
export async function keptApart(database: Database, programme: string, most: number): Promise<ApartPart> {
  const settlements = await settlementsIn(database, programme);
  const rows = await database.selectFrom("quarantine").selectAll().execute();
  const all = rows
    .map(({ hash, entry }): Row => ({ hash, entry: wordsOf<Entry>(entry), settlements: settlements.get(hash) ?? [] }))
    .sort(byWaiting);
  const apart: KeptApart[] = [];
  for (const row of all.slice(0, most)) apart.push(await withPlace(database, row, all));
  const waiting = all.filter((row) => decisionOn(row.settlements) === null).length;
  return { apart, more: all.length - apart.length, waiting };
}

/** With what the journal has in its place. */
async function withPlace(database: Database, row: Row, all: readonly Row[]): Promise<KeptApart> {
  const { entry } = row;
  const standing = await standingOf(database, entry);
  const earlier = all.filter((each) => entry.header.replaces.includes(each.entry.header.id));
  return {
    ...{ ...row, standing, why: standing === null ? "from-lost" : "number-taken" },
    cameInAs: await cameInAs(database, entry),
    earlierCameInAs: await earlierCameInAs(
      database,
      earlier.map((each) => each.entry),
    ),
    withdrawnBy: await withdrawnBy(database, entry),
    isIdTaken: await isIdTaken(database, entry),
  };
}

const sortKey = ({ settlements, entry: { header }, hash }: Row): string =>
  `${decisionOn(settlements) === null ? 0 : 1} ${header.recordedAt} ${hash}`;

const byWaiting = (one: Row, other: Row): number => (sortKey(one) < sortKey(other) ? -1 : 1);

/** The entry of the journal that has the number of this one. */
async function standingOf(database: Database, entry: Entry): Promise<Entry | null> {
  if (!canBeLookedUp(entry)) return null;
  const { device, seq } = entry.header;
  const held = database.selectFrom("entries").select(["header", "body"]);
  const row = await held.where("device", "=", device).where("seq", "=", seq).executeTakeFirst();
  return row ? entryOf(row) : null;
}

async function isIdTaken(database: Database, { header }: Entry): Promise<boolean> {
  const row = database.selectFrom("entries").select("id").where("id", "=", header.id);
  return (await row.executeTakeFirst()) !== undefined;
}

/** The first entry of its root and kind that says it stands in its place and was not withdrawn. */
async function cameInAs(database: Database, entry: Entry): Promise<EntryId | null> {
  if (!canBeLookedUp(entry)) return null;
  const [{ id, kind }, root] = [entry.header, rootOf(entry)];
  for (const other of await replacing(database, { id, root, kind }))
    if ((await replacing(database, { id: other, root, kind: "entry-withdrawn" })).length === 0) return other;
  return null;
}

/** Entries of the journal that say the same in the place of one of these, which are kept apart. */
async function earlierCameInAs(database: Database, earlier: readonly Entry[]): Promise<readonly EntryId[]> {
  const found: EntryId[] = [];
  for (const entry of earlier) {
    if (!canBeLookedUp(entry) || (await isIdTaken(database, entry))) continue;
    const { id, kind } = entry.header;
    for (const other of await replacing(database, { id, root: rootOf(entry), kind })) {
      const row = database.selectFrom("entries").select(["header", "body"]).where("id", "=", other);
      if (saysTheSame(entry, entryOf(await row.executeTakeFirstOrThrow()))) found.push(other);
    }
  }
  return found;
}

/** The first withdrawal of the journal that names it: of its own phone, taken in before it. */
async function withdrawnBy(database: Database, entry: Entry): Promise<EntryId | null> {
  if (!canBeLookedUp(entry) || (await isIdTaken(database, entry))) return null;
  const of = { id: entry.header.id, root: rootOf(entry), kind: "entry-withdrawn" };
  if (entry.header.kind === of.kind) return null;
  return (await replacing(database, of))[0] ?? null;
}

/** Entries of this root and kind that replace this one, oldest first. An id has no sign that a pattern reads otherwise. */
async function replacing(
  database: Database,
  { id, root, kind }: { readonly id: EntryId; readonly root: string; readonly kind: string },
): Promise<readonly EntryId[]> {
  const rows = await database
    .selectFrom("entries")
    .select("header")
    .where("root", "=", root)
    .where("kind", "=", kind)
    .where("header", "like", `%${id}%`)
    .orderBy("position")
    .execute();
  const headers = rows.map(({ header }) => wordsOf<Entry["header"]>(header));
  return headers.filter(({ replaces }) => replaces.includes(id)).map((header) => header.id);
}
