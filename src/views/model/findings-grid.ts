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
  /** Asked once for the place, not colony by colony. */
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

/** All asked findings of a case in the order of a walk, a cell for each of `colonies`. */
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
        const whole = place === "apiary" || colonies.length === 0;
        const keys = whole ? [wholeApiary] : colonies.map((colony) => colony.id);
        return {
          id: finding.id,
          term: finding.term,
          question: finding.question,
          lookFor: finding.lookFor,
          tellApart: finding.tellApart ?? null,
          wholeApiary: whole,
          exclusiveWith: finding.exclusiveWith ?? null,
          cells: keys.map((key) => ({ key, state: cellState(state, key, finding.id) })),
        };
      }),
  }));
}

/** Findings answered "present" or "absent" for at least one colony, and the rest. */
export function countFindings(groups: readonly FindingGroupView[]): {
  readonly answered: number;
  readonly notLooked: number;
} {
  const rows = groups.flatMap((group) => group.rows);
  const looked = (row: FindingRow) => row.cells.some((cell) => cell.state !== null && cell.state !== "not-looked");
  const answered = rows.filter(looked).length;
  return { answered, notLooked: rows.length - answered };
}
