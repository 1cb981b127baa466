/**
 * What cannot wait for a result and is no matter for the authority: a colony without food, mummies that harm people.
 *
 * @module views/model
 */
import { type Casebook, type CaseState, settled, wholeApiary } from "../../../casebook/index.ts";
import { cautions, firedBy, type MustNotMiss, type MustNotMissKey, mustNotMiss } from "../../../knowledge/index.ts";
import { colonyCode } from "../bench/worklist.ts";
import { seenAfterDeath } from "../seen-after-death.ts";
import { milderNotices } from "./on-record.ts";

export interface UrgentAct {
  readonly key: MustNotMissKey;
  /** Codes of the colonies it is seen in; none where it was said of the whole apiary alone. */
  readonly colonies: readonly string[];
  /** What to do and what not. */
  readonly act: string;
}

/** The notices that fire in a case and that the law does not ask for, there or at all; a stop tells of the others. */
export function urgentActs(casebook: Casebook, state: CaseState): readonly UrgentAct[] {
  const region = settled(state.apiary === null ? null : casebook.apiaries[state.apiary]?.region) ?? {};
  const milder = milderNotices(casebook, state).map(({ key, fired }): UrgentAct => {
    const notice: MustNotMiss = mustNotMiss[key];
    const colonies = [...new Set(fired.flatMap(({ seenIn }) => seenIn(notice.findings)))];
    const act = notice.milder === undefined ? notice.act : cautions[notice.milder.act].words;
    return urgentOf(key, { ...notice, act }, codesOf(casebook, state, colonies));
  });
  const others = (Object.entries(mustNotMiss) as [MustNotMissKey, MustNotMiss][])
    .filter(([, { report }]) => !report)
    .flatMap(([key, notice]): readonly UrgentAct[] => {
      const keys = Object.entries(state.findings).flatMap(([colony, own]) => {
        const { findings: late } = seenAfterDeath(state, colony);
        const isPresent = (id: (typeof late)[number]) => !late.includes(id) && settled(own[id]) === "present";
        const colonyState = settled(state.colonyStates[colony])?.state ?? null;
        return firedBy(notice, { isPresent, results: [], colonyState, region }).length > 0 ? [colony] : [];
      });
      if (keys.length === 0) return [];
      const colonies = keys.filter((colony) => colony !== wholeApiary);
      return [urgentOf(key, notice, codesOf(casebook, state, colonies))];
    });
  return [...milder, ...others];
}

const urgentOf = (key: MustNotMissKey, { act, doNot }: MustNotMiss, colonies: readonly string[]): UrgentAct => ({
  key,
  colonies,
  act: [act, ...doNot].join(" "),
});

const codesOf = (casebook: Casebook, state: CaseState, colonies: readonly string[]): readonly string[] =>
  colonies.map((id) => colonyCode(casebook, state.id, id)).sort();
