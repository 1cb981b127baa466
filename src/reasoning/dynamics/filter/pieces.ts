/** A forecast in pieces that may be reckoned anywhere, in any order, by any number of threads: the same bytes. */
import { addDays } from "../../../units/index.ts";
import { dayOfYear } from "../calendar.ts";
import { readyRun } from "../course.ts";
import { unite } from "../interventions/uniting.ts";
import { kernelFor } from "../kernel/kernel.ts";
import { seenWidth } from "../kernel/memory-map.ts";
import { at, type Layout } from "../layout.ts";
import { assumedNoise } from "../particles.ts";
import { widened } from "../what-if/widen.ts";
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
  /** Paths side by side, so many to a row, of which those of the piece begin in this column. */
  readonly paths: Paths;
  readonly particles: number;
  readonly column: number;
  /** Row of each morning after `from`; −1 where it is not kept. The first morning of all has row 0. */
  readonly rows: Int32Array;
  /** Colonies that are united with these before the piece ends, by their day. */
  readonly joins: readonly Join[];
}

/** Other colonies, one for each particle of a piece, that are united with them on a morning before it is over. */
export interface Join {
  readonly morning: number;
  readonly states: Float64Array;
  readonly layout: Layout;
  /** Share of their adult bees that stay. */
  readonly kept: number;
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

/** What is told of a piece. A move is written where the whole lies; `moved` brings it from memory that is not shared. */
export type PieceDone =
  | { readonly kind: "move"; readonly moved?: Pick<MovePiece, "states" | "paths"> }
  | { readonly kind: "ranges"; readonly mornings: readonly MorningSeen[] };

/** Particle-days in a piece: how much of the work it is. Ranges count as nothing: some hundredths of it. */
export const workIn = (piece: Piece): number => (piece.kind === "move" ? piece.count * (piece.to - piece.from) : 0);

/** Particles whose mornings are gathered before they are written side by side: eight numbers are a line of memory. */
const together = 8;

/**
 * Reckons pieces of one question. It holds the model and room to work in: one for each thread.
 *
 * @throws Error for a question that is refused: whoever handed out the pieces has asked before
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

  function move({ first, count, from, to, isFirst, states, paths, particles, column, rows, joins }: MovePiece): void {
    const donors = joins.map((join) => ({ ...join, states: widened(join.states, join.layout, model.layout) }));
    if (isFirst) states.set(particlesAbout(model, colony, { first, count, seed, start, doubt }));
    if (isFirst) noteMorning(states, model.layout, paths, column);
    const width = (to - from) * seenWidth;
    const gathered = new Float64Array(together * width);
    for (let block = 0; block < count; block += together) {
      const size = Math.min(together, count - block);
      for (let each = 0; each < size; each++) {
        const record = (block + each) * length;
        let begun = from;
        const run = (until: number): void => {
          if (until === begun) return;
          kernel.run(states, record, { from: begun, to: until, particle: first + block + each });
          const seen = kernel.seen.subarray(0, (until - begun) * seenWidth);
          gathered.set(seen, each * width + (begun - from) * seenWidth);
          begun = until;
        };
        for (const donor of donors) {
          run(donor.morning);
          unite(states, record, model.layout, { ...donor, start: record });
        }
        run(to);
      }
      for (let day = 0; day < to - from; day++) {
        const row = rows[day] as number;
        if (row < 0) continue;
        const place = row * particles + column + block;
        for (let each = 0; each < size; each++) {
          const seen = each * width + day * seenWidth;
          paths.bees[place + each] = gathered[seen] as number;
          paths.infestedShare[place + each] = gathered[seen + 1] as number;
          paths.survival[place + each] = gathered[seen + 2] as number;
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

/** Writes what is seen of colonies as they stand into paths, from this place on. */
export function noteMorning(states: Float64Array, { length }: Layout, paths: Paths, place: number): void {
  for (let each = 0; each * length < states.length; each++) {
    const record = each * length;
    const bees = states[record + at.bees] as number;
    paths.bees[place + each] = bees;
    paths.infestedShare[place + each] = bees > 0 ? (states[record + at.infested] as number) / bees : 0;
    paths.survival[place + each] = Math.exp(-(states[record + at.hazard] as number));
  }
}

/** A piece with memory of its own, for a thread that shares none. */
export function parted(piece: Piece): Piece {
  if (piece.kind === "ranges") {
    const { bees, infestedShare, survival } = piece;
    return { ...piece, bees: bees.slice(), infestedShare: infestedShare.slice(), survival: survival.slice() };
  }
  const room = () => new Float64Array(rowsIn(piece) * piece.count);
  const paths = { bees: room(), infestedShare: room(), survival: room() };
  // Rows of its own, from 0: those of the whole are known to whoever puts it back.
  let next = piece.isFirst ? 1 : 0;
  const rows = piece.rows.map((row) => (row < 0 ? row : next++));
  const joins = piece.joins.map((join) => ({ ...join, states: join.states.slice() }));
  return { ...piece, joins, states: piece.states.slice(), paths, particles: piece.count, column: 0, rows };
}

const rowsIn = ({ rows, isFirst }: MovePiece): number =>
  rows.reduce((sum, row) => (row < 0 ? sum : sum + 1), isFirst ? 1 : 0);

/** Writes what came back of a parted piece where the whole lies. */
export function putBack(piece: Piece, done: PieceDone): void {
  if (piece.kind !== "move" || done.kind !== "move" || done.moved === undefined) return;
  const { paths, particles, column, count, rows, isFirst, states } = piece;
  const { moved } = done;
  states.set(moved.states);
  const kept = [...(isFirst ? [0] : []), ...rows.filter((row) => row >= 0)];
  for (const name of ["bees", "infestedShare", "survival"] as const)
    for (const [own, row] of kept.entries())
      paths[name].set(moved.paths[name].subarray(own * count, (own + 1) * count), row * particles + column);
}

function rangesOf({ particles, bees, infestedShare, survival }: RangePiece): readonly MorningSeen[] {
  const room = sortingRoom(particles);
  return Array.from({ length: bees.length / particles }, (_, morning) => {
    const row = (path: Float64Array) => sortedRow(path.subarray(morning * particles, (morning + 1) * particles), room);
    const seen = { bees: rangeOf(row(bees)), infestedShare: rangeOf(row(infestedShare)) };
    return { ...seen, survival: survivalOf(row(survival)) };
  });
}

/** Widened on both sides by this: the curve of losses rests on points that were chosen. Judgement. */
export const survivalDoubt = 0.1;

/**
 * Survival as it is told everywhere: mean and middle of the draws, and ranges that are wider than theirs. Where every
 * draw has 1 the colony was seen alive, and nothing is widened.
 */
export function survivalOf(sorted: Float64Array): MorningSeen["survival"] {
  const mean = sorted.reduce((sum, each) => sum + each, 0) / sorted.length;
  const range = rangeOf(sorted);
  if (sorted[0] === 1) return { ...range, mean };
  const low = (point: number) => Math.max(0, point - survivalDoubt);
  const high = (point: number) => Math.min(1, point + survivalDoubt);
  const { q05, q25, q50, q75, q95 } = range;
  return { q05: low(q05), q25: low(q25), q50, q75: high(q75), q95: high(q95), mean };
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
