/** Ranks the causes of several colonies in a worker that lives as long as there is something to rank. */
import { useEffect, useRef, useState } from "react";
import type { differential, OwnEvidence } from "../../../reasoning/index.ts";
import type { Ranked, RankQuestion } from "./rank-messages.ts";

/** One answer for each input, null where it could not be reckoned; null altogether until they are there. */
export function useRanked(
  inputs: readonly differential.AnyInput[] | null,
  own: OwnEvidence | null,
): readonly (differential.AnyAnswer | null)[] | null {
  const [ranked, setRanked] = useState<{ readonly text: string; readonly answers: Ranked["answers"] } | null>(null);
  const number = useRef(0);
  const text = inputs === null || inputs.length === 0 ? null : JSON.stringify({ inputs, own });
  useEffect(() => {
    if (text === null) return;
    const worker = new Worker(new URL("./rank.worker.ts", import.meta.url), { type: "module" });
    number.current += 1;
    const question: RankQuestion = { number: number.current, ...JSON.parse(text) };
    worker.onmessage = ({ data }: MessageEvent<Ranked>) => {
      if (data.number === number.current) setRanked({ text, answers: data.answers });
    };
    worker.postMessage(question);
    return () => worker.terminate();
  }, [text]);
  if (text === null) return inputs === null ? null : [];
  return ranked?.text === text ? ranked.answers : null;
}
