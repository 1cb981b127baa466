/** The exchange with the service in the background: now and then, and soon after something was written or the net came back. */
import { useCallback, useEffect, useRef, useState } from "react";
import { type DeviceStore, exchangeOnce } from "../../../storage/device.ts";
import type { Problem } from "../../../units/index.ts";
import { type Later, rounds } from "./rounds.ts";

/** Between two rounds when nothing happens, and after an entry was written. */
const restMilliseconds = 60_000;
const soonMilliseconds = 1_500;

const byThePage: Later = (work, milliseconds) => {
  const timer = setTimeout(work, milliseconds);
  return () => clearTimeout(timer);
};

export interface Exchange {
  /** Entries that the service did not take in the last round. */
  readonly refused: number;
  /** What a person should know: a clock that is off, a service that refuses. No connection is no trouble. */
  readonly troubles: readonly Problem[];
  /** Whether the service answered in the last round; null before the first. */
  readonly reached: boolean | null;
  /** Asks for a round soon. */
  readonly soon: () => void;
}

export function useExchange(store: DeviceStore): Exchange {
  const [state, setState] = useState<Omit<Exchange, "soon">>({ refused: 0, troubles: [], reached: null });
  const wake = useRef<() => void>(() => {});
  useEffect(() => {
    let here = true;
    const exchange = async () => {
      try {
        const report = await exchangeOnce({ fetch: (...request) => fetch(...request), base: "/api", store });
        if (here)
          setState({
            refused: report.refused.length,
            reached: report.reached,
            troubles: report.reached ? report.problems.filter((trouble) => trouble.severity === "warned") : [],
          });
      } catch {
        // the store was closed under the round: the next page begins another one
      }
    };
    const { within, stop } = rounds(exchange, { later: byThePage, restMilliseconds });
    wake.current = () => within(soonMilliseconds);
    // The browser's word that there is a net is only a hint to try; the request itself tells.
    const tryNow = () => within(0);
    window.addEventListener("online", tryNow);
    window.addEventListener("offline", tryNow);
    within(soonMilliseconds);
    return () => {
      here = false;
      stop();
      window.removeEventListener("online", tryNow);
      window.removeEventListener("offline", tryNow);
    };
  }, [store]);
  const soon = useCallback(() => wake.current(), []);
  return { ...state, soon };
}
