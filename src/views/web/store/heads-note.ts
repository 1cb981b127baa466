/** Once a day the newest entry of every device is noted in the journal: an entry that goes missing later is then missed. */
import type { EntryDraft } from "../../../journal/index.ts";
import { type DeviceStore, demonstration } from "../../../storage/device.ts";
import type { Day } from "../../../units/index.ts";

const keyOf = (programme: string): string => `skepsis.heads-noted.${programme}`;

const dayNoted = (programme: string): string | null => {
  try {
    return localStorage.getItem(keyOf(programme));
  } catch {
    return null;
  }
};

/** The day's note, to be written with the first recording of the day; none where it was written, or nothing is on record. */
export async function headsNote(store: DeviceStore, today: Day): Promise<readonly EntryDraft[]> {
  if (store.programme === demonstration || dayNoted(store.programme) === today) return [];
  const heads = await store.heads();
  return heads.length === 0
    ? []
    : [{ kind: "heads-noted", at: today, about: [store.programme], data: { heads: [...heads] } }];
}

/** Today's note is on the disk, or there was nothing to note. */
export function headsWereNoted(programme: string, today: Day): void {
  try {
    localStorage.setItem(keyOf(programme), today);
  } catch {
    // A browser that keeps nothing: the note is then written again, which changes nothing.
  }
}
