/** Wait, test first or act now: expected losses, where the choice turns, and what would change it. */
import { answered, blocked, type Estimate, ensure, type Problem, type Result } from "../../units/index.ts";
import {
  type Belief,
  type BenchTest,
  type BrokenLine,
  benchChances,
  centreOf,
  ensureBelief,
  rangeOf,
  signals,
} from "./belief.ts";
import { type Flip, flips } from "./flips.ts";
import { type Action, bestOf, lossesFrom, type Prices, perfectLoss } from "./losses.ts";
import { decisionProblem } from "./problems.ts";
import { type Stretch, strip } from "./strip.ts";
import { defaultReading, type LossCurve, lossCurveProblem, winterLossReadings } from "./winter-loss.ts";

export interface DecisionRequest {
  readonly belief: Belief;
  /** All from the user; there is no default price. */
  readonly prices: Prices;
  readonly test: BenchTest;
  /** Chance of winter death by prevalence; the judged middle reading when not given, and then said. */
  readonly winterLossByPrevalence?: LossCurve;
  /** State of the sample behind the belief; anything but accepted withholds the choice. */
  readonly acceptance?: "accepted" | "accepted-with-limits" | "rejected";
  /** True when someone asks for the choice in spite of the sample. */
  readonly decideAnyway?: boolean;
}

export interface ActionComparison {
  /** Expected loss of each action, in the unit of the prices. */
  readonly wait: number;
  readonly testFirst: number;
  readonly actNow: number;
  readonly best: Action;
  /** How much worse each action is than the best, ≥ 0. */
  readonly margins: Readonly<Record<Action, number>>;
  /** After testing: act from this number of positives on; null when no result would lead to acting. */
  readonly actFrom: number | null;
  /** Value of this test before its cost, and of knowing the prevalence exactly. */
  readonly valueOfTest: number;
  readonly valueOfKnowing: number;
  /** Prevalence at which acting and waiting cost the same, if it were known; null when one is always better. */
  readonly knownPrevalenceThreshold: number | null;
  /** Centre of belief from which waiting is no longer best; null when waiting is best up to 1. */
  readonly testingThreshold: number | null;
  /** Centre of belief from which acting without a test is best; null when it never is. */
  readonly testTreatmentThreshold: number | null;
  /** Best action by centre of belief, from 0 to 1, the belief moved and kept equally firm. */
  readonly strip: readonly Stretch[];
  /** What the strip runs over. */
  readonly stripOver: "mean-prevalence" | "probability";
  /** Where the belief stands on the strip. */
  readonly here: { readonly centre: number; readonly range: Estimate | null };
  /** For each input the nearest values at which the best action changes. */
  readonly flips: readonly Flip[];
  /** Best action under each reading of the literature, all else equal. */
  readonly readings: Readonly<Record<keyof typeof winterLossReadings, Action>>;
  readonly rule: "DE3";
}

/**
 * Compares the three actions by expected loss.
 *
 * Model: the colony is lost in winter with chance h(p), p the share of infested bees now. Waiting loses V·E[h].
 * Acting costs C and leaves the loss of a clear colony plus `residualShare` of the excess. Testing first costs T and
 * then takes the better of the two for each number of positives; that is T + Σ_x min(…), exact for a beta belief.
 * One colony, one winter; nothing about neighbours, honey or resistance.
 *
 * @returns ActionComparison with the notes `loss-curve-judged`, `loss-readings-disagree`, `testing-never-best`; or
 *   `decision-withheld`, `test-no-better-than-chance` (a test that tells nothing is answered, one that tells the wrong
 *   way is not), or what is wrong with the curve
 * @throws DomainError for prices, belief or test outside their range
 * @source Pauker & Kassirer 1980 for the three actions; Raiffa & Schlaifer 1961 for the value of a sample
 *
 * @example
 * compareActions({ belief: { a: 2, b: 18 }, prices: { colonyValue: 300, actCost: 45, testCost: 1, residualShare: 0 }, test: { bees: 50, sensitivity: 1, specificity: 1 }, winterLossByPrevalence: [{ prevalence: 0, loss: 0 }, { prevalence: 1, loss: 1 }] }).value.valueOfTest  // → 2.3067789830
 */
