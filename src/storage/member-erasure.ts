/** What is kept of one member: given out whole, or erased where the law asks for it. */
import type { Entry, EntryDraft } from "../journal/index.ts";
import { answered, blocked, problem, type Result } from "../units/index.ts";
import { giveUpAllOf } from "./file-uploads.ts";
import type { Desk } from "./member-desk.ts";
import { recordHere } from "./member-notes.ts";
import type { MemberBook } from "./members-contract.ts";
import { entryOf } from "./rows.ts";
import type { Tables, Writing } from "./tables.ts";

type Erasure = Pick<MemberBook, "entriesOf" | "erase">;

export function erasureOf({ database, programme, read, write }: Desk, afterErasure: () => void): Erasure {
  return {
    entriesOf: (member, byRoot) =>
      read(async () => {
        const rows = await database
          .selectFrom("entries")
          .select(["header", "body"])
          .where((eb) =>
            eb.or([
              ...(byRoot
                ? [eb("root", "in", eb.selectFrom("scopes").select("root").where("member", "=", member))]
                : []),
              eb("device", "in", eb.selectFrom("devices").select("device").where("member", "=", member)),
            ]),
          )
          .orderBy("position")
          .execute();
        return rows.map(entryOf);
      }),
    async erase(member, reason, doing) {
      const result = await write(doing, async (tx, note, from): Promise<Result<{ readonly erased: number }>> => {
        const row = await tx.selectFrom("members").selectAll().where("id", "=", member).executeTakeFirst();
        if (!row) return blocked(problem("member-unknown", "blocked", "member", { given: member }));
        if (await isLastAdministrator(tx, row)) return blocked(problem("last-administrator", "blocked", "member"));
        const roots = row.role === "keeper" ? await bodiesOf(tx, member) : new Map<string, readonly string[]>();
        const drafts = [...roots].map(
          ([root, entries]): EntryDraft => ({
            ...{ kind: "content-erased", at: doing.at, about: [root] },
            data: { entries: [...entries], reason },
          }),
        );
        if (drafts.length > 0) await recordHere(tx, { programme, from, doing }, drafts);
        await emptyQuarantine(tx, member);
        await eraseAccount(tx, row, doing.at);
        note({ act: "data-erased", member });
        return answered({ erased: [...roots.values()].flat().length });
      });
      if (result.ok) afterErasure();
      return result;
    },
  };
}

async function isLastAdministrator(tx: Writing, { id, role }: Tables["members"]): Promise<boolean> {
  if (role !== "administrator") return false;
  const others = tx.selectFrom("members").select("id").where("role", "=", role).where("ended_at", "is", null);
  return (await others.where("id", "!=", id).executeTakeFirst()) === undefined;
}

/**
 * Roots that are another living member's as well and were not begun on a device of this one: they were given to him, and
 * what others wrote there is theirs.
 */
async function rootsOfOthers(tx: Writing, member: string): Promise<ReadonlySet<string>> {
  const shared = await tx
    .selectFrom("scopes as own")
    .innerJoin("scopes as theirs", "theirs.root", "own.root")
    .innerJoin("members", "members.id", "theirs.member")
    .select("own.root")
    .distinct()
    .where("own.member", "=", member)
    .where("theirs.member", "!=", member)
    .where("members.ended_at", "is", null)
    .execute();
  const others = new Set<string>();
  for (const { root } of shared) {
    const first = await tx
      .selectFrom("entries")
      .leftJoin("devices", "devices.device", "entries.device")
      .select("devices.member")
      .where("entries.root", "=", root)
      .orderBy("entries.position")
      .executeTakeFirst();
    if (first?.member !== member) others.add(root);
  }
  return others;
}

/** Entries with a body about the member's roots, by root; of roots that are others' too those he wrote himself. */
async function bodiesOf(tx: Writing, member: string): Promise<ReadonlyMap<string, readonly string[]>> {
  const others = await rootsOfOthers(tx, member);
  const rows = await tx
    .selectFrom("entries")
    .innerJoin("scopes", "scopes.root", "entries.root")
    .leftJoin("devices", "devices.device", "entries.device")
    .select(["entries.id", "entries.root", "devices.member as writer"])
    .where("scopes.member", "=", member)
    .where("entries.body", "is not", null)
    .where("entries.kind", "!=", "content-erased")
    .orderBy("entries.position")
    .execute();
  const kept = rows.filter(({ root, writer }) => writer === member || !others.has(root));
  return new Map([...Map.groupBy(kept, ({ root }) => root)].map(([root, own]) => [root, own.map(({ id }) => id)]));
}

/** What a lost device sent is kept apart without its bodies. */
async function emptyQuarantine(tx: Writing, member: string): Promise<void> {
  const devices = await tx.selectFrom("devices").select("device").where("member", "=", member).execute();
  const own = new Set(devices.map(({ device }) => device));
  for (const { hash, entry } of await tx.selectFrom("quarantine").selectAll().execute()) {
    const { header } = JSON.parse(entry) as Entry;
    if (!own.has(header.device)) continue;
    const bare: Entry = { header, body: null };
    await tx
      .updateTable("quarantine")
      .set({ entry: JSON.stringify(bare) })
      .where("hash", "=", hash)
      .execute();
  }
}

/** The id stays, since the journal names it; nothing else that could tell who it was. */
async function eraseAccount(tx: Writing, { id }: Tables["members"], at: string): Promise<void> {
  const name = `erased ${id}`;
  await tx
    .updateTable("members")
    .set({ name, sign_in: name, password: null, password_ends_at: null, ended_at: at, failures: 0, failed_at: null })
    .where("id", "=", id)
    .execute();
  await tx.deleteFrom("sessions").where("member", "=", id).execute();
  await tx.deleteFrom("passkeys").where("member", "=", id).execute();
  await tx.updateTable("devices").set({ name: "" }).where("member", "=", id).execute();
  await giveUpAllOf(tx, id);
}
