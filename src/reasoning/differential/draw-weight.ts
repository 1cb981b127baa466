/** How much a draw of the judged numbers counts: as much as it makes the evidence likely. */
import { type CaseModel, type CaseNumbers, carrierShare, circumstanceFactors } from "./case-model.ts";
import { expand } from "./expansion.ts";
import type { Parameters } from "./parameters.ts";
import { termsOf } from "./terms.ts";

/**
 * Probability of the signs and tests under drawn numbers, given the circumstances.
 *
 * Circumstances move the prior by capped factors and have no probability of their own, so they are taken as given.
 * `total` is the weight of all sets under the evidence, as the sums or a list of sets give it.
 */
export function evidenceWeight(model: CaseModel, numbers: CaseNumbers, parameters: Parameters, total: number): number {
  const oddsFactor = circumstanceFactors(model, numbers);
  const before = expand(parameters, termsOf(parameters, { present: [], absent: [], oddsFactor })).total;
  let weight = total / before;
  // The odds carry a count as a ratio to "not clinical": the probability of that is put back.
  for (const [index, { likelihood }] of model.levels.entries()) {
    const carriers = carrierShare(model, numbers, index);
    weight *= (1 - carriers) * likelihood.none + carriers * likelihood.background;
  }
  return weight;
}
