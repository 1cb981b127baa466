/** The exchange of a member: what may come in from whose device, and what is looked at for whom. */
import { rootOf } from "../casebook/index.ts";
import { type Entry, hasItsContent, headerHash, isEntry } from "../journal/index.ts";
import { answered, blocked, type Problem, problem, type Result } from "../units/index.ts";
import { judge } from "./admission.ts";
import { type PushReply, pageSize, type Refusal } from "./contract.ts";
import type { Desk } from "./member-desk.ts";
import type { Note } from "./member-notes.ts";
import { pageFor } from "./member-page.ts";
import { deviceOfAnother, registered } from "./member-sessions.ts";
import type { MemberBook, Pusher, SentEntry, Whose } from "./members-contract.ts";
import { nativeDigest } from "./native-digest.ts";
import { pushesTogether } from "./push-together.ts";
import { entryOf } from "./rows.ts";
import { give, takeBack, whoseOf } from "./scopes.ts";
import { heldIn, takeIn } from "./server-writing.ts";
import type { Writing } from "./tables.ts";

type Exchange = Pick<MemberBook, "pull" | "push" | "audit" | "giveApiary" | "takeApiary" | "rootsOf">;

export function memberExchange(desk: Desk, afterErasure: () => void): Exchange {
  const { database, programme, read, write, writeAll } = desk;
  const take = pushesTogether((pushes: readonly Sent[]) =>
    writeAll(
      pushes.map(({ given, pusher }) => ({
        doing: pusher,
        work: (tx, note, from) => pushed(tx, { given, pusher, programme, from, note }),
      })),
    ),
  );

  const changeScope = (
    member: string,
    apiary: string,
    doing: Parameters<MemberBook["giveApiary"]>[2],
    act: "apiary-given" | "apiary-taken",
  ) =>
    write(doing, async (tx, note, from): Promise<Result<null>> => {
      const known = await tx.selectFrom("members").select("id").where("id", "=", member).executeTakeFirst();
      if (!known) return blocked(problem("member-unknown", "blocked", "member", { given: member }));
      const root = tx
        .selectFrom("entries")
        .select("root")
        .where("root", "=", apiary)
        .where("kind", "=", "apiary-registered");
      if (!(await root.limit(1).executeTakeFirst()))
        return blocked(problem("apiary-unknown", "blocked", "apiary", { given: apiary }));
      if (act === "apiary-given") await give(tx, { member, root: apiary, since: from + 1 });
      else await takeBack(tx, member, apiary);
      note({ act, member, apiary }); // takes the position from which on it is so
      return answered(null);
    });

  return {
    async push(given, pusher) {
      const { reply, erased } = await take({ given, pusher });
      if (erased) afterErasure();
      return reply;
    },
    pull: (asker, cursor, limit = pageSize) => read(() => pageFor(database, asker, cursor, limit)),
    audit: (before, limit) =>
      read(async () => {
        const newest = database
          .selectFrom("entries")
          .leftJoin("devices", "devices.device", "entries.device")
          .select(["entries.position", "entries.kind", "entries.header", "entries.body", "devices.member"])
          .orderBy("entries.position", "desc")
          .limit(limit);
        const rows = await (before === null ? newest : newest.where("entries.position", "<", before)).execute();
        return rows.map((row) => {
          const { header, body } = entryOf(row);
          return {
            position: row.position,
            header,
            data: row.kind === "access-noted" ? (body?.data ?? null) : null,
            member: row.member,
          };
        });
      }),
    giveApiary: (member, apiary, doing) => changeScope(member, apiary, doing, "apiary-given"),
    takeApiary: (member, apiary, doing) => changeScope(member, apiary, doing, "apiary-taken"),
    rootsOf: (member) =>
      read(async () => {
        const rows = await database.selectFrom("scopes").select("root").where("member", "=", member).execute();
        return rows.map(({ root }) => root).toSorted();
      }),
  };
}

interface Sent {
  readonly given: readonly Entry[];
  readonly pusher: Pusher;
}

interface Pushed extends Sent {
  readonly programme: string;
  readonly from: number;
  readonly note: (act: Note) => void;
}

