/** Runs the steps of a forecast over any number of threads: pieces go to whoever is free, answers come back in order. */
import type { Result } from "../../../units/index.ts";
import type { Forecast, ForecastDay, ForecastQuestion } from "./forecast.ts";
import { workOfForecast } from "./forecast.ts";
import { forecastSteps, type Steps } from "./forecast-steps.ts";
import { type Piece, type PieceDone, pieceWorker, workIn } from "./pieces.ts";

/** A thread as the forecast sees it; it reckons one piece at a time. */
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
  /** Hears the days reckoned so far, held to the counts so far, each time a stretch between counts is done. */
  readonly tellDays?: (days: readonly ForecastDay[]) => void;
  /** Asked before each piece: true ends the forecast. */
  readonly isStopped?: () => boolean;
}

/** Pieces handed out to each thread at a time: enough that one that lags holds up little. */
const piecesForEach = 4;

/**
 * The forecast of a colony, as `colonyForecast` has it, to the byte; null when it was stopped on the way. Needs memory
 * that threads share: a page has it only where the browser isolates it.
 *
 * @throws what a thread throws
 */
export function forecastInThreads(
  question: ForecastQuestion,
  threads: readonly Thread[],
  { tellDays, ...hearing }: Hearing,
): Promise<Result<Forecast> | null> {
  const cutting = {
    pieces: threads.length * piecesForEach,
    isShared: true,
    ...(tellDays === undefined ? {} : { tellDays }),
  };
  return inThreads(question, forecastSteps(question, cutting), threads, hearing);
}

async function inThreads<Answer>(
  question: ForecastQuestion,
  steps: Steps<Answer>,
  threads: readonly Thread[],
  { tell = () => undefined, isStopped = () => false }: Omit<Hearing, "tellDays">,
): Promise<Answer | null> {
  const all = workOfForecast(question);
  let worked = 0;
  let step = steps.next();
  if (!step.done) for (const thread of threads) thread.begin(question);
  while (!step.done) {
    const pieces = step.value;
    const done = new Array<PieceDone>(pieces.length);
    let next = 0;
    await Promise.all(
      threads.map(async ({ reckon }) => {
        while (next < pieces.length && !isStopped()) {
          const index = next;
          next += 1;
          const piece = pieces[index] as Piece;
          const work = workIn(piece);
          done[index] = await reckon(piece);
          worked += work;
          tell(Math.min(worked / all, 1));
        }
      }),
    );
    if (isStopped()) return null;
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
      return { done: worker(asked.piece) };
    } catch (trouble) {
      return { broke: trouble instanceof Error ? trouble.message : String(trouble) };
    }
  };
}
