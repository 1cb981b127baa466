/** Asks for a season in a worker: tells how far it is, keeps what is reckoned when it is stopped. */
import { useCallback, useEffect, useRef, useState } from "react";
import type { dynamics } from "../../../reasoning/index.ts";
import type { Problem } from "../../../units/index.ts";
import type { SeasonSeen } from "../../model/index.ts";
import type { SeasonAnswer, SeasonQuestion } from "./season-messages.ts";

export interface SeasonReckoning<Asked> {
  /** The newest question of which something is reckoned, and that; null before the first. */
  readonly seen: (SeasonSeen & { readonly asked: Asked; readonly isWhole: boolean }) | null;
  /** Why the newest question cannot be; empty when it can. */
  readonly unfit: readonly Problem[];
  /** Share done of the question that runs; null when none runs. */
  readonly working: number | null;
  readonly wasStopped: boolean;
  readonly hasFailed: boolean;
  /** `asked` goes with the answer, so that the page tells it beside what it was asked. */
  readonly ask: (question: dynamics.ChoicesQuestion, asked: Asked) => void;
  readonly stop: () => void;
}

export function useSeason<Asked>(): SeasonReckoning<Asked> {
  const [seen, setSeen] = useState<SeasonReckoning<Asked>["seen"]>(null);
  const [unfit, setUnfit] = useState<readonly Problem[]>([]);
  const [working, setWorking] = useState<number | null>(null);
  const [wasStopped, setStopped] = useState(false);
  const [hasFailed, setFailed] = useState(false);
  const worker = useRef<Worker | null>(null);
  const number = useRef(0);
  const end = useCallback(() => {
    worker.current?.terminate();
    worker.current = null;
  }, []);
  useEffect(() => end, [end]);

  const ask = useCallback(
    (question: dynamics.ChoicesQuestion, asked: Asked) => {
      number.current += 1;
      const own = number.current;
      let past: readonly dynamics.ForecastDay[] = [];
      let outcomes: readonly dynamics.ChoiceOutcome[] = [];
      const made = worker.current ?? new Worker(new URL("./season.worker.ts", import.meta.url), { type: "module" });
      made.onmessage = ({ data }: MessageEvent<SeasonAnswer>) => {
        // Neither what belongs to an older question, nor what was on its way when this one was stopped.
        if (data.number !== number.current) return;
        if (data.kind === "broke") return fail();
        if (data.kind === "progress") return setWorking(data.share);
        if (data.kind === "past") {
          past = data.past;
          return;
        }
        if (data.kind === "choice") {
          outcomes = [...outcomes, data.outcome];
          setSeen({ asked, past, outcomes, settling: null, learnt: null, problems: [], isWhole: false });
          return;
        }
        if (data.kind === "done") {
          const { settling, learnt, problems } = data;
          setSeen({ asked, past, outcomes, settling, learnt, problems, isWhole: true });
        } else setUnfit(data.problems);
        setWorking(null);
      };
      const fail = () => {
        end();
        setWorking(null);
        setFailed(true);
      };
      made.onerror = fail;
      worker.current = made;
      setWorking(0);
      setUnfit([]);
      setStopped(false);
      setFailed(false);
      const message: SeasonQuestion = { number: own, question, cores: navigator.hardwareConcurrency };
      made.postMessage(message);
    },
    [end],
  );
  const stop = useCallback(() => {
    number.current += 1;
    const message: SeasonQuestion = { number: number.current, question: null, cores: 1 };
    worker.current?.postMessage(message);
    setWorking(null);
    setStopped(true);
  }, []);
  return { seen, unfit, working, wasStopped, hasFailed, ask, stop };
}
