/** Do the tables that decide who may see what say what the journal says. */
import { sql } from "kysely";
import { signInName } from "./member-people.ts";
import { atTheMachine } from "./own-devices.ts";
import { actKey, type DeviceTold, type MemberTold, type RightsTold, type UnknownAct } from "./rights.ts";
import type { Owned } from "./rights-roots.ts";
import { everyone } from "./scopes.ts";
import type { Tables, Writing } from "./tables.ts";

/** What refolding the rights found. */
export interface RightsReport {
  /** Acts of the service that the rights were refolded from. */
  readonly acts: number;
  /** Acts that cannot be read, their body erased or of a newer version: what they did cannot be known. */
  readonly unknownActs: number;
  /** Differences that such an act may account for by what its header says, each in a few words: not checkable, and no fault. */
  readonly unproven: readonly string[];
}

/** What an act must have been, by its header, to account for a difference: what is left out may be anything. */
interface Excuse {
  /** Only an act after this position: what the journal set there later stands. */
  readonly after?: number;
  /** Only an act up to this position: the row says that it was so by then. */
  readonly upTo?: number;
  /** Only an act of this instant: the row holds it. */
  readonly at?: string | null;
  /** Only an act of this member, or null for the machine. */
  readonly by?: string | null;
  /** Only an act that others than its doer are changed by. */
  readonly administers?: true;
}

/** Tells a difference: as not checkable where an act that cannot be read may have made it, else as a fault. */
type Tell = (what: string, ...excuses: readonly Excuse[]) => void;
const mostUnproven = 50;
const pageRows = 5000;

/** Holds the tables against what the journal says, `told`, which is used up. Names ids, never a person. */
export async function checkRights(tx: Writing, told: RightsTold, fault: (what: string) => void): Promise<RightsReport> {
  const unproven: string[] = [];
  const { unknownActs } = told;
  const tell: Tell = (what, ...excuses) => {
    if (!unknownActs.some((act) => excuses.some((excuse) => mayAccountFor(act, excuse)))) fault(what);
    else if (unproven.length < mostUnproven) unproven.push(what);
  };
  await checkMembers(tx, told, tell);
  await checkDevices(tx, told, tell);
  await checkKeys(tx, told, tell);
  await checkSessions(tx, told, tell);
  await checkInvitations(tx, told, tell);
  await checkScopes(tx, told, tell);
  await checkParents(tx, told, fault);
  return { acts: told.acts, unknownActs: unknownActs.length, unproven };
}

const mayAccountFor = (act: UnknownAct, { after = 0, upTo = act.position, at, by, administers }: Excuse): boolean =>
  act.position > after &&
  act.position <= upTo &&
  (at === undefined || act.at === at) &&
  (by === undefined || act.by === (by ?? atTheMachine)) &&
  (!administers || act.mayAdminister);

type Said = Readonly<Record<string, string | number | null>>;

interface Compared<Row extends Said, Told> {
  readonly table: string;
  readonly rows: Map<string, Row>;
  readonly told: ReadonlyMap<string, Told>;
  readonly columns: readonly (keyof Row & keyof Told & string)[];
  /** What may account for a row that the journal does not know. */
  readonly unknown: (row: Row) => Excuse;
  /** What may account for another value than the journal says. */
  readonly changed: (column: keyof Row & keyof Told & string, row: Row, told: Told) => readonly Excuse[];
}

/** Rows against what each should say, by id. No row is ever taken away. */
function compare<Row extends Said, Told>(
  { table, rows, told, columns, unknown, changed }: Compared<Row, Told>,
  tell: Tell,
): void {
  for (const [id, row] of rows) {
    const journal = told.get(id);
    if (!journal) tell(`${table} ${id}: the journal knows of none`, unknown(row));
    else
      for (const column of columns) {
        const [here, there]: readonly unknown[] = [row[column], journal[column]];
        if (here !== there)
          tell(`${table} ${id}: ${column} is ${here}, by the journal ${there}`, ...changed(column, row, journal));
      }
  }
  for (const id of told.keys()) if (!rows.has(id)) tell(`${table} ${id}: not there, by the journal it is`);
}

