/** Asks a method of the reckoner, tells how far it is, and stops it when it is no longer wanted. */
import { useCallback, useEffect, useRef, useState } from "react";
import type { Reply } from "../../../reasoning/index.ts";
import type { MethodAnswer, MethodMeta, MethodQuestion } from "./method-messages.ts";

export interface Reckoning {
  /** What the method is; null until its worker has told. */
  readonly method: MethodMeta | null;
  readonly reply: Reply | null;
  /** Share done of the question that runs; null when none runs. */
  readonly working: number | null;
  readonly wasStopped: boolean;
  readonly ask: (question: object) => void;
  readonly stop: () => void;
}

const newWorker = () => new Worker(new URL("./method.worker.ts", import.meta.url), { type: "module" });

/** One method; its worker goes with the page. */
export function useMethod(verb: string): Reckoning {
  const [method, setMethod] = useState<MethodMeta | null>(null);
  const [reply, setReply] = useState<Reply | null>(null);
  const [working, setWorking] = useState<number | null>(null);
  const [wasStopped, setStopped] = useState(false);
  const worker = useRef<Worker | null>(null);
  const newest = useRef(0);

  const begin = useCallback(() => {
    worker.current?.terminate();
    const made = newWorker();
    made.onmessage = ({ data }: MessageEvent<MethodAnswer>) => {
      if (data.kind === "described") setMethod(data.method);
      else if (data.number !== newest.current) return;
      else if (data.kind === "progress") setWorking(data.share);
      else {
        setReply(data.reply);
        setWorking(null);
      }
    };
    worker.current = made;
    return made;
  }, []);

  useEffect(() => {
    const describe: MethodQuestion = { kind: "describe", verb };
    begin().postMessage(describe);
    return () => {
      worker.current?.terminate();
      worker.current = null;
    };
  }, [begin, verb]);

  const ask = useCallback(
    (question: object) => {
      // A question that still runs is not worth waiting for.
      const to = working === null ? (worker.current ?? begin()) : begin();
      newest.current += 1;
      setWorking(0);
      setStopped(false);
      const asked: MethodQuestion = { kind: "ask", verb, number: newest.current, question };
      to.postMessage(asked);
    },
    [begin, verb, working],
  );
  const stop = useCallback(() => {
    newest.current += 1;
    begin();
    setWorking(null);
    setStopped(true);
  }, [begin]);
  return { method, reply, working, wasStopped, ask, stop };
}
