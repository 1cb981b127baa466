/** Problems of control with their codes and slots checked as they are written. */
import { type Problem, problem, type Severity } from "../../units/index.ts";
import type { ControlProblems } from "./problems.ts";

type Detail<Slots> = { readonly given?: unknown } & (keyof Slots extends never
  ? { readonly slots?: never }
  : { readonly slots: Slots & Problem["slots"] });

/** A `Problem` whose code stands in `ControlProblems` and whose slots are those of the code. */
export function controlProblem<Code extends keyof ControlProblems>(
  ...[code, severity, field, detail]: keyof ControlProblems[Code] extends never
    ? [code: Code, severity: Severity, field: string | null, detail?: Detail<ControlProblems[Code]>]
    : [code: Code, severity: Severity, field: string | null, detail: Detail<ControlProblems[Code]>]
): Problem {
  const { given, slots } = (detail ?? {}) as { readonly given?: unknown; readonly slots?: Problem["slots"] };
  return problem(code, severity, field, {
    ...(given === undefined ? {} : { given }),
    ...(slots === undefined ? {} : { slots }),
  });
}
