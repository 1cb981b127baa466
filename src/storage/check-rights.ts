/** Do the tables that decide who may see what say what the journal says. */
import { sql } from "kysely";
import { signInName } from "./member-people.ts";
import { actKey, type RightsTold } from "./rights.ts";
import { everyone } from "./scopes.ts";
import type { Tables, Writing } from "./tables.ts";

/** What refolding the rights found. */
export interface RightsReport {
  /** Acts of the service that the rights were refolded from. */
  readonly acts: number;
  /** Acts that cannot be read, their body erased or of a newer version: what they did cannot be known. */
  readonly unknownActs: number;
  /** Differences that such an act may account for, each in a few words: not checkable, and no fault. */
  readonly unproven: readonly string[];
}

type Tell = (what: string) => void;
const mostUnproven = 50;
const pageRows = 5000;

/** Holds the tables against what the journal says, `told`, which is used up. Names ids, never a person. */
export async function checkRights(tx: Writing, told: RightsTold, tell: Tell): Promise<RightsReport> {
  const unproven: string[] = [];
  const doubt = (what: string) => void (unproven.length < mostUnproven && unproven.push(what));
  const byActs = told.unknownActs === 0 ? tell : doubt;
  await checkMembers(tx, told, byActs);
  await checkDevices(tx, told, byActs);
  await checkKeys(tx, told, byActs);
  await checkSessions(tx, told, byActs);
  await checkInvitations(tx, told, byActs);
  // What hangs on what, and what is everyone's, is told by headers, which are never erased.
  await checkScopes(tx, told, (member) => (member === everyone ? tell : byActs));
  await checkParents(tx, told, tell);
  return { acts: told.acts, unknownActs: told.unknownActs, unproven };
}

type Said = Readonly<Record<string, string | number | null>>;

/** Rows against what each should say, by id. */
function compare(
  { table, rows, told }: { readonly table: string; readonly rows: Map<string, Said>; readonly told: Map<string, Said> },
  tell: Tell,
): void {
  for (const [id, said] of rows) {
    const journal = told.get(id);
    if (!journal) tell(`${table} ${id}: the journal knows of none`);
    for (const [column, value] of Object.entries(journal ?? {}))
      if (said[column] !== value) tell(`${table} ${id}: ${column} is ${said[column]}, by the journal ${value}`);
  }
  for (const id of told.keys()) if (!rows.has(id)) tell(`${table} ${id}: not there, by the journal it is`);
}

async function checkMembers(tx: Writing, { members }: RightsTold, tell: Tell): Promise<void> {
  const columns = ["id", "name", "sign_in", "role", "places", "admitted_at", "ended_at"] as const;
  const rows = await tx.selectFrom("members").select(columns).execute();
  const told = [...members].map(([id, { isErased: _, ...said }]) => [id, said] as const);
  compare({ table: "members", rows: new Map(rows.map((row) => [row.id, row])), told: new Map(told) }, tell);
  for (const { id, name, sign_in } of rows) {
    const isErased = members.get(id)?.isErased ?? false;
    if (isErased ? name !== `erased ${id}` || sign_in !== name : sign_in !== signInName(name))
      tell(`members ${id}: the name to sign in with is not that of the member`);
  }
}

async function checkDevices(tx: Writing, { devices }: RightsTold, tell: Tell): Promise<void> {
  const rows = await tx.selectFrom("devices").select(["device", "member", "registered_at", "lost_at"]).execute();
  const told = [...devices].map(([device, said]) => [device, { ...said }] as const);
  compare({ table: "devices", rows: new Map(rows.map((row) => [row.device, row])), told: new Map(told) }, tell);
}

async function checkKeys(tx: Writing, { keys }: RightsTold, tell: Tell): Promise<void> {
  const rows = await tx.selectFrom("passkeys").select(["member", "made_at"]).execute();
  const kept = Map.groupBy(rows, ({ member }) => member);
  for (const { member, made_at } of rows)
    if (!keys.get(member)?.addedAt.has(made_at))
      tell(`passkeys of ${member}: one of ${made_at}, the journal knows of none`);
  for (const [member, { count }] of keys) {
    const held = kept.get(member)?.length ?? 0;
    if (held !== count) tell(`passkeys of ${member}: ${held}, by the journal ${count}`);
  }
}

