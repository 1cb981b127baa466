/** Seasons over several threads of this machine: forecasts and comparisons of choices, one at a time, with the same bytes. */
import { availableParallelism } from "node:os";
import { Worker } from "node:worker_threads";
import { askSeason, askSeasonChoices, dynamics, type Reply } from "../../reasoning/index.ts";
import { threadFile } from "../../storage/server.ts";
import type { Result } from "../../units/index.ts";

/** Hears how far it is and what stands so far, and can end it. */
export type SeasonHearing = NonNullable<Parameters<typeof dynamics.forecastInThreads>[2]> & dynamics.Heard;

export interface SeasonThreads {
  /** The forecast; null when it was stopped. One at a time: others wait. */
  readonly forecast: (
    question: dynamics.ForecastQuestion,
    hearing?: Parameters<typeof dynamics.forecastInThreads>[2],
  ) => Promise<Result<dynamics.Forecast> | null>;
  /** Choices beside each other; null when it was stopped. */
  readonly compare: (
    question: dynamics.ChoicesQuestion,
    telling: dynamics.Telling,
    hearing?: dynamics.Heard & dynamics.Hearing,
  ) => Promise<Result<dynamics.Choices> | null>;
  /** The reply of a verb about a season, as the verb itself gives it; null for any other verb. */
  readonly ask: (verb: string, raw: unknown, hearing?: SeasonHearing) => Promise<Reply | null> | null;
  readonly close: () => Promise<void>;
}

/** No more threads than help with the usual number of draws. */
const mostThreads = 4;
/** As many as this machine has use for. */
export const usefulThreads = (): number => Math.min(availableParallelism(), mostThreads);

/** So many threads, started with the first question and kept. */
export function openSeasonThreads(count: number): SeasonThreads {
  let workers: readonly Worker[] = [];
  let last: Promise<unknown> = Promise.resolve();

  function inTurn<Answer>(work: (threads: dynamics.Threads) => Promise<Answer>): Promise<Answer> {
    const next = last.then(async () => {
      if (workers.length === 0) workers = Array.from({ length: count }, started);
      try {
        return await work({ threads: workers.map(threadOf), isShared: true });
      } catch (trouble) {
        await stop();
        throw trouble;
      }
    });
    last = next.catch(() => undefined);
    return next;
  }

  async function stop(): Promise<void> {
    const gone = workers;
    workers = [];
    await Promise.all(gone.map((worker) => worker.terminate()));
  }

  const threads: SeasonThreads = {
    forecast: (question, hearing = {}) => inTurn((threads) => dynamics.forecastInThreads(question, threads, hearing)),
    compare: (question, telling, hearing = {}) =>
      inTurn((threads) => dynamics.compareInThreads(question, telling, threads, hearing)),
    ask: (verb, raw, hearing = {}) => {
      if (verb === "season") return askSeason(raw, (question) => threads.forecast(question, hearing));
      if (verb === "season-choices")
        return askSeasonChoices(raw, (question, telling) => threads.compare(question, telling, hearing));
      return null;
    },
    close: stop,
  };
  return threads;
}

function started(): Worker {
  const worker = new Worker(threadFile("season-thread", import.meta.url));
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
