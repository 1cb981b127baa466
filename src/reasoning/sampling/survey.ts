/** Surveys with a test that errs both ways: what a cut-point finds and what it clears, and the smallest survey. */
import { binomial, hypergeometric } from "../../numerics/index.ts";
import { answered, blocked, ensure, type Result } from "../../units/index.ts";
import { tieSlack } from "./detection-sample-size.ts";
import { samplingProblem } from "./problems.ts";

export interface SurveyedGroup {
  /** How many there are; null when so many that drawing some changes nothing. */
  readonly population: number | null;
  /** The infestation not to be missed: how many, when the population is counted; else which share. */
  readonly infested: number;
  /** Probability that an infested one tests positive, 0 < Se ≤ 1. */
  readonly sensitivity: number;
  /** Probability that one not infested tests negative, 0 < Sp ≤ 1. */
  readonly specificity: number;
}

export interface SurveyChances {
  /** Chance of `callInfestedFrom` positives or more when the group is infested as given. */
  readonly finds: number;
  /** Chance of fewer when none is infested. */
  readonly clears: number;
  /** Chance of exactly `callInfestedFrom − 1` positives in the infested group; a problem when that is below 0. */
  readonly oneShort: Result<number>;
}

/**
 * What a survey of `examined` with a cut-point can do.
 *
 * Model: infested among those examined hypergeometric (binomial in an unlimited population); true positives
 * binomial with Se, false ones with 1 − Sp. "Cut-point" is used in two ways by authors; here it is the smallest number
 * of positives at which the group is called infested, and one fewer is the most that is still read as none infested.
 *
 * @returns SurveyChances; or `examined-exceed-population`, `infested-exceed-population`
 * @throws DomainError for numbers outside their range
 * @source Cameron & Baldock 1998, Preventive Veterinary Medicine 34:1–17
 *
 * @example
 * surveyChances({ population: 150, infested: 15, sensitivity: 0.9, specificity: 0.98, examined: 30, callInfestedFrom: 2 }).value.finds  // → 0.870566046847
 * surveyChances({ population: null, infested: 0.1, sensitivity: 0.9, specificity: 0.98, examined: 30, callInfestedFrom: 2 }).value.finds  // → 0.849775388428
 */
export function surveyChances(
  survey: SurveyedGroup & { readonly examined: number; readonly callInfestedFrom: number },
): Result<SurveyChances> {
  const { population, infested, examined, callInfestedFrom: from, specificity } = survey;
  check(survey);
  ensure(Number.isInteger(examined) && examined >= 1, "examined", examined, "a whole number ≥ 1");
  ensure(Number.isInteger(from) && from >= 0, "callInfestedFrom", from, "a whole number ≥ 0");
  if (population !== null && infested > population) {
    return blocked(samplingProblem("infested-exceed-population", "blocked", "infested", { infested, population }));
  }
  if (population !== null && examined > population) {
    return blocked(samplingProblem("examined-exceed-population", "blocked", "examined", { examined, population }));
  }
  const fewer = positivesBelow(survey, from);
  const oneShort =
    from === 0
      ? blocked(samplingProblem("no-count-below-zero", "blocked", "callInfestedFrom", {}))
      : answered(fewer - positivesBelow(survey, from - 1));
  const clears = from === 0 ? 0 : binomial({ n: examined, p: 1 - specificity }).cdf(from - 1);
  return answered({ finds: 1 - fewer, clears, oneShort });
}

export interface SurveyDesign {
  readonly examined: number;
  /** The group is called infested at this many positives or more. */
  readonly callInfestedFrom: number;
  /** This many positives or fewer are still read as none infested: one fewer than `callInfestedFrom`. */
  readonly readAsNoneUpTo: number;
  readonly finds: number;
  readonly clears: number;
  /** 1 − finds, to its own digits. */
  readonly missed: number;
  /** 1 − clears, to its own digits. */
  readonly falseAlarm: number;
}

/**
 * The smallest survey that misses and raises false alarms no oftener than allowed, with its cut-point.
 *
 * For n = 1, 2, … the smallest cut-point that keeps false alarms within bounds is taken; the first n at which it also
 * keeps misses within bounds is the answer. Numbers that cannot be the first are passed over, none that could. Ties count as reached within a relative slack of 1e-12.
 *
 * @returns SurveyDesign; or `no-size-in-search`, `infested-exceed-population`, `nothing-to-detect`,
 *   `test-no-better-than-chance`
 * @throws DomainError for numbers outside their range
 * @source Cameron & Baldock 1998, Preventive Veterinary Medicine 34:1–17
 *
 * @example
 * smallestSurvey({ population: null, infested: 0.02, sensitivity: 1, specificity: 0.99, missAllowed: 0.05, falseAlarmAllowed: 0.05 }).value.examined  // → 524
 */