export function compareActions(request: DecisionRequest): Result<ActionComparison> {
  const { belief, prices, test, winterLossByPrevalence, acceptance = "accepted", decideAnyway = false } = request;
  ensureBelief(belief);
  ensurePrices(prices);
  ensureTest(test);
  const given = winterLossByPrevalence ?? winterLossReadings[defaultReading];
  const wrong = lossCurveProblem(given);
  if (wrong) return blocked(wrong);
  const { sensitivity, specificity } = test;
  if (sensitivity + specificity < 1) {
    const slots = { sensitivity, specificity };
    return blocked(decisionProblem("test-no-better-than-chance", "blocked", "test.sensitivity", slots));
  }
  if (acceptance !== "accepted" && !decideAnyway) {
    return blocked(decisionProblem("decision-withheld", "blocked", "acceptance", { acceptance }));
  }
  const line = asLine(given);
  const bench = benchChances(test);
  const losses = lossesFrom(signals(belief, test, bench, line), line, prices);
  const best = bestOf(losses);
  const stretches = strip({ belief, prices, test, bench, line });
  const bestUnder = (curve: LossCurve) =>
    bestOf(lossesFrom(signals(belief, test, bench, asLine(curve)), asLine(curve), prices));
  const readings = {
    middle: bestUnder(winterLossReadings.middle),
    cold: bestUnder(winterLossReadings.cold),
    mild: bestUnder(winterLossReadings.mild),
  };
  const problems: Problem[] = [];
  if (!winterLossByPrevalence) {
    const slots = { reading: defaultReading };
    problems.push(decisionProblem("loss-curve-judged", "noted", "winterLossByPrevalence", slots));
    if (new Set(Object.values(readings)).size > 1) {
      problems.push(decisionProblem("loss-readings-disagree", "warned", "winterLossByPrevalence", readings));
    }
  }
  if (!stretches.some((stretch) => stretch.best === "test-first")) {
    const slots = { testCost: prices.testCost, bees: test.bees };
    problems.push(decisionProblem("testing-never-best", "noted", "test", slots));
  }
  const least = Math.min(losses.wait, losses["test-first"], losses["act-now"]);
  const now = Math.min(losses.wait, losses["act-now"]);
  const known = perfectLoss(belief, line, prices);
  return answered(
    {
      wait: losses.wait,
      testFirst: losses["test-first"],
      actNow: losses["act-now"],
      best,
      margins: {
        wait: losses.wait - least,
        "test-first": losses["test-first"] - least,
        "act-now": losses["act-now"] - least,
      },
      actFrom: losses.actFrom,
      valueOfTest: now - (losses["test-first"] - prices.testCost),
      valueOfKnowing: now - known.loss,
      knownPrevalenceThreshold: known.threshold,
      testingThreshold: stretches.find((stretch) => stretch.best !== "wait")?.from ?? null,
      testTreatmentThreshold: stretches.find((stretch) => stretch.best === "act-now")?.from ?? null,
      strip: stretches,
      stripOver: "a" in belief ? "mean-prevalence" : "probability",
      here: { centre: centreOf(belief), range: rangeOf(belief) },
      flips: flips({ belief, prices, test, bench, line, strip: stretches }),
      readings,
      rule: "DE3",
    },
    problems,
  );
}

/** The curve as a line from 0 to 1, flat beyond its ends. */
export function asLine(curve: LossCurve): BrokenLine {
  const inner = curve.map(({ prevalence, loss }) => ({ prevalence, value: loss }));
  const [first, last] = [inner[0], inner.at(-1)];
  ensure(first !== undefined && last !== undefined, "curve", curve, "at least one point");
  return [
    ...(first.prevalence > 0 ? [{ prevalence: 0, value: first.value }] : []),
    ...inner,
    ...(last.prevalence < 1 ? [{ prevalence: 1, value: last.value }] : []),
  ];
}

function ensurePrices(prices: Prices): void {
  for (const name of ["colonyValue", "actCost", "testCost"] as const) {
    const price = prices[name];
    ensure(price >= 0 && Number.isFinite(price), `prices.${name}`, price, "0 or more");
  }
  const { residualShare } = prices;
  ensure(residualShare >= 0 && residualShare <= 1, "prices.residualShare", residualShare, "in [0, 1]");
}

function ensureTest({ bees, sensitivity, specificity }: BenchTest): void {
  ensure(Number.isInteger(bees) && bees >= 1 && bees <= 1000, "test.bees", bees, "a whole number from 1 to 1000");
  ensure(sensitivity > 0 && sensitivity <= 1, "test.sensitivity", sensitivity, "in (0, 1]");
  ensure(specificity > 0 && specificity <= 1, "test.specificity", specificity, "in (0, 1]");
}
