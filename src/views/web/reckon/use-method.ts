/** Asks a method of the reckoner, tells how far it is, and stops it when it is no longer wanted. */
import { useCallback, useEffect, useRef, useState } from "react";
import type { Reply } from "../../../reasoning/index.ts";
import type { Question } from "../../model/index.ts";
import type { MethodAnswer, MethodMeta, MethodQuestion } from "./method-messages.ts";

export interface Reckoning {
  /** What the method is; null until its worker has told. */
  readonly method: MethodMeta | null;
  /** The newest answer with its question; null before the first. */
  readonly answer: { readonly question: Question; readonly reply: Reply } | null;
  /** Share done of the question that runs; null when none runs. */
  readonly working: number | null;
  readonly wasStopped: boolean;
  /** The method broke: a fault of the program, not of the question. */
  readonly hasFailed: boolean;
  /** Asks; `more` is asked beside what was typed, for the pictures. */
  readonly ask: (question: Question, more: Question) => void;
  readonly stop: () => void;
}

const newWorker = () => new Worker(new URL("./method.worker.ts", import.meta.url), { type: "module" });

/** One method; its worker goes with the page. */
export function useMethod(verb: string): Reckoning {
  const [method, setMethod] = useState<MethodMeta | null>(null);
  const [answer, setAnswer] = useState<Reckoning["answer"]>(null);
  const [working, setWorking] = useState<number | null>(null);
  const [wasStopped, setStopped] = useState(false);
  const [hasFailed, setFailed] = useState(false);
  const worker = useRef<Worker | null>(null);
  const newest = useRef<{ readonly number: number; readonly question: Question }>({ number: 0, question: {} });

  const begin = useCallback(() => {
    worker.current?.terminate();
    const made = newWorker();
    made.onmessage = ({ data }: MessageEvent<MethodAnswer>) => {
      if (data.kind === "described") setMethod(data.method);
      else if (data.number !== newest.current.number) return;
      else if (data.kind === "progress") setWorking(data.share);
      else {
        setAnswer({ question: newest.current.question, reply: data.reply });
        setWorking(null);
      }
    };
    made.onerror = () => {
      worker.current = null;
      setWorking(null);
      setAnswer(null);
      setFailed(true);
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
    (question: Question, more: Question) => {
      // A question that still runs is not worth waiting for.
      const to = working === null ? (worker.current ?? begin()) : begin();
      newest.current = { number: newest.current.number + 1, question };
      setWorking(0);
      setStopped(false);
      setFailed(false);
      const asked: MethodQuestion = {
        kind: "ask",
        verb,
        number: newest.current.number,
        question: { ...question, ...more },
      };
      to.postMessage(asked);
    },
    [begin, verb, working],
  );
  const stop = useCallback(() => {
    newest.current = { ...newest.current, number: newest.current.number + 1 };
    begin();
    setWorking(null);
    setAnswer(null);
    setStopped(true);
  }, [begin]);
  return { method, answer, working, wasStopped, hasFailed, ask, stop };
}
