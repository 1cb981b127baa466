/** A closed case as experience takes it: what was seen, what was known before the confirming result, and the cause. */
import type { Day } from "../../units/index.ts";
import { type AnyInput, confirms, type TestInput } from "../differential/index.ts";

/** One closed case, told of one colony. */
export interface ClosedCase {
  readonly id: string;
  readonly closedOn: Day;
  /** Ids of the causes that the closing says are confirmed. */
  readonly confirmedCauses: readonly string[];
  /** The laboratory or person that confirmed them; null where none is named. */
  readonly confirmedBy: string | null;
  /** Results of the case, of whichever colony: one of them may confirm. */
  readonly results: readonly TestInput[];
  /** Everything on record of the colony: the one that has the cause, as far as that is known. */
  readonly whole: AnyInput;
  /** What was on record, of the colony that was asked about, before the result that confirmed; null: nothing. */
  readonly before: AnyInput | null;
}

/**
 * The first cause that nothing confirms: no result of a test able to, no laboratory, no named person. Null when each
 * confirmed cause rests on something.
 *
 * @example
 * unconfirmedCause({ confirmedCauses: ["queenless"], confirmedBy: null, results: [] })  // → queenless
 */
export function unconfirmedCause({
  confirmedCauses,
  confirmedBy,
  results,
}: Pick<ClosedCase, "confirmedCauses" | "confirmedBy" | "results">): string | null {
  if ((confirmedBy ?? "").trim() !== "") return null;
  return confirmedCauses.find((cause) => !results.some((result) => confirms(result, cause))) ?? null;
}
