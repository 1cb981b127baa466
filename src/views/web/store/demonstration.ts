/** The demonstration casebook: fills its own store from the journal that ships with the page, and removes it everywhere. */

import journalAddress from "../../../../examples/demonstration/journal.jsonl?url";
import { decodeJournal } from "../../../journal/index.ts";
import { type DeviceStore, removeDemonstration } from "../../../storage/device.ts";

/** Puts the invented entries into an empty demonstration store; entries that are there already stay as they are. */
export async function fillDemonstration(store: DeviceStore): Promise<void> {
  if ((await store.heads()).length > 0) return;
  const answer = await fetch(journalAddress);
  const journal = decodeJournal(await answer.text());
  if (!journal.ok) throw new Error(`the demonstration journal cannot be read: ${journal.problems[0]?.code ?? ""}`);
  await store.push(journal.value);
}

/** Removes the demonstration from this device, and from the service when it can be reached. */
export async function removeDemonstrationEverywhere(store: DeviceStore): Promise<void> {
  await removeDemonstration(store);
  await fetch("/api/programmes/demonstration", { method: "DELETE" }).catch(() => null);
}
