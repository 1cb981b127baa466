/** Reckons in a thread of its own, so that a long question keeps nobody's records waiting; one that does not end is stopped. */
import { Worker } from "node:worker_threads";
import type { Reply } from "../../reasoning/index.ts";
import { threadFile } from "../../storage/server.ts";
import type { ThreadAnswer, ThreadQuestion } from "./reckoning-thread.ts";

export interface Reckoner {
  /** The reply of a verb; null when it took longer than is waited for. */
  readonly ask: (verb: string, body: unknown) => Promise<Reply | null>;
  readonly close: () => Promise<void>;
}

interface Waiting {
  readonly question: ThreadQuestion;
  readonly answered: (reply: Reply | null) => void;
  readonly failed: (trouble: Error) => void;
}

/** Below the time after which the service gives a request up. */
const longestMilliseconds = 20_000;

/** Questions that may wait; beyond, one is told at once that it would take too long. */
const mostWaiting = 100;

/**
 * One thread, started with the first question and again after it had to be stopped. It gets one question at a time, and
 * its time runs from then: who waits behind a long one waits, and only the long one is stopped.
 */
export function openReckoner(longest = longestMilliseconds): Reckoner {
  let thread: Worker | null = null;
  let asked = 0;
  let now: Waiting | null = null;
  let timer: NodeJS.Timeout | undefined;
  const queue: Waiting[] = [];

  function next(): void {
    if (now !== null) return;
    now = queue.shift() ?? null;
    if (now === null) return;
    thread ??= started();
    thread.postMessage(now.question);
    timer = setTimeout(() => stop(({ answered }) => answered(null)), longest);
  }

  /** Ends the question that runs. */
  function end(tell: (each: Waiting) => void): void {
    clearTimeout(timer);
    const ended = now;
    now = null;
    if (ended !== null) tell(ended);
    next();
  }

  /** The thread is stopped with its question; the next question starts another. */
  function stop(tell: (each: Waiting) => void): void {
    const gone = thread;
    thread = null;
    void gone?.terminate();
    end(tell);
  }

  function started(): Worker {
    const made = new Worker(threadFile("reckoning-thread", import.meta.url));
    made.on("message", (answer: ThreadAnswer) => {
      if (thread !== made || now?.question.number !== answer.number) return;
      end((each) => ("reply" in answer ? each.answered(answer.reply) : each.failed(new Error(answer.broke))));
    });
    made.on("error", (trouble: Error) => thread === made && stop(({ failed }) => failed(trouble)));
    // A thread that idles does not keep the program running.
    made.unref();
    return made;
  }

  return {
    ask: (verb, body) =>
      new Promise((answered, failed) => {
        if (queue.length >= mostWaiting) return answered(null);
        asked += 1;
        queue.push({ question: { number: asked, verb, body }, answered, failed });
        next();
      }),
    close: async () => {
      const waiting = queue.splice(0);
      for (const { answered } of waiting) answered(null);
      const gone = thread;
      stop(({ answered }) => answered(null));
      await gone?.terminate();
    },
  };
}
