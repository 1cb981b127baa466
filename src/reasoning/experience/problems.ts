/** What can stand in the way of learning and scoring, and what the sentence about it needs. */
import { type Problem, problem, type Severity } from "../../units/index.ts";

/** By code: its slots. */
export interface ExperienceProblems {
  readonly "case-without-cause": { readonly case: string };
  readonly "cause-not-confirmed": { readonly case: string; readonly cause: string };
  readonly "cause-unknown": { readonly case: string; readonly cause: string };
  readonly "closing-in-conflict": { readonly case: string };
  readonly "case-unreadable": { readonly case: string; readonly why: string };
  readonly "nothing-before-result": { readonly case: string };
  readonly "confirmed-not-random": { readonly cases: number };
  readonly "healthy-from-failing": { readonly findings: number };
  readonly "too-few-scored": { readonly cases: number; readonly needed: number };
  readonly "too-few-looked": {
    readonly finding: string;
    readonly looked: number;
    readonly needed: number;
    readonly present: number;
    readonly neededOfEither: number;
    readonly years: number;
    readonly neededYears: number;
  };
}

/** A Problem of this step: code and slots must fit each other. */
export const experienceProblem = <Code extends keyof ExperienceProblems>(
  code: Code,
  severity: Severity,
  field: string | null,
  slots: ExperienceProblems[Code],
): Problem => problem(code, severity, field, { slots: { ...slots } });
