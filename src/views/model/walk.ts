/**
 * The walk: the findings of one colony in the order one comes by them, one at a time.
 *
 * @module views/model
 */
import { type CaseState, wholeApiary } from "../../casebook/index.ts";
import type { EntryDraft, FindingState } from "../../journal/index.ts";
import type { Evidence } from "../../knowledge/index.ts";
import type { Day } from "../../units/index.ts";
import type { Words } from "../words/index.ts";
import { type AskedPlace, askedUnder, cellState, type FindingCell, placesInOrder } from "./findings-grid.ts";

export interface WalkStep {
  readonly finding: string;
  readonly term: string;
  readonly question: string;
  readonly lookFor: string;
  readonly tellApart: string | null;
  readonly place: AskedPlace;
  readonly placeTitle: string;
  readonly exclusiveWith: string | null;
  readonly state: FindingCell["state"];
}

/**
 * The steps for a colony, or for what is asked once of the whole apiary. With no colonies in the case the whole apiary
 * is asked everything.
 */
export function walkOf(asked: {
  readonly state: CaseState;
  readonly key: string;
  readonly colonies: number;
  readonly words: Words;
  readonly evidence: Evidence;
}): readonly WalkStep[] {
  const { state, key, colonies, words, evidence } = asked;
  const places = placesInOrder.filter((place) => colonies === 0 || (place === "apiary") === (key === wholeApiary));
  return places.flatMap((place) =>
    askedUnder(evidence)
      .filter((finding) => finding.place === place)
      .map(({ id, ...finding }) => ({
        ...finding,
        finding: id,
        placeTitle: words.seen.places[place],
        state: cellState(state, key, id),
      })),
  );
}

/**
 * Takes a press back. Where an answer stood before, it is written again; where none did, what was written is withdrawn.
 * `entries`: ids that the press wrote.
 */
export function undoDrafts(input: {
  readonly state: CaseState;
  readonly key: string;
  readonly finding: string;
  readonly before: FindingState | null;
  readonly entries: readonly string[];
  /** Day on which the answer before was seen. */
  readonly on: Day;
}): readonly EntryDraft[] {
  const { state, key, finding, before, entries, on } = input;
  const about = key === wholeApiary ? [state.id] : [state.id, key];
  if (before === null)
    return [{ kind: "entry-withdrawn", at: on, about, replaces: entries, data: { reason: "undone" } }];
  return [
    {
      kind: "finding-recorded",
      at: on,
      about,
      replaces: entries.slice(0, 1),
      data: { colony: key === wholeApiary ? null : key, finding, state: before, on },
    },
  ];
}
