/** Where a colony goes from what was counted: particles held to the counts, day by day, with ranges. */
import { type Day, isDay, type Problem, type Result } from "../../../units/index.ts";
import type { CourseQuestion } from "../course.ts";
import { type BeesRead, type BenchCount, type CountError, mostCounted } from "../observe.ts";
import type { Noise } from "../particles.ts";
import { dynamicsProblem } from "../problems.ts";
import type { StartDoubt } from "./colony-particles.ts";
import { type Filtered, filterSteps, forecastSteps } from "./forecast-steps.ts";
import type { DatedSize, SizeTaken } from "./sizes.ts";
import { cutHere, reckonHere } from "./steps.ts";

export { rangeOf, survivalDoubt, survivalOf } from "./pieces.ts";

/** A count of dissected bees of this colony on a day. */
export interface DatedCount extends BenchCount {
  readonly date: Day;
}

/** Sensitivity 0.97, specificity 0.995, correlation of two bees of a sample 0.02: assumed, no source. */
export const assumedError: CountError = { sensitivity: 0.97, specificity: 0.995, overdispersion: 0.02 };

export interface ForecastQuestion extends CourseQuestion {
  readonly counts: readonly DatedCount[];
  /** How large the colony was seen to be, if it was. */
  readonly sizes?: readonly DatedSize[];
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
  /**
   * Chance that the colony is not lost to cold by then, as far as it is known: 1 until its bees were last seen alive,
   * on a day of a count or a size. Weakly supported: the ranges are those of the draws widened by `survivalDoubt` on both
   * sides; mean and middle are the draws' own.
   */
  readonly survival: Range & { readonly mean: number };
}

/** What one count did to the particles. */
export interface CountTaken extends DatedCount {
  /** ln of the mean chance of this count in a colony still alive, given what was seen before; null: left out, no particle could give it. */
  readonly logLikelihood: number | null;
  /** Share of the particles that the weights were worth, 0–1. */
  readonly effectiveShare: number;
  /** How far the count lay from what was expected of it, in standard deviations of that; null where that scatters by nothing. */
  readonly surprise: number | null;
}

export interface Forecast {
  readonly days: readonly ForecastDay[];
  readonly counts: readonly CountTaken[];
  readonly sizes: readonly SizeTaken[];
  /** Of all counts and sizes together; null when one was left out. */
  readonly logLikelihood: number | null;
}

/** Fewest and most particles. */
export const drawsRange = { least: 100, most: 20_000 } as const;
/** What was seen contradicts the model when it leaves fewer of the particles, or lies more deviations off. Judgement. */
export const contradicts = { below: 0.02, surprise: 5 } as const;
/** Fewer particles than these are worth make the ends of a range rough: one in twenty is two or three. Judgement. */
export const fewWorth = 50;

/**
 * The forecast of a colony, each morning from the first to the last, both included.
 *
 * Model: a bootstrap particle filter over the daily model in expected numbers of bees, with slow noise on contact and
 * laying, an unsure start, and a contact rate of each colony's own that is learnt. A count is beta-binomial about the
 * share of bees with living mites, latent ones too. Ranges before a count are those of paths that agree with it. Bees
 * that were seen alive weigh each particle by its chance to have lived until then, and survival begins anew with them.
 * Survival rests on little: chosen, not fitted.
 *
 * Counts that were stopped, counts with bees read on one side, and frames of bees and brood are taken in by what each
 * says. Not for bees of one age only.
 *
 * Blocked for a question that cannot be. Warned when a count contradicts what the model holds possible or was left out
 * as impossible, and when the colony is likely lost to cold.
 *
 * @source Gordon, Salmond & Smith 1993; noise, doubt and error of counts: assumed
 */
export function colonyForecast(question: ForecastQuestion, tell?: Tell): Result<Forecast> {
  return reckonHere(forecastSteps(question, cutHere(question)), tell);
}

/** Hears how much is done, 0 to 1. */
type Tell = (share: number) => void;

/** The particles themselves, with their paths, as `colonyForecast` tells them: for who asks more than ranges. */
export const filteredCloud = (question: ForecastQuestion): Result<Filtered> =>
  reckonHere(filterSteps(question, cutHere(question), [0, 1]));

