/** The hand that holds the phone: remembered on this device, so that the buttons lie under its thumb. */
import { useSyncExternalStore } from "react";

export type Hand = "right" | "left";
const key = "skepsis.hand";
const listeners = new Set<() => void>();

const read = (): Hand => {
  try {
    return localStorage.getItem(key) === "left" ? "left" : "right";
  } catch {
    return "right";
  }
};

export function chooseHand(hand: Hand): void {
  try {
    localStorage.setItem(key, hand);
  } catch {
    // a browser that keeps nothing starts with the right hand each time
  }
  for (const listener of listeners) listener();
}

export const useHand = (): Hand =>
  useSyncExternalStore(
    (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    read,
    () => "right",
  );
