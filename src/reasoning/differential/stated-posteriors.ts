/** The posterior alone, without ranges and reasons: for scoring many cases. */
import { type Evidence, publishedEvidence } from "../../knowledge/index.ts";
import { answered, blocked, problem, type Result } from "../../units/index.ts";
import { caseModel } from "./case-model.ts";
import { contradictionsResolved } from "./differential.ts";
import type { AnyInput } from "./input.ts";
import { readInput } from "./read-input.ts";
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
 * statedPosteriors({ season: "autumn", findings: {} }).value.ids.length  // → 45
 */
export function statedPosteriors(input: AnyInput, evidence: Evidence = publishedEvidence): Result<StatedPosteriors> {
  const read = readInput(input, evidence);
  if (!read.ok) return read;
  const problems = [...read.problems];
  const posterior = statedPosterior(caseModel(contradictionsResolved(read.value, problems), problems, evidence));
  if (posterior === null) return blocked(problem("evidence-contradicts-model", "blocked", "findings"));
  return answered({ ids: evidence.conditionIds, posterior: [...posterior.condition] }, problems);
}
