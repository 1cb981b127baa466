/** The sensitivity of a round when the clusters are few and drawn without replacement. */
import { answered, blocked, ensure, type Result } from "../../units/index.ts";
import { surveillanceProblem } from "./problems.ts";

export interface TwoStageFinite {
  /** 1 − (1 − mean SeH·k/H)^D, the shortcut of the textbooks. */
  readonly approximate: number;
  /** Exact for drawing without replacement, each tested cluster with its own sensitivity. */
  readonly exact: number;
}

/**
 * Probability of finding at least one of D infested clusters among H, k of them tested.
 *
 * Model: the tested clusters are a random sample of all; an infested one is found with its own sensitivity (SeH).
 * Exact by recursion over the tested clusters: given d infested among the i before, the next is infested with
 * probability (D − d)/(H − i).
 *
 * @returns both figures, or `more-infested-than-places`, `more-tested-than-places`, `nothing-tested`
 * @throws DomainError for counts that are not whole or a sensitivity outside [0, 1]
 * @source Cameron & Baldock 1998, Preventive Veterinary Medicine 34:19–30; exact recursion: own
 *
 * @example
 * twoStageFinite({ clusters: 10, infested: 1, sensitivities: [0.9, 0.5] }).value.exact  // → 0.14
 */
export function twoStageFinite(round: {
  /** Clusters there are, and how many of them are infested; whole, ≥ 1. */
  readonly clusters: number;
  readonly infested: number;
  /** One for each tested cluster: probability that it is found if infested. */
  readonly sensitivities: readonly number[];
}): Result<TwoStageFinite> {
  const { clusters, infested, sensitivities } = round;
  ensure(Number.isInteger(clusters) && clusters >= 1, "clusters", clusters, "a whole number ≥ 1");
  ensure(Number.isInteger(infested) && infested >= 1, "infested", infested, "a whole number ≥ 1");
  for (const each of sensitivities) ensure(each >= 0 && each <= 1, "sensitivities", each, "in [0, 1]");
  const tested = sensitivities.length;
  if (tested === 0) return blocked(surveillanceProblem("nothing-tested", "blocked", "sensitivities", {}));
  if (infested > clusters) {
    const slots = { infested, places: clusters };
    return blocked(surveillanceProblem("more-infested-than-places", "blocked", "infested", slots));
  }
  if (tested > clusters) {
    const slots = { tested, places: clusters };
    return blocked(surveillanceProblem("more-tested-than-places", "blocked", "sensitivities", slots));
  }
  const telling = sensitivities.filter((each) => each > 0); // what finds nothing changes nothing
  /** By infested clusters so far: probability of that many, all of them missed. */
  const missed = new Float64Array(Math.min(telling.length, infested) + 2);
  missed[0] = 1;
  for (const [i, sensitivity] of telling.entries()) {
    for (let d = Math.min(i + 1, infested); d >= 0; d -= 1) {
      const stays = (missed[d] as number) * (1 - Math.min(1, Math.max(0, infested - d) / (clusters - i)));
      const rises = d > 0 ? ((missed[d - 1] as number) * (infested - d + 1)) / (clusters - i) : 0;
      missed[d] = stays + rises * (1 - sensitivity);
    }
  }
  const mean = sensitivities.reduce((sum, each) => sum + each, 0) / tested;
  return answered({
    approximate: 1 - (1 - (mean * tested) / clusters) ** infested,
    exact: Math.max(0, 1 - missed.reduce((sum, each) => sum + each, 0)),
  });
}
