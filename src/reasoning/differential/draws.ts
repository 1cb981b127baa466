/** Ranges of the posterior: the judged numbers drawn again and again, and the case reckoned with each. */
import { bestSets, byProbability, weightsOf, withNeighbours } from "./best-first.ts";
import { type CaseModel, evidenceOf, statedCase } from "./case-model.ts";
import { evidenceWeight } from "./draw-weight.ts";
import { asShare, expand, type Groups } from "./expansion.ts";
import { drawn, drawPlan } from "./judged-draws.ts";
import { ranges } from "./judgements.ts";
import type { NetworkEvidence } from "./network.ts";
import { type Parameters, parametersOf } from "./parameters.ts";
import type { Posterior } from "./posterior.ts";
import { restricted } from "./restricted.ts";
import { type Shares, sharesOfSets } from "./sets-posterior.ts";
import { termsOf } from "./terms.ts";

/** Lower and upper end for each condition and each roll-up group. */
export interface Ranges {
  readonly condition: readonly Range[];
  readonly group: readonly Range[];
}

/** From the 5 % to the 95 % point of the draws. */
export interface Range {
  readonly low: number;
  readonly high: number;
}

/** Up to this many products a draw sums over all sets; beyond it a draw reweighs the sets that matter. */
const productsInDraws = 512;
/** Sets reweighed in each draw, and the heaviest of them whose neighbours are added. */
const setsInDraws = { best: 900, neighboursOf: 16 } as const;

/**
 * Ranges of the posterior. A judged number has the same value in draw i of a seed whatever else was looked for, and a
 * draw counts by how likely it makes the evidence: numbers under which this case could hardly have come about are less
 * likely to be the right ones. Without that weight ranges of likely conditions were too narrow (DX123).
 *
 * With many present findings each draw reweighs a list of sets instead of summing over all: the list's log odds in a
 * draw, less its log odds at the stated numbers, are added to the exact log odds, so the centre is exact.
 * `mostProducts`: up to so many each draw sums over all sets.
 */
export const rangesOf = (whole: CaseModel, posterior: Posterior, mostProducts = productsInDraws): Ranges =>
  rangesFrom(sharesDrawn(whole, posterior, mostProducts));

/** The ranges that draws make. */
export function rangesFrom({ byCondition, byGroup, weight }: SharesDrawn): Ranges {
  const rangeOf = (draws: Float64Array): Range => {
    const [low = 0, high = 1] = weightedQuantiles(draws, weight, [ranges.low, ranges.high]);
    return { low, high };
  };
  return { condition: byCondition.map(rangeOf), group: byGroup.map(rangeOf) };
}

/** The posterior of each condition and group in every draw, unsorted, and how much each draw counts. */
export function sharesDrawn(whole: CaseModel, posterior: Posterior, mostProducts = productsInDraws): SharesDrawn {
  const { model, originalFinding } = restricted(whole);
  const stated = statedCase(model);
  const plan = drawPlan(model, stated, originalFinding);
  const [conditions, groups] = [model.network.conditions.length, model.groups.length];
  const { draws } = model.read;
  const byCondition = Array.from({ length: conditions }, () => new Float64Array(draws));
  const byGroup = Array.from({ length: groups }, () => new Float64Array(draws));
  const weight = new Float64Array(draws);
  const sharesOf = sharesIn(model, posterior, mostProducts);
  for (let draw = 0; draw < draws; draw++) {
    const numbers = drawn(plan, draw);
    const parameters = parametersOf(model.network, numbers);
    const shares = sharesOf(parameters, evidenceOf(model, numbers));
    weight[draw] = evidenceWeight(model, numbers, parameters, shares.total);
    for (let index = 0; index < conditions; index++)
      (byCondition[index] as Float64Array)[draw] = shares.condition[index] ?? 0;
    for (let index = 0; index < groups; index++) (byGroup[index] as Float64Array)[draw] = shares.group[index] ?? 0;
  }
  return { byCondition, byGroup, weight };
}

/** One list of draws for each condition and each group, and the weight of each draw. */
export interface SharesDrawn {
  readonly byCondition: readonly Float64Array[];
  readonly byGroup: readonly Float64Array[];
  readonly weight: Float64Array;
}

type SharesOf = (parameters: Parameters, evidence: NetworkEvidence) => Shares;

/** How the draws of a case are summed. */
function sharesIn(model: CaseModel, posterior: Posterior, mostProducts: number): SharesOf {
  const stated = statedCase(model);
  const parameters = parametersOf(model.network, stated);
  const evidence = evidenceOf(model, stated);
  const products = termsOf(parameters, evidence).levels.reduce((product, { options }) => product * options, 1);
  if (products <= mostProducts)
    return (drawnParameters, drawnEvidence) => summed(drawnParameters, drawnEvidence, model.groups);
  const order = byProbability(posterior.condition);
  const best = bestSets(parameters, evidence, order, { sets: setsInDraws.best, weight: Number.POSITIVE_INFINITY });
  const sets = withNeighbours(best, order, setsInDraws.neighboursOf);
  const reweighed = (numbers: Parameters, found: NetworkEvidence) =>
    sharesOfSets(weightsOf(numbers, found, sets), sets, numbers.conditions, model.groups);
  const centre = reweighed(parameters, evidence);
  return (drawnParameters, drawnEvidence) => {
    const shares = reweighed(drawnParameters, drawnEvidence);
    return {
      total: shares.total,
      condition: shifted(posterior.condition, shares.condition, centre.condition),
      group: shifted(posterior.group, shares.group, centre.group),
    };
  };
}

/** Exact probabilities moved on the logit scale as far as the list moved from its own centre. */
const shifted = (exact: Float64Array, moved: Float64Array, centre: Float64Array): Float64Array =>
  exact.map((each, index) => {
    const odds = each / (1 - each);
    const ratio = oddsRatio(moved[index] ?? 0, centre[index] ?? 0);
    return each <= 0 || each >= 1 || !Number.isFinite(ratio) ? each : (odds * ratio) / (1 + odds * ratio);
  });

const oddsRatio = (a: number, b: number): number => (a * (1 - b)) / (b * (1 - a));

function summed(parameters: Parameters, evidence: NetworkEvidence, groups: Groups): Shares {
  const { total, withCondition, withoutGroup } = expand(parameters, termsOf(parameters, evidence), groups);
  return {
    total,
    condition: withCondition.map((each) => asShare(each / total)),
    group: withoutGroup.map((each) => asShare(1 - each / total)),
  };
}

/**
 * The points below which given shares of the weight lie, for shares in rising order. Each draw stands in the middle of
 * its own weight, and values between two draws are interpolated.
 */
export function weightedQuantiles(
  draws: Float64Array,
  weight: Float64Array,
  shares: readonly number[],
): readonly number[] {
  const order = Int32Array.from(draws.keys()).sort((a, b) => (draws[a] as number) - (draws[b] as number));
  const all = weight.reduce((sum, each) => sum + each, 0);
  const points: number[] = [];
  let [before, place, value] = [0, 0, draws[order[0] as number] as number];
  for (const draw of order) {
    const [here, next] = [(before + (weight[draw] as number) / 2) / all, draws[draw] as number];
    for (let share = shares[points.length]; share !== undefined && share <= here; share = shares[points.length]) {
      points.push(here > place ? value + ((share - place) / (here - place)) * (next - value) : next);
    }
    before += weight[draw] as number;
    [place, value] = [here, next];
  }
  while (points.length < shares.length) points.push(value);
  return points;
}
