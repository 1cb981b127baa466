/**
 * What stops ordinary advice: findings and red flags that mean stop and report.
 *
 * @module views/model
 */
import { type CaseState, settled } from "../../../casebook/index.ts";
import {
  type ConditionId,
  conditions,
  findings,
  redFlags as flagFacts,
  type MustNotMissKey,
  mustNotMiss,
} from "../../../knowledge/index.ts";
import { redFlags } from "../red-flags.ts";

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

/**
 * Notices that the law may want to hear of, by the findings of any one colony or of the whole apiary; then red flags
 * that were answered with present and that no such notice covers.
 */
export function stopNotices(state: CaseState): readonly StopNotice[] {
  const seen = Object.values(state.findings).map(
    (own) => new Set(Object.entries(own).flatMap(([finding, kept]) => (settled(kept) === "present" ? [finding] : []))),
  );
  const fired = (Object.keys(mustNotMiss) as MustNotMissKey[])
    .filter((key) => mustNotMiss[key].report)
    .filter((key) => seen.some((own) => mustNotMiss[key].findings.every((finding) => own.has(finding))))
    .map((key) => ({
      key,
      conditions: [mustNotMiss[key].condition],
      what: conditions[mustNotMiss[key].condition].term,
      because: mustNotMiss[key].findings.map((finding) => findings[finding].term).join(", "),
      act: mustNotMiss[key].act,
      doNot: mustNotMiss[key].doNot,
    }));
  const covered = new Set<string>(fired.map((notice) => notice.key));
  const flags = redFlags(state)
    .filter((flag) => flag.stopAndReport && !flagFacts[flag.id].leadsTo.some((key) => covered.has(key)))
    .map((flag) => ({
      key: flag.id,
      conditions: [...new Set(flagFacts[flag.id].leadsTo.map((key) => mustNotMiss[key].condition))],
      what: flag.question,
      because: "",
      act: flag.act ?? "",
      doNot: flag.doNot,
    }));
  return [...fired, ...flags];
}
