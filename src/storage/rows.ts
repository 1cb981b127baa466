/** Entries as rows, the one lock that every write takes, and whether a programme has members. */
import type { Entry } from "../journal/index.ts";
import { damagedRecords, StoreTrouble } from "./patience.ts";
import type { Database, EntryRow, Writing } from "./tables.ts";

/** An entry as it was given, from its row. */
export const entryOf = (row: Pick<EntryRow, "header" | "body">): Entry => ({
  header: wordsOf<Entry["header"]>(row.header),
  body: row.body === null ? null : wordsOf<NonNullable<Entry["body"]>>(row.body),
});

/**
 * What was given, from its JSON.
 * @throws StoreTrouble when these are no words that were ever given
 */
export function wordsOf<T>(json: string): T {
  try {
    return JSON.parse(json) as T;
  } catch {
    throw new StoreTrouble(damagedRecords("an entry is no longer the words that were written"));
  }
}

/**
 * Takes the programme's counter row, and with it the only right to write, until the transaction ends. Must be the
 * first statement that touches the tables: in SQLite it is what begins writing, in PostgreSQL what comes later sees
 * everything that was committed before the lock was given.
 */
export async function lockCounter(tx: Writing, programme: string): Promise<number> {
  const { position } = await tx
    .updateTable("counters")
    .set((row) => ({ position: row.ref("position") }))
    .where("programme", "=", programme)
    .returning("position")
    .executeTakeFirstOrThrow();
  return position;
}

/** Whether anybody was ever a member, also of those who were ended or erased since. */
export const hasMembers = async (on: Database | Writing): Promise<boolean> =>
  (await on.selectFrom("members").select("id").limit(1).executeTakeFirst()) !== undefined;
