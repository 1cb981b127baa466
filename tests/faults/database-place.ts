/** A place for the tests that are killed over it: a database of its own. */
import { rmSync } from "node:fs";
import { ask, newDatabase } from "../postgres/database.ts";
import { scratch } from "./count.ts";
import { envOf, type Place } from "./place.ts";
import { until } from "./victim.ts";

const places = ["skepsis_main", "restoring_main"];
const working = `select pid, state, query from pg_stat_activity where application_name = 'skepsis' and datname = current_database()`;

const aside = "select 1 from information_schema.schemata where schema_name = 'restoring_main'";

/** A new database of the tests' server, or of the one at this address. */
export async function databasePlace(at?: string): Promise<Place> {
  const [database, folder] = [await newDatabase(at), scratch("unused")];
  return {
    ...{ database, folder, env: envOf(database, folder) },
    run: async (statements) => void (await ask(database, statements)),
    async empty() {
      for (const place of places) await ask(database, `drop schema if exists ${place} cascade`);
    },
    async quiet() {
      let left: Awaited<ReturnType<typeof ask>> = [];
      await until(
        async () => {
          left = await ask(database, working);
          return left.length === 0;
        },
        () => `sessions are still there of processes that are gone: ${JSON.stringify(left)}`,
      );
    },
    hasAside: async () => (await ask(database, aside)).length > 0,
    remove: () => rmSync(folder, { recursive: true, force: true }), // the database goes with its server
  };
}
