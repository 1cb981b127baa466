/** The exchange with the service in the background: now and then, and soon after something was written or the net came back. */
import { useCallback, useEffect, useRef, useState } from "react";
import { type DeviceStore, exchangeOnce } from "../../../storage/device.ts";
import type { Problem } from "../../../units/index.ts";
import { useSession } from "../account/SessionProvider.tsx";
import { scopeOf } from "../account/standing.ts";
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
  /** Whether the service asks to sign in first. */
  readonly needsSignIn: boolean;
  /** Asks for a round soon. */
  readonly soon: () => void;
}

/** The demonstration goes to a service of one's own machine alone, never where members sign in. */
export function useExchange(store: DeviceStore, isDemonstration: boolean): Exchange {
  const { isGuarded, member, look } = useSession();
  const isLeftOut = isDemonstration && isGuarded !== false;
  const owner = isDemonstration ? null : (member?.id ?? null);
  const [state, setState] = useState<Omit<Exchange, "soon">>({
    ...{ refused: 0, troubles: [], reached: null, needsSignIn: false },
  });
  const wake = useRef<() => void>(() => {});
  useEffect(() => {
    if (isLeftOut) return undefined;
    let here = true;
    const exchange = async () => {
      try {
        const settings = { fetch: (...request: Parameters<typeof fetch>) => fetch(...request), base: "/api", store };
        const report = await exchangeOnce(owner === null ? settings : { ...settings, member: scopeOf(owner) });
        const needsSignIn = report.problems.some(({ code }) => code === "sign-in-needed");
        if (needsSignIn && owner !== null) void look(); // why the session ended
        if (here)
          setState({
            refused: report.refused.length,
            reached: report.reached || needsSignIn,
            troubles: report.reached ? report.problems.filter((trouble) => trouble.severity === "warned") : [],
            needsSignIn,
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
  }, [store, isLeftOut, owner, look]);
  const soon = useCallback(() => wake.current(), []);
  return { ...state, soon };
}
