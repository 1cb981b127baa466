/**
 * What is on record of each colony of a case, as a notice asks it.
 *
 * @module views/model
 */
import {
  type Candidate,
  type Casebook,
  type CaseState,
  type Kept,
  settled,
  wholeApiary,
} from "../../../casebook/index.ts";
import type { BodyOf } from "../../../journal/index.ts";
import {
  type FindingId,
  firedBy,
  isMilder,
  type MustNotMiss,
  type MustNotMissKey,
  mustNotMiss,
  type OnRecord,
} from "../../../knowledge/index.ts";
import { isSpread, spreadOf } from "../spread.ts";

/** An answer or result that a stop follows from. */
export interface StopAnswer {
  readonly entry: string;
  /** When it was seen or reported. */
  readonly at: string;
}

export interface ColonyRecord extends OnRecord {
  /** Seen, of the colony or of all, and disputed by nobody. */
  readonly isAgreed: (finding: FindingId) => boolean;
  readonly answersTo: (finding: string) => readonly StopAnswer[];
  /** The colony, when one of these was seen in it and not said of the whole apiary alone. */
  readonly seenIn: (findings: readonly string[]) => readonly string[];
}

/** What is on record of the region of the case. */
export const regionOnRecord = (casebook: Casebook, state: CaseState): Partial<BodyOf<"region-recorded">> =>
  settled(state.apiary === null ? null : casebook.apiaries[state.apiary]?.region) ?? {};

/** One record a colony, and one of the whole apiary; what was said of the apiary is in each. Of two who differ, who saw it counts. */
export function colonyRecords(casebook: Casebook, state: CaseState): readonly ColonyRecord[] {
  const region = regionOnRecord(casebook, state);
  const shared = state.findings[wholeApiary] ?? {};
  return Object.entries({ [wholeApiary]: {}, ...state.findings }).map(([key, own]) => {
    const ownAnswersTo = (finding: string) => presentIn((own as Readonly<Record<string, Kept<string>>>)[finding]);
    const answersTo = (finding: string): readonly StopAnswer[] => [
      ...ownAnswersTo(finding),
      ...presentIn(shared[finding as FindingId]),
    ];
    return {
      isPresent: (finding: FindingId) =>
        answersTo(finding).length > 0 || (isSpread(finding) && spreadOf(casebook, state, key)[finding] === "present"),
      isAgreed: (finding: FindingId) => {
        const said = [own, shared].flatMap(
          (each) => (each as Readonly<Record<string, Kept<string>>>)[finding]?.candidates ?? [],
        );
        return said.length > 0 && said.every(({ value }) => value === "present");
      },
      results: [],
      colonyState: settled(state.colonyStates[key])?.state ?? null,
      region,
      answersTo,
      seenIn: (findings: readonly string[]) =>
        key !== wholeApiary && findings.some((each) => ownAnswersTo(each).length > 0) ? [key] : [],
    };
  });
}

/** Whether the notice asks for no report in this colony: what explains it nobody disputes, what speaks against that nobody has seen in any. */
export const isMilderIn = (notice: MustNotMiss, record: ColonyRecord, all: readonly ColonyRecord[]): boolean =>
  isMilder(notice, {
    isPresent: (id) => (id === notice.milder?.with ? record.isAgreed(id) : all.some((each) => each.isPresent(id))),
  });

/** Notices that ask for no report, since something else explains them in every record that shows them, with those records. */
export function milderNotices(
  casebook: Casebook,
  state: CaseState,
): readonly { readonly key: MustNotMissKey; readonly fired: readonly ColonyRecord[] }[] {
  const records = colonyRecords(casebook, state);
  return (Object.entries(mustNotMiss) as [MustNotMissKey, MustNotMiss][])
    .filter(([, { milder }]) => milder !== undefined)
    .map(([key, notice]) => ({ key, notice, fired: records.filter((each) => firedBy(notice, each).length > 0) }))
    .filter(({ notice, fired }) => fired.length > 0 && fired.every((each) => isMilderIn(notice, each, records)));
}

export const presentIn = (kept: Kept<string> | undefined): readonly StopAnswer[] =>
  (kept?.candidates ?? []).filter(({ value }) => value === "present").map(answerOf);

export const answerOf = ({ entry, at }: Candidate<unknown>): StopAnswer => ({ entry, at });
