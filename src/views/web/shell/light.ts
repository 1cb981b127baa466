/** The three lights: chosen by the kind of work, changed by hand, remembered on this device. */
import { useSyncExternalStore } from "react";

export const lights = ["field", "desk", "bench"] as const;
export type Light = (typeof lights)[number];

const key = "skepsis.light";
const isLight = (text: string | null): text is Light => lights.some((light) => light === text);

/** What a hand chose; null leaves the choice to the work. */
const readChoice = (): Light | null => {
  try {
    const kept = localStorage.getItem(key);
    return isLight(kept) ? kept : null;
  } catch {
    return null; // a browser that keeps nothing still shows the page
  }
};

const listeners = new Set<() => void>();
const subscribe = (listener: () => void) => {
  listeners.add(listener);
  return () => listeners.delete(listener);
};

/** Keeps the choice of a hand. */
export function chooseLight(light: Light | null): void {
  try {
    if (light) localStorage.setItem(key, light);
    else localStorage.removeItem(key);
  } catch {
    // not remembered; it still holds for nothing else than this load
  }
  for (const listener of listeners) listener();
}

/** The light a hand chose, or null. */
export const useChosenLight = (): Light | null => useSyncExternalStore(subscribe, readChoice, () => null);

/** Puts the light on the root, where every colour and size of the page hangs. */
export function putLight(light: Light): void {
  document.documentElement.dataset.light = light;
  const ground = getComputedStyle(document.documentElement).getPropertyValue("--ground").trim();
  document.querySelector('meta[name="theme-color"]')?.setAttribute("content", ground);
}
