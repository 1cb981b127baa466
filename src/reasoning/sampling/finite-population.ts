/** Detection in a small colony or apiary: drawing without replacement, the bench missing some. */
import { answered, blocked, ensure, type Problem, type Result } from "../../units/index.ts";
import { tieSlack } from "./detection-sample-size.ts";
import { samplingProblem } from "./problems.ts";

export interface FiniteGroup {
  /** Bees in the colony, or colonies in the apiary. Whole number ≥ 1. */
  readonly population: number;
  /** How many of them are infested. Whole number. */
  readonly infested: number;
  /** Probability that an infested one is found when examined, 0 < Se ≤ 1. */
  readonly sensitivity: number;
}

/**
 * Probability of finding at least one, `examined` drawn without replacement.
 *
 * Model: d infested among the n examined is hypergeometric(N, D, n); each is missed with
 * probability 1 − Se, so the chance of none is Σ_d P(d)·(1 − Se)^d. Specificity 1.
 *
 * @returns proportion 0–1, or the problem that stands in the way
 * @throws DomainError for counts that are not whole or a sensitivity outside (0, 1]
 * @source Cannon & Roe 1982 (exact form); Cameron & Baldock 1998, Prev Vet Med 34:1–17 (imperfect test)
 *
 * @example
 * finiteDetectionProbability({ population: 100, infested: 1, sensitivity: 1, examined: 95 }).value  // → 0.95
 */
export function finiteDetectionProbability(group: FiniteGroup & { readonly examined: number }): Result<number> {
  const trouble = groupTrouble(group);
  ensure(Number.isInteger(group.examined) && group.examined >= 0, "examined", group.examined, "a whole number ≥ 0");
  if (trouble) return blocked(trouble);
  if (group.examined > group.population) {
    return blocked(
      samplingProblem("examined-exceed-population", "blocked", "examined", {
        examined: group.examined,
        population: group.population,
      }),
    );
  }
  return answered(1 - noneFound(group, group.examined));
}

/**
 * Smallest number to examine that reaches `confidence`, drawn without replacement.
 *
 * Ties count as reached within a relative slack of 1e-12: N = 100 with D = 1 needs exactly 95.
 * When even examining all does not reach it, the problem names the most that can be reached.
 *
 * @returns a whole number 1 … population, or the problem
 * @throws DomainError for counts that are not whole, confidence outside (0, 1), sensitivity outside (0, 1]
 * @source Cannon & Roe 1982 (exact form); Cameron & Baldock 1998, Prev Vet Med 34:1–17 (imperfect test)
 *
 * @example
 * finiteDetectionSampleSize({ population: 100, infested: 1, confidence: 0.95, sensitivity: 1 }).value  // → 95
 * finiteDetectionSampleSize({ population: 30, infested: 1, confidence: 0.95, sensitivity: 0.8 }).ok  // → false
 */
export function finiteDetectionSampleSize(design: FiniteGroup & { readonly confidence: number }): Result<number> {
  const { population, infested, confidence, sensitivity } = design;
  ensure(confidence > 0 && confidence < 1, "confidence", confidence, "in (0, 1)");
  const trouble = groupTrouble(design);
  if (trouble) return blocked(trouble);
  if (infested === 0) {
    return blocked(samplingProblem("nothing-to-detect", "blocked", "infested", {}));
  }
  const allowed = (1 - confidence) * (1 + tieSlack);
  const leftOver = noneFound(design, population);
  if (leftOver > allowed) {
    const slots = { reachable: 1 - leftOver, confidence, population, infested, sensitivity };
    return blocked(samplingProblem("confidence-out-of-reach", "blocked", "confidence", slots));
  }
  // Cannon and Roe's shortcut, with MacDiarmid's sensitivity, is seldom off by more than a few.
  const shortcut = (1 - (1 - confidence) ** (1 / infested)) * (population - (infested - 1) / 2);
  const isEnough = (examined: number) => noneFound(design, examined) <= allowed;
  return answered(smallest(isEnough, { guess: Math.floor(shortcut / sensitivity), most: population }));
}

/** The smallest number 1 … `most` that is enough, where all above are too: steps that double outwards from a guess. */
function smallest(
  isEnough: (value: number) => boolean,
  { guess, most }: { readonly guess: number; readonly most: number },
): number {
  const holds = (value: number) => value >= most || (value >= 1 && isEnough(value));
  let [tooFew, enough] = [guess, guess + 1];
  for (let step = 1; !holds(enough); step *= 2) [tooFew, enough] = [enough, enough + step];
  for (let step = 1; holds(tooFew); step *= 2) [tooFew, enough] = [tooFew - step, tooFew];
  while (enough - tooFew > 1) {
    const middle = Math.floor((tooFew + enough) / 2);
    if (holds(middle)) enough = middle;
    else tooFew = middle;
  }
  return enough;
}

export interface FiniteDetectionDesign {
  readonly examined: number;
  /** Chance of finding at least one with that many. */
  readonly reached: number;
  /** The same with one fewer: not enough. */
  readonly oneFewer: number;
}

/**
 * The size of `finiteDetectionSampleSize` with what it reaches and what one fewer would.
 *
 * @returns FiniteDetectionDesign, or the problem
 * @throws DomainError as `finiteDetectionSampleSize`
 * @source Cannon & Roe 1982 (exact form); Cameron & Baldock 1998, Prev Vet Med 34:1–17 (imperfect test)
 *
 * @example
 * finiteDetectionDesign({ population: 100, infested: 5, confidence: 0.95, sensitivity: 1 }).value.oneFewer  // → 0.949263622975
 */
