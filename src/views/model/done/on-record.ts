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
  type MustNotMiss,
  type MustNotMissKey,
  mustNotMiss,
  noticeIn,
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
      results: [],
      colonyState: settled(state.colonyStates[key])?.state ?? null,
      region,
      answersTo,
      seenIn: (findings: readonly string[]) =>
        key !== wholeApiary && findings.some((each) => ownAnswersTo(each).length > 0) ? [key] : [],
    };
  });
}

/** The notice as it stands for one of the records: what would set its milder form aside may be seen in any colony. */
export const noticeFor = (notice: MustNotMiss, record: OnRecord, all: readonly OnRecord[]): MustNotMiss =>
  noticeIn(notice, {
    isPresent: (id) => (id === notice.milder?.without ? all.some((each) => each.isPresent(id)) : record.isPresent(id)),
  });

export interface MilderNotice {
  readonly key: MustNotMissKey;
  readonly notice: MustNotMiss;
  /** Ids of the colonies it is seen in. */
  readonly colonies: readonly string[];
}

/** Notices that would ask for a report and do not, since something else explains them in every colony that shows them. */
export function milderNotices(casebook: Casebook, state: CaseState): readonly MilderNotice[] {
  const records = colonyRecords(casebook, state);
  return (Object.entries(mustNotMiss) as [MustNotMissKey, MustNotMiss][])
    .filter(([, { milder, report }]) => milder !== undefined && report)
    .flatMap(([key, full]): readonly MilderNotice[] => {
      const fired = records.filter((each) => firedBy(full, each).length > 0);
      const [notice, ...others] = fired.map((each) => noticeFor(full, each, records));
      if (notice === undefined || [notice, ...others].some(({ report }) => report)) return [];
      return [{ key, notice, colonies: [...new Set(fired.flatMap(({ seenIn }) => seenIn(full.findings)))] }];
    });
}

export const presentIn = (kept: Kept<string> | undefined): readonly StopAnswer[] =>
  (kept?.candidates ?? []).filter(({ value }) => value === "present").map(answerOf);

export const answerOf = ({ entry, at }: Candidate<unknown>): StopAnswer => ({ entry, at });
