/** How the book of members is read and written: each change with its note in the journal, in one transaction. */
import type { Engine } from "./engine.ts";
import { type Note, noteActs } from "./member-notes.ts";
import type { Doing } from "./members-contract.ts";
import { lockCounter } from "./rows.ts";
import type { Database, Writing } from "./tables.ts";

export interface Desk {
  readonly database: Database;
  readonly programme: string;
  readonly read: <T>(work: () => Promise<T>) => Promise<T>;
  /** One transaction that holds the counter; what is noted in it stands in the journal with what it did. */
  readonly write: <T>(doing: Doing, work: Work<T>) => Promise<T>;
  /** Several such works, one after another in one transaction: each sees what those before it did. */
  readonly writeAll: <T>(works: readonly { readonly doing: Doing; readonly work: Work<T> }[]) => Promise<readonly T[]>;
}

type Work<T> = (tx: Writing, note: (act: Note) => void, from: number) => Promise<T>;

export function deskOf(
  database: Database,
  engine: Engine,
  programme: string,
  read: <T>(work: () => Promise<T>) => Promise<T>,
): Desk {
  const writeAll: Desk["writeAll"] = (works) =>
    read(() =>
      database
        .transaction()
        .setIsolationLevel("read committed") // after the lock, see what others have committed before it
        .execute(async (tx) => {
          await engine.beforeWriting(tx);
          let from = await lockCounter(tx, programme);
          const done: Awaited<ReturnType<(typeof works)[number]["work"]>>[] = [];
          for (const { doing, work } of works) {
            const notes: Note[] = [];
            done.push(await work(tx, (act) => notes.push(act), from));
            const { position } = await tx.selectFrom("counters").select("position").executeTakeFirstOrThrow();
            from = await noteActs(tx, { programme, from: position, doing }, notes);
          }
          return done;
        }),
    );
  return {
    ...{ database, programme, read, writeAll },
    write: async (doing, work) => (await writeAll([{ doing, work }]))[0] as Awaited<ReturnType<typeof work>>,
  };
}
