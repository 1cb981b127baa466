/**
 * The findings of a case: grouped by where one stands, one cell for each colony, three states.
 *
 * @module views/model
 */
import type { CaseState } from "../../casebook/index.ts";
import { isInConflict, settled, wholeApiary } from "../../casebook/index.ts";
import type { FindingState } from "../../journal/index.ts";
import { type FindingFact, type FindingId, findings, type Place } from "../../knowledge/index.ts";
import type { Words } from "../words/index.ts";

/** The way one walks through an apiary: what needs no open hive first. */
export const placesInOrder: readonly Place[] = [
  "entrance",
  "ground",
  "under-lid",
  "combs",
  "brood",
  "stores",
  "apiary",
  "history",
];

export interface FindingCell {
  /** Colony id, or `whole-apiary`. */
  readonly key: string;
  readonly state: FindingState | "conflict" | null;
}

export interface FindingRow {
  readonly id: FindingId;
  readonly term: string;
  readonly question: string;
  readonly lookFor: string;
  readonly tellApart: string | null;
  /** Asked, or answered, once for the place and not colony by colony. */
  readonly wholeApiary: boolean;
  /** The finding that is set back to "not looked" when this one is present. */
  readonly exclusiveWith: FindingId | null;
  readonly cells: readonly FindingCell[];
}

export interface FindingGroupView {
  readonly place: Place;
  readonly title: string;
  readonly rows: readonly FindingRow[];
}

export interface ColonyRef {
  readonly id: string;
  readonly code: string;
}

/** Findings that people are asked; two are worked out from the records instead. */
export const askedFindings: readonly FindingFact[] = Object.values(findings).filter(
  (finding) => !("derived" in finding),
);

/** The state of one cell, null when nothing was written. */
export function cellState(state: CaseState, key: string, finding: FindingId): FindingCell["state"] {
  const kept = state.findings[key]?.[finding];
  return isInConflict(kept) ? "conflict" : settled(kept);
}

/**
 * All asked findings of a case in the order of a walk, a cell for each of `colonies`. An answer for the whole apiary
 * stands for every colony that has none of its own, as it does in the ranking; where no colony has one, the row is one
 * cell.
 */
export function findingGroups(
  state: CaseState,
  colonies: readonly ColonyRef[],
  words: Words,
): readonly FindingGroupView[] {
  return placesInOrder.map((place) => ({
    place,
    title: words.seen.places[place],
    rows: askedFindings
      .filter((finding) => finding.place === place)
      .map((finding): FindingRow => {
        const shared = cellState(state, wholeApiary, finding.id);
        const own = colonies.map(({ id }) => ({ key: id, state: cellState(state, id, finding.id) }));
        const whole =
          place === "apiary" || colonies.length === 0 || (shared !== null && own.every((cell) => cell.state === null));
        return {
          id: finding.id,
          term: finding.term,
          question: finding.question,
          lookFor: finding.lookFor,
          tellApart: finding.tellApart ?? null,
          wholeApiary: whole,
          exclusiveWith: finding.exclusiveWith ?? null,
          cells: whole
            ? [{ key: wholeApiary, state: shared }]
            : own.map((cell) => ({ ...cell, state: cell.state ?? shared })),
        };
      }),
  }));
}

/** Findings answered "present" or "absent" for at least one colony, those that are present in one, and the rest. */
export function countFindings(groups: readonly FindingGroupView[]): {
  readonly answered: number;
  readonly present: number;
  readonly notLooked: number;
} {
  const rows = groups.flatMap((group) => group.rows);
  const looked = (row: FindingRow) => row.cells.some((cell) => cell.state !== null && cell.state !== "not-looked");
  const answered = rows.filter(looked).length;
  const present = rows.filter((row) => row.cells.some((cell) => cell.state === "present")).length;
  return { answered, present, notLooked: rows.length - answered };
}
