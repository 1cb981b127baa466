/** Every trouble that a comparison of choices can report beside those of a single forecast. */
import { type Problem, problem, type Severity } from "../../../units/index.ts";

/** Codes with their slots; views/words holds one sentence for each. */
export interface ChoiceProblems {
  /** blocked: two choices of one name, or one called as doing nothing is. */
  readonly "season-choice-name-twice": { readonly name: string };
  /** blocked: a choice begins before it is made. */
  readonly "season-choice-too-early": {
    readonly name: string;
    readonly action: string;
    readonly date: string;
    readonly decideOn: string;
  };
  /** blocked: a count after the choice is made: it would have been seen under one choice and not under another. */
  readonly "season-count-after-choice": { readonly date: string; readonly decideOn: string };
  /** blocked: the choice is not made between the first and the last day. */
  readonly "season-decide-outside": { readonly date: string; readonly from: string; readonly until: string };
  /** blocked: a day asked about lies before the choice or after the end. */
  readonly "season-date-outside": { readonly date: string; readonly from: string; readonly until: string };
  /** blocked: a line that is no share between 0 and 1. */
  readonly "season-line-out-of-range": { readonly line: number };
  /** blocked: how sure one wants to be is not from one half to below 1. */
  readonly "season-sure-out-of-range": { readonly sure: number };
  /** blocked: no number of bees, or more than a count of this model. */
  readonly "season-more-bees-out-of-range": { readonly bees: number; readonly most: number };
  /** warned: another count would leave few of the draws worth; what it narrows is rough. */
  readonly "season-draws-thin": { readonly worth: number; readonly bees: number };
}

/** All codes of `ChoiceProblems`, for tests of completeness. */
export const choiceProblemCodes = [
  "season-choice-name-twice",
  "season-choice-too-early",
  "season-count-after-choice",
  "season-decide-outside",
  "season-date-outside",
  "season-line-out-of-range",
  "season-sure-out-of-range",
  "season-more-bees-out-of-range",
  "season-draws-thin",
] as const satisfies readonly (keyof ChoiceProblems)[];

/** A Problem of a comparison: code and slots must fit each other. */
export const choiceProblem = <Code extends keyof ChoiceProblems>(
  code: Code,
  severity: Severity,
  field: string | null,
  slots: ChoiceProblems[Code],
): Problem => problem(code, severity, field, { slots: { ...slots } });
