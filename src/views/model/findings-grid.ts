/**
 * The findings of a case: grouped by where one stands, one cell for each colony, three states.
 *
 * @module views/model
 */
import type { Casebook, CaseState } from "../../casebook/index.ts";
import { isInConflict, settled, wholeApiary } from "../../casebook/index.ts";
import type { FindingState } from "../../journal/index.ts";
import { type Evidence, type FindingFact, findings, isFindingId, isOwnId, type Place } from "../../knowledge/index.ts";
import type { Words } from "../words/index.ts";

/** Where one stands when a finding is looked for; a sign that a programme added has a place of its own. */
export type AskedPlace = Place | "own";

/** The way one walks through an apiary: what needs no open hive first. */
export const placesInOrder: readonly AskedPlace[] = [
  "entrance",
  "ground",
  "under-lid",
  "combs",
  "brood",
  "stores",
  "apiary",
  "history",
  "own",
];

export interface FindingCell {
  /** Colony id, or `whole-apiary`. */
  readonly key: string;
  readonly state: FindingState | "conflict" | null;
}

export interface FindingRow {
  readonly id: string;
  readonly term: string;
  readonly question: string;
  readonly lookFor: string;
  readonly tellApart: string | null;
  /** Asked, or answered, once for the place and not colony by colony. */
  readonly wholeApiary: boolean;
  /** The finding that is set back to "not looked" when this one is present. */
  readonly exclusiveWith: string | null;
  readonly cells: readonly FindingCell[];
}

export interface FindingGroupView {
  readonly place: AskedPlace;
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

/** A finding as it is asked, published or a programme's own. */
export type AskedFinding = Pick<FindingRow, "id" | "term" | "question" | "lookFor" | "tellApart" | "exclusiveWith"> & {
  readonly place: AskedPlace;
};

/** The findings that people are asked under this evidence; a programme's own come last. Changed words are used. */
export const askedUnder = (evidence: Evidence): readonly AskedFinding[] =>
  evidence.findingIds.flatMap((id) => {
    const finding = evidence.findings[id];
    if (finding === undefined || finding.derived) return [];
    const { term, question, lookFor, exclusiveWith } = finding;
    const fact = isFindingId(id) ? findings[id] : null;
    const tellApart = (fact as FindingFact | null)?.tellApart ?? null;
    return [
      {
        id,
        term,
        question,
        lookFor,
        exclusiveWith,
        tellApart,
        place: fact?.place ?? (finding.kind === "circumstance" ? "apiary" : "own"),
      },
    ];
  });

/** How many findings people are asked: the published ones and those that the programme added. */
export const askedCount = ({ programmes }: Casebook): number =>
  askedFindings.length +
  Object.values(programmes).flatMap(({ changes }) =>
    Object.keys(changes).filter((place) => place.startsWith("finding ") && isOwnId(place.slice("finding ".length))),
  ).length;

/** The state of one cell, null when nothing was written. */
export function cellState(state: CaseState, key: string, finding: string): FindingCell["state"] {
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
  evidence: Evidence,
): readonly FindingGroupView[] {
  const asked = Map.groupBy(askedUnder(evidence), ({ place }) => place);
  return placesInOrder
    .filter((place) => asked.has(place))
    .map((place) => ({
      place,
      title: words.seen.places[place],
      rows: (asked.get(place) ?? []).map(({ place: _, ...finding }): FindingRow => {
        const shared = cellState(state, wholeApiary, finding.id);
        const own = colonies.map(({ id }) => ({ key: id, state: cellState(state, id, finding.id) }));
        const whole =
          place === "apiary" || colonies.length === 0 || (shared !== null && own.every((cell) => cell.state === null));
        return {
          ...finding,
          wholeApiary: whole,
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
