/** The forecasts of the night, asked of the service once; none without a net, and none of the demonstration. */
import { useEffect, useState } from "react";
import { type KeptNight, keptNights } from "../../model/index.ts";
import { useCasebook } from "../store/context.ts";

const none: readonly KeptNight[] = [];

export function useLastNight(): readonly KeptNight[] {
  const { programme, isDemonstration } = useCasebook();
  const [nights, setNights] = useState(none);
  useEffect(() => {
    setNights(none);
    if (isDemonstration) return;
    const given = new AbortController();
    fetch(`/api/programmes/${programme}/forecasts`, { cache: "no-store", signal: given.signal })
      .then((reply) => (reply.ok ? reply.json() : null))
      .then((answer) => setNights(keptNights(answer)))
      .catch(() => undefined);
    return () => given.abort();
  }, [programme, isDemonstration]);
  return nights;
}
