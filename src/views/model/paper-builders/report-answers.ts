/**
 * Answers of a case as the report tells them, in the terms of the findings.
 *
 * @module views/model
 */
import type { CaseState } from "../../../casebook/index.ts";
import { askedFindings, cellState } from "../findings-grid.ts";
import { seenAfterDeath } from "../seen-after-death.ts";

/** Terms of the findings with this answer, of a colony that was alive then. */
export function answersOf(state: CaseState, key: string, answer: "present" | "absent"): readonly string[] {
  const { findings: late } = seenAfterDeath(state, key);
  return askedFindings
    .filter(({ id }) => cellState(state, key, id) === answer && !late.includes(id))
    .map((finding) => finding.term);
}

/** Terms of the findings that were answered for a day after the colony had died. */
export function lateOf(state: CaseState, key: string): readonly string[] {
  const { findings: late } = seenAfterDeath(state, key);
  return askedFindings.filter(({ id }) => late.includes(id)).map((finding) => finding.term);
}
