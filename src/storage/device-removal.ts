/** Removing the demonstration from a device: its whole database, and no other. */
import { deleteDB } from "idb";
import { answered, blocked, type Result } from "../units/index.ts";
import { demonstration, onlyDemonstration } from "./contract.ts";
import type { DeviceStore } from "./device-contract.ts";
import { databaseName } from "./indexed-db.ts";

/**
 * Removes the demonstration with its database, also while other tabs show it. The store is closed and of no more use.
 * Refused for any other programme: records are never removed this way.
 */
export async function removeDemonstration(store: DeviceStore): Promise<Result<null>> {
  if (store.programme !== demonstration) return blocked(onlyDemonstration(store.programme));
  await store.close();
  await deleteDB(databaseName(demonstration));
  return answered(null);
}
