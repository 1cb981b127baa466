/** Invented closed cases for the tests of this folder. */
import type { AnyInput } from "../differential/index.ts";
import type { ClosedCase } from "./closed-case.ts";

/** A closed case with this cause, confirmed by a named laboratory unless said. */
export function closed(
  id: string,
  causes: readonly string[],
  findings: AnyInput["findings"],
  more: Partial<ClosedCase> & { readonly asked?: Partial<AnyInput> } = {},
): ClosedCase {
  const { asked, ...rest } = more;
  const whole: AnyInput = { season: "autumn", findings, ...asked };
  return {
    ...{ id, closedOn: "2025-10-20", confirmedCauses: causes, confirmedBy: "invented laboratory", results: [] },
    ...{ whole, before: whole },
    ...rest,
  };
}