async function pushed(
  tx: Writing,
  { given, pusher, programme, from, note }: Pushed,
): Promise<{ readonly reply: PushReply; readonly erased: boolean }> {
  const held = await heldIn(tx, given);
  const refused: Refusal[] = [];
  const apart: Entry[] = [];
  const passed: Entry[] = [];
  const devices = await devicesOf(tx, given, pusher, note);
  const known = await knownOf(tx, given, { member: pusher.by, programme });
  for (const entry of given) {
    if (!isEntry(entry)) {
      passed.push(entry); // refused by its shape, in the words of every store
      continue;
    }
    const { id, device } = entry.header;
    const standing = devices.get(device);
    if (standing === undefined) {
      refused.push({ id, problem: deviceOfAnother(device) });
      continue;
    }
    if (held.ids.has(id) && held.ids.get(id) === headerHash(entry.header, nativeDigest)) {
      passed.push(entry); // here already: acknowledged again
      continue;
    }
    const trouble = standing === "lost" ? lost(device) : pusher.trouble(sentEntry(entry, known));
    if (trouble === null) passed.push(entry);
    else refused.push({ id, problem: trouble });
    if (standing === "lost" && hasItsContent(entry, nativeDigest)) apart.push(entry);
  }
  const judged = judge(passed, held, { programme, acceptsWithheld: false, digest: nativeDigest });
  const verdict = { ...judged, quarantined: [...judged.quarantined, ...apart] };
  if (verdict.admitted.length > 0 || verdict.quarantined.length > 0) await takeIn(tx, verdict, from);
  return {
    reply: { heads: verdict.heads, refused: [...refused, ...verdict.refused] },
    erased: verdict.erased.size > 0,
  };
}

const lost = (device: string): Problem =>
  problem("device-lost", "blocked", "header.device", { given: device, slots: { device } });

/** Devices of the pusher among those of the entries, and whether they were reported lost; new ones become the pusher's. */
async function devicesOf(
  tx: Writing,
  given: readonly Entry[],
  { by, at, mayClaim }: Pusher,
  note: (act: Note) => void,
): Promise<ReadonlyMap<string, "here" | "lost">> {
  const standing = new Map<string, "here" | "lost">();
  for (const device of new Set(given.filter(isEntry).map(({ header }) => header.device))) {
    const found = await registered(tx, { device, name: "", member: by, mayClaim }, at);
    if (found?.isNew) note({ act: "device-registered", device });
    if (found) standing.set(device, found.row.lost_at === null ? "here" : "lost");
  }
  return standing;
}

interface Known {
  readonly whose: ReadonlyMap<string, Whose>;
  /** Writers of the entries that are replaced, where they are held. */
  readonly writers: ReadonlyMap<string, string>;
  /** Every device of the sender. */
  readonly own: ReadonlySet<string>;
  readonly common: string;
}

async function knownOf(
  tx: Writing,
  given: readonly Entry[],
  { member, programme: common }: { readonly member: string; readonly programme: string },
): Promise<Known> {
  const entries = given.filter(isEntry);
  const whose = await whoseOf(
    tx,
    member,
    entries.flatMap(({ header }) => header.about),
  );
  const writers = new Map<string, string>();
  for (const id of new Set(entries.flatMap(({ header }) => header.replaces))) {
    const row = await tx.selectFrom("entries").select("device").where("id", "=", id).executeTakeFirst();
    if (row) writers.set(id, row.device);
  }
  const own = await tx.selectFrom("devices").select("device").where("member", "=", member).execute();
  return { whose, writers, own: new Set(own.map(({ device }) => device)), common };
}

/** A root that nothing is held of is new, and so the sender's own; the programme's is everyone's from the start. */
function sentEntry(entry: Entry, { whose, writers, own, common }: Known): SentEntry {
  const { about, replaces } = entry.header;
  const of = (id: string): Whose => (id === common ? "common" : (whose.get(id) ?? "own"));
  return {
    entry,
    root: of(rootOf(entry)),
    named: about.slice(1).map(of),
    replacesOwn: replaces.every((id) => {
      const device = writers.get(id);
      return device === undefined || own.has(device);
    }),
  };
}
