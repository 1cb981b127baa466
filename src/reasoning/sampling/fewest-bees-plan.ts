/** The sequential plan with the fewest bees whose errors, counted exactly and with its end, are those wanted. */
import { answered, blocked, ensure, type Problem, type Result } from "../../units/index.ts";
import { type BestLines, bestLines, type LineSearch } from "./best-lines.ts";
import { boundSlack } from "./cut-walk.ts";
import { evenestFixedPlan, type FixedPlan, larger, leastBees, leastFactor, smallestFixedPlan } from "./fixed-plan.ts";
import { type JudgedPlan, judgedPlan } from "./judged-plan.ts";
import { errorsOfLines, lineOffsets, logOddsRatio, waldSlope } from "./line-offsets.ts";
import { samplingProblem } from "./problems.ts";
import { type SequentialCharacteristics, sequentialCharacteristics } from "./sequential-characteristics.ts";
import { linesAt, planAlong, type SequentialDesign, type SequentialPlan, sequentialPlan } from "./sequential-plan.ts";

/** Here alpha and beta are bounds of what the plan really does, not the nominal ones of its lines. */
export type WantedPlan = Omit<SequentialDesign, "atEnd">;

export interface FewestBeesPlan extends JudgedPlan {
  /** The plan found; its `design` holds the nominal errors of the lines, the end and the cut. */
  readonly plan: SequentialPlan;
  /** Exact chance of calling high at the low share, at or below the one wanted. */
  readonly alpha: number;
  /** Exact chance of calling low at the high share, at or below the one wanted. */
  readonly beta: number;
}

/** No plan of more bees is searched for. */
const searched = 1000;
/** Lines that err less than about 1e-26 are not among those searched. */
const leastError = 1e-20;

/**
 * Searches all parallel lines with Wald's slope, all ends up to `maxBees` and all cuts at the end.
 *
 * The plan with the smallest larger average, at the low share and at the high one, among those whose exact errors
 * are at or below alpha and beta. Those two shares are the ones the user names, and there Wald's test reads fewest;
 * between them more are read, which `atWorst` tells and `maxBees` bounds. Equal averages go to the earlier end. A
 * sample still open at the end is low up to the cut, so that no sample stays undecided. Bees drawn independently from
 * a large colony, the bench missing none; where bees cluster, every error is likelier.
 *
 * @param progress told the share of the search that is done, from 0 to 1
 * @returns the plan, or `sequential-plan-needs-more-bees`, `sequential-plan-out-of-reach` and the problems of `sequentialPlan`
 * @throws DomainError as `sequentialPlan`, and for more than 1000 bees or an error below 1e-20
 * @source Wald & Wolfowitz 1948, Annals of Mathematical Statistics 19:326–339, for fewest bees at both shares without an end (from memory); errors by exact recursion
 *
 * @example
 * fewestBeesPlan({ lowPrevalence: 0.05, highPrevalence: 0.15, alpha: 0.1, beta: 0.1, maxBees: 100 }).value.atLow.averageBees  // → 35.14465936
 * fewestBeesPlan({ lowPrevalence: 0.05, highPrevalence: 0.15, alpha: 0.1, beta: 0.1, maxBees: 40 }).problems[0].code  // → "sequential-plan-needs-more-bees"
 */
export function fewestBeesPlan(wanted: WantedPlan, progress?: (share: number) => void): Result<FewestBeesPlan> {
  // The same checks as for a plan given by hand.
  const asked = sequentialPlan(wanted);
  if (!asked.ok) return asked;
  for (const [name, error] of [
    ["alpha", wanted.alpha],
    ["beta", wanted.beta],
  ] as const)
    ensure(error >= leastError, name, error, `${leastError} or more`);
  ensure(wanted.maxBees <= searched, "maxBees", wanted.maxBees, `a whole number ≤ ${searched}`);
  const found = leastBees(wanted) > wanted.maxBees ? null : searchedLines(wanted, "fewest", progress);
  if (!found) return blocked(refusal(wanted));
  const { plan } = planOf(wanted, found);
  const judged = judgedPlan(plan, wanted);
  return answered({ plan, alpha: judged.atLow.high, beta: judged.atHigh.low, ...judged });
}

function searchedLines(
  wanted: WantedPlan,
  aim: LineSearch["aim"],
  progress?: (share: number) => void,
): BestLines | null {
  const { minBees = 1, batch = 1, maxBees } = wanted;
  const slope = waldSlope(wanted);
  const offsets = lineOffsets({ slope, logOddsRatio: logOddsRatio(wanted), minBees, batch, maxBees });
  return bestLines({ test: wanted, slope, offsets, maxBees, minBees, batch, aim, progress });
}

