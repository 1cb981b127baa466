/**
 * Who was told of the stops of a case, as it is on record.
 *
 * @module views/model
 */
import type { Casebook, CaseState } from "../../../casebook/index.ts";
import type { Words } from "../../words/index.ts";
import { untoldStops } from "../done/stop-acts.ts";

export interface ReportsTold {
  /** A sentence each, oldest first. */
  readonly reports: readonly string[];
  /** That nobody was told yet, or not of what was seen since; null where all that stops is told. */
  readonly missing: string | null;
}

/** What is on record of reports, and what of the stops that stand is not reported. */
export function reportsTold(casebook: Casebook, state: CaseState, { case: { stop: say } }: Words): ReportsTold {
  const reports = Object.values(state.stopsReported)
    .toSorted((one, other) => one.recordedAt.localeCompare(other.recordedAt))
    .map(({ value }) => say.note(value));
  const isUntold = untoldStops(casebook, state).length > 0;
  return { reports, missing: isUntold ? (reports.length === 0 ? say.notTold : say.notToldSince) : null };
}
