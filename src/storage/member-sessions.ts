/** Sessions and devices: what is signed in where, and what happens when a phone is lost. */
import { answered, blocked, problem, type Result } from "../units/index.ts";
import type { Desk } from "./member-desk.ts";
import { memberOf, newId } from "./member-people.ts";
import type { Device, MemberBook, Session, Standing } from "./members-contract.ts";
import { isToolDevice, serviceDevice } from "./own-devices.ts";
import type { Tables, Writing } from "./tables.ts";

type Sessions = Pick<
  MemberBook,
  "beginSession" | "standing" | "sessions" | "endSession" | "registerDevice" | "devices" | "loseDevice" | "returnDevice"
>;

const sessionOf = (row: Tables["sessions"]): Session => ({
  id: row.id,
  member: row.member,
  device: row.device,
  client: row.client,
  beganAt: row.began_at,
  seenAt: row.seen_at,
  endsAt: row.ends_at,
  endedAt: row.ended_at,
  why: row.why,
});

const deviceOf = (row: Tables["devices"]): Device => ({
  device: row.device,
  member: row.member,
  name: row.name,
  registeredAt: row.registered_at,
  lostAt: row.lost_at,
});

/** Seen is written no oftener than this: a write for each request would hold the others up. */
const seenEveryMilliseconds = 60_000;

const endings = ["over", "signed-out", "ended", "device-lost", "member-ended"] as const;

/**
 * The row of a device that belongs to the member from now on; a problem when it is another's. A device that wrote here
 * before anybody registered it may be taken over only by those who may claim it.
 */
export async function registered(
  tx: Writing,
  given: { readonly device: string; readonly name: string; readonly member: string; readonly mayClaim: boolean },
  at: string,
): Promise<{ readonly row: Tables["devices"]; readonly isNew: boolean } | null> {
  const { device, name, member, mayClaim } = given;
  if (device === serviceDevice) return null;
  const known = await tx.selectFrom("devices").selectAll().where("device", "=", device).executeTakeFirst();
  if (known) return known.member === member ? { row: known, isNew: false } : null;
  if (isToolDevice(device)) return null;
  const held = await tx.selectFrom("heads").select("device").where("device", "=", device).executeTakeFirst();
  if (held && !mayClaim) return null;
  const row = { device, member, name, registered_at: at, lost_at: null };
  await tx.insertInto("devices").values(row).execute();
  return { row, isNew: true };
}

export const deviceOfAnother = (device: string) =>
  problem("device-of-another", "blocked", "device", { given: device, slots: { device } });

export function sessionsOf({ database, read, write }: Desk): Sessions {
  /** A device that is known, changed; a problem when it is not. */
  const changeDevice = (
    device: string,
    doing: Parameters<MemberBook["loseDevice"]>[1],
    work: (tx: Writing, row: Tables["devices"]) => Promise<"device-lost" | "device-returned" | null>,
  ) =>
    write(doing, async (tx, note): Promise<Result<Device>> => {
      const row = await tx.selectFrom("devices").selectAll().where("device", "=", device).executeTakeFirst();
      if (!row) return blocked(problem("device-unknown", "blocked", "device", { given: device }));
      const act = await work(tx, row);
      if (act !== null) note({ act, member: row.member, device });
      const after = await tx.selectFrom("devices").selectAll().where("device", "=", device).executeTakeFirstOrThrow();
      return answered(deviceOf(after));
    });

  return {
    beginSession: ({ member, hash, client, endsAt }, at) =>
      write({ by: member, at }, async (tx, note) => {
        const row: Tables["sessions"] = {
          ...{ hash, id: newId(at), member, device: null, client, began_at: at, seen_at: at, ends_at: endsAt },
          ...{ ended_at: null, why: null },
        };
        await tx.insertInto("sessions").values(row).execute();
        await tx.updateTable("members").set({ failures: 0, failed_at: null }).where("id", "=", member).execute();
        note({ act: "signed-in" });
        return sessionOf(row);
      }),
    standing: (hash, at, idleUntil) =>
      read(async (): Promise<Standing> => {
        const row = await database.selectFrom("sessions").selectAll().where("hash", "=", hash).executeTakeFirst();
        if (!row) return { ended: "unknown" };
        if (row.ended_at !== null) return { ended: endings.find((each) => each === row.why) ?? "ended" };
        if (row.ends_at <= at || idleUntil(row.seen_at) <= at) return { ended: "over" };
        const member = await database.selectFrom("members").selectAll().where("id", "=", row.member).executeTakeFirst();
        if (!member || member.ended_at !== null) return { ended: "member-ended" };
        if (Date.parse(at) - Date.parse(row.seen_at) > seenEveryMilliseconds)
          await database.updateTable("sessions").set({ seen_at: at }).where("hash", "=", hash).execute();
        return { member: memberOf(member), session: sessionOf(row) };
      }),
    sessions: (member, at) =>
      read(async () => {
        const going = database
          .selectFrom("sessions")
          .selectAll()
          .where("ended_at", "is", null)
          .where("ends_at", ">", at);
        const own = member === null ? going : going.where("member", "=", member);
        return (await own.orderBy("id").execute()).map(sessionOf);
      }),
    endSession: (id, why, doing) =>
      write(doing, async (tx, note) => {
        const row = await tx
          .updateTable("sessions")
          .set({ ended_at: doing.at, why })
          .where("id", "=", id)
          .where("ended_at", "is", null)
          .returning("member")
          .executeTakeFirst();
        if (!row) return false;
        note({ act: why === "signed-out" ? "signed-out" : "session-ended", member: row.member });
        return true;
      }),
    registerDevice: ({ device, name, session, mayClaim }, doing) =>
      write(doing, async (tx, note): Promise<Result<Device>> => {
        const found = await registered(tx, { device, name, member: doing.by, mayClaim }, doing.at);
        if (!found) return blocked(deviceOfAnother(device));
        const row = { ...found.row, name };
        await tx.updateTable("devices").set({ name }).where("device", "=", device).execute();
        await tx
          .updateTable("sessions")
          .set({ device })
          .where("id", "=", session)
          .where("member", "=", doing.by)
          .execute();
        if (found.isNew) note({ act: "device-registered", device });
        return answered(deviceOf(row));
      }),
    devices: () =>
      read(async () =>
        (await database.selectFrom("devices").selectAll().orderBy("registered_at").orderBy("device").execute()).map(
          deviceOf,
        ),
      ),
    loseDevice: (device, doing) =>
      changeDevice(device, doing, async (tx, row) => {
        await tx
          .updateTable("sessions")
          .set({ ended_at: doing.at, why: "device-lost" })
          .where("device", "=", device)
          .where("ended_at", "is", null)
          .execute();
        if (row.lost_at !== null) return null;
        await tx.updateTable("devices").set({ lost_at: doing.at }).where("device", "=", device).execute();
        return "device-lost";
      }),
    returnDevice: (device, doing) =>
      changeDevice(device, doing, async (tx, row) => {
        if (row.lost_at === null) return null;
        await tx.updateTable("devices").set({ lost_at: null }).where("device", "=", device).execute();
        return "device-returned";
      }),
  };
}
