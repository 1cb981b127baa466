/** The demonstration casebook on this device: a database of its own, so that removing it touches nothing else. */
import { demonstration } from "../../../storage/device.ts";

/** Deletes the demonstration's database. */
export function removeDemonstrationHere(): Promise<void> {
  return new Promise((resolve, reject) => {
    const request = indexedDB.deleteDatabase(`skepsis-${demonstration}`);
    request.onsuccess = () => resolve();
    request.onerror = () => reject(request.error);
    // Another tab still holds it open: it is deleted when that tab lets go, and nothing more can be done here.
    request.onblocked = () => resolve();
  });
}
