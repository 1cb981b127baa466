/** Entries as rows, and the one lock that every write takes. */
import type { Entry } from "../journal/index.ts";
import type { EntryRow, Writing } from "./tables.ts";

/** An entry as it was given, from its row. */
export const entryOf = (row: Pick<EntryRow, "header" | "body">): Entry => ({
  header: JSON.parse(row.header) as Entry["header"],
  body: row.body === null ? null : (JSON.parse(row.body) as Entry["body"]),
});

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
