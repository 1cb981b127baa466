/** Every trouble the decision step can report, with the slots its sentence needs. */
import { type Problem, problem, type Severity } from "../../units/index.ts";

/** Codes of decision with their slots; views/words holds one sentence for each. */
export interface DecisionProblems {
  readonly "loss-curve-empty": Readonly<Record<never, never>>;
  /** Prevalences of the curve must rise from point to point, inside 0 to 1. */
  readonly "loss-curve-disordered": { readonly point: number; readonly prevalence: number };
  /** Losses of the curve must lie inside 0 to 1 and never fall as prevalence rises. */
  readonly "loss-curve-falls": { readonly point: number; readonly loss: number };
  /** The curve used is the judged one of this program, not the user's. */
  readonly "loss-curve-judged": { readonly reading: string };
  /** Readings of the literature lead to different actions. */
  readonly "loss-readings-disagree": { readonly middle: string; readonly cold: string; readonly mild: string };
  /** No mean prevalence makes testing first the best. */
  readonly "testing-never-best": { readonly testCost: number; readonly bees: number };
  /** Whatever such a sample shows, waiting stays the better. */
  readonly "no-result-leads-to-acting": { readonly bees: number };
  /** More positives would speak for fewer infested bees. */
  readonly "test-no-better-than-chance": { readonly sensitivity: number; readonly specificity: number };
  /** The sample was taken with limits or rejected: no choice is named unless someone asks for it anyway. */
  readonly "decision-withheld": { readonly acceptance: string };
}

/** All codes of `DecisionProblems`, for tests of completeness. */
export const decisionProblemCodes = [
  "loss-curve-empty",
  "loss-curve-disordered",
  "loss-curve-falls",
  "loss-curve-judged",
  "loss-readings-disagree",
  "testing-never-best",
  "no-result-leads-to-acting",
  "test-no-better-than-chance",
  "decision-withheld",
] as const satisfies readonly (keyof DecisionProblems)[];

/** A Problem of this step: code and slots must fit each other. */
export const decisionProblem = <Code extends keyof DecisionProblems>(
  code: Code,
  severity: Severity,
  field: string | null,
  slots: DecisionProblems[Code],
): Problem => problem(code, severity, field, { slots: { ...slots } });
