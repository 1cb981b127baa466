/**
 * What a person must do at once, by the findings and red flags that mean stop and report.
 *
 * @module views/model
 */
import { type CaseState, settled } from "../../../casebook/index.ts";
import {
  type ConditionId,
  type FindingId,
  redFlags as flagFacts,
  type MustNotMissKey,
  mustNotMiss,
} from "../../../knowledge/index.ts";
import { redFlagAnswer, redFlagIds } from "../red-flag-answers.ts";

export interface StopAct {
  readonly key: string;
  /** Conditions it may be; the first one names a notice that findings fired. */
  readonly conditions: readonly ConditionId[];
  /** The question of the red flag that was answered with present; null where findings fired it. */
  readonly question: string | null;
  /** The findings it follows from; none where the question of the red flag says it already. */
  readonly findings: readonly FindingId[];
  readonly act: string;
  readonly doNot: readonly string[];
}

/**
 * Notices that the law may want to hear of, by the findings of any one colony or of the whole apiary; then red flags
 * that were answered with present and that no such notice covers.
 */
export function stopActs(state: CaseState): readonly StopAct[] {
  const seen = Object.values(state.findings).map(
    (own) => new Set(Object.entries(own).flatMap(([finding, kept]) => (settled(kept) === "present" ? [finding] : []))),
  );
  const fired = (Object.keys(mustNotMiss) as MustNotMissKey[])
    .filter((key) => mustNotMiss[key].report)
    .filter((key) => seen.some((own) => mustNotMiss[key].findings.every((finding) => own.has(finding))))
    .map((key) => ({
      key,
      conditions: [mustNotMiss[key].condition],
      question: null,
      findings: mustNotMiss[key].findings,
      act: mustNotMiss[key].act,
      doNot: mustNotMiss[key].doNot,
    }));
  const covered = new Set<string>(fired.map((notice) => notice.key));
  const flags = redFlagIds
    .map((id) => redFlagAnswer(state, id))
    .filter((flag) => flag.stopAndReport && !flagFacts[flag.id].leadsTo.some((key) => covered.has(key)))
    .map((flag) => ({
      key: flag.id,
      conditions: [...new Set(flagFacts[flag.id].leadsTo.map((key) => mustNotMiss[key].condition))],
      question: flag.question,
      findings: [],
      act: flag.act ?? "",
      doNot: flag.doNot,
    }));
  return [...fired, ...flags];
}
