/** The newest entry of each device that wrote here, as the records stand; empty until they are read. */
import { useEffect, useState } from "react";
import type { Head } from "../../../journal/index.ts";
import { useCasebook } from "./context.ts";

export function useHeads(): readonly Head[] {
  const { casebook, heads } = useCasebook();
  const [known, setKnown] = useState<readonly Head[]>([]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the heads move when the casebook does
  useEffect(() => {
    let here = true;
    heads().then(
      (found) => here && setKnown(found),
      () => {}, // the store was closed meanwhile: the next one is asked again
    );
    return () => {
      here = false;
    };
  }, [casebook, heads]);
  return known;
}
