/** How this reader's bench behaves: sound, key map, what counts as a bounce; remembered on this device. */
import { useCallback, useState } from "react";

export const pads = ["numeric", "left"] as const;
export type Pad = (typeof pads)[number];

/** Choices of what counts as one press, milliseconds. */
export const bounces = [70, 100, 150] as const;

export interface BenchSettings {
  readonly sound: boolean;
  readonly pad: Pad;
  readonly bounceMilliseconds: number;
}

const key = "skepsis.bench";
const first: BenchSettings = { sound: true, pad: "numeric", bounceMilliseconds: bounces[0] };

function read(): BenchSettings {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(key) ?? "null");
    if (typeof kept !== "object" || kept === null) return first;
    const { sound, pad, bounceMilliseconds } = kept as Partial<BenchSettings>;
    return {
      sound: typeof sound === "boolean" ? sound : first.sound,
      pad: pads.find((each) => each === pad) ?? first.pad,
      bounceMilliseconds: bounces.find((each) => each === bounceMilliseconds) ?? first.bounceMilliseconds,
    };
  } catch {
    return first; // a browser that keeps nothing begins with the first settings each time
  }
}

/** The settings and how to change some of them. */
export function useBenchSettings(): readonly [BenchSettings, (change: Partial<BenchSettings>) => void] {
  const [settings, set] = useState(read);
  const change = useCallback((part: Partial<BenchSettings>) => {
    set((now) => {
      const next = { ...now, ...part };
      try {
        localStorage.setItem(key, JSON.stringify(next));
      } catch {
        // holds for this visit
      }
      return next;
    });
  }, []);
  return [settings, change];
}
