/** What is told of changes that were taken, since it may not be what was meant. */
import type { Problem } from "../units/index.ts";
import { type Evidence, evidenceSeasons } from "./evidence.ts";
import { type EvidenceChange, placeOfChange } from "./evidence-change.ts";
import { hasEffect, lostPairs } from "./pair-effect.ts";
import { evidenceNote } from "./problems.ts";

/**
 * Notes on the changes between two evidences: a share that two of them set, a condition that nothing can speak for, a
 * pair that bears on nothing in any season, and pairs that bore on something before.
 */
export function notesOn(before: Evidence, after: Evidence, taken: readonly EvidenceChange[]): readonly Problem[] {
  const twice = taken.flatMap((change): readonly Problem[] => {
    if (change.what !== "prior" && change.what !== "healthy-rate") return [];
    const other = taken.find(
      (each) =>
        (change.what === "prior" && each.what === "condition" && each.condition === change.condition && each.prior) ||
        (change.what === "healthy-rate" && each.what === "finding" && each.finding === change.finding && each.healthy),
    );
    if (other === undefined) return [];
    return [evidenceNote("evidence-said-twice", placeOfChange(change), { other: placeOfChange(other) })];
  });
  const bare = taken.flatMap((change): readonly Problem[] => {
    if (change.what !== "condition" || Object.keys(after.frequencies[change.condition] ?? {}).length > 0) return [];
    return [evidenceNote("evidence-without-pairs", placeOfChange(change), { id: change.condition })];
  });
  const idle = taken.flatMap((change): readonly Problem[] => {
    if (change.what !== "frequency") return [];
    const { condition, finding } = change;
    const bears = (evidence: Evidence) =>
      evidenceSeasons.some((season) => hasEffect(evidence, { condition, finding, season }));
    if (bears(before) || bears(after)) return [];
    const slots = { finding, conditions: condition, seasons: evidenceSeasons.join(", ") };
    return [evidenceNote("evidence-without-effect", placeOfChange(change), slots)];
  });
  return [...twice, ...bare, ...idle, ...lostPairs(before, after)];
}
