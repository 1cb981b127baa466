/**
 * Names of what the evidence in use holds: published, or a programme's own.
 *
 * @module views/model
 */
import { type Evidence, isTestId, tests } from "../../knowledge/index.ts";
import type { Problem } from "../../units/index.ts";

/** The name of a condition; its id where the evidence does not have it any more. */
export const conditionTerm = ({ conditions }: Evidence, id: string): string =>
  Object.hasOwn(conditions, id) ? (conditions[id]?.term ?? id) : id;

/** Slots of problems that hold ids, several parted by blanks or commas. */
const idSlots = ["place", "other", "id", "cause", "finding", "findings", "conditions", "test"] as const;

/** A problem that names things of the evidence by their ids, naming them by their names. */
export const withTerms = (trouble: Problem, evidence: Evidence): Problem => ({
  ...trouble,
  slots: {
    ...trouble.slots,
    ...Object.fromEntries(
      idSlots.flatMap((slot) => {
        const given = trouble.slots[slot];
        return given === undefined ? [] : [[slot, named(String(given), evidence)]];
      }),
    ),
  },
});

/** A list of ids as names, parted by semicolons since names hold commas; what is no id of the evidence stays as it is. */
function named(ids: string, evidence: Evidence): string {
  const names = ids.split(/,? /).map((id) => {
    if (Object.hasOwn(evidence.conditions, id)) return conditionTerm(evidence, id);
    return Object.hasOwn(evidence.findings, id) || isTestId(id) ? stepTerm(evidence, id) : id.replaceAll("-", " ");
  });
  return names.join("; ");
}

/** The name of a finding or a test; its id where the evidence does not have it any more. */
export const stepTerm = ({ findings }: Evidence, id: string): string =>
  Object.hasOwn(findings, id) ? (findings[id]?.term ?? id) : isTestId(id) ? tests[id].term : id;