interface Planned {
  readonly plan: SequentialPlan;
  readonly atLow: SequentialCharacteristics;
  readonly atHigh: SequentialCharacteristics;
}

/**
 * The plan of the lines found, with the cut at which the larger error, as a share of its bound, is smallest.
 *
 * It is made along the lines themselves: where a nominal error is nearly 1, it tells its line to a few digits only.
 */
function planOf(wanted: WantedPlan, { end, cuts, ...distances }: BestLines): Planned {
  const { lowPrevalence, highPrevalence, minBees = 1, batch = 1 } = wanted;
  const nominal = errorsOfLines({ ...distances, logOddsRatio: logOddsRatio(wanted) });
  const [lowIntercept, highIntercept] = [-distances.low, distances.high];
  const lines = linesAt({ slope: waldSlope(wanted), lowIntercept, highIntercept });
  let best: Planned | null = null;
  for (let lowUpTo = Math.max(0, cuts.from); lowUpTo <= Math.min(end, cuts.to); lowUpTo += 1) {
    const plan = planAlong(lines, { ...wanted, ...nominal, minBees, batch, maxBees: end, atEnd: { lowUpTo } });
    const [atLow, atHigh] = sequentialCharacteristics(plan, [lowPrevalence, highPrevalence]);
    if (!atLow || !atHigh) throw new Error("two shares give two rows");
    const planned = { plan, atLow, atHigh };
    if (!best || worse(best, planned, wanted)) best = planned;
  }
  if (!best) throw new Error("a plan found has no cut");
  return best;
}

const errorsOf = ({ atLow, atHigh }: Planned) => ({ alpha: atLow.high, beta: atHigh.low });

const worse = (one: Planned, other: Planned, wanted: WantedPlan): boolean =>
  larger(errorsOf(one), wanted) > larger(errorsOf(other), wanted);

/** Factors nearer than this are one in the search for the best that can be reached. */
const sameFactor = 1.01;

/** What the best plan reaches, both bounds raised by one factor, and how many bees would do. */
function refusal(wanted: WantedPlan): Problem {
  const { alpha, beta, maxBees } = wanted;
  const evenest: FixedPlan = evenestFixedPlan(wanted, maxBees);
  let reached: Pick<FixedPlan, "alpha" | "beta"> = evenest;
  let [low, high] = [leastFactor(wanted, maxBees), larger(evenest, wanted)];
  while (high > low * sameFactor) {
    const factor = Math.sqrt(low) * Math.sqrt(high);
    const found = raised(wanted, factor);
    if (found) [high, reached] = [larger(found, wanted), found];
    else low = factor;
  }
  const slots = { maxBees, alpha, beta, reachedAlpha: reached.alpha, reachedBeta: reached.beta };
  let neededBees = enoughBees(wanted);
  if (neededBees > searched) {
    return samplingProblem("sequential-plan-out-of-reach", "blocked", "maxBees", { ...slots, searched });
  }
  let tooFew = Math.max(maxBees, leastBees(wanted) - 1);
  while (neededBees > tooFew + 1) {
    const bees = Math.floor((tooFew + neededBees) / 2);
    if (searchedLines({ ...wanted, maxBees: bees }, "any")) neededBees = bees;
    else tooFew = bees;
  }
  return samplingProblem("sequential-plan-needs-more-bees", "blocked", "maxBees", { ...slots, neededBees });
}

/** A number above `maxBees` that keeps both errors when all are read; none within reach is no number at all. */
function enoughBees(wanted: WantedPlan): number {
  const fixed = smallestFixedPlan(wanted);
  let bees = Math.max(wanted.maxBees + 1, fixed.ok ? fixed.value.bees : Infinity);
  // A bee more can make a fixed number err more: where the first look lies beyond the smallest, each is tried.
  while (bees <= searched && larger(evenestFixedPlan(wanted, bees), wanted) > 1 + boundSlack) bees += 1;
  return bees;
}

/** The errors of a plan that keeps raised bounds, or null where none does. */
function raised(wanted: WantedPlan, factor: number): { readonly alpha: number; readonly beta: number } | null {
  const bounds = { alpha: wanted.alpha * factor, beta: wanted.beta * factor };
  const found = searchedLines({ ...wanted, ...bounds }, "any");
  return found && errorsOf(planOf({ ...wanted, ...bounds }, found));
}
