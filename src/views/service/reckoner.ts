/** Reckons in a thread of its own, so that a long question keeps nobody's records waiting; one that does not end is stopped. */
import { Worker } from "node:worker_threads";
import type { Reply } from "../../reasoning/index.ts";
import type { ThreadAnswer, ThreadQuestion } from "./reckoning-thread.ts";

export interface Reckoner {
  /** The reply of a verb; null when it took longer than is waited for. */
  readonly ask: (verb: string, body: unknown) => Promise<Reply | null>;
  readonly close: () => Promise<void>;
}

interface Waiting {
  readonly answered: (reply: Reply | null) => void;
  readonly failed: (trouble: Error) => void;
}

/** Below the time after which the service gives a request up. */
const longestMilliseconds = 20_000;

/** One thread, started with the first question and again after it had to be stopped. */
export function openReckoner(longest = longestMilliseconds): Reckoner {
  let thread: Worker | null = null;
  let asked = 0;
  const waiting = new Map<number, Waiting>();

  /** Those who wait for a thread that is gone are told; the next question starts another. */
  const drop = (told: (each: Waiting) => void): void => {
    const gone = thread;
    thread = null;
    const all = [...waiting.values()];
    waiting.clear();
    for (const each of all) told(each);
    void gone?.terminate();
  };

  function started(): Worker {
    const made = new Worker(new URL("./reckoning-thread.ts", import.meta.url));
    made.on("message", (answer: ThreadAnswer) => {
      const each = waiting.get(answer.number);
      waiting.delete(answer.number);
      if ("reply" in answer) each?.answered(answer.reply);
      else each?.failed(new Error(answer.broke));
    });
    made.on("error", (trouble: Error) => thread === made && drop(({ failed }) => failed(trouble)));
    // A thread that idles does not keep the program running.
    made.unref();
    return made;
  }

  return {
    ask: (verb, body) =>
      new Promise((answered, failed) => {
        thread ??= started();
        asked += 1;
        const question: ThreadQuestion = { number: asked, verb, body };
        const timer = setTimeout(() => waiting.has(question.number) && drop((each) => each.answered(null)), longest);
        const ended =
          <T>(tell: (value: T) => void) =>
          (value: T) => {
            clearTimeout(timer);
            tell(value);
          };
        waiting.set(question.number, { answered: ended(answered), failed: ended(failed) });
        thread.postMessage(question);
      }),
    close: async () => {
      const gone = thread;
      drop(({ answered }) => answered(null));
      await gone?.terminate();
    },
  };
}
