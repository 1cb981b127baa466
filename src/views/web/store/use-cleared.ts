/** Notices that the browser has cleared what was kept here: a note of it is kept elsewhere in the browser. */
import { useEffect, useState } from "react";
import type { DeviceSnapshot, DeviceStore } from "../../../storage/device.ts";
import { type Problem, problem } from "../../../units/index.ts";

interface Noted {
  readonly device: string;
  readonly unsent: number;
}

/** Whose records of which programme; without accounts nobody's. A device that members share keeps those of each apart. */
interface Whose {
  readonly programme: string;
  readonly owner: string | null;
}

const slotOf = ({ programme, owner }: Whose): string =>
  ["skepsis.kept", programme, ...(owner === null ? [] : [owner])].join(" ");

function noted(whose: Whose): Noted | null {
  try {
    return JSON.parse(localStorage.getItem(slotOf(whose)) ?? "null") as Noted | null;
  } catch {
    return null;
  }
}

function note(whose: Whose, kept: Noted): void {
  try {
    localStorage.setItem(slotOf(whose), JSON.stringify(kept));
  } catch {
    // a browser that keeps no notes: a clearing is then not noticed
  }
}

/** Records that somebody had removed on purpose were not cleared by the browser. */
export function forgetKept(whose: Whose): void {
  try {
    localStorage.removeItem(slotOf(whose));
  } catch {
    // nothing was noted
  }
}

/** What to say when records were kept here by a device that is gone; null when all is as it was left. */
export function clearedBefore(before: Noted | null, store: Pick<DeviceStore, "device" | "lastSafeAt">): Problem | null {
  if (before === null || before.device === store.device() || store.lastSafeAt() !== null) return null;
  return problem("device-cleared", "warned", null, { slots: { unsent: before.unsent } });
}

export function useCleared(
  store: DeviceStore,
  { lastSafeAt, unsentCount }: DeviceSnapshot,
  owner: string | null,
): Problem | null {
  const [cleared] = useState(() =>
    store.programme === "demonstration" ? null : clearedBefore(noted({ programme: store.programme, owner }), store),
  );
  useEffect(() => {
    if (lastSafeAt !== null)
      note({ programme: store.programme, owner }, { device: store.device(), unsent: unsentCount });
  }, [store, owner, lastSafeAt, unsentCount]);
  return cleared;
}
