import { describe } from "vitest";
import { scratch } from "../../tests/faults/count.ts";
import { restoredContract } from "../../tests/laws/restored-contract.ts";
import { newDatabase, server } from "../../tests/postgres/database.ts";
import { inFolder, type Records, recordsBy } from "./server.ts";

async function inDatabase(): Promise<Records> {
  const records = recordsBy({ database: await newDatabase(), folder: "" });
  if (!records.ok) throw new Error("no address");
  return records.value;
}

describe.skipIf(server === null)("on PostgreSQL", () => {
  restoredContract("from a database into another", inDatabase, inDatabase);
  restoredContract("from files into a database", async () => inFolder(scratch("from")), inDatabase);
  restoredContract("from a database into files", inDatabase, async () => inFolder(scratch("into")));
});
