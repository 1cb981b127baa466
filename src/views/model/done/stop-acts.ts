/**
 * What a person must do at once, by the findings, results and red flags that mean stop and report, and what was lifted.
 *
 * @module views/model
 */
import {
  type Candidate,
  type Casebook,
  type CaseState,
  casesAt,
  settled,
  specimensOf,
} from "../../../casebook/index.ts";
import type { BodyOf } from "../../../journal/index.ts";
import {
  type ConditionId,
  type FindingId,
  firedBy,
  redFlags as flagFacts,
  freeRegion,
  isFindOf,
  type MustNotMiss,
  type MustNotMissKey,
  miteByEye,
  mustNotMiss,
  type ResultOnRecord,
  regionalMites,
  showsMite,
  type TestId,
} from "../../../knowledge/index.ts";
import type { Day } from "../../../units/index.ts";
import { redFlagIds } from "../red-flag-answers.ts";
import { answerOf, colonyRecords, isMilderIn, milderNotices, regionOnRecord, type StopAnswer } from "./on-record.ts";

export type { StopAnswer } from "./on-record.ts";

export interface StopAct {
  readonly key: string;
  /** The case it is on record in: this one, or another one of the apiary. */
  readonly caseId: string;
  /** Conditions it may be; the first one names a notice that findings or a result fired. */
  readonly conditions: readonly ConditionId[];
  /** The question of the red flag that was answered with present; null where findings or a result fired it. */
  readonly question: string | null;
  /** What it follows from; none where the question of the red flag says it already. */
  readonly because: readonly (FindingId | TestId)[];
  /** Ids of the colonies it was seen in; none where it was said of the whole apiary alone. */
  readonly colonies: readonly string[];
  readonly act: string;
  readonly doNot: readonly string[];
  readonly answers: readonly StopAnswer[];
}

/** A stop that was lifted, and what was written down of it. */
export interface StopLifted extends StopAct {
  readonly lifted: BodyOf<"stop-lifted">;
  /** Entries of the lift, to take it back. */
  readonly entries: readonly string[];
}

/**
 * What stops ordinary advice for the apiary of a case: its own stops, then those of the other cases there, open or
 * closed. A stop stands until what it follows from is corrected, or is lifted with a laboratory's reference.
 */
export function stopActs(casebook: Casebook, state: CaseState): readonly StopAct[] {
  const others = state.apiary === null ? [] : casesAt(casebook, state.apiary).filter(({ id }) => id !== state.id);
  return [state, ...others].flatMap((each) => ownStops(casebook, each));
}

/** The stops on record in the case itself that stand: notices, then red flags that no notice covers. */
export function ownStops(casebook: Casebook, state: CaseState): readonly StopAct[] {
  const fired = firedNotices(casebook, state);
  const flags = firedFlags(casebook, state, fired);
  return [...fired, ...flags].filter((stop) => !isLifted(state, stop));
}

/** The stops of this case that were lifted and would stand otherwise. */
export function stopsLifted(casebook: Casebook, state: CaseState): readonly StopLifted[] {
  const fired = firedNotices(casebook, state);
  return [...fired, ...firedFlags(casebook, state, fired)].flatMap((stop) => {
    const kept = state.stopsLifted[stop.key];
    const lifted = settled(kept);
    if (lifted === null || !isLifted(state, stop)) return [];
    return [{ ...stop, lifted, entries: kept?.candidates.map(({ entry }) => entry) ?? [] }];
  });
}

/** Own stops that stand with an answer of which nobody is recorded as told. */
export function untoldStops(casebook: Casebook, state: CaseState): readonly StopAct[] {
  const told = new Set(Object.values(state.stopsReported).flatMap(({ value }) => value.answers));
  return ownStops(casebook, state).filter(({ answers }) => !answers.every(({ entry }) => told.has(entry)));
}

/** The newest day on which a stop was seen or reported. */
export const stopSince = ({ answers }: Pick<StopAct, "answers">): Day =>
  answers
    .map(({ at }) => at.slice(0, 10))
    .sort()
    .at(-1) ?? "";

/** Lifted for every answer it follows from: a later one stops anew. */
function isLifted(state: CaseState, { key, answers }: StopAct): boolean {
  const lifted = settled(state.stopsLifted[key]);
  return lifted !== null && answers.every(({ entry }) => lifted.answers.includes(entry));
}

/**
 * Notices that the law may want to hear of, by what is on record of any one colony. A red flag that leads to one is an
 * answer it follows from. Where two people differ on a finding the one who saw it counts: a stop errs to that side.
 */
