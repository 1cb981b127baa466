/** Members and how they come in: admitted at the machine, or by an invitation that is used once. */
import { newEntryId } from "../journal/index.ts";
import { answered, blocked, problem, type Result } from "../units/index.ts";
import { giveUpAllOf } from "./file-uploads.ts";
import type { Desk } from "./member-desk.ts";
import type { Invitation, Member, MemberBook } from "./members-contract.ts";
import { hasMembers } from "./rows.ts";
import type { Tables, Writing } from "./tables.ts";

type People = Pick<
  MemberBook,
  | "hasMembers"
  | "hasAdministrator"
  | "members"
  | "admit"
  | "invite"
  | "invitations"
  | "invitation"
  | "cancelInvitation"
  | "accept"
  | "change"
  | "setPassword"
  | "credential"
  | "noteFailure"
>;

const administrator = "administrator";

/** A name as it is looked up: nobody may take another's by capitals, spaces or the way its accents are typed. */
export const signInName = (name: string): string => name.normalize("NFKC").trim().replaceAll(/\s+/g, " ").toLowerCase();

export const newId = (at: string): string => newEntryId(Date.parse(at), crypto.getRandomValues(new Uint8Array(16)));

export const memberOf = (row: Tables["members"]): Member => ({
  id: row.id,
  name: row.name,
  role: row.role,
  hasExactPlaces: row.places === 1,
  hasPassword: row.password !== null,
  admittedAt: row.admitted_at,
  endedAt: row.ended_at,
});

const invitationOf = (row: Tables["invitations"]): Invitation => ({
  id: row.id,
  role: row.role,
  by: row.by,
  madeAt: row.made_at,
  endsAt: row.ends_at,
  usedAt: row.used_at,
});

const nameTaken = (name: string) => problem("name-taken", "blocked", "name", { given: name });

interface Newcomer {
  readonly name: string;
  readonly role: string;
  readonly password: string | null;
  readonly passwordEndsAt?: string;
}

/** The row of a new member; null when the name is taken. */
async function enter(tx: Writing, newcomer: Newcomer, at: string): Promise<Tables["members"] | null> {
  const { name, role, password, passwordEndsAt = null } = newcomer;
  const taken = tx.selectFrom("members").select("id").where("sign_in", "=", signInName(name));
  if (await taken.executeTakeFirst()) return null;
  const row: Tables["members"] = {
    ...{ id: newId(at), name: name.trim(), sign_in: signInName(name), role, password, places: 0 },
    ...{ password_ends_at: passwordEndsAt, failures: 0, failed_at: null, admitted_at: at, ended_at: null },
  };
  if (!(await hasMembers(tx))) await giveUpAllOf(tx, null);
  await tx.insertInto("members").values(row).execute();
  return row;
}

