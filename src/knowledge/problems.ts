/** What can be wrong with a programme's change of the evidence, and what the sentence about it needs. */
import { type Problem, problem } from "../units/index.ts";

/** By code: its slots; `place` names what the change is about. */
export interface EvidenceProblems {
  readonly "evidence-id-missing": { readonly place: string; readonly id: string };
  readonly "evidence-rate-out-of-range": { readonly place: string; readonly rate: number };
  readonly "evidence-source-missing": { readonly place: string; readonly source: string };
  readonly "evidence-rates-missing": { readonly place: string; readonly id: string };
  readonly "evidence-count-out-of-range": { readonly place: string; readonly outOf: number };
  readonly "evidence-too-many-own": { readonly place: string; readonly most: number };
  readonly "evidence-in-conflict": { readonly place: string; readonly changes: number };
}

/** A change that was left out, and why. */
export const evidenceProblem = <Code extends keyof EvidenceProblems>(
  code: Code,
  place: string,
  slots: Omit<EvidenceProblems[Code], "place">,
): Problem => problem(code, "warned", `evidence.${place.replaceAll(" ", ".")}`, { slots: { place, ...slots } });