/** Each session was begun by its member, and lies on a device of that member. */
async function checkSessions(tx: Writing, { signIns, devices }: RightsTold, tell: Tell): Promise<void> {
  const rows = await tx.selectFrom("sessions").select(["id", "member", "device", "began_at"]).execute();
  for (const { id, member, device, began_at } of rows) {
    if (!signIns.has(actKey(member, began_at)))
      tell(`sessions ${id}: of ${member} at ${began_at}, the journal knows of none`);
    const owner = device === null ? member : devices.get(device)?.member;
    if (owner !== member) tell(`sessions ${id}: on a device that is not of ${member} by the journal`);
  }
}

async function checkInvitations(tx: Writing, { invitations, members }: RightsTold, tell: Tell): Promise<void> {
  const columns = ["id", "role", "by", "made_at", "used_at", "member"] as const;
  for (const { id, role, by, made_at, used_at, member } of await tx
    .selectFrom("invitations")
    .select(columns)
    .execute()) {
    if (!invitations.has(actKey(by, role, made_at)))
      tell(`invitations ${id}: to ${role}, by ${by} at ${made_at}, the journal knows of none`);
    const admittedAt = member === null ? null : members.get(member)?.admitted_at;
    if (used_at !== admittedAt) tell(`invitations ${id}: not used as the journal says`);
  }
}

/** Row after row in the order of the key, and at the end what is not there. */
async function checkScopes(tx: Writing, { scopes }: RightsTold, tellOf: (member: string) => Tell): Promise<void> {
  for await (const { member, root, since } of scopeRows(tx)) {
    const owned = scopes.get(root);
    const at = owned?.findIndex((each) => each.member === member) ?? -1;
    const journal = owned?.[at];
    if (!journal) tellOf(member)(`scopes ${root}: of ${member} since ${since}, by the journal not`);
    else if (journal.since !== since)
      tellOf(member)(`scopes ${root}: of ${member} since ${since}, by the journal since ${journal.since}`);
    if (journal) owned?.splice(at, 1);
  }
  for (const [root, owned] of scopes)
    for (const { member, since } of owned)
      tellOf(member)(`scopes ${root}: not of ${member}, by the journal since ${since}`);
}

async function* scopeRows(tx: Writing): AsyncGenerator<Tables["scopes"]> {
  for (let last: Tables["scopes"] | undefined; ; ) {
    const query = tx.selectFrom("scopes").selectAll().orderBy("member").orderBy("root").limit(pageRows);
    const { member, root } = last ?? {};
    const rows = await (last ? query.where(sql<boolean>`(member, root) > (${member}, ${root})`) : query).execute();
    yield* rows;
    if (rows.length < pageRows) return;
    last = rows.at(-1);
  }
}

async function checkParents(tx: Writing, { parents }: RightsTold, tell: Tell): Promise<void> {
  for await (const { root, parent } of parentRows(tx)) {
    const at = parents.get(root)?.indexOf(parent) ?? -1;
    if (at < 0) tell(`parents ${root}: hangs on ${parent}, by the journal not`);
    else parents.get(root)?.splice(at, 1);
  }
  for (const [root, left] of parents)
    for (const parent of left) tell(`parents ${root}: hangs on ${parent} by the journal, here not`);
}

async function* parentRows(tx: Writing): AsyncGenerator<Tables["parents"]> {
  for (let last: Tables["parents"] | undefined; ; ) {
    const query = tx.selectFrom("parents").selectAll().orderBy("root").orderBy("parent").limit(pageRows);
    const { root, parent } = last ?? {};
    const rows = await (last ? query.where(sql<boolean>`(root, parent) > (${root}, ${parent})`) : query).execute();
    yield* rows;
    if (rows.length < pageRows) return;
    last = rows.at(-1);
  }
}
