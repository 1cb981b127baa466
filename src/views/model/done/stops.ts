/**
 * What stops ordinary advice: findings and red flags that mean stop and report.
 *
 * @module views/model
 */
import { type CaseState, settled } from "../../../casebook/index.ts";
import { conditions, findings, type MustNotMissKey, mustNotMiss } from "../../../knowledge/index.ts";
import { redFlags } from "../red-flags.ts";

export interface StopNotice {
  readonly key: string;
  readonly what: string;
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
      what: conditions[mustNotMiss[key].condition].term,
      because: mustNotMiss[key].findings.map((finding) => findings[finding].term).join(", "),
      act: mustNotMiss[key].act,
      doNot: mustNotMiss[key].doNot,
    }));
  if (fired.length > 0) return fired;
  return redFlags(state)
    .filter((flag) => flag.stopAndReport)
    .map((flag) => ({
      key: flag.id,
      what: flag.question,
      because: flag.question,
      act: flag.act ?? "",
      doNot: flag.doNot,
    }));
}
