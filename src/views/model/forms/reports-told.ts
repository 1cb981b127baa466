/**
 * Who was told of a stop, as the case has it on record.
 *
 * @module views/model
 */
import { type CaseState, settled } from "../../../casebook/index.ts";

/** What is on record of reports, a sentence each, oldest first; empty when nobody was told. */
export const reportsTold = (state: CaseState): readonly string[] =>
  (settled(state.handedOn)?.note ?? "").split("\n").filter(Boolean);
