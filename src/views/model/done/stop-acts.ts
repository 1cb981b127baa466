/**
 * What a person must do at once, by the findings, results and red flags that mean stop and report, and what was lifted.
 *
 * @module views/model
 */
import { type Casebook, type CaseState, casesAt, type Kept, settled } from "../../../casebook/index.ts";
import type { BodyOf } from "../../../journal/index.ts";
import {
  type ConditionId,
  type FindingId,
  redFlags as flagFacts,
  type MustNotMiss,
  type MustNotMissKey,
  mustNotMiss,
  type TestId,
} from "../../../knowledge/index.ts";
import { redFlagAnswer, redFlagIds } from "../red-flag-answers.ts";

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
  readonly act: string;
  readonly doNot: readonly string[];
  /** Entries of the answers and results it follows from. */
  readonly answers: readonly string[];
}

/** A stop that was lifted, and what was written down of it. */
export interface StopLifted extends StopAct {
  readonly lifted: BodyOf<"stop-lifted">;
}

/**
 * What stops ordinary advice for the apiary of a case: its own stops, then those of the other cases there, open or
 * closed. A stop stands until what it follows from is corrected, or is lifted with a laboratory's reference.
 */
export function stopActs(casebook: Casebook, state: CaseState): readonly StopAct[] {
  const others = state.apiary === null ? [] : casesAt(casebook, state.apiary).filter(({ id }) => id !== state.id);
  return [state, ...others].flatMap((each) => firedStops(casebook, each).filter((stop) => !isLifted(each, stop)));
}

/** The stops of this case that were lifted and would stand otherwise. */
export function stopsLifted(casebook: Casebook, state: CaseState): readonly StopLifted[] {
  return firedStops(casebook, state).flatMap((stop) => {
    const lifted = settled(state.stopsLifted[stop.key]);
    return lifted !== null && isLifted(state, stop) ? [{ ...stop, lifted }] : [];
  });
}

/** Lifted for every answer it follows from: a later one stops anew. */
function isLifted(state: CaseState, { key, answers }: StopAct): boolean {
  const lifted = settled(state.stopsLifted[key]);
  return lifted !== null && answers.every((entry) => lifted.answers.includes(entry));
}

/**
 * Notices that the law may want to hear of, by the findings and results of any one colony or of the whole apiary; then
 * red flags that were answered with present and that no such notice covers.
 */
function firedStops(casebook: Casebook, state: CaseState): readonly StopAct[] {
  const region = settled(state.apiary === null ? null : casebook.apiaries[state.apiary]?.region);
  const fired = (Object.entries(mustNotMiss) as [MustNotMissKey, MustNotMiss][])
    .filter(([, { report, onlyIf }]) => report && !(onlyIf === "not-endemic" && region?.smallHiveBeetle === "endemic"))
    .flatMap(([key, notice]): readonly StopAct[] => {
      const { condition, act, doNot } = notice;
      const { because, answers } = firedBy(state, notice);
      if (because.length === 0) return [];
      return [{ key, caseId: state.id, conditions: [condition], question: null, because, act, doNot, answers }];
    });
  const covered = new Set<string>(fired.map(({ key }) => key));
  const flags = redFlagIds
    .map((id) => redFlagAnswer(state, id))
    .filter((flag) => flag.stopAndReport && !flagFacts[flag.id].leadsTo.some((key) => covered.has(key)))
    .map((flag) => ({
      key: flag.id,
      caseId: state.id,
      conditions: [...new Set(flagFacts[flag.id].leadsTo.map((key) => mustNotMiss[key].condition))],
      question: flag.question,
      because: [],
      act: flag.act ?? "",
      doNot: flag.doNot,
      answers: entriesOf(state.redFlags[flag.id]),
    }));
  return [...fired, ...flags];
}

/** The findings of one colony, or the tests, that fire a notice, with their entries; none where nothing does. */
function firedBy(
  state: CaseState,
  { condition, findings, tests }: MustNotMiss,
): { readonly because: readonly (FindingId | TestId)[]; readonly answers: readonly string[] } {
  const seen = Object.values(state.findings).filter(
    (own) => findings.length > 0 && findings.every((finding) => settled(own[finding]) === "present"),
  );
  const results = Object.values(state.tests).filter(
    ({ value: { test, result, which } }) =>
      result === "found" && (tests as readonly string[]).includes(test) && (which?.includes(condition) ?? true),
  );
  return {
    because: [...(seen.length > 0 ? findings : []), ...new Set(results.map(({ value }) => value.test as TestId))],
    answers: [
      ...seen.flatMap((own) => findings.flatMap((finding) => entriesOf(own[finding]))),
      ...results.map(({ entry }) => entry),
    ],
  };
}

const entriesOf = (kept: Kept<unknown> | undefined): readonly string[] =>
  kept?.candidates.map(({ entry }) => entry) ?? [];
