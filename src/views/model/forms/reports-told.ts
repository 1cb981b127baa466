/**
 * Who was told of a stop, as the case has it on record.
 *
 * @module views/model
 */
import { type CaseState, settled } from "../../../casebook/index.ts";
import type { Words } from "../../words/index.ts";

/** What is on record of reports, a sentence each, oldest first; empty when nobody was told. */
export const reportsTold = (state: CaseState, words: Words): readonly string[] => [
  ...(settled(state.handedOn)?.note ?? "").split("\n").filter(Boolean),
  ...Object.values(state.stopsReported)
    .toSorted((one, other) => one.recordedAt.localeCompare(other.recordedAt))
    .map(({ value }) => words.case.stop.note(value)),
];
