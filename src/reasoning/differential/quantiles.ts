/** How the answer could fall: points of the draws that cut them into equal parts, for a dot plot of each condition. */

import { type ConditionId, type Evidence, publishedEvidence } from "../../knowledge/index.ts";
import { answered, blocked, ensure, problem, type Result } from "../../units/index.ts";
import { caseModel } from "./case-model.ts";
import { checkedCase } from "./checked-case.ts";
import { sharesDrawn, weightedQuantiles } from "./draws.ts";
import type { AnyInput } from "./input.ts";
import { statedPosterior } from "./reasons.ts";

/**
 * For each condition `points` values of its posterior, smallest first, each the middle of 1 in `points` of the draws, a draw
 * counting as in the ranges.
 *
 * Model: the draws of `differential` with the same seed, so the dots belong to its ranges.
 *
 * @returns the values, or the problems of the input
 * @throws DomainError when `points` is not a whole number from 1
 * @source quantile dot plots: Kay et al. 2016
 * @example
 * quantiles({ season: "autumn", findings: {} }, 20).ok  // → true
 */
export function quantiles(
  input: AnyInput,
  points: number,
  evidence: Evidence = publishedEvidence,
): Result<Readonly<Record<ConditionId, readonly number[]>>> {
  ensure(Number.isInteger(points) && points >= 1, "points", points, "a whole number from 1");
  const read = checkedCase(input, evidence);
  if (!read.ok) return read;
  const model = caseModel(read.value.checked, [], evidence);
  const posterior = statedPosterior(model);
  if (posterior === null) return blocked(problem("evidence-contradicts-model", "blocked", "findings"));
  const { byCondition, weight } = sharesDrawn(model, posterior);
  const shares = Array.from({ length: points }, (_, point) => (point + 0.5) / points);
  const rows = evidence.conditionIds.map(
    (id, index) => [id, weightedQuantiles(byCondition[index] ?? new Float64Array(), weight, shares)] as const,
  );
  return answered(Object.fromEntries(rows) as unknown as Record<ConditionId, readonly number[]>);
}
