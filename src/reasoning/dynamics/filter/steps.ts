/** Work in steps that hand out pieces and take them back: who reckons the pieces, and where, is not its business. */
import type { Paths } from "./colony-particles.ts";
import type { ForecastQuestion } from "./forecast.ts";
import { type MorningSeen, type Piece, type PieceDone, pieceWorker, type RangePiece, workIn } from "./pieces.ts";

/** Pieces of one question that do not depend on each other. */
export interface Batch {
  readonly question: ForecastQuestion;
  readonly pieces: readonly Piece[];
  /** Share of the whole that is done after them, 0 to 1. */
  readonly share: number;
}

/** Hands out batches, and takes what became of their pieces in the same order. */
export type Steps<Answer> = Generator<Batch, Answer, readonly PieceDone[]>;

/** How work is cut, which changes no number of it. */
export interface Cutting {
  /** Pieces handed out at a time. */
  readonly pieces: number;
  /** Pieces go to other threads, and all write into memory that they share. */
  readonly isShared: boolean;
}

/** Shares of the whole at the beginning and at the end of a part of it. */
export type Span = readonly [number, number];

/** Room for so many numbers, which threads share or not. */
export const roomFor = ({ isShared }: Cutting, numbers: number): Float64Array =>
  isShared ? new Float64Array(new SharedArrayBuffer(8 * numbers)) : new Float64Array(numbers);

/** Room for so many rows of paths. */
export const pathsFor = (cutting: Cutting, numbers: number): Paths => ({
  bees: roomFor(cutting, numbers),
  infestedShare: roomFor(cutting, numbers),
  survival: roomFor(cutting, numbers),
});

/** Cuts a whole into so many nearly equal stretches, as [first, after the last]. */
export const cut = (whole: number, pieces: number): readonly (readonly [number, number])[] =>
  Array.from({ length: pieces }, (_, piece): readonly [number, number] => [
    Math.floor((piece * whole) / pieces),
    Math.floor(((piece + 1) * whole) / pieces),
  ]).filter(([first, after]) => after > first);

/** Ranges of the first so many rows of paths. */
export function* rangeSteps(
  question: ForecastQuestion,
  of: { readonly particles: number; readonly paths: Paths; readonly rows: number; readonly share: number },
  { pieces }: Cutting,
): Steps<readonly MorningSeen[]> {
  const { particles, paths, rows, share } = of;
  const part = (path: Float64Array, [first, after]: readonly [number, number]) =>
    path.subarray(first * particles, after * particles);
  const done = yield {
    question,
    share,
    pieces: cut(rows, pieces).map(
      (stretch): RangePiece => ({
        kind: "ranges",
        particles,
        bees: part(paths.bees, stretch),
        infestedShare: part(paths.infestedShare, stretch),
        survival: part(paths.survival, stretch),
      }),
    ),
  };
  return done.flatMap((each) => (each.kind === "ranges" ? each.mornings : []));
}

/** Particles in a piece that is reckoned here: often enough to tell how far it is. */
const fewTogether = 250;

/** How work is cut that is reckoned here. */
export const cutHere = ({ draws }: { readonly draws: number }): Cutting => ({
  pieces: Math.max(1, Math.ceil(draws / fewTogether)),
  isShared: false,
});

/** Reckons every piece here and now; `tell` hears how much is done, 0 to 1. */
export function reckonHere<Answer>(steps: Steps<Answer>, tell: (share: number) => void = () => undefined): Answer {
  let known: ForecastQuestion | null = null;
  let worker: ReturnType<typeof pieceWorker> | null = null;
  let before = 0;
  let step = steps.next();
  while (!step.done) {
    const { question, pieces, share } = step.value;
    const reckon: ReturnType<typeof pieceWorker> =
      worker === null || known !== question ? pieceWorker(question) : worker;
    [known, worker] = [question, reckon];
    const hear = progressOf(step.value, before, tell);
    step = steps.next(
      pieces.map((piece) => {
        const done = reckon(piece);
        hear(piece);
        return done;
      }),
    );
    before = share;
  }
  return step.value;
}

/** Hears of each piece of a batch that is done, and tells how much of the whole is. */
export function progressOf({ pieces, share }: Batch, before: number, tell: (share: number) => void) {
  const all = pieces.reduce((sum, piece) => sum + workIn(piece), 0);
  let worked = 0;
  return (piece: Piece): void => {
    worked += workIn(piece);
    tell(worked >= all ? share : before + ((share - before) * worked) / all);
  };
}