async function checkMembers(tx: Writing, { members }: RightsTold, tell: Tell): Promise<void> {
  const columns = ["id", "name", "sign_in", "role", "places", "admitted_at", "ended_at"] as const;
  const rows = await tx.selectFrom("members").select(columns).execute();
  compare<(typeof rows)[number], MemberTold>(
    {
      ...{ table: "members", rows: new Map(rows.map((row) => [row.id, row])), told: members },
      columns: ["role", "places", "admitted_at", "ended_at"],
      unknown: ({ admitted_at: at }) => ({ at, administers: true }),
      changed(column, { ended_at: at }, { since }) {
        if (column === "admitted_at") return [];
        if (column !== "ended_at") return [{ after: since[column], administers: true }];
        return at === null ? [] : [{ after: since.ended_at, at, administers: true }]; // nobody comes back
      },
    },
    tell,
  );
  for (const { id, name, sign_in, ended_at } of rows) {
    const member = members.get(id);
    const isNone = name === `erased ${id}` && sign_in === name;
    const isOwn = sign_in === signInName(name) && !isNone;
    if (member ? (member.isErased ? isNone : isOwn) : isNone || isOwn) continue;
    const erasure: Excuse = { after: member?.since.ended_at ?? 0, at: ended_at, administers: true };
    tell(
      `members ${id}: the name to sign in with is not that of the member`,
      ...(isNone && ended_at !== null ? [erasure] : []),
    );
  }
}

async function checkDevices(tx: Writing, { devices }: RightsTold, tell: Tell): Promise<void> {
  const rows = await tx.selectFrom("devices").select(["device", "member", "registered_at", "lost_at"]).execute();
  compare<(typeof rows)[number], DeviceTold>(
    {
      ...{ table: "devices", rows: new Map(rows.map((row) => [row.device, row])), told: devices },
      columns: ["member", "registered_at", "lost_at"],
      unknown: ({ member: by, registered_at: at }) => ({ at, by }),
      changed: (column, { lost_at: at }, { since }) =>
        column === "lost_at" ? [{ after: since.lost_at, ...(at === null ? {} : { at }) }] : [],
    },
    tell,
  );
}

async function checkKeys(tx: Writing, { keys }: RightsTold, tell: Tell): Promise<void> {
  const rows = await tx.selectFrom("passkeys").select(["member", "made_at"]).execute();
  const known = rows.filter(({ member, made_at }) => keys.get(member)?.addedAt.has(made_at));
  for (const { member, made_at: at } of rows.filter((row) => !known.includes(row)))
    tell(`passkeys of ${member}: one of ${at}, the journal knows of none`, {
      ...{ at, by: member, after: keys.get(member)?.since ?? 0 },
    });
  for (const [member, { count, since }] of keys) {
    const held = known.filter((row) => row.member === member).length;
    if (held !== count)
      tell(`passkeys of ${member}: ${held}, by the journal ${count}`, ...(held < count ? [{ after: since }] : []));
  }
}

/** Each session was begun by its member, and lies on a device of that member. */
async function checkSessions(tx: Writing, { signIns, devices }: RightsTold, tell: Tell): Promise<void> {
  const rows = await tx.selectFrom("sessions").select(["id", "member", "device", "began_at"]).execute();
  for (const { id, member, device, began_at: at } of rows) {
    if (!signIns.has(actKey(member, at)))
      tell(`sessions ${id}: of ${member} at ${at}, the journal knows of none`, { at, by: member });
    const owner = device === null ? member : devices.get(device)?.member;
    if (owner !== member)
      tell(
        `sessions ${id}: on a device that is not of ${member} by the journal`,
        ...(owner === undefined ? [{ by: member }] : []),
      );
  }
}

async function checkInvitations(tx: Writing, { invitations, members }: RightsTold, tell: Tell): Promise<void> {
  const columns = ["id", "role", "by", "made_at", "used_at", "member"] as const;
  const rows = await tx.selectFrom("invitations").select(columns).execute();
  for (const { id, role, by, made_at: at, used_at, member } of rows) {
    if (!invitations.has(actKey(by, role, at)))
      tell(`invitations ${id}: to ${role}, by ${by} at ${at}, the journal knows of none`, { at, by });
    const admittedAt = member === null ? null : members.get(member)?.admitted_at;
    if (used_at !== admittedAt)
      tell(
        `invitations ${id}: not used as the journal says`,
        ...(admittedAt === undefined ? [{ at: used_at, by: null }] : []), // who accepts is no member yet
      );
  }
}