export function smallestSurvey(
  wanted: SurveyedGroup & {
    /** Largest allowed chance to miss the infestation, in (0, 1). */
    readonly missAllowed: number;
    /** Largest allowed chance to call a group infested that is not, in (0, 1). */
    readonly falseAlarmAllowed: number;
    /** Where the search ends; the population, or 10 000 in an unlimited one, when not given. */
    readonly searchUpTo?: number;
    /** Told now and then which share of the numbers has been looked at, 0 to 1. */
    readonly progress?: (share: number) => void;
  },
): Result<SurveyDesign> {
  const { population, infested, sensitivity, specificity, missAllowed, falseAlarmAllowed } = wanted;
  check(wanted);
  const { searchUpTo = population ?? 10_000 } = wanted;
  ensure(Number.isInteger(searchUpTo) && searchUpTo >= 1, "searchUpTo", searchUpTo, "a whole number ≥ 1");
  for (const [name, chance] of Object.entries({ missAllowed, falseAlarmAllowed })) {
    ensure(chance > 0 && chance < 1, name, chance, "in (0, 1)");
  }
  if (sensitivity + specificity <= 1) {
    return blocked(
      samplingProblem("test-no-better-than-chance", "blocked", "sensitivity", { sensitivity, specificity }),
    );
  }
  if (infested === 0) return blocked(samplingProblem("nothing-to-detect", "blocked", "infested", {}));
  if (population !== null && infested > population) {
    return blocked(samplingProblem("infested-exceed-population", "blocked", "infested", { infested, population }));
  }
  const searched = Math.min(population ?? Infinity, searchUpTo);
  const alarm = (examined: number, from: number) => binomial({ n: examined, p: 1 - specificity }).sf(from - 1);
  const quiet = (examined: number, from: number) => alarm(examined, from) <= falseAlarmAllowed * (1 + tieSlack);
  const missed = (examined: number, from: number) => positivesBelow({ ...wanted, examined }, from);
  const reaches = (examined: number, from: number) => missed(examined, from) <= missAllowed * (1 + tieSlack);
  // More examined never need a smaller cut-point, and with one cut-point more examined miss less: of all numbers that
  // share a cut-point the last tells whether any of them reaches it.
  for (let first = 1, from = 1; first <= searched; from += 1) {
    if (!quiet(first, from)) continue;
    const last = lastWhere((examined) => quiet(examined, from), first, searched);
    if (reaches(last, from)) {
      const examined = lastWhere((each) => !reaches(each, from), first - 1, last - 1) + 1;
      const misses = missed(examined, from);
      return answered({
        examined,
        callInfestedFrom: from,
        readAsNoneUpTo: from - 1,
        finds: 1 - misses,
        clears: binomial({ n: examined, p: 1 - specificity }).cdf(from - 1),
        missed: misses,
        falseAlarm: alarm(examined, from),
      });
    }
    first = last + 1;
    wanted.progress?.(last / searched);
  }
  return blocked(samplingProblem("no-size-in-search", "blocked", "missAllowed", { searched }));
}

/** The last whole number from `low` to `high` at which something holds that holds at `low` and, once gone, stays away. */
function lastWhere(holds: (n: number) => boolean, low: number, high: number): number {
  let [yes, no] = [low, high + 1];
  while (no - yes > 1) {
    const middle = Math.floor((yes + no) / 2);
    if (holds(middle)) yes = middle;
    else no = middle;
  }
  return yes;
}

/** Chance of fewer than `from` positives among those examined in the infested group. */
function positivesBelow(survey: SurveyedGroup & { readonly examined: number }, from: number): number {
  const { population, infested, sensitivity, specificity, examined } = survey;
  if (from === 0) return 0;
  if (from > examined) return 1;
  if (population === null) {
    const positive = infested * sensitivity + (1 - infested) * (1 - specificity);
    return binomial({ n: examined, p: Math.min(1, positive) }).cdf(from - 1);
  }
  const drawn = hypergeometric({ population, marked: infested, drawn: examined });
  let below = 0;
  for (let caught = drawn.support.low; caught <= drawn.support.high; caught += 1) {
    const chance = drawn.pmf(caught);
    if (chance < 1e-18) continue;
    below += chance * bothBelow({ caught, others: examined - caught, sensitivity, specificity, from });
  }
  return Math.min(1, below);
}

/** Chance that true positives among `caught` and false ones among `others` are fewer than `from` together. */
function bothBelow(parts: {
  readonly caught: number;
  readonly others: number;
  readonly sensitivity: number;
  readonly specificity: number;
  readonly from: number;
}): number {
  const { caught, others, sensitivity, specificity, from } = parts;
  const found = binomial({ n: caught, p: sensitivity });
  const wrong = binomial({ n: others, p: 1 - specificity });
  // Counts of true positives outside these have a chance below 1e-17 (Bernstein's bound).
  const reach = 9 * Math.sqrt(caught * sensitivity * (1 - sensitivity)) + 20;
  const most = Math.min(caught, from - 1, Math.ceil(caught * sensitivity + reach));
  const fewest = Math.max(0, Math.floor(caught * sensitivity - reach));
  if (most < fewest) return 0;
  let [sum, added] = [0, from - 1 - most];
  let wrongly = added === 0 ? wrong.pmf(0) : wrong.cdf(added);
  // The sum runs from many found to few, so that the false ones allowed beside them only grow.
  for (let hits = most; hits >= fewest; hits -= 1) {
    while (added < from - 1 - hits) {
      added += 1;
      wrongly += wrong.pmf(added);
    }
    sum += found.pmf(hits) * wrongly;
  }
  return sum;
}

function check({ population, infested, sensitivity, specificity }: SurveyedGroup): void {
  const counted = population !== null;
  if (counted) ensure(Number.isInteger(population) && population >= 1, "population", population, "a whole number ≥ 1");
  const fits = counted ? Number.isInteger(infested) && infested >= 0 : infested >= 0 && infested <= 1;
  ensure(fits, "infested", infested, counted ? "a whole number ≥ 0" : "a share in [0, 1]");
  ensure(sensitivity > 0 && sensitivity <= 1, "sensitivity", sensitivity, "in (0, 1]");
  ensure(specificity > 0 && specificity <= 1, "specificity", specificity, "in (0, 1]");
}
