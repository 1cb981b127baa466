/** Runs steps over any number of threads: pieces go to whoever is free, answers come back in order. */
import type { Result } from "../../../units/index.ts";
import type { Forecast, ForecastDay, ForecastQuestion } from "./forecast.ts";
import { forecastSteps } from "./forecast-steps.ts";
import { type Piece, type PieceDone, parted, pieceWorker, putBack } from "./pieces.ts";
import { type Cutting, progressOf, type Steps } from "./steps.ts";

/** A thread as the steps see it; it reckons one piece at a time. */
export interface Thread {
  /** Tells the question that the next pieces are of. */
  readonly begin: (question: ForecastQuestion) => void;
  readonly reckon: (piece: Piece) => Promise<PieceDone>;
}

/** What a thread is told, and what it tells. */
export type PieceQuestion =
  | { readonly kind: "question"; readonly question: ForecastQuestion }
  | { readonly kind: "piece"; readonly piece: Piece };
/** What became of a piece, or what broke: a fault of the program, not of the question. */
export type PieceAnswer = { readonly done: PieceDone } | { readonly broke: string };

export interface Hearing {
  /** Hears how much is done, 0 to 1. */
  readonly tell?: (share: number) => void;
  /** Asked before each piece: true ends the work. */
  readonly isStopped?: () => boolean;
}

/** Threads that reckon together, and whether they share memory: a page has none to share unless it is isolated. */
export interface Threads {
  readonly threads: readonly Thread[];
  readonly isShared: boolean;
}

/** Pieces handed out to each thread at a time: enough that one that lags holds up little. */
const piecesForEach = 4;

/** How work is cut for threads. */
export const cutFor = ({ threads, isShared }: Threads): Cutting => ({
  pieces: threads.length * piecesForEach,
  isShared,
});

/**
 * The forecast of a colony, as `colonyForecast` has it, to the byte; null when it was stopped on the way.
 *
 * `tellDays` hears the days reckoned so far, held to the counts so far, each time a stretch between counts is done.
 *
 * @throws what a thread throws
 */
export function forecastInThreads(
  question: ForecastQuestion,
  threads: Threads,
  { tellDays, ...hearing }: Hearing & { readonly tellDays?: (days: readonly ForecastDay[]) => void },
): Promise<Result<Forecast> | null> {
  const cutting = { ...cutFor(threads), ...(tellDays === undefined ? {} : { tellDays }) };
  return reckonInThreads(forecastSteps(question, cutting), threads, hearing);
}

/** Reckons the pieces of steps in threads: the same answer as here, whatever their number; null when it was stopped. */
export async function reckonInThreads<Answer>(
  steps: Steps<Answer>,
  { threads, isShared }: Threads,
  { tell = () => undefined, isStopped = () => false }: Hearing = {},
): Promise<Answer | null> {
  let known: ForecastQuestion | null = null;
  let before = 0;
  let step = steps.next();
  while (!step.done) {
    const { question, pieces, share } = step.value;
    if (known !== question) for (const thread of threads) thread.begin(question);
    known = question;
    const hear = progressOf(step.value, before, tell);
    const done = new Array<PieceDone>(pieces.length);
    let next = 0;
    await Promise.all(
      threads.map(async ({ reckon }) => {
        while (next < pieces.length && !isStopped()) {
          const index = next;
          next += 1;
          const piece = pieces[index] as Piece;
          const one = await reckon(isShared ? piece : parted(piece));
          if (!isShared) putBack(piece, one);
          done[index] = one;
          if (!isStopped()) hear(piece);
        }
      }),
    );
    if (isStopped()) return null;
    before = share;
    step = steps.next(done);
  }
  return step.value;
}

/** What a thread does with what it is told: nothing to say to a question, an answer to a piece. */
export function pieceAnswers(): (asked: PieceQuestion) => PieceAnswer | null {
  let worker: ReturnType<typeof pieceWorker> | null = null;
  return (asked) => {
    try {
      if (asked.kind === "question") {
        worker = pieceWorker(asked.question);
        return null;
      }
      if (worker === null) throw new Error("a piece before its question");
      const { piece } = asked;
      const done = worker(piece);
      return { done: done.kind === "move" && !isInShared(piece) ? { ...done, moved: movedOf(piece) } : done };
    } catch (trouble) {
      return { broke: trouble instanceof Error ? trouble.message : String(trouble) };
    }
  };
}

const movedOf = (piece: Piece) => {
  if (piece.kind !== "move") throw new TypeError("a piece that moves nothing");
  return { states: piece.states, paths: piece.paths };
};

/** What is written into shared memory is where it belongs already. */
const isInShared = (piece: Piece): boolean =>
  piece.kind === "move" && typeof SharedArrayBuffer !== "undefined" && piece.states.buffer instanceof SharedArrayBuffer;
