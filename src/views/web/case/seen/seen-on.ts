/** The day on which what is ticked next was seen, for a case: remembered for the tab, today until someone chose another. */
import { useSyncExternalStore } from "react";
import type { Day } from "../../../../units/index.ts";
import { readSeenOn } from "../../../model/index.ts";

const listeners = new Set<() => void>();
const key = (caseId: string) => `skepsis.seen-on.${caseId}`;

const kept = (caseId: string): string => {
  try {
    return sessionStorage.getItem(key(caseId)) ?? "";
  } catch {
    return "";
  }
};

/** Keeps the day; the day of today is kept as no choice, so that tomorrow's answers are of tomorrow. */
export function chooseSeenOn(caseId: string, day: Day, today: Day): void {
  try {
    if (day === today) sessionStorage.removeItem(key(caseId));
    else sessionStorage.setItem(key(caseId), day);
  } catch {
    // a browser that keeps nothing dates every answer today
  }
  for (const listener of listeners) listener();
}

export function useSeenOn(caseId: string, today: Day): Day {
  const chosen = useSyncExternalStore(
    (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    () => kept(caseId),
    () => "",
  );
  const read = readSeenOn(chosen, today);
  return read.ok ? read.value : today;
}
