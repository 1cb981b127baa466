/** Reasons for and against, in bits: the odds with a piece of evidence against the odds without it. */
import type { Reason } from "./answer.ts";
import { type CaseModel, caseModel, evidenceOf, statedCase } from "./case-model.ts";
import { smallestReason } from "./judgements.ts";
import { parametersOf } from "./parameters.ts";
import { type Posterior, posteriorOf } from "./posterior.ts";

/** Posterior of a case at the stated grades; null when no set of conditions could bring the evidence. */
export function statedPosterior(model: CaseModel): Posterior | null {
  const numbers = statedCase(model);
  return posteriorOf(parametersOf(model.network, numbers), evidenceOf(model, numbers), model.groups);
}

/** Every reason of every condition, one list per condition, in the order of the network. */
export function reasonsOf(model: CaseModel, posterior: Posterior): readonly (readonly Reason[])[] {
  const reasons: Reason[][] = model.network.conditions.map(() => []);
  for (const item of model.items) {
    const without = statedPosterior(caseModel(model.read, [], item));
    if (without === null) continue;
    for (const [index, list] of reasons.entries()) {
      const bits = log2Odds(posterior.condition[index] ?? 0) - log2Odds(without.condition[index] ?? 0);
      if (Number.isFinite(bits) && Math.abs(bits) >= smallestReason) list.push({ finding: item.id, bits });
    }
  }
  return reasons;
}

const log2Odds = (probability: number): number => Math.log2(probability) - Math.log2(1 - probability);

/** The reasons that speak for it, strongest first. */
export const speaksFor = (reasons: readonly Reason[]): readonly Reason[] =>
  reasons.filter(({ bits }) => bits > 0).sort((a, b) => b.bits - a.bits);

/** The reasons that speak against it, strongest first. */
export const speaksAgainst = (reasons: readonly Reason[]): readonly Reason[] =>
  reasons.filter(({ bits }) => bits < 0).sort((a, b) => a.bits - b.bits);
