/** The filter in steps: what all particles share is done here, the rest handed out in pieces. */
import { addDays, answered, blocked, type Day, daysBetween, type Result } from "../../../units/index.ts";
import { readyRun } from "../course.ts";
import type { Engine } from "../day.ts";
import { declineWarnings } from "../decline.ts";
import { assimilate } from "./bootstrap-filter.ts";
import { type Cloud, combOf, logAlive, seenAlive, sightOf, takeAncestors } from "./colony-particles.ts";
import {
  assumedError,
  type CountTaken,
  countFaults,
  type DatedCount,
  drawsFaults,
  type Forecast,
  type ForecastDay,
  type ForecastQuestion,
  strains,
} from "./forecast.ts";
import { type Joining, joiningSteps, joinsFor } from "./joining.ts";
import { keptOf, tooLarge } from "./memory-kept.ts";
import type { MovePiece } from "./pieces.ts";
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
import { type Cutting, cut, pathsFor, rangeSteps, roomFor, type Span, type Steps } from "./steps.ts";
import { logChancesOf, surpriseOf } from "./weigh-count.ts";

/** How a forecast is cut, and who hears of it on the way. */
export interface ForecastCutting extends Cutting {
  /** Told each time a stretch between counts is reckoned: the days so far, held to the counts so far. */
  readonly tellDays?: (days: readonly ForecastDay[]) => void;
}

export interface Filtered {
  readonly cloud: Cloud;
  readonly counts: readonly CountTaken[];
  readonly sizes: readonly SizeTaken[];
}

const whole: Span = [0, 1];

/** The steps of a whole forecast. */
export function* forecastSteps(question: ForecastQuestion, cutting: ForecastCutting): Steps<Result<Forecast>> {
  const filtered = yield* filterSteps(question, cutting, whole);
  if (!filtered.ok) return filtered;
  const { cloud, counts, sizes } = filtered.value;
  const rows = cloud.paths.bees.length / cloud.particles;
  const days = yield* daySteps(question, cloud, { mornings: rows, share: 1 }, cutting);
  const mornings = days.map(({ date, bees, survival }) => ({ date, bees: bees.q50, survival: survival.mean }));
  return answered({ days, counts, sizes, logLikelihood: logLikelihoodOf([...counts, ...sizes]) }, [
    ...filtered.problems,
    ...declineWarnings(mornings, question.start.bees),
  ]);
}

/** The steps that hold particles to what was seen of the colony. */
export function* filterSteps(
  question: ForecastQuestion,
  cutting: ForecastCutting,
  [begun, ended]: Span,
): Steps<Result<Filtered>> {
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
  const larger = tooLarge(particles, keptOf(ready.value));
  if (larger.length > 0) return blocked(...larger);

  const joinings = yield* joiningSteps(question, ready.value, { from: 0, share: begun }, cutting);
  if (!joinings.ok) return joinings;
  const cloud: Cloud = {
    particles,
    states: roomFor(cutting, particles * model.layout.length),
    paths: pathsFor(cutting, particles * (days + 1)),
  };
  const taken: { readonly counts: CountTaken[]; readonly sizes: SizeTaken[] } = { counts: [], sizes: [] };
  const morningOf = ({ date }: { readonly date: Day }) => daysBetween(start.date, date);
  const mornings = [...new Set([...question.counts, ...sizes].map(morningOf))].sort((one, other) => one - other);
  let from: number | null = null;
  for (const to of new Set([...mornings, days])) {
    const share = begun + ((ended - begun) * to) / days;
    yield {
      question,
      share,
      pieces: movesOf(cloud, model, { from, to, pieces: cutting.pieces, joinings: joinings.value }),
    };
    from = to;
    const weighing: Weighing = { cloud, model, question, morning: to };
    const counted = question.counts.filter((count) => morningOf(count) === to);
    const seen = sizes.filter((size) => morningOf(size) === to);
    for (const [index, count] of counted.entries()) taken.counts.push(takeCount(weighing, count, index));
    for (const [index, size] of seen.entries())
      taken.sizes.push(takeSize(weighing, filledIn(size), counted.length + index));
    if (cutting.tellDays && to < days)
      cutting.tellDays(yield* daySteps(question, cloud, { mornings: to + 1, share }, cutting));
  }
  const problems = [
    ...ready.problems,
    ...joinings.problems,
    ...sizeNotes(sizes),
    ...strains(question, taken.counts, taken.sizes),
  ];
  return answered({ cloud, ...taken }, problems);
}

/** ln of the chance of all that was seen; null when something of it was left out. */
function logLikelihoodOf(taken: readonly { readonly logLikelihood: number | null }[]): number | null {
  let total = 0;
  for (const { logLikelihood } of taken) {
    if (logLikelihood === null) return null;
    total += logLikelihood;
  }
  return total;
}

interface Weighing {
  readonly cloud: Cloud;
  readonly model: Engine;
  readonly question: ForecastQuestion;
  readonly morning: number;
}

/**
 * Weighs the particles by what was seen, and by how likely each has lived until then, and draws them anew. What none
 * of them could give is left out, but that the colony lived.
 */
function taking({ cloud, model, question: { seed }, morning }: Weighing, index: number, logs: Float64Array) {
  const sight = sightOf(morning, index);
  const alive = logAlive(cloud, model);
  const weighedBy = (logChances: Float64Array) =>
    assimilate({
      particles: cloud.particles,
      propagate: () => undefined,
      logChances: () => logChances,
      take: (ancestors) => takeAncestors(cloud, ancestors, model, { morning, sight, seed }),
      uniform: () => combOf(seed, sight),
    });
  const taken = weighedBy(logs.map((each, particle) => each + (alive[particle] as number)));
  if (taken === null) weighedBy(alive);
  seenAlive(cloud, model, morning);
  if (taken === null) return { logLikelihood: null, effectiveShare: 0 };
  return { logLikelihood: taken.logLikelihood, effectiveShare: taken.effective / cloud.particles };
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

/** Takes all particles from a morning to another; from null they are drawn first, on morning 0. */
function movesOf(
  { particles, states, paths }: Cloud,
  model: Engine,
  of: {
    readonly from: number | null;
    readonly to: number;
    readonly pieces: number;
    readonly joinings: readonly Joining[];
  },
): readonly MovePiece[] {
  const { from, to, pieces, joinings } = of;
  const { length } = model.layout;
  const before = from ?? 0;
  const rows = Int32Array.from({ length: to - before }, (_, day) => before + day + 1);
  return cut(particles, pieces).map(([first, after]) => ({
    ...{ kind: "move", first, count: after - first, from: before, to, isFirst: from === null },
    ...{ paths, particles, column: first, rows },
    joins: joinsFor(joinings, [first, after], [before, to]),
    states: states.subarray(first * length, after * length),
  }));
}

/** Ranges of the first so many mornings. */
function* daySteps(
  question: ForecastQuestion,
  { particles, paths }: Cloud,
  { mornings, share }: { readonly mornings: number; readonly share: number },
  cutting: Cutting,
): Steps<readonly ForecastDay[]> {
  const seen = yield* rangeSteps(question, { particles, paths, rows: mornings, share }, cutting);
  return seen.map((morning, index) => ({ date: addDays(question.start.date, index), ...morning }));
}
