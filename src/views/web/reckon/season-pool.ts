/** A small pool of workers that reckon pieces of a season side by side. A page shares no memory with them: pieces are copied. */
import { dynamics } from "../../../reasoning/index.ts";

/** More would hardly shorten the usual season, and warm a phone. Judgement. */
const mostWorkers = 4;

/** Workers for a device with so many cores: one is left to the page, and two are never too many. A device may not say. */
export const workersFor = (cores: number | undefined): number =>
  cores === undefined || !(cores >= 2) ? 1 : Math.min(Math.max(2, cores - 1), mostWorkers);

/** The pool, started once; a single thread here where workers cannot start others. */
export function seasonPool(cores: number | undefined): dynamics.Threads {
  const count = typeof Worker === "undefined" ? 1 : workersFor(cores);
  return {
    threads: count === 1 ? [threadHere()] : Array.from({ length: count }, farThread),
    isShared: false,
  };
}

function threadHere(): dynamics.Thread {
  const answer = dynamics.pieceAnswers();
  return {
    begin: (question) => answer({ kind: "question", question }),
    reckon: async (piece) => {
      // A word from the page is heard between two pieces.
      await new Promise((resolve) => setTimeout(resolve, 0));
      return doneOf(answer({ kind: "piece", piece }));
    },
  };
}

function farThread(): dynamics.Thread {
  const worker = new Worker(new URL("./season-piece.worker.ts", import.meta.url), { type: "module" });
  const say = (asked: dynamics.PieceQuestion): void => worker.postMessage(asked);
  return {
    begin: (question) => say({ kind: "question", question }),
    reckon: (piece) =>
      new Promise((resolve, reject) => {
        worker.onmessage = ({ data }: MessageEvent<dynamics.PieceAnswer>) => {
          try {
            resolve(doneOf(data));
          } catch (trouble) {
            reject(trouble);
          }
        };
        worker.onerror = ({ message }) => reject(new Error(message));
        say({ kind: "piece", piece });
      }),
  };
}

function doneOf(answer: dynamics.PieceAnswer | null): dynamics.PieceDone {
  if (answer !== null && "done" in answer) return answer.done;
  throw new Error(answer?.broke ?? "a piece without an answer");
}
