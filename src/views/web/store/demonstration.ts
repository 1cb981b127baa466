/** The demonstration casebook: brought to its own store when that is empty, and living on its own last day. */
import { decodeJournal } from "../../../journal/index.ts";
import { type DeviceStore, demonstration, removeDemonstration } from "../../../storage/device.ts";
import type { Day } from "../../../units/index.ts";

const address = "/demonstration.jsonl";

/** Fills the demonstration's store when nothing is in it yet. */
export async function bringDemonstration(store: DeviceStore): Promise<void> {
  if ((await store.heads()).length > 0) return;
  const response = await fetch(address);
  if (!response.ok) throw new Error(`the demonstration answered ${response.status}`);
  const journal = decodeJournal(await response.text());
  if (!journal.ok) throw new Error(`the demonstration cannot be read: ${journal.problems[0]?.code ?? ""}`);
  await store.takePage({ entries: journal.value, cursor: 0 });
}

/**
 * The day of the newest entry that came with it: the demonstration's own today, so that its cases are neither new nor
 * years overdue. What is written into it here does not move it.
 */
export async function dayOfDemonstration(store: Pick<DeviceStore, "all">): Promise<Day | null> {
  const days = (await store.all())
    .filter(({ header }) => header.device === demonstration)
    .map(({ header }) => header.recordedAt.slice(0, 10));
  return days.sort().at(-1) ?? null;
}

/** Removes the demonstration from this device, and from the service when it can be reached. */
export async function removeDemonstrationEverywhere(store: DeviceStore): Promise<void> {
  await removeDemonstration(store);
  await fetch("/api/programmes/demonstration", { method: "DELETE" }).catch(() => null);
}
