/** What has to be borne in mind of evidence that has learnt: said with every answer that uses it. */
import type { ExperienceUse } from "../../casebook/index.ts";
import { type Evidence, evidenceSeasons, lostPairs, type Seen } from "../../knowledge/index.ts";
import type { Problem } from "../../units/index.ts";
import type { ExperienceCounts } from "./lessons.ts";
import { experienceProblem } from "./problems.ts";

/** What came of experience: the evidence before and after, the counts, and what they were let change. */
export interface Learning {
  readonly start: Evidence;
  readonly learnt: Evidence;
  readonly counts: ExperienceCounts;
  readonly use: ExperienceUse;
}

/**
 * The caveats: confirmed cases are no random sample, failing colonies stand in for well ones, and pairs that no longer
 * bear on anything since the healthy rate has risen above them.
 */
export function experienceCaveats({ start, learnt, counts, use }: Learning): readonly Problem[] {
  const field = "settings.experience";
  const random = use.priors
    ? [experienceProblem("confirmed-not-random", "warned", `${field}.priors`, { cases: casesIn(counts) })]
    : [];
  const findings = new Set(evidenceSeasons.flatMap((season) => Object.keys(counts.healthy[season]))).size;
  const failing =
    use.healthyRates && findings > 0
      ? [experienceProblem("healthy-from-failing", "warned", `${field}.healthyRates`, { findings })]
      : [];
  return [...random, ...failing, ...lostPairs(start, learnt)];
}

/** Cases that told of priors: those of the condition that most of them could tell of. */
function casesIn({ priors }: ExperienceCounts): number {
  const looked = (seen: Seen | undefined) => seen?.looked ?? 0;
  return Object.values(priors).reduce((most, seasons) => {
    const cases = evidenceSeasons.reduce((sum, season) => sum + looked(seasons[season]), 0);
    return Math.max(most, cases);
  }, 0);
}
