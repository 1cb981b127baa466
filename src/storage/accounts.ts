/**
 * Who may come in, as a backup carries it: members with the hashes of their passwords, their passkeys and devices, and
 * whose each case and apiary is. Sessions stay behind: one that was ended since must not come back to life with an old
 * archive, and signing in again costs a minute. So do invitations, which could be used twice, questions put to passkeys,
 * and the count of wrong passwords. What was done to members stands in the journal.
 */
import * as z from "zod";
import { canonicalJson, type Hash, textHash } from "../journal/index.ts";
import type { Database, Writing } from "./tables.ts";

const words = z.string();
const number = z.int();

const shape = z.strictObject({
  members: z.array(
    z.strictObject({
      ...{ id: words, name: words, sign_in: words, role: words, password: words.nullable() },
      ...{ places: number, admitted_at: words, ended_at: words.nullable() },
      // Absent from a backup of before drawn passwords ran out.
      password_ends_at: words.nullable().optional(),
    }),
  ),
  devices: z.array(
    z.strictObject({ device: words, member: words, name: words, registered_at: words, lost_at: words.nullable() }),
  ),
  passkeys: z.array(
    z.strictObject({
      ...{ id: words, member: words, public_key: words, counter: number, transports: words, name: words },
      ...{ made_at: words, used_at: words.nullable() },
    }),
  ),
  scopes: z.array(z.strictObject({ member: words, root: words, since: number })),
  parents: z.array(z.strictObject({ root: words, parent: words })),
});

export type Accounts = z.infer<typeof shape>;

/** Accounts from their JSON; null when these are none. */
export function accountsIn(text: string): Accounts | null {
  try {
    return shape.parse(JSON.parse(text));
  } catch {
    return null;
  }
}

export const accountsHash = (accounts: Accounts): Hash => textHash(canonicalJson(accounts));

/** All accounts, and the position up to which the journal had come when they were so. */
export async function accountsOf(tx: Writing): Promise<{ readonly accounts: Accounts; readonly position: number }> {
  const { position } = await tx.selectFrom("counters").select("position").executeTakeFirstOrThrow();
  const members = tx
    .selectFrom("members")
    .select(["id", "name", "sign_in", "role", "password", "password_ends_at", "places", "admitted_at", "ended_at"]);
  return {
    position,
    accounts: {
      members: inOrder(await members.execute()),
      devices: inOrder(await tx.selectFrom("devices").selectAll().execute()),
      passkeys: inOrder(await tx.selectFrom("passkeys").selectAll().execute()),
      scopes: inOrder(await tx.selectFrom("scopes").selectAll().execute()),
      parents: inOrder(await tx.selectFrom("parents").selectAll().execute()),
    },
  };
}

/** The same order on every database. */
const inOrder = <Row>(rows: readonly Row[]): Row[] =>
  rows
    .map((row) => ({ row, key: canonicalJson(row) }))
    .toSorted((one, other) => (one.key < other.key ? -1 : 1))
    .map(({ row }) => row);

/** Rows written in one statement: databases take only so many values. */
const atOnce = 100;

/** Puts accounts where there are none, in place of whose the entries alone say that things are. */
export async function putAccounts(tx: Database | Writing, given: Accounts): Promise<void> {
  for (const table of ["scopes", "parents"] as const) await tx.deleteFrom(table).execute();
  const members = given.members.map(({ password_ends_at = null, ...row }) => ({
    ...{ ...row, password_ends_at, failures: 0, failed_at: null },
  }));
  for (const some of parts(members)) await tx.insertInto("members").values(some).execute();
  for (const some of parts(given.devices)) await tx.insertInto("devices").values(some).execute();
  for (const some of parts(given.passkeys)) await tx.insertInto("passkeys").values(some).execute();
  for (const some of parts(given.scopes)) await tx.insertInto("scopes").values(some).execute();
  for (const some of parts(given.parents)) await tx.insertInto("parents").values(some).execute();
}

const parts = <Row>(rows: readonly Row[]): readonly Row[][] =>
  Array.from({ length: Math.ceil(rows.length / atOnce) }, (_, index) =>
    rows.slice(index * atOnce, (index + 1) * atOnce),
  );
