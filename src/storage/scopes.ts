/** Whose each root is: kept in the transaction that takes in its entries, so that a pull of one member is one look. */
import { rootOf } from "../casebook/index.ts";
import type { Entry } from "../journal/index.ts";
import { batches } from "./batches.ts";
import type { Database, Tables, Writing } from "./tables.ts";

/** Stands for every member of the programme. */
export const everyone = "*";

/** Kinds that hang their root on what they name second. */
const parentedKinds = ["case-opened", "specimen-labelled", "plan-made"] as const;

/** A label record is everyone's: a plan of anybody may rest on it. */
export const sharedKind = "label-record-loaded";

/** What a root hangs on by this entry; null when the entry says nothing of it. */
export const parentOf = ({
  kind,
  about,
}: {
  readonly kind: string;
  readonly about: readonly string[];
}): string | null => ((parentedKinds as readonly string[]).includes(kind) ? (about[1] ?? null) : null);

type Scope = Tables["scopes"];

/**
 * Keeps whose the roots of these entries are. A root belongs to the member on whose device it was begun, and to whoever
 * owns what it hangs on; a label record and the programme itself belong to everyone. What became someone's later is his
 * from that position on.
 */
export async function keepScopes(
  tx: Writing,
  {
    programme,
    from,
    entries,
  }: { readonly programme: string; readonly from: number; readonly entries: readonly Entry[] },
): Promise<void> {
  if (entries.length === 0) return;
  const begun = await begunHere(tx, from, entries);
  const owners = await ownersOf(tx, [...new Set(entries.map(({ header }) => header.device))]);
  for (const [index, entry] of entries.entries()) {
    const { kind, about, device } = entry.header;
    const [root, since] = [rootOf(entry), from + index + 1];
    if (root === programme || kind === sharedKind) await give(tx, { member: everyone, root, since });
    const owner = owners.get(device);
    if (begun.delete(root) && owner !== undefined && root !== programme) await give(tx, { member: owner, root, since });
    const parent = parentOf({ kind, about });
    if (parent === null) continue;
    await tx
      .insertInto("parents")
      .values({ root, parent })
      .onConflict((conflict) => conflict.doNothing())
      .execute();
    const above = await tx.selectFrom("scopes").select("member").where("root", "=", parent).execute();
    for (const { member } of above) await give(tx, { member, root, since });
  }
}

/** Gives a root to a member, with all that hangs on it. */
export async function give(tx: Writing, { member, root, since }: Scope): Promise<void> {
  const given = await tx
    .insertInto("scopes")
    .values({ member, root, since })
    .onConflict((conflict) => conflict.doNothing())
    .executeTakeFirst();
  if (Number(given.numInsertedOrUpdatedRows ?? 0) === 0) return;
  const below = await tx.selectFrom("parents").select("root").where("parent", "=", root).execute();
  for (const each of below) await give(tx, { member, root: each.root, since });
}

/** Takes a root from a member, and what hangs on it unless it hangs on another of his or was begun by him. */
export async function takeBack(tx: Writing, member: string, root: string): Promise<void> {
  const taken = await tx.deleteFrom("scopes").where("member", "=", member).where("root", "=", root).executeTakeFirst();
  if (Number(taken.numDeletedRows) === 0) return;
  const below = await tx.selectFrom("parents").select("root").where("parent", "=", root).execute();
  for (const each of below) {
    const others = await tx
      .selectFrom("parents")
      .innerJoin("scopes", "scopes.root", "parents.parent")
      .select("parents.parent")
      .where("parents.root", "=", each.root)
      .where("scopes.member", "=", member)
      .execute();
    if (others.length === 0 && !(await wasBegunBy(tx, member, each.root))) await takeBack(tx, member, each.root);
  }
}

async function wasBegunBy(tx: Writing, member: string, root: string): Promise<boolean> {
  const first = await tx
    .selectFrom("entries")
    .innerJoin("devices", "devices.device", "entries.device")
    .select("devices.member")
    .where("entries.root", "=", root)
    .orderBy("entries.position")
    .limit(1)
    .executeTakeFirst();
  return first?.member === member;
}

/** Roots of these entries of which nothing was held before them. */
async function begunHere(tx: Writing, from: number, entries: readonly Entry[]): Promise<Set<string>> {
  const begun = new Set(entries.map(rootOf));
  for (const root of begun) {
    const before = tx.selectFrom("entries").select("position").where("root", "=", root).where("position", "<=", from);
    if (await before.limit(1).executeTakeFirst()) begun.delete(root);
  }
  return begun;
}

async function ownersOf(tx: Writing, devices: readonly string[]): Promise<ReadonlyMap<string, string>> {
  const rows = await tx.selectFrom("devices").select(["device", "member"]).where("device", "in", devices).execute();
  return new Map(rows.map(({ device, member }) => [device, member]));
}

/** Of these ids, those that are roots of something held, and whose they are: the member's, everyone's or another's. */
export async function whoseOf(
  tx: Database | Writing,
  member: string,
  ids: readonly string[],
): Promise<ReadonlyMap<string, "own" | "common" | "other">> {
  const whose = new Map<string, "own" | "common" | "other">();
  for (const some of batches([...new Set(ids)])) {
    const scopes = await tx
      .selectFrom("scopes")
      .select(["root", "member"])
      .where("root", "in", some)
      .where("member", "in", [member, everyone])
      .execute();
    for (const each of scopes)
      if (each.member === member) whose.set(each.root, "own");
      else if (!whose.has(each.root)) whose.set(each.root, "common");
    const rest = some.filter((id) => !whose.has(id));
    if (rest.length === 0) continue;
    const held = await tx.selectFrom("entries").select("root").where("root", "in", rest).groupBy("root").execute();
    for (const { root } of held) whose.set(root, "other");
    for (const { parent } of await hungOnByOthers(tx, member, rest)) whose.set(parent, "other");
  }
  return whose;
}

/** Of these ids, those on which something of another hangs, though nothing may be held of them yet. */
const hungOnByOthers = (tx: Database | Writing, member: string, ids: readonly string[]) =>
  tx
    .selectFrom("parents")
    .leftJoin("scopes", (join) => join.onRef("scopes.root", "=", "parents.root").on("scopes.member", "=", member))
    .select("parents.parent")
    .where("parents.parent", "in", ids)
    .where("scopes.member", "is", null)
    .execute();
