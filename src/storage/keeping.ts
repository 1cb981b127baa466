/** What a programme is kept in: a SQLite file or a schema of a PostgreSQL database, opened and brought up to date. */
import type { Engine } from "./engine.ts";
import { makeProjection, migrate } from "./migrations.ts";
import { makeNights } from "./nights.ts";
import { patiently } from "./patience.ts";
import { renewStates } from "./projection.ts";
import type { Database } from "./tables.ts";

export interface Keeping {
  readonly engine: Engine;
  readonly database: Database;
  /** Name of the file or of the schema. */
  readonly place: string;
  /** Sees to it that an erased body is gone from the disk, as far as the engine can. */
  readonly afterErasure: () => void;
  /** Makes the tables of another place of the same engine readable, does the work under the names of both, and lets go. */
  readonly beside: <T>(place: string, work: (here: string, there: string) => Promise<T>) => Promise<T>;
  /** What the engine itself finds wrong in how it keeps the tables; none where it has no such check. */
  readonly findsWrong: () => Promise<readonly string[]>;
  /** Removes everything and closes. */
  readonly discard: () => Promise<void>;
  readonly close: () => Promise<void>;
}

/** The place is not the one that was meant. */
export class OtherProgramme extends Error {
  override name = "OtherProgramme";
}

/**
 * Brings the shape up to date, makes sure whose records these are, and makes anew what another fold left.
 * @throws OtherProgramme when they are another programme's; StoreTrouble when they are a newer version's or away
 */
export async function prepare({ engine, database, place }: Keeping, programme: string): Promise<void> {
  await patiently(engine, () =>
    database.transaction().execute(async (tx) => {
      await engine.beforeShaping(tx, place);
      await migrate(tx, engine);
      await makeProjection(tx, engine);
      await makeNights(tx, engine);
      const owner = await tx.selectFrom("counters").select("programme").executeTakeFirst();
      if (!owner) await tx.insertInto("counters").values({ programme, position: 0 }).execute();
      else if (owner.programme !== programme)
        throw new OtherProgramme(`${place} holds the programme ${owner.programme}, not ${programme}`);
    }),
  );
  await patiently(engine, () => renewStates(database, engine, programme));
}