/** What the draws of a forecast cannot be. */
export function drawsFaults({ draws }: ForecastQuestion): readonly Problem[] {
  const isFit = Number.isInteger(draws) && draws >= drawsRange.least && draws <= drawsRange.most;
  return isFit ? [] : [dynamicsProblem("season-draws-out-of-range", "blocked", "draws", { draws, ...drawsRange })];
}

/** What its counts cannot be. */
export function countFaults({ counts, start, until, actions }: ForecastQuestion): readonly Problem[] {
  const faults = counts.flatMap((count, index): readonly Problem[] => {
    const { date, infested, examined, stop, oneSided } = count;
    const field = `counts[${index}]`;
    if (!isDay(date))
      return [dynamicsProblem("season-day-unknown", "blocked", `${field}.date`, { date: String(date) })];
    const impossible = (part: string, read: BeesRead) =>
      dynamicsProblem("season-count-impossible", "blocked", `${field}.${part}`, {
        infested: read.infested,
        examined: read.examined,
        most: mostCounted,
      });
    if (!isRead(count, oneSided === undefined ? 1 : 0)) return [impossible("infested", { infested, examined })];
    if (oneSided !== undefined && !isRead(oneSided, 1)) return [impossible("oneSided.infested", oneSided)];
    if (stop !== undefined && !endsBy(count, stop))
      return [
        dynamicsProblem("season-count-unlike-its-stop", "blocked", `${field}.stop`, {
          ...{ infested, examined, stopInfested: stop.infested, stopExamined: stop.examined },
        }),
      ];
    if (isDay(start.date) && isDay(until) && (date < start.date || date > until))
      return [dynamicsProblem("season-count-outside", "blocked", `${field}.date`, { date, from: start.date, until })];
    return [];
  });
  if (faults.length > 0 || start.infestedShare !== 0) return faults;
  // A colony without a mite keeps none, whatever is counted: only another colony brings them.
  const found = counts.find(
    ({ date, infested, oneSided }) =>
      infested + (oneSided?.infested ?? 0) > 0 && !actions.some(({ kind, from }) => kind === "unite" && from < date),
  );
  if (found === undefined) return [];
  const { date, infested, examined } = withOneSided(found);
  return [dynamicsProblem("season-share-none-counted", "blocked", "start.infestedShare", { date, infested, examined })];
}

/** All bees of a count, however they were read. */
const withOneSided = ({ date, infested, examined, oneSided }: DatedCount) => ({
  date,
  infested: infested + (oneSided?.infested ?? 0),
  examined: examined + (oneSided?.examined ?? 0),
});

const isRead = ({ infested, examined }: BeesRead, least: number): boolean =>
  Number.isInteger(examined) &&
  examined >= least &&
  examined <= mostCounted &&
  Number.isInteger(infested) &&
  infested >= 0 &&
  infested <= examined;

/** Ended at the infested bee that was waited for, or with the last of the bees to be read. */
const endsBy = ({ infested, examined }: BeesRead, stop: BeesRead): boolean =>
  stop.infested >= 1 &&
  ((infested === stop.infested && examined <= stop.examined) ||
    (infested < stop.infested && examined === stop.examined));

/** Told of counts and sizes that no particle could give or hardly any would, or that leave too few of them. */
export function strains(
  { draws }: ForecastQuestion,
  counts: readonly CountTaken[],
  sizes: readonly SizeTaken[],
): readonly Problem[] {
  const isContradicting = ({ effectiveShare, surprise }: CountTaken | SizeTaken) =>
    effectiveShare < contradicts.below || surprise === null || Math.abs(surprise) > contradicts.surprise;
  return [...counts, ...sizes].flatMap((taken): readonly Problem[] => {
    const { date, effectiveShare, logLikelihood } = taken;
    const worth = Math.round(effectiveShare * draws);
    if (!isContradicting(taken))
      return worth < fewWorth ? [dynamicsProblem("season-particles-few", "warned", "draws", { date, worth })] : [];
    if ("what" in taken) {
      const number = Math.round(taken.frames * taken.perFrame);
      const code = logLikelihood === null ? "season-size-left-out" : "season-size-contradicts";
      return [dynamicsProblem(code, "warned", "sizes", { date, what: taken.what, number })];
    }
    const code = logLikelihood === null ? "season-count-left-out" : "season-count-contradicts";
    return [dynamicsProblem(code, "warned", "counts", withOneSided(taken))];
  });
}
