/** Which pairs of condition and finding bear on an answer at all, and which a change takes out. */
import type { Problem, Season } from "../units/index.ts";
import { type Evidence, evidenceSeasons } from "./evidence.ts";
import { evidenceNote } from "./problems.ts";

/**
 * Whether the pair moves the condition in the season: where the condition brings the finding more often than a well
 * colony shows it, or, of a sign that the condition suppresses, more rarely. What is of health no condition brings: its
 * grades were judged in the season of brood, and in winter, when few well colonies show it, a grade above their rate
 * says nothing.
 */
export function hasEffect(
  evidence: Evidence,
  { condition, finding, season }: { readonly condition: string; readonly finding: string; readonly season: Season },
): boolean {
  const pair = evidence.frequencies[condition]?.[finding];
  const healthy = evidence.healthy[season][finding];
  if (pair === undefined || healthy === undefined) return false;
  const { kind, ofHealth } = evidence.findings[finding] ?? {};
  if (pair.suppresses && kind !== "circumstance") return pair.value < healthy.value;
  return !ofHealth && pair.value > healthy.value;
}

/**
 * One note for each finding and set of seasons in which pairs bore on something before and no longer do.
 *
 * Such a pair is no mistake by itself: it is how a pair is taken out. But a rate of well colonies that rises takes
 * pairs out that nobody had in mind.
 */
export function lostPairs(before: Evidence, after: Evidence): readonly Problem[] {
  const lost = Object.entries(before.frequencies).flatMap(([condition, pairs]) =>
    Object.keys(pairs).flatMap((finding) => {
      const seasons = evidenceSeasons.filter((season) => {
        const pair = { condition, finding, season };
        return hasEffect(before, pair) && !hasEffect(after, pair);
      });
      return seasons.length === 0 ? [] : [{ condition, finding, seasons: seasons.join(", ") }];
    }),
  );
  const together = Map.groupBy(lost, ({ finding, seasons }) => `${finding} ${seasons}`);
  return [...together.values()].map((own) => {
    const { finding = "", seasons = "" } = own[0] ?? {};
    const conditions = own.map(({ condition }) => condition).join(", ");
    return evidenceNote("evidence-without-effect", `frequency ${finding}`, { finding, conditions, seasons });
  });
}