export function peopleOf({ database, read, write }: Desk): People {
  const present = (tx: Pick<Writing, "selectFrom">) => tx.selectFrom("members").where("ended_at", "is", null);

  /** Whether somebody else could still let people in. */
  const isLastAdministrator = async (tx: Writing, id: string): Promise<boolean> => {
    const rows = await present(tx).select("id").where("role", "=", administrator).execute();
    return rows.length === 1 && rows[0]?.id === id;
  };

  return {
    hasMembers: () => read(() => hasMembers(database)),
    hasAdministrator: () =>
      read(
        async () =>
          (await present(database).select("id").where("role", "=", administrator).limit(1).executeTakeFirst()) !==
          undefined,
      ),
    members: () =>
      read(async () => (await database.selectFrom("members").selectAll().orderBy("sign_in").execute()).map(memberOf)),
    admit: (given, doing) =>
      write(doing, async (tx, note): Promise<Result<Member>> => {
        const row = await enter(tx, given, doing.at);
        if (!row) return blocked(nameTaken(given.name));
        note({ act: "member-admitted", member: row.id, role: row.role });
        return answered(memberOf(row));
      }),
    invite: ({ role, hash, endsAt }, doing) =>
      write(doing, async (tx, note) => {
        const row: Tables["invitations"] = {
          ...{ hash, id: newId(doing.at), role, by: doing.by, made_at: doing.at, ends_at: endsAt },
          ...{ used_at: null, member: null },
        };
        await tx.insertInto("invitations").values(row).execute();
        note({ act: "invited", role });
        return invitationOf(row);
      }),
    invitations: () =>
      read(async () =>
        (await database.selectFrom("invitations").selectAll().orderBy("id").execute()).map(invitationOf),
      ),
    invitation: (hash, at) =>
      read(async () => {
        const row = await database.selectFrom("invitations").selectAll().where("hash", "=", hash).executeTakeFirst();
        return row && row.used_at === null && row.ends_at > at ? invitationOf(row) : null;
      }),
    cancelInvitation: (id, doing) =>
      write(doing, async (tx, note) => {
        const gone = await tx
          .deleteFrom("invitations")
          .where("id", "=", id)
          .where("used_at", "is", null)
          .executeTakeFirst();
        if (Number(gone.numDeletedRows) === 0) return false;
        note({ act: "invitation-cancelled" });
        return true;
      }),
    accept: (hash, { name, password }, at) =>
      write({ by: null, at }, async (tx, note): Promise<Result<Member>> => {
        const row = await tx.selectFrom("invitations").selectAll().where("hash", "=", hash).executeTakeFirst();
        if (!row || row.used_at !== null || row.ends_at <= at)
          return blocked(problem("invitation-over", "blocked", null));
        const member = await enter(tx, { name, role: row.role, password }, at);
        if (!member) return blocked(nameTaken(name));
        await tx.updateTable("invitations").set({ used_at: at, member: member.id }).where("hash", "=", hash).execute();
        note({ act: "member-admitted", member: member.id, role: row.role });
        return answered(memberOf(member));
      }),
    change: (id, to, doing) =>
      write(doing, async (tx, note): Promise<Result<Member>> => {
        const row = await tx.selectFrom("members").selectAll().where("id", "=", id).executeTakeFirst();
        if (!row || row.ended_at !== null)
          return blocked(problem("member-unknown", "blocked", "member", { given: id }));
        const leaves = to.ended === true || (to.role !== undefined && to.role !== administrator);
        if (leaves && (await isLastAdministrator(tx, id)))
          return blocked(problem("last-administrator", "blocked", "member"));
        const places = to.hasExactPlaces === undefined ? row.places : Number(to.hasExactPlaces);
        const next = { ...row, role: to.role ?? row.role, places, ended_at: to.ended ? doing.at : null };
        await tx.updateTable("members").set(next).where("id", "=", id).execute();
        if (next.role !== row.role) note({ act: "role-given", member: id, role: next.role });
        if (places !== row.places) note({ act: places === 1 ? "places-granted" : "places-revoked", member: id });
        if (to.ended) {
          note({ act: "member-ended", member: id });
          await tx
            .updateTable("sessions")
            .set({ ended_at: doing.at, why: "member-ended" })
            .where("member", "=", id)
            .where("ended_at", "is", null)
            .execute();
          await giveUpAllOf(tx, id);
        }
        return answered(memberOf(next));
      }),
    setPassword: ({ member: id, password, endsAt = null, keep = "", inPlaceOf }, doing) =>
      write(doing, async (tx, note) => {
        const fresh = { password, password_ends_at: endsAt, failures: 0, failed_at: null };
        const own = tx.updateTable("members").set(fresh).where("id", "=", id);
        const kept = inPlaceOf === undefined ? own : own.where("password", "=", inPlaceOf);
        if (Number((await kept.executeTakeFirst()).numUpdatedRows) === 0) return false;
        await tx
          .updateTable("sessions")
          .set({ ended_at: doing.at, why: "ended" })
          .where("member", "=", id)
          .where("id", "!=", keep)
          .where("ended_at", "is", null)
          .execute();
        note({ act: "password-changed", member: id });
        return true;
      }),
    credential: (name) =>
      read(async () => {
        const row = await present(database).selectAll().where("sign_in", "=", signInName(name)).executeTakeFirst();
        if (!row) return null;
        const { id, password, password_ends_at, failures, failed_at } = row;
        return { member: id, password, endsAt: password_ends_at, failures, failedAt: failed_at };
      }),
    noteFailure: (id, at) =>
      read(async () => {
        await database
          .updateTable("members")
          .set((row) => ({ failures: row("failures", "+", 1), failed_at: at }))
          .where("id", "=", id)
          .execute();
      }),
  };
}