function firedNotices(casebook: Casebook, state: CaseState): readonly StopAct[] {
  const region = regionOnRecord(casebook, state);
  const records = colonyRecords(casebook, state);
  const results = [
    ...Object.values(state.tests),
    // Bees read here ask for a stop in a region without the mite alone: no need to go through them elsewhere.
    ...(region.acarapisWoodi === "absent" ? beesWithMites(casebook, state) : []),
  ];
  const record = { isPresent: () => false, results: results.map(({ value }) => value), colonyState: null, region };
  return [
    ...(Object.entries(mustNotMiss) as [MustNotMissKey, MustNotMiss][])
      .filter(([, { report }]) => report)
      .flatMap(([key, notice]): readonly StopAct[] => {
        const { condition, findings, tests, act, doNot } = notice;
        const seen = records.filter((each) => firedBy(notice, each).length > 0 && !isMilderIn(notice, each, records));
        const byTest = firedBy(notice, record).length > 0;
        const finds = byTest
          ? results.filter(({ value }) => tests.some((test) => isFindOf(condition, test, value)))
          : [];
        if (seen.length + finds.length === 0) return [];
        const flags = redFlagIds.filter((id) => flagFacts[id].leadsTo.some((to) => to === key));
        return [
          {
            ...{ key, caseId: state.id, conditions: [condition], question: null, act, doNot },
            because: [...(seen.length > 0 ? findings : []), ...new Set(finds.map(({ value }) => value.test as TestId))],
            colonies: distinct([
              ...seen.flatMap((each) => each.seenIn(findings)),
              ...finds.flatMap(({ value }) => value.colony ?? []),
            ]),
            answers: unique([
              ...seen.flatMap(({ answersTo }) => findings.flatMap(answersTo)),
              ...finds.map(answerOf),
              ...flags.flatMap((id) => flaggedIn(state, id)),
            ]),
          },
        ];
      }),
    ...mitesInFreeRegion(state, { region, records, results }),
  ];
}

/** Mites seen where the region is said to be without them. */
function mitesInFreeRegion(
  state: CaseState,
  given: {
    readonly region: Readonly<Record<string, unknown>>;
    readonly records: readonly {
      readonly answersTo: (finding: string) => readonly StopAnswer[];
      readonly seenIn: (findings: readonly string[]) => readonly string[];
    }[];
    readonly results: readonly Candidate<ResultOfColony>[];
  },
): readonly StopAct[] {
  return regionalMites.flatMap(({ condition, field }): readonly StopAct[] => {
    if (given.region[field] !== "absent") return [];
    const eye = miteByEye[condition];
    const seen = eye === undefined ? [] : given.records.filter(({ answersTo }) => answersTo(eye).length > 0);
    const byEye = eye === undefined ? [] : seen.flatMap(({ answersTo }) => answersTo(eye));
    const shown = given.results.filter(({ value }) => showsMite(condition, value));
    const { act, doNot } = freeRegion;
    const because = [
      ...(eye !== undefined && byEye.length > 0 ? [eye] : []),
      ...new Set(shown.map(({ value }) => value.test as TestId)),
    ];
    if (because.length === 0) return [];
    return [
      {
        ...{ key: `free-region-${condition}`, caseId: state.id, conditions: [condition], question: null },
        colonies: distinct([
          ...seen.flatMap(({ seenIn }) => (eye === undefined ? [] : seenIn([eye]))),
          ...shown.flatMap(({ value }) => value.colony ?? []),
        ]),
        ...{ because, act, doNot, answers: unique([...byEye, ...shown.map(answerOf)]) },
      },
    ];
  });
}

/** Red flags answered with present that no notice covers which stands, or asks for no report here, and none that was lifted holds. */
function firedFlags(casebook: Casebook, state: CaseState, fired: readonly StopAct[]): readonly StopAct[] {
  const standing = fired.filter((stop) => !isLifted(state, stop));
  const covered = new Set<string>([...standing, ...milderNotices(casebook, state)].map(({ key }) => key));
  const settledAnswers = new Set(
    fired.filter((stop) => isLifted(state, stop)).flatMap(({ answers }) => answers.map(({ entry }) => entry)),
  );
  return redFlagIds.flatMap((id): readonly StopAct[] => {
    const { question, act, leadsTo } = flagFacts[id];
    const notices = leadsTo.map((key): MustNotMiss => mustNotMiss[key]);
    const answers = flaggedIn(state, id);
    if (answers.length === 0 || !notices.some(({ report }) => report)) return [];
    if (leadsTo.some((key) => covered.has(key)) || answers.every(({ entry }) => settledAnswers.has(entry))) return [];
    return [
      {
        ...{ key: id, caseId: state.id, question, act, because: [], colonies: [], answers },
        conditions: [...new Set(notices.map(({ condition }) => condition))],
        doNot: [...new Set(notices.flatMap(({ doNot }) => doNot))],
      },
    ];
  });
}

type ResultOfColony = ResultOnRecord & { readonly colony: string | null };

/** Bees read here in which mites were seen, each as the dissection that it is. */
const beesWithMites = (casebook: Casebook, state: CaseState): readonly Candidate<ResultOfColony>[] =>
  specimensOf(casebook, state.id).flatMap(({ colony, readings }) =>
    Object.values(readings)
      .flatMap(({ bees }) => Object.values(bees))
      .flatMap(({ candidates }) => candidates)
      .filter(({ value: { left, right } }) => [left, right].some((side) => side?.startsWith("mites")))
      .map((candidate) => ({ ...candidate, value: { test: "tracheal-dissection", positive: 1, colony } })),
  );

const distinct = (colonies: readonly string[]): readonly string[] => [...new Set(colonies)];

const flaggedIn = (state: CaseState, id: string): readonly StopAnswer[] =>
  (state.redFlags[id]?.candidates ?? []).filter(({ value }) => value.state === "present").map(answerOf);

const unique = (answers: readonly StopAnswer[]): readonly StopAnswer[] => [
  ...new Map(answers.map((answer) => [answer.entry, answer])).values(),
];
