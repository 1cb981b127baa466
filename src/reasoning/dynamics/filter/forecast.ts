/** Where a colony goes from what was counted: particles held to the counts, day by day, with ranges. */
import { addDays, answered, blocked, type Day, isDay, type Problem, type Result } from "../../../units/index.ts";
import { dayOfYear } from "../calendar.ts";
import { type CourseQuestion, readyRun } from "../course.ts";
import type { BenchCount, CountError } from "../observe.ts";
import { assumedNoise, type Noise } from "../particles.ts";
import { dynamicsProblem } from "../problems.ts";
import { assimilate } from "./bootstrap-filter.ts";
import {
  assumedDoubt,
  type Cloud,
  cloudAbout,
  combOn,
  logChancesOf,
  moveOn,
  note,
  type StartDoubt,
  surpriseOf,
  takeAncestors,
} from "./colony-particles.ts";

/** A count of dissected bees of this colony on a day. */
export interface DatedCount extends BenchCount {
  readonly date: Day;
}

/** Sensitivity 0.97, specificity 0.995, correlation of two bees of a sample 0.02: assumed, no source. */
export const assumedError: CountError = { sensitivity: 0.97, specificity: 0.995, overdispersion: 0.02 };

export interface ForecastQuestion extends CourseQuestion {
  readonly counts: readonly DatedCount[];
  /** Particles; more make ranges steadier. */
  readonly draws: number;
  readonly seed: number;
  readonly doubt?: StartDoubt;
  readonly error?: CountError;
  readonly noise?: Noise;
}

/** Ends of the 90 % and of the 50 % range, and the middle. */
export interface Range {
  readonly q05: number;
  readonly q25: number;
  readonly q50: number;
  readonly q75: number;
  readonly q95: number;
}

export interface ForecastDay {
  readonly date: Day;
  readonly bees: Range;
  readonly infestedShare: Range;
  /** Chance that the colony is not lost to cold by then. Weakly supported: wide on purpose. */
  readonly survival: Range & { readonly mean: number };
}

/** What one count did to the particles. */
export interface CountTaken extends DatedCount {
  /** ln of the mean chance of this count, given the counts before it. */
  readonly logLikelihood: number;
  /** Share of the particles that the weights were worth, 0–1. */
  readonly effectiveShare: number;
  /** How far the count lay from what was expected of it, in standard deviations of what was expected. */
  readonly surprise: number;
}

export interface Forecast {
  readonly days: readonly ForecastDay[];
  readonly counts: readonly CountTaken[];
  readonly logLikelihood: number;
}

/** Fewest and most particles. */
export const drawsRange = { least: 100, most: 20_000 } as const;
/** Numbers of a run that are kept at most: particles times mornings. A run of a year with 20,000 particles. */
const mostKept = 8_000_000;
/** A count contradicts the model when it leaves fewer of the particles, or lies more deviations off. Judgement. */
const contradicts = { below: 0.02, surprise: 5 } as const;

/**
 * The forecast of a colony, each morning from the first to the last, both included.
 *
 * Model: a bootstrap particle filter over the daily model in expected numbers of bees, with slow noise on contact and
 * laying, an unsure start, and a contact rate of each colony's own that is learnt. A count is beta-binomial about the
 * share of bees with living mites, latent ones too. Ranges before a count are those of paths that agree with it.
 * Survival rests on little: chosen, not fitted.
 *
 * Not for a count read to a stop without its plan, nor for bees of one age only.
 *
 * Blocked for a question that cannot be. Warned when a count contradicts what the model holds possible.
 *
 * @source Gordon, Salmond & Smith 1993; noise, doubt and error of counts: assumed
 */
export function colonyForecast(
  question: ForecastQuestion,
  tell: (share: number) => void = () => undefined,
): Result<Forecast> {
  const filtered = filteredCloud(question, tell);
  if (!filtered.ok) return filtered;
  const { cloud, counts } = filtered.value;
  const mornings = cloud.paths.bees.length / cloud.particles;
  return answered(
    {
      days: Array.from({ length: mornings }, (_, morning) =>
        dayOf(cloud, morning, addDays(question.start.date, morning)),
      ),
      counts,
      logLikelihood: counts.reduce((sum, each) => sum + each.logLikelihood, 0),
    },
    filtered.problems,
  );
}

