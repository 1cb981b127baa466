/** Notices that the browser has cleared what was kept here: a note of it is kept elsewhere in the browser. */
import { useEffect, useState } from "react";
import type { DeviceSnapshot, DeviceStore } from "../../../storage/device.ts";
import { type Problem, problem } from "../../../units/index.ts";

interface Noted {
  readonly device: string;
  readonly unsent: number;
}

const slotOf = (programme: string): string => `skepsis.kept ${programme}`;

function noted(programme: string): Noted | null {
  try {
    return JSON.parse(localStorage.getItem(slotOf(programme)) ?? "null") as Noted | null;
  } catch {
    return null;
  }
}

function note(programme: string, kept: Noted): void {
  try {
    localStorage.setItem(slotOf(programme), JSON.stringify(kept));
  } catch {
    // a browser that keeps no notes: a clearing is then not noticed
  }
}

/** Records that somebody had removed on purpose were not cleared by the browser. */
export function forgetKept(programme: string): void {
  try {
    localStorage.removeItem(slotOf(programme));
  } catch {
    // nothing was noted
  }
}

/** What to say when records were kept here by a device that is gone; null when all is as it was left. */
export function clearedBefore(before: Noted | null, store: Pick<DeviceStore, "device" | "lastSafeAt">): Problem | null {
  if (before === null || before.device === store.device() || store.lastSafeAt() !== null) return null;
  return problem("device-cleared", "warned", null, { slots: { unsent: before.unsent } });
}

export function useCleared(store: DeviceStore, { lastSafeAt, unsentCount }: DeviceSnapshot): Problem | null {
  const [cleared] = useState(() =>
    store.programme === "demonstration" ? null : clearedBefore(noted(store.programme), store),
  );
  useEffect(() => {
    if (lastSafeAt !== null) note(store.programme, { device: store.device(), unsent: unsentCount });
  }, [store, lastSafeAt, unsentCount]);
  return cleared;
}
