/** Removing records from a device: the demonstration, and what a lost device holds that the service has as well. */
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

/**
 * Removes a member's records from a device that was reported lost, when the service has them all. Resolves to whether
 * they are gone; the store is then closed and of no more use.
 */
export async function removeWhatWasSent(store: DeviceStore, owner: string): Promise<boolean> {
  if ((await store.unsentCount()) > 0 || (await store.unsentFiles()).length > 0) return false;
  await store.close();
  await deleteDB(databaseName(store.programme, owner));
  return true;
}
