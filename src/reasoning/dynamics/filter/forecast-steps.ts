/** The filter as steps that hand out pieces and take them back: who reckons the pieces, and where, is not its business. */
import { addDays, answered, blocked, type Day, daysBetween, type Result } from "../../../units/index.ts";
import { readyRun } from "../course.ts";
import type { Engine } from "../day.ts";
import { assimilate } from "./bootstrap-filter.ts";
import { type Cloud, combOf, type Paths, sightOf, takeAncestors } from "./colony-particles.ts";
import {
  assumedError,
  type CountTaken,
  countFaults,
  type DatedCount,
  drawsFaults,
  type Forecast,
  type ForecastDay,
  type ForecastQuestion,
  mostDrawsFor,
  strains,
} from "./forecast.ts";
import type { MovePiece, Piece, PieceDone, RangePiece } from "./pieces.ts";
import {
  type DatedSize,
  filledIn,
  logChancesOfSize,
  logSizes,
  type SizeTaken,
  sizeFaults,
  sizeNotes,
  surpriseOfSize,
} from "./sizes.ts";
import { logChancesOf, surpriseOf } from "./weigh-count.ts";

/** Hands out pieces that do not depend on each other, and takes what became of them in the same order. */
export type Steps<Answer> = Generator<readonly Piece[], Answer, readonly PieceDone[]>;

/** How a forecast is cut, which changes no number of it. */
export interface Cutting {
  /** Pieces handed out at a time. */
  readonly pieces: number;
  /** Pieces go to other threads, and all write into memory that they share. */
  readonly isShared: boolean;
  /** Told each time a stretch between counts is reckoned: the days so far, held to the counts so far. */
  readonly tellDays?: (days: readonly ForecastDay[]) => void;
}

export interface Filtered {
  readonly cloud: Cloud;
  readonly counts: readonly CountTaken[];
  readonly sizes: readonly SizeTaken[];
}

/** The steps of a whole forecast. */
export function* forecastSteps(question: ForecastQuestion, cutting: Cutting): Steps<Result<Forecast>> {
  const filtered = yield* filterSteps(question, cutting);
  if (!filtered.ok) return filtered;
  const { cloud, counts, sizes } = filtered.value;
  const days = yield* daySteps(question, cloud, cloud.paths.bees.length / cloud.particles, cutting);
  const logLikelihood = [...counts, ...sizes].reduce((sum, each) => sum + each.logLikelihood, 0);
  return answered({ days, counts, sizes, logLikelihood }, filtered.problems);
}

/** The steps that hold particles to what was seen of the colony. */
export function* filterSteps(question: ForecastQuestion, cutting: Cutting): Steps<Result<Filtered>> {
  const { draws: particles, start, until, sizes = [] } = question;
  const faults = [
    ...drawsFaults(question),
    ...countFaults(question),
    ...sizeFaults(sizes, { from: start.date, until }),
  ];
  if (faults.length > 0) return blocked(...faults);
  const ready = readyRun(question);
  if (!ready.ok) return ready;
  const { model, days } = ready.value;
  const tooMany = mostDrawsFor(question, days);
  if (tooMany !== null) return blocked(tooMany);

  const room = (numbers: number) =>
    cutting.isShared ? new Float64Array(new SharedArrayBuffer(8 * numbers)) : new Float64Array(numbers);
  const cloud: Cloud = {
    particles,
    states: room(particles * model.layout.length),
    paths: {
      ...{ bees: room(particles * (days + 1)), infestedShare: room(particles * (days + 1)) },
      survival: room(particles * (days + 1)),
    },
  };
  const taken: { readonly counts: CountTaken[]; readonly sizes: SizeTaken[] } = { counts: [], sizes: [] };
  const morningOf = ({ date }: { readonly date: Day }) => daysBetween(start.date, date);
  const mornings = [...new Set([...question.counts, ...sizes].map(morningOf))].sort((one, other) => one - other);
  let from: number | null = null;
  for (const to of new Set([...mornings, days])) {
    yield* moveSteps(cloud, model, { from, to, pieces: cutting.pieces });
    from = to;
    const weighing: Weighing = { cloud, model, question, morning: to };
    const counted = question.counts.filter((count) => morningOf(count) === to);
    const seen = sizes.filter((size) => morningOf(size) === to);
    for (const [index, count] of counted.entries()) taken.counts.push(takeCount(weighing, count, index));
    for (const [index, size] of seen.entries())
      taken.sizes.push(takeSize(weighing, filledIn(size), counted.length + index));
    if (cutting.tellDays && to < days) cutting.tellDays(yield* daySteps(question, cloud, to + 1, cutting));
  }
  const problems = [...ready.problems, ...sizeNotes(sizes), ...strains(question, taken.counts, taken.sizes)];
  return answered({ cloud, ...taken }, problems);
}

