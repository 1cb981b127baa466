/**
 * What stops ordinary advice: findings and red flags that mean stop and report, in words.
 *
 * @module views/model
 */
import type { CaseState } from "../../../casebook/index.ts";
import { type ConditionId, conditions, findings } from "../../../knowledge/index.ts";
import { stopActs } from "./stop-acts.ts";

export interface StopNotice {
  readonly key: string;
  /** Conditions it may be. */
  readonly conditions: readonly ConditionId[];
  readonly what: string;
  /** The findings it follows from; empty where the question of the red flag says it already. */
  readonly because: string;
  readonly act: string;
  readonly doNot: readonly string[];
}

/** Every stop of the case, in the order of `stopActs`, with its names. */
export const stopNotices = (state: CaseState): readonly StopNotice[] =>
  stopActs(state).map(({ key, conditions: may, question, findings: because, act, doNot }) => ({
    key,
    conditions: may,
    what:
      question ??
      may
        .slice(0, 1)
        .map((condition) => conditions[condition].term)
        .join(),
    because: because.map((finding) => findings[finding].term).join(", "),
    act,
    doNot,
  }));
