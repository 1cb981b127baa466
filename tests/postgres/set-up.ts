/** Before the tests of the store on PostgreSQL: one server for all of them, or a word on why there is none. */
import type { TestProject } from "vitest/node";
import { ensurePostgres } from "../../scripts/postgres.ts";
import { startPostgres } from "./server.ts";

declare module "vitest" {
  interface ProvidedContext {
    /** Address of the tests' server; null when the tests are left out. */
    postgres: string | null;
  }
}

export default async function setUp(project: TestProject): Promise<(() => Promise<void>) | undefined> {
  const found = ensurePostgres();
  if ("missing" in found) {
    if (process.env.CI === "true") throw new Error(`The store is not tested on PostgreSQL: ${found.missing}`);
    process.stderr.write(`SKIPPED: the store on PostgreSQL, since ${found.missing}\n`);
    project.provide("postgres", null);
    return undefined;
  }
  const server = await startPostgres(found.programs);
  project.provide("postgres", server.address);
  return () => server.remove();
}
