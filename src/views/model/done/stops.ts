/**
 * What stops ordinary advice: findings, results and red flags that mean stop and report, in words.
 *
 * @module views/model
 */
import { type Casebook, type CaseState, casesAt, settled } from "../../../casebook/index.ts";
import { type ConditionId, conditions, findings, isFindingId } from "../../../knowledge/index.ts";
import type { Day } from "../../../units/index.ts";
import type { Words } from "../../words/index.ts";
import { colonyCode } from "../bench/worklist.ts";
import { ownStops, type StopAct, stopActs, stopSince } from "./stop-acts.ts";

export interface StopNotice {
  readonly key: string;
  /** The other case of the apiary that it is on record in; null where it is this one. */
  readonly elsewhere: { readonly caseId: string; readonly code: string } | null;
  /** Conditions it may be. */
  readonly conditions: readonly ConditionId[];
  readonly what: string;
  /** What it follows from; empty where the question of the red flag says it already. */
  readonly because: string;
  readonly act: string;
  readonly doNot: readonly string[];
  readonly answers: StopAct["answers"];
  /** The newest day on which it was seen or reported. */
  readonly since: Day;
}

/** Every stop for the apiary of the case, in the order of `stopActs`, with its names. */
export const stopNotices = (casebook: Casebook, state: CaseState, words: Words): readonly StopNotice[] =>
  stopActs(casebook, state).map((stop) => noticeOf(casebook, stop, { here: state.id, words }));

/** Every stop that stands for an apiary, each with the case it is on record in. */
export const apiaryStops = (casebook: Casebook, apiary: string, words: Words): readonly StopNotice[] =>
  casesAt(casebook, apiary)
    .flatMap((state) => ownStops(casebook, state))
    .map((stop) => noticeOf(casebook, stop, { here: null, words }));

function noticeOf(
  casebook: Casebook,
  stop: StopAct,
  { here, words }: { readonly here: string | null; readonly words: Words },
): StopNotice {
  const { key, caseId, conditions: may, because, act, doNot, answers } = stop;
  const seenIn = stop.colonies.map((colony) => colonyCode(casebook, caseId, colony)).sort();
  return {
    key,
    elsewhere: caseId === here ? null : { caseId, code: settled(casebook.cases[caseId]?.record)?.code ?? caseId },
    conditions: may,
    what: stopName(stop),
    because: words.case.stop.because({
      signs: because.filter(isFindingId).map((id) => findings[id].term),
      tests: because.filter((id) => !isFindingId(id)),
      colonies: seenIn,
    }),
    ...{ act, doNot, answers },
    since: stopSince(stop),
  };
}

/** What stops: the question of the red flag, or the condition it may be. */
export const stopName = ({ question, conditions: may }: Pick<StopAct, "question" | "conditions">): string =>
  question ??
  may
    .slice(0, 1)
    .map((condition) => conditions[condition].term)
    .join();
