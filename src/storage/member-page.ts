/** A page of the journal for one member: what is his from when on, in an order that a cursor can follow. */
import { sql } from "kysely";
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
    .selectFrom(lookedAt(database, asker).as("looked"))
    .selectAll()
    .where("at", "<=", end)
    .orderBy("at")
    .orderBy("position");
  const some = await ordered
    .where("at", ">", cursor)
    .limit(limit + 1)
    .execute();
  const page = some.slice(0, limit);
  const last = page.at(-1);
  if (some.length <= limit || last === undefined)
    return { entries: page.map(asGiven(asker)), cursor: end, more: false };
  // Entries that share the place of the page's last one go with it: a cursor cannot stop between them.
  const sharing = ordered.where("at", "=", last.at).where("position", ">", last.position);
  const rest = some[limit]?.at === last.at ? await sharing.execute() : [];
  const next = await ordered.where("at", ">", last.at).limit(1).executeTakeFirst();
  return { entries: [...page, ...rest].map(asGiven(asker)), cursor: next ? last.at : end, more: next !== undefined };
}

/** Of these entries those that a pull looks at for the member, and whose each is. */
export async function whoseAre(
  database: Database,
  asker: PullAsker,
  ids: readonly string[],
): Promise<readonly { readonly kind: string; readonly whose: Whose }[]> {
  if (ids.length === 0) return [];
  const looked = lookedAt(database, asker).select("entries.kind").where("entries.id", "in", ids);
  return (await looked.execute()).map((row) => ({ kind: row.kind, whose: whoseRow(row, asker) }));
}

/** Entries with the place at which the member meets them, and whose they are. */
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
  if (!onlyOwn) return looked.select("entries.position as at");
  return looked
    .where((eb) => eb.or([eb("mine.since", "is not", null), eb("shared.since", "is not", null)]))
    .select(
      sql<number>`case
        when mine.since <= entries.position or shared.since <= entries.position then entries.position
        when shared.since is null or mine.since < shared.since then mine.since
        else shared.since end`.as("at"),
    );
}

interface Looked {
  readonly header: string;
  readonly body: string | null;
  readonly mine: number | null;
  readonly common: number | null;
  readonly writer: string | null;
}

const asGiven = (asker: PullAsker) => (row: Looked) => ({ entry: entryOf(row), whose: whoseRow(row, asker) });

function whoseRow({ mine, common, writer }: Looked, { member, byRoot }: PullAsker): Whose {
  if (writer === member || (byRoot && mine !== null)) return "own";
  return common !== null ? "common" : "other";
}
