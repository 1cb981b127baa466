/** Asks all cases of a programme anew in a worker of its own; a newer question ends the one before. */
import { useCallback, useEffect, useRef, useState } from "react";
import type { ProgrammeAnswer, ProgrammeQuestion } from "./programme-messages.ts";

type Kind = ProgrammeQuestion["kind"];
type AnswerOf<K extends Kind> = Extract<ProgrammeAnswer, { readonly kind: K }>;

export interface Asking<K extends Kind> {
  /** The newest answer; null before the first, and while a newer question is asked. */
  readonly answer: AnswerOf<K> | null;
  /** Share of the cases asked; null when none is asked. */
  readonly working: number | null;
  /** The program broke. */
  readonly hasFailed: boolean;
  readonly ask: (question: Extract<ProgrammeQuestion, { readonly kind: K }>) => void;
  /** The answer no longer fits what is on the page. */
  readonly forget: () => void;
}

export function useProgramme<K extends Kind>(): Asking<K> {
  const [answer, setAnswer] = useState<AnswerOf<K> | null>(null);
  const [working, setWorking] = useState<number | null>(null);
  const [hasFailed, setFailed] = useState(false);
  const worker = useRef<Worker | null>(null);
  const stop = useCallback(() => {
    worker.current?.terminate();
    worker.current = null;
    setWorking(null);
  }, []);
  useEffect(() => stop, [stop]);
  const forget = useCallback(() => {
    stop();
    setAnswer(null);
  }, [stop]);
  const ask = useCallback(
    (question: Extract<ProgrammeQuestion, { readonly kind: K }>) => {
      forget();
      setFailed(false);
      setWorking(0);
      const made = new Worker(new URL("./programme.worker.ts", import.meta.url), { type: "module" });
      made.onmessage = ({ data }: MessageEvent<ProgrammeAnswer>) => {
        if (data.kind === "progress") {
          setWorking(data.share);
          return;
        }
        setAnswer(data as AnswerOf<K>);
        stop();
      };
      made.onerror = () => {
        setFailed(true);
        stop();
      };
      worker.current = made;
      made.postMessage(question);
    },
    [forget, stop],
  );
  return { answer, working, hasFailed, ask, forget };
}
