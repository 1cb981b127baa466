/** A forecast over several threads of this machine: how far it is, days that stand, an end on demand; the same bytes. */
import { Worker } from "node:worker_threads";
import { dynamics } from "../../reasoning/index.ts";
import type { Result } from "../../units/index.ts";
import { threadFile } from "./thread-file.ts";

export interface ForecastThreads {
  /** The forecast; null when it was stopped. One at a time: others wait. */
  readonly forecast: (
    question: dynamics.ForecastQuestion,
    hearing?: dynamics.Hearing,
  ) => Promise<Result<dynamics.Forecast> | null>;
  readonly close: () => Promise<void>;
}

/** So many threads, started with the first forecast and kept. */
export function openForecastThreads(count: number): ForecastThreads {
  let workers: readonly Worker[] = [];
  let last: Promise<unknown> = Promise.resolve();

  async function run(question: dynamics.ForecastQuestion, hearing: dynamics.Hearing) {
    if (workers.length === 0) workers = Array.from({ length: count }, started);
    try {
      return await dynamics.forecastInThreads(question, workers.map(threadOf), hearing);
    } catch (trouble) {
      await stop();
      throw trouble;
    }
  }

  async function stop(): Promise<void> {
    const gone = workers;
    workers = [];
    await Promise.all(gone.map((worker) => worker.terminate()));
  }

  return {
    forecast: (question, hearing = {}) => {
      const next = last.then(() => run(question, hearing));
      last = next.catch(() => undefined);
      return next;
    },
    close: stop,
  };
}

function started(): Worker {
  const worker = new Worker(threadFile("forecast-thread", import.meta.url));
  // A thread that idles does not keep the program running.
  worker.unref();
  return worker;
}

const threadOf = (worker: Worker): dynamics.Thread => ({
  begin: (question) => worker.postMessage({ kind: "question", question } satisfies dynamics.PieceQuestion),
  reckon: (piece) =>
    answered(worker, () => worker.postMessage({ kind: "piece", piece } satisfies dynamics.PieceQuestion)),
});

/** What comes back next from a thread. */
function answered(worker: Worker, ask: () => void): Promise<dynamics.PieceDone> {
  return new Promise((resolve, reject) => {
    const heard = (answer: dynamics.PieceAnswer) => {
      forget();
      if ("done" in answer) resolve(answer.done);
      else reject(new Error(answer.broke));
    };
    const failed = (trouble: Error) => {
      forget();
      reject(trouble);
    };
    const ended = () => failed(new Error("the thread ended"));
    const forget = () => worker.off("message", heard).off("error", failed).off("exit", ended);
    worker.on("message", heard).on("error", failed).on("exit", ended);
    ask();
  });
}
