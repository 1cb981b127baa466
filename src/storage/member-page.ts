/** A page of the journal for one member: what is his from when on, in an order that a cursor can follow. */
import { sql } from "kysely";
import type { EntryId } from "../journal/index.ts";
import { batches } from "./batches.ts";
import type { MemberPage, PullAsker, Whose } from "./members-contract.ts";
import { entryOf } from "./rows.ts";
import { everyone } from "./scopes.ts";
import type { Database } from "./tables.ts";

/**
 * Entries after the cursor. Whoever was given a root later meets its earlier entries at the place where it was given,
 * so that a cursor that went past them does not miss them; and a cursor moves over all that is not the member's.
 */
export async function pageFor(
  database: Database,
  asker: PullAsker,
  cursor: number,
  limit: number,
): Promise<MemberPage> {
  // Read first: what is committed later has higher positions, and must not be passed over.
  const { position: end } = await database.selectFrom("counters").select("position").executeTakeFirstOrThrow();
  const ordered = database
    .selectFrom((asker.onlyOwn ? ownAfter(database, asker.member, cursor) : allAfter(database, cursor)).as("met"))
    .selectAll()
    .where("at", "<=", end)
    .orderBy("at")
    .orderBy("position");
  const some = await ordered.limit(limit + 1).execute();
  const page = some.slice(0, limit);
  const last = page.at(-1);
  if (some.length <= limit || last === undefined)
    return { entries: await givenAt(database, asker, page), cursor: end, more: false };
  // Entries that share the place of the page's last one go with it: a cursor cannot stop between them.
  const sharing = ordered.where("at", "=", last.at).where("position", ">", last.position);
  const rest = some[limit]?.at === last.at ? await sharing.execute() : [];
  const next = await ordered.where("at", ">", last.at).limit(1).executeTakeFirst();
  const entries = await givenAt(database, asker, [...page, ...rest]);
  return { entries, cursor: next ? last.at : end, more: next !== undefined };
}

/** Where a member meets an entry. */
interface Met {
  readonly position: number;
  readonly at: number;
}

const allAfter = (database: Database, cursor: number) =>
  database.selectFrom("entries").select(["position", "position as at"]).where("position", ">", cursor);

/**
 * What is met after the cursor of roots that are the member's or everyone's: by the index of roots alone, so that the
 * cost is that of these roots, however much others wrote.
 */
function ownAfter(database: Database, member: string, cursor: number) {
  const roots = database
    .selectFrom("scopes")
    .select((eb) => ["root", eb.fn.min("since").as("first")])
    .where("member", "in", [member, everyone])
    .groupBy("root");
  const held = database.selectFrom(roots.as("roots")).innerJoin("entries", "entries.root", "roots.root");
  const newInOld = held
    .where("roots.first", "<=", cursor)
    .where("entries.position", ">", cursor)
    .select(["entries.position", "entries.position as at"]);
  const allOfNew = held
    .where("roots.first", ">", cursor)
    .select([
      "entries.position",
      sql<number>`case when entries.position > roots.first then entries.position else roots.first end`.as("at"),
    ]);
  return newInOld.unionAll(allOfNew);
}

/** The entries at these places, in their order, each with whose it is. */
async function givenAt(database: Database, asker: PullAsker, met: readonly Met[]): Promise<MemberPage["entries"]> {
  const rows = new Map<number, MemberPage["entries"][number]>();
  for (const some of batches(met.map(({ position }) => position))) {
    const found = await lookedAt(database, asker).where("entries.position", "in", some).execute();
    for (const row of found) rows.set(row.position, { entry: entryOf(row), whose: whoseRow(row, asker) });
  }
  return met.flatMap(({ position }) => rows.get(position) ?? []);
}

/** Of these entries those that a pull looks at for the member, and whose each is. */
export async function whoseAre(
  database: Database,
  asker: PullAsker,
  ids: readonly string[],
): Promise<readonly { readonly id: EntryId; readonly kind: string; readonly whose: Whose }[]> {
  if (ids.length === 0) return [];
  const looked = lookedAt(database, asker).select(["entries.id", "entries.kind"]).where("entries.id", "in", ids);
  return (await looked.execute()).map((row) => ({ id: row.id, kind: row.kind, whose: whoseRow(row, asker) }));
}

/** Entries that the member may meet, with what tells whose they are. */
function lookedAt(database: Database, { member, onlyOwn }: PullAsker) {
  const looked = database
    .selectFrom("entries")
    .leftJoin("scopes as mine", (join) => join.onRef("mine.root", "=", "entries.root").on("mine.member", "=", member))
    .leftJoin("scopes as shared", (join) =>
      join.onRef("shared.root", "=", "entries.root").on("shared.member", "=", everyone),
    )
    .leftJoin("devices", "devices.device", "entries.device")
    .select([
      "entries.position",
      "entries.header",
      "entries.body",
      "mine.since as mine",
      "shared.since as common",
      "devices.member as writer",
    ]);
  return onlyOwn
    ? looked.where((eb) => eb.or([eb("mine.since", "is not", null), eb("shared.since", "is not", null)]))
    : looked;
}

interface Looked {
  readonly mine: number | null;
  readonly common: number | null;
  readonly writer: string | null;
}

function whoseRow({ mine, common, writer }: Looked, { member, byRoot }: PullAsker): Whose {
  if (writer === member || (byRoot && mine !== null)) return "own";
  return common !== null ? "common" : "other";
}
