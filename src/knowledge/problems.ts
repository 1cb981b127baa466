/** What can be wrong with a programme's change of the evidence, and what the sentence about it needs. */
import { type Problem, problem } from "../units/index.ts";

/** By code: its slots; `place` names what the change is about. */
export interface EvidenceProblems {
  readonly "evidence-id-missing": { readonly place: string; readonly id: string };
  readonly "evidence-rate-out-of-range": { readonly place: string; readonly rate: number };
  readonly "evidence-source-missing": { readonly place: string; readonly source: string };
  readonly "evidence-rates-missing": { readonly place: string; readonly id: string };
  readonly "evidence-count-out-of-range": { readonly place: string; readonly outOf: number };
  readonly "evidence-kind-fixed": { readonly place: string; readonly kind: string };
  readonly "evidence-too-many-own": { readonly place: string; readonly most: number };
  readonly "evidence-in-conflict": { readonly place: string; readonly changes: number };
}

/** What is taken and has to be borne in mind. Conditions and seasons are ids with commas between. */
export interface EvidenceNotes {
  readonly "evidence-without-effect": {
    readonly place: string;
    readonly finding: string;
    readonly conditions: string;
    readonly seasons: string;
  };
  readonly "evidence-without-pairs": { readonly place: string; readonly id: string };
  readonly "evidence-said-twice": { readonly place: string; readonly other: string };
}

/** A change that was left out, and why. */
export const evidenceProblem = <Code extends keyof EvidenceProblems>(
  code: Code,
  place: string,
  slots: Omit<EvidenceProblems[Code], "place">,
): Problem => problem(code, "warned", fieldOf(place), { slots: { place, ...slots } });

/** What comes of a change that was taken, where it may not be what was meant. */
export const evidenceNote = <Code extends keyof EvidenceNotes>(
  code: Code,
  place: string,
  slots: Omit<EvidenceNotes[Code], "place">,
): Problem => problem(code, "noted", fieldOf(place), { slots: { place, ...slots } });

const fieldOf = (place: string): string => `evidence.${place.replaceAll(" ", ".")}`;