/** Row after row in the order of the key, and at the end what is not there. */
async function checkScopes(tx: Writing, told: RightsTold, tell: Tell): Promise<void> {
  const { scopes } = told;
  const seen = new Set<Owned>();
  for await (const row of scopeRows(tx)) {
    const { member, root, since } = row;
    const journal = scopes.get(root)?.find((each) => each.member === member);
    if (journal) seen.add(journal);
    if (journal?.since === since) continue;
    const said = `scopes ${root}: of ${member} since ${since}, by the journal`;
    tell(journal ? `${said} since ${journal.since}` : `${said} not`, ...excusesOfScope(told, row, { upTo: since }));
  }
  for (const [root, owned] of scopes)
    for (const { member, since } of owned.filter((each) => !seen.has(each))) {
      const excuses = excusesOfScope(told, { member, root }, { after: earliest(told, member, root) });
      tell(`scopes ${root}: not of ${member}, by the journal since ${since}`, ...excuses);
    }
}

/**
 * An administrator may have given or taken it, within these bounds; or the member registered the device on which it was
 * begun. What hangs on something stays or goes with that: whether another's device began it matters then, and when it
 * was given says nothing of when that was.
 */
function excusesOfScope(
  { parents, isBegunByNobody }: RightsTold,
  { member, root }: Pick<Tables["scopes"], "member" | "root">,
  bounds: Excuse,
): readonly Excuse[] {
  if (member === everyone) return [];
  const isHung = parents.has(root);
  if (isHung && isBegunByNobody(root)) return [{}];
  const { upTo: _, ...bound } = bounds;
  return [{ ...(isHung ? bound : bounds), administers: true }, { by: member }];
}

/** Since when the member has this root, or what it hangs on, by the journal: only then could it be taken back. */
function earliest({ scopes, parents }: RightsTold, member: string, root: string): number {
  const [roots, from] = [new Set([root]), [] as number[]];
  for (const each of roots) {
    for (const owned of scopes.get(each) ?? []) if (owned.member === member) from.push(owned.since);
    for (const parent of parents.get(each) ?? []) roots.add(parent);
  }
  return Math.min(...from);
}

async function checkParents(tx: Writing, { parents }: RightsTold, fault: (what: string) => void): Promise<void> {
  for await (const { root, parent } of parentRows(tx)) {
    const at = parents.get(root)?.indexOf(parent) ?? -1;
    if (at < 0) fault(`parents ${root}: hangs on ${parent}, by the journal not`);
    else parents.get(root)?.splice(at, 1);
  }
  for (const [root, left] of parents)
    for (const parent of left) fault(`parents ${root}: hangs on ${parent} by the journal, here not`);
}

/** Rows in the order of their key, page after page: `page` gives those beyond the last one. */
async function* rowsOf<Row>(page: (last: Row | undefined) => Promise<readonly Row[]>): AsyncGenerator<Row> {
  for (let last: Row | undefined; ; ) {
    const rows = await page(last);
    yield* rows;
    if (rows.length < pageRows) return;
    last = rows.at(-1);
  }
}

const scopeRows = (tx: Writing) =>
  rowsOf<Tables["scopes"]>((last) => {
    const all = tx.selectFrom("scopes").selectAll().orderBy("member").orderBy("root").limit(pageRows);
    return (last ? all.where(sql<boolean>`(member, root) > (${last.member}, ${last.root})`) : all).execute();
  });

const parentRows = (tx: Writing) =>
  rowsOf<Tables["parents"]>((last) => {
    const all = tx.selectFrom("parents").selectAll().orderBy("root").orderBy("parent").limit(pageRows);
    return (last ? all.where(sql<boolean>`(root, parent) > (${last.root}, ${last.parent})`) : all).execute();
  });