export function finiteDetectionDesign(
  design: FiniteGroup & { readonly confidence: number },
): Result<FiniteDetectionDesign> {
  const size = finiteDetectionSampleSize(design);
  if (!size.ok) return size;
  const at = (examined: number) => 1 - noneFound(design, examined);
  return answered({ examined: size.value, reached: at(size.value), oneFewer: at(size.value - 1) });
}

/**
 * The most that examining every one can reach: 1 unless the test misses some.
 *
 * @returns proportion 0–1, or the problem
 * @throws DomainError for counts that are not whole or a sensitivity outside (0, 1]
 * @source Cameron & Baldock 1998, Prev Vet Med 34:1–17
 *
 * @example
 * mostDetectable({ population: 30, infested: 1, sensitivity: 0.8 }).value  // → 0.8
 */
export function mostDetectable(group: FiniteGroup): Result<number> {
  return finiteDetectionProbability({ ...group, examined: group.population });
}

/**
 * Largest number infested that a zero among `examined` leaves possible, drawn without replacement.
 *
 * The largest D for which a zero still has probability 1 − level or more.
 *
 * @returns a whole number 0 … population, or the problem
 * @throws DomainError for counts that are not whole or a level outside (0, 1)
 * @source inversion of the hypergeometric test, as in Cannon & Roe 1982
 *
 * @example
 * finiteUpperLimitOfZero({ population: 60, examined: 20, level: 0.95, sensitivity: 1 }).value  // → 6
 */
export function finiteUpperLimitOfZero(zero: {
  readonly population: number;
  readonly examined: number;
  readonly level: number;
  readonly sensitivity: number;
}): Result<number> {
  const { population, examined, level, sensitivity } = zero;
  ensure(level > 0 && level < 1, "level", level, "in (0, 1)");
  ensure(Number.isInteger(examined) && examined >= 0, "examined", examined, "a whole number ≥ 0");
  groupTrouble({ population, infested: 0, sensitivity });
  if (examined === 0) return blocked(samplingProblem("nothing-examined", "blocked", "examined", {}));
  if (examined > population) {
    return blocked(samplingProblem("examined-exceed-population", "blocked", "examined", { examined, population }));
  }
  let [possible, tooMany] = [0, population + 1];
  while (tooMany - possible > 1) {
    const middle = Math.floor((possible + tooMany) / 2);
    if (noneFound({ population, infested: middle, sensitivity }, examined) * (1 + tieSlack) >= 1 - level) {
      possible = middle;
    } else tooMany = middle;
  }
  return answered(possible);
}

function groupTrouble({ population, infested, sensitivity }: FiniteGroup): Problem | null {
  ensure(Number.isInteger(population) && population >= 1, "population", population, "a whole number ≥ 1");
  ensure(Number.isInteger(infested) && infested >= 0, "infested", infested, "a whole number ≥ 0");
  ensure(sensitivity > 0 && sensitivity <= 1, "sensitivity", sensitivity, "in (0, 1]");
  if (infested <= population) return null;
  return samplingProblem("infested-exceed-population", "blocked", "infested", { infested, population });
}

/** Terms of this share of the sum are left out: a million of them change no digit that is kept. */
const negligible = 1e-24;

/**
 * Σ_d P(d)·(1 − Se)^d by the ratio of neighbouring terms, started at the likeliest d: all terms are
 * positive, none is built from a difference of logarithms, so ties keep their last bits.
 */
function noneFound({ population, infested, sensitivity }: FiniteGroup, examined: number): number {
  if (sensitivity === 1) return noneDrawn({ population, infested }, examined);
  const missed = 1 - sensitivity;
  const fewest = Math.max(0, examined + infested - population);
  const most = Math.min(examined, infested);
  const likeliest = Math.floor(((examined + 1) * (infested + 1)) / (population + 2));
  const mode = Math.min(most, Math.max(fewest, likeliest));
  const up = (d: number) => ((infested - d) * (examined - d)) / ((d + 1) * (population - infested - examined + d + 1));
  let [weights, none] = [1, missed ** mode];
  // Away from the likeliest d weights only fall, and terms rise to one top: so small, all that follow are smaller still.
  // A sum that is 0 still has met no term above the least number there is.
  const counts = (weight: number, term: number) =>
    weight > negligible * weights || (weight > 0 && (none === 0 || term > negligible * none));
  for (let d = mode, weight = 1, term = 1; d < most && counts(weight, term); d++) {
    weight *= up(d);
    term = weight * missed ** (d + 1);
    weights += weight;
    none += term;
  }
  for (let d = mode - 1, weight = 1, term = 1; d >= fewest && counts(weight, term); d--) {
    weight /= up(d);
    term = weight * missed ** d;
    weights += weight;
    none += term;
  }
  return none / weights;
}

/** Chance that no infested one is drawn: ∏ (N − n − j)/(N − j), over the infested or over the drawn, whichever are fewer. */
function noneDrawn({ population, infested }: Pick<FiniteGroup, "population" | "infested">, examined: number): number {
  const fewer = Math.min(infested, examined);
  const left = population - Math.max(infested, examined);
  let none = 1;
  for (let j = 0; j < fewer && none > 0; j++) none *= (left - j) / (population - j);
  return none;
}
