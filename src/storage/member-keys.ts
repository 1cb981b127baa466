/** Passkeys of members, and the questions put to them. */
import type { Desk } from "./member-desk.ts";
import type { MemberBook, Passkey } from "./members-contract.ts";
import type { Tables } from "./tables.ts";

type Keys = Pick<
  MemberBook,
  "passkeys" | "passkey" | "addPasskey" | "removePasskey" | "notePasskeyUse" | "putChallenge" | "takeChallenge"
>;

const passkeyOf = (row: Tables["passkeys"]): Passkey => ({
  id: row.id,
  member: row.member,
  publicKey: row.public_key,
  counter: row.counter,
  transports: JSON.parse(row.transports) as readonly string[],
  name: row.name,
  madeAt: row.made_at,
  usedAt: row.used_at,
});

export function keysOf({ database, read, write }: Desk): Keys {
  return {
    passkeys: (member) =>
      read(async () => {
        const rows = database.selectFrom("passkeys").selectAll().where("member", "=", member).orderBy("made_at");
        return (await rows.execute()).map(passkeyOf);
      }),
    passkey: (id) =>
      read(async () => {
        const row = await database.selectFrom("passkeys").selectAll().where("id", "=", id).executeTakeFirst();
        return row ? passkeyOf(row) : null;
      }),
    addPasskey: ({ id, member, publicKey, counter, transports, name }, doing) =>
      write(doing, async (tx, note) => {
        const row: Tables["passkeys"] = {
          ...{ id, member, public_key: publicKey, counter, transports: JSON.stringify(transports), name },
          ...{ made_at: doing.at, used_at: null },
        };
        await tx.insertInto("passkeys").values(row).execute();
        note({ act: "passkey-added", member });
      }),
    removePasskey: (id, member, doing) =>
      write(doing, async (tx, note) => {
        const gone = await tx
          .deleteFrom("passkeys")
          .where("id", "=", id)
          .where("member", "=", member)
          .executeTakeFirst();
        if (Number(gone.numDeletedRows) === 0) return false;
        note({ act: "passkey-removed", member });
        return true;
      }),
    notePasskeyUse: (id, counter, at) =>
      read(async () => {
        await database.updateTable("passkeys").set({ counter, used_at: at }).where("id", "=", id).execute();
      }),
    putChallenge: ({ hash, purpose, member, endsAt }) =>
      read(async () => {
        await database.insertInto("challenges").values({ hash, purpose, member, ends_at: endsAt }).execute();
      }),
    takeChallenge: (hash, purpose, at) =>
      read(async () => {
        await database.deleteFrom("challenges").where("ends_at", "<=", at).execute();
        const row = await database
          .deleteFrom("challenges")
          .where("hash", "=", hash)
          .where("purpose", "=", purpose)
          .returning("member")
          .executeTakeFirst();
        return row ?? null;
      }),
  };
}