interface Weighing {
  readonly cloud: Cloud;
  readonly model: Engine;
  readonly question: ForecastQuestion;
  readonly morning: number;
}

/** Weighs the particles by what was seen and draws them anew. */
function taking({ cloud, model, question: { seed }, morning }: Weighing, index: number, logs: Float64Array) {
  const sight = sightOf(morning, index);
  const { logLikelihood, effective } = assimilate({
    particles: cloud.particles,
    propagate: () => undefined,
    logChances: () => logs,
    take: (ancestors) => takeAncestors(cloud, ancestors, model, { morning, sight, seed }),
    uniform: () => combOf(seed, sight),
  });
  return { logLikelihood, effectiveShare: effective / cloud.particles };
}

function takeCount(weighing: Weighing, count: DatedCount, index: number): CountTaken {
  const { cloud, morning, question } = weighing;
  const { error = assumedError } = question;
  const surprise = surpriseOf(cloud, morning, { count, error });
  return { ...count, ...taking(weighing, index, logChancesOf(cloud, morning, { count, error })), surprise };
}

function takeSize(weighing: Weighing, size: Required<DatedSize>, index: number): SizeTaken {
  const { cloud, model } = weighing;
  const logs = logSizes(cloud.states, cloud.particles, model.layout, size.what);
  const surprise = surpriseOfSize(logs, size);
  return { ...size, ...taking(weighing, index, logChancesOfSize(logs, size)), surprise };
}

/** Cuts a whole into so many nearly equal stretches, as [first, after the last]. */
const cut = (whole: number, pieces: number): readonly (readonly [number, number])[] =>
  Array.from({ length: pieces }, (_, piece): readonly [number, number] => [
    Math.floor((piece * whole) / pieces),
    Math.floor(((piece + 1) * whole) / pieces),
  ]).filter(([first, after]) => after > first);

/** Takes all particles from a morning to another; from null they are drawn first, on morning 0. */
function* moveSteps(
  { particles, states, paths }: Cloud,
  model: Engine,
  { from, to, pieces }: { readonly from: number | null; readonly to: number; readonly pieces: number },
): Steps<void> {
  const { length } = model.layout;
  yield cut(particles, pieces).map(
    ([first, after]): MovePiece => ({
      kind: "move",
      ...{ first, count: after - first, from: from ?? 0, to, isFirst: from === null, paths, particles },
      states: states.subarray(first * length, after * length),
    }),
  );
}

/** Ranges of the first so many mornings. */
function* daySteps(
  { start }: ForecastQuestion,
  { particles, paths }: Cloud,
  mornings: number,
  { pieces }: Cutting,
): Steps<readonly ForecastDay[]> {
  const part = (path: Float64Array, [first, after]: readonly [number, number]) =>
    path.subarray(first * particles, after * particles);
  const done = yield cut(mornings, pieces).map(
    (rows): RangePiece => ({
      kind: "ranges",
      particles,
      ...({
        bees: part(paths.bees, rows),
        infestedShare: part(paths.infestedShare, rows),
        survival: part(paths.survival, rows),
      } satisfies Paths),
    }),
  );
  return done
    .flatMap((each) => (each.kind === "ranges" ? each.mornings : []))
    .map((morning, index) => ({ date: addDays(start.date, index), ...morning }));
}
