/** Reasons for and against, in bits: the odds with a piece of evidence against the odds without it. */
import type { Reason } from "./answer.ts";
import { bestSets, byProbability, weightsOf, withNeighbours } from "./best-first.ts";
import { type CaseModel, evidenceOf, statedCase, withoutItem } from "./case-model.ts";
import type { Groups } from "./expansion.ts";
import { smallestReason } from "./judgements.ts";
import { type Parameters, parametersOf } from "./parameters.ts";
import { bearableError, type Posterior, posteriorOf } from "./posterior.ts";
import { sharesOfSets } from "./sets-posterior.ts";

/**
 * Posterior of a case at the stated grades; null when no set of conditions could bring the evidence. `groups`: those
 * whose posterior is wanted too.
 */
export function statedPosterior(model: CaseModel, groups: Groups = model.groups): Posterior | null {
  const numbers = statedCase(model);
  return posteriorOf(parametersOf(model.network, numbers), evidenceOf(model, numbers), groups);
}

/** Every reason of every condition, one list per condition, in the order of the network. */
export function reasonsOf(model: CaseModel, posterior: Posterior): readonly (readonly Reason[])[] {
  const reasons: Reason[][] = model.network.conditions.map(() => []);
  const parameters = parametersOf(model.network, statedCase(model));
  const probabilities = exactly(parameters, model) ?? byList(parameters, model, posterior);
  const whole = probabilities(model);
  for (const item of model.items) {
    const without = probabilities(withoutItem(model, item));
    for (const [index, list] of reasons.entries()) {
      const bits = log2Odds(whole[index] ?? 0) - log2Odds(without[index] ?? 0);
      if (Number.isFinite(bits) && Math.abs(bits) >= smallestReason) list.push({ finding: item.id, bits });
    }
  }
  return reasons;
}

type Probabilities = (model: CaseModel) => Float64Array;

/** By a sum over all sets for every item; null where a signed sum is too long or cancels, and the list takes its place. */
function exactly(parameters: Parameters, whole: CaseModel): Probabilities | null {
  const posterior = (model: CaseModel) =>
    posteriorOf(parameters, evidenceOf(model, statedCase(model)), [], bearableError);
  if (posterior(whole)?.method !== "expansion") return null;
  return (model) => posterior(model)?.condition ?? new Float64Array();
}

/** Sets listed when a sum over all sets for every item would take too long. */
const setsForReasons = { best: 8000, neighboursOf: 40 } as const;

function byList(parameters: Parameters, model: CaseModel, posterior: Posterior): Probabilities {
  const order = byProbability(posterior.condition);
  const stop = { sets: setsForReasons.best, weight: Number.POSITIVE_INFINITY };
  const best = bestSets(parameters, evidenceOf(model, statedCase(model)), order, stop);
  const sets = withNeighbours(best, order, setsForReasons.neighboursOf);
  return (each) => {
    const weights = weightsOf(parameters, evidenceOf(each, statedCase(each)), sets);
    return sharesOfSets(weights, sets, parameters.conditions, []).condition;
  };
}

/**
 * Log2 of the odds. Nearer to certain than half a step of a double cannot be told from certain: such odds count as 2^53,
 * so that the strongest evidence keeps its reason instead of an endless number.
 */
const log2Odds = (probability: number): number =>
  Math.log2(probability) - Math.log2(Math.max(1 - probability, Number.EPSILON / 2));

/** The reasons that speak for it, strongest first. */
export const speaksFor = (reasons: readonly Reason[]): readonly Reason[] =>
  reasons.filter(({ bits }) => bits > 0).sort((a, b) => b.bits - a.bits);

/** The reasons that speak against it, strongest first. */
export const speaksAgainst = (reasons: readonly Reason[]): readonly Reason[] =>
  reasons.filter(({ bits }) => bits < 0).sort((a, b) => a.bits - b.bits);
