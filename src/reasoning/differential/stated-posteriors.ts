/** The posterior alone, without ranges and reasons, with its problems: for scoring many cases. */
import { type Evidence, publishedEvidence } from "../../knowledge/index.ts";
import { answered, blocked, problem, type Result } from "../../units/index.ts";
import { caseModel } from "./case-model.ts";
import { checkedCase } from "./checked-case.ts";
import type { AnyInput } from "./input.ts";
import { statedPosterior } from "./reasons.ts";

/** Probability of each condition of the evidence, in its order, at the stated numbers. */
export interface StatedPosteriors {
  readonly ids: readonly string[];
  /** One per id. */
  readonly posterior: readonly number[];
}

/**
 * What `differential` states of each condition, without its ranges.
 *
 * @returns the posteriors, or the problems of the input
 * @example
 * posteriorsUnder({ season: "autumn", findings: {} }).value.ids.length  // → 45
 */
export function posteriorsUnder(input: AnyInput, evidence: Evidence = publishedEvidence): Result<StatedPosteriors> {
  const read = checkedCase(input, evidence);
  if (!read.ok) return read;
  const problems = [...read.problems];
  const posterior = statedPosterior(caseModel(read.value.checked, problems, evidence));
  if (posterior === null) return blocked(problem("evidence-contradicts-model", "blocked", "findings"));
  return answered({ ids: evidence.conditionIds, posterior: [...posterior.condition] }, problems);
}
