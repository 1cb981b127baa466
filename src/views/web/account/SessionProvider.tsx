/** Who is signed in, for every page: asked when the page opens and whenever the service refuses an exchange. */
import { createContext, type ReactNode, useCallback, useContext, useEffect, useMemo, useState } from "react";
import { askStanding, forgetSent, remember, remembered, type Standing } from "./standing.ts";

export interface SessionAccess extends Standing {
  /** Takes over what the service said after signing in or out. */
  readonly take: (standing: Standing) => void;
  /** Whether records that should go when somebody signed out are still here; until the next one signs in. */
  readonly recordsStayed: boolean;
  readonly tellStayed: () => void;
  /** Asks the service anew. */
  readonly look: () => Promise<void>;
}

const SessionContext = createContext<SessionAccess | null>(null);

export function useSession(): SessionAccess {
  const session = useContext(SessionContext);
  if (!session) throw new Error("useSession stands outside its provider");
  return session;
}

export function SessionProvider({ children }: { readonly children: ReactNode }) {
  const [standing, setStanding] = useState<Standing>(() => ({ isGuarded: null, member: remembered(), ended: null }));
  const [recordsStayed, setStayed] = useState(false);
  const tellStayed = useCallback(() => setStayed(true), []);
  const take = useCallback((next: Standing) => {
    remember(next.member);
    if (next.member) setStayed(false);
    setStanding(next);
  }, []);
  const look = useCallback(async () => {
    const [before, next] = [remembered(), await askStanding()];
    if (!next) return;
    take(next);
    if (before && next.ended === "device-lost") await forgetSent(before);
  }, [take]);
  useEffect(() => void look(), [look]);
  const access = useMemo(
    () => ({ ...standing, recordsStayed, tellStayed, take, look }),
    [standing, recordsStayed, tellStayed, take, look],
  );
  return <SessionContext value={access}>{children}</SessionContext>;
}
