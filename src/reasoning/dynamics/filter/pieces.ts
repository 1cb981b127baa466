/** A forecast in pieces that may be reckoned anywhere, in any order, by any number of threads: the same bytes. */
import { addDays } from "../../../units/index.ts";
import { dayOfYear } from "../calendar.ts";
import { readyRun } from "../course.ts";
import { kernelFor } from "../kernel/kernel.ts";
import { seenWidth } from "../kernel/memory-map.ts";
import { at, type Layout } from "../layout.ts";
import { assumedNoise } from "../particles.ts";
import { assumedDoubt, type Paths, particlesAbout } from "./colony-particles.ts";
import type { ForecastQuestion, Range } from "./forecast.ts";
import { sortedRow, sortingRoom } from "./sort-row.ts";

/** Particles `first` to `first + count − 1` from one morning to another, written where the whole lies. */
export interface MovePiece {
  readonly kind: "move";
  readonly first: number;
  readonly count: number;
  readonly from: number;
  readonly to: number;
  /** They are drawn about the start, and seen on the morning `from` too. */
  readonly isFirst: boolean;
  /** Their records on the morning `from`; on the morning `to` afterwards. */
  readonly states: Float64Array;
  /** Paths of all particles, so many. */
  readonly paths: Paths;
  readonly particles: number;
}

/** Ranges of some mornings over all particles. */
export interface RangePiece extends Paths {
  readonly kind: "ranges";
  readonly particles: number;
}

/** What threads can be asked; every piece of one question knows nothing of the others. */
export type Piece = MovePiece | RangePiece;

/** Ranges of one morning. */
export interface MorningSeen {
  readonly bees: Range;
  readonly infestedShare: Range;
  readonly survival: Range & { readonly mean: number };
}

/** What is told of a piece; a move is written where the whole lies. */
export type PieceDone =
  | { readonly kind: "move" }
  | { readonly kind: "ranges"; readonly mornings: readonly MorningSeen[] };

/** Particle-days in a piece: how much of the work it is. Ranges count as nothing: some hundredths of it. */
export const workIn = (piece: Piece): number => (piece.kind === "move" ? piece.count * (piece.to - piece.from) : 0);

/** Particles whose mornings are gathered before they are written side by side: eight numbers are a line of memory. */
const together = 8;

/**
 * Reckons pieces of one question. It holds the model and room to work in: one for each thread.
 *
 * @throws Error for a question that is refused: `forecastSteps` has asked before
 */
export function pieceWorker(question: ForecastQuestion): (piece: Piece) => PieceDone {
  const ready = readyRun(question);
  if (!ready.ok) throw new Error("pieces of a question that is refused");
  const { model, colony, days } = ready.value;
  const { start, seed, noise = assumedNoise, doubt = assumedDoubt } = question;
  const inOrder = Array.from({ length: days }, (_, elapsed) => ({
    dayOfYear: dayOfYear(addDays(start.date, elapsed)),
    elapsed,
  }));
  const kernel = kernelFor({ model, days: inOrder, seed, noise });
  const { length } = model.layout;

  function move({ first, count, from, to, isFirst, states, paths, particles }: MovePiece): void {
    if (isFirst) states.set(particlesAbout(model, colony, { first, count, seed, start, doubt }));
    if (isFirst) noteFirst(states, count, model.layout, paths, first);
    const width = (to - from) * seenWidth;
    const gathered = new Float64Array(together * width);
    for (let block = 0; block < count; block += together) {
      const size = Math.min(together, count - block);
      for (let each = 0; each < size; each++) {
        kernel.run(states, (block + each) * length, { from, to, particle: first + block + each });
        gathered.set(kernel.seen.subarray(0, width), each * width);
      }
      for (let day = 0; day < to - from; day++) {
        const row = (from + day + 1) * particles + first + block;
        for (let each = 0; each < size; each++) {
          const seen = each * width + day * seenWidth;
          paths.bees[row + each] = gathered[seen] as number;
          paths.infestedShare[row + each] = gathered[seen + 1] as number;
          paths.survival[row + each] = gathered[seen + 2] as number;
        }
      }
    }
  }

  return (piece) => {
    if (piece.kind === "ranges") return { kind: "ranges", mornings: rangesOf(piece) };
    move(piece);
    return { kind: "move" };
  };
}

function noteFirst(states: Float64Array, count: number, { length }: Layout, paths: Paths, first: number): void {
  for (let each = 0; each < count; each++) {
    const record = each * length;
    const bees = states[record + at.bees] as number;
    paths.bees[first + each] = bees;
    paths.infestedShare[first + each] = bees > 0 ? (states[record + at.infested] as number) / bees : 0;
    paths.survival[first + each] = Math.exp(-(states[record + at.hazard] as number));
  }
}

function rangesOf({ particles, bees, infestedShare, survival }: RangePiece): readonly MorningSeen[] {
  const room = sortingRoom(particles);
  return Array.from({ length: bees.length / particles }, (_, morning) => {
    const row = (path: Float64Array) => sortedRow(path.subarray(morning * particles, (morning + 1) * particles), room);
    const seen = { bees: rangeOf(row(bees)), infestedShare: rangeOf(row(infestedShare)) };
    const surviving = row(survival);
    const mean = surviving.reduce((sum, each) => sum + each, 0) / particles;
    return { ...seen, survival: { ...rangeOf(surviving), mean } };
  });
}

/** Points of sorted values, interpolated between their middles. */
export function rangeOf(sorted: Float64Array): Range {
  const point = (share: number): number => {
    const place = Math.min(Math.max(share * sorted.length - 0.5, 0), sorted.length - 1);
    const below = Math.floor(place);
    const low = sorted[below] as number;
    return low + (place - below) * ((sorted[Math.min(below + 1, sorted.length - 1)] as number) - low);
  };
  return { q05: point(0.05), q25: point(0.25), q50: point(0.5), q75: point(0.75), q95: point(0.95) };
}