/** The particles themselves, with their paths, as `colonyForecast` tells them: for who asks more than ranges. */
export function filteredCloud(
  question: ForecastQuestion,
  tell: (share: number) => void = () => undefined,
): Result<{ readonly cloud: Cloud; readonly counts: readonly CountTaken[] }> {
  const faults = [...drawsFaults(question), ...countFaults(question)];
  if (faults.length > 0) return blocked(...faults);
  const ready = readyRun(question);
  if (!ready.ok) return ready;
  const { model, colony, days } = ready.value;
  const { start, seed, draws: particles, doubt = assumedDoubt, error = assumedError, noise = assumedNoise } = question;
  if (particles * (days + 1) > mostKept)
    return blocked(
      dynamicsProblem("season-draws-out-of-range", "blocked", "draws", {
        draws: particles,
        ...{ least: drawsRange.least, most: Math.floor(mostKept / (days + 1)) },
      }),
    );
  const cloud = cloudAbout(model, colony, { particles, seed, mornings: days + 1, start, doubt });
  const taken: CountTaken[] = [];
  const counts = [...question.counts].sort((one, other) => (one.date < other.date ? -1 : 1));
  for (let morning = 0; morning <= days; morning++) {
    const today = addDays(start.date, morning);
    note(cloud, morning, model);
    for (const [index, count] of counts.filter(({ date }) => date === today).entries()) {
      const surprise = surpriseOf(cloud, morning, { count, error });
      const { logLikelihood, effective } = assimilate({
        particles,
        propagate: () => undefined,
        logChances: () => logChancesOf(cloud, morning, { count, error }),
        take: (ancestors) => takeAncestors(cloud, ancestors, model, { morning, seed }),
        uniform: () => combOn(seed, morning * sameDay + index),
      });
      taken.push({ ...count, logLikelihood, effectiveShare: effective / particles, surprise });
    }
    if (morning < days) moveOn(cloud, model, { dayOfYear: dayOfYear(today), elapsed: morning }, { seed, noise });
    tell((morning + 1) / (days + 1));
  }
  return answered({ cloud, counts: taken }, [...ready.problems, ...contradictions(taken)]);
}

/** Combs set aside for the counts of one day. */
const sameDay = 64;

function dayOf({ particles, paths }: Cloud, morning: number, date: Day): ForecastDay {
  const row = (path: Float64Array) => path.slice(morning * particles, (morning + 1) * particles).sort();
  const survival = row(paths.survival);
  return {
    date,
    bees: rangeOf(row(paths.bees)),
    infestedShare: rangeOf(row(paths.infestedShare)),
    survival: { ...rangeOf(survival), mean: survival.reduce((sum, each) => sum + each, 0) / particles },
  };
}

/** Points of sorted values, interpolated between their middles. */
export function rangeOf(sorted: Float64Array): Range {
  const at = (share: number): number => {
    const place = Math.min(Math.max(share * sorted.length - 0.5, 0), sorted.length - 1);
    const below = Math.floor(place);
    const low = sorted[below] as number;
    return low + (place - below) * ((sorted[Math.min(below + 1, sorted.length - 1)] as number) - low);
  };
  return { q05: at(0.05), q25: at(0.25), q50: at(0.5), q75: at(0.75), q95: at(0.95) };
}

/** What the draws of a forecast cannot be. */
export function drawsFaults({ draws }: ForecastQuestion): readonly Problem[] {
  const isFit = Number.isInteger(draws) && draws >= drawsRange.least && draws <= drawsRange.most;
  return isFit ? [] : [dynamicsProblem("season-draws-out-of-range", "blocked", "draws", { draws, ...drawsRange })];
}

/** What its counts cannot be. */
export function countFaults({ counts, start, until }: ForecastQuestion): readonly Problem[] {
  return counts.flatMap(({ date, infested, examined }, index): readonly Problem[] => {
    const field = `counts[${index}]`;
    if (!isDay(date))
      return [dynamicsProblem("season-day-unknown", "blocked", `${field}.date`, { date: String(date) })];
    if (
      !(
        Number.isInteger(examined) &&
        examined >= 1 &&
        Number.isInteger(infested) &&
        infested >= 0 &&
        infested <= examined
      )
    )
      return [dynamicsProblem("season-count-impossible", "blocked", `${field}.infested`, { infested, examined })];
    if (isDay(start.date) && isDay(until) && (date < start.date || date > until))
      return [dynamicsProblem("season-count-outside", "blocked", `${field}.date`, { date, from: start.date, until })];
    return [];
  });
}

const contradictions = (taken: readonly CountTaken[]): readonly Problem[] =>
  taken
    .filter(
      ({ effectiveShare, surprise }) => effectiveShare < contradicts.below || Math.abs(surprise) > contradicts.surprise,
    )
    .map(({ date, infested, examined }) =>
      dynamicsProblem("season-count-contradicts", "warned", "counts", { date, infested, examined }),
    );
