/** Problems of a site with their codes and slots checked as they are written. */
import { type Problem, problem, type Severity } from "../../units/index.ts";
import type { SiteProblems } from "./problems.ts";

/** A `Problem` whose code stands in `SiteProblems` and whose slots are those of the code. Blocked unless said otherwise. */
export function siteProblem<Code extends keyof SiteProblems>(
  code: Code,
  field: string,
  slots: SiteProblems[Code] & Problem["slots"],
  { severity = "blocked", given }: { readonly severity?: Severity; readonly given?: unknown } = {},
): Problem {
  return problem(code, severity, field, given === undefined ? { slots } : { given, slots });
}
