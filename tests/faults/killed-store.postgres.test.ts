/** Processes that work on a PostgreSQL database, killed at any instant. */
import { describe } from "vitest";
import { killedBackups } from "../laws/killed-backups-contract.ts";
import { killedPushes } from "../laws/killed-pushes-contract.ts";
import { killedUploads } from "../laws/killed-uploads-contract.ts";
import { server } from "../postgres/database.ts";
import { databasePlace } from "./database-place.ts";

describe.skipIf(server === null)("on PostgreSQL", () => {
  const make = () => databasePlace();
  const onPostgres = { name: "PostgreSQL", make, oldest: "postgres-shape-2.sql", part: 0.4 } as const;
  killedPushes(onPostgres);
  killedBackups(onPostgres);
  killedUploads(onPostgres);
});
