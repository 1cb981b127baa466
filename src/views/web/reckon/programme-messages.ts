/** What a page and the worker that asks all cases of a programme anew say to each other. */
import type { Casebook } from "../../../casebook/index.ts";
import type { ExperienceTold, Taught, Trial, TrialOutcome } from "../../model/index.ts";

/** `taught` asks what closed cases teach, `experience` everything about them, `trial` what other evidence or settings would change. */
export type ProgrammeQuestion = { readonly casebook: Casebook } & (
  | { readonly kind: "taught" }
  | { readonly kind: "experience" }
  | { readonly kind: "trial"; readonly trial: Trial }
);

export type ProgrammeAnswer =
  | { readonly kind: "taught"; readonly taught: Taught }
  | { readonly kind: "experience"; readonly told: ExperienceTold }
  | { readonly kind: "progress"; readonly share: number }
  | { readonly kind: "trial"; readonly outcome: TrialOutcome };
