/** The network of the knowledge for one season and region: conditions, signs and tests of one colony. */
import {
  type ConditionId,
  conditionIds,
  conditions,
  type FindingId,
  findingIds,
  findings,
  gradeProbability,
  healthyRates,
  priors,
  regionAdjustments,
  type TestId,
} from "../../knowledge/index.ts";
import type { Season } from "../../units/index.ts";
import type { Region } from "./input.ts";
import { groupDependence, virusWithVarroaRatio } from "./judgements.ts";
import type { Network, NetworkPair } from "./network.ts";
import { harmfulDose, testFindings } from "./weighed-tests.ts";

/** What fixes a network. */
export interface Setting {
  readonly season: Season;
  readonly region: Required<Region>;
  readonly colonyState: "alive" | "dying" | "dead";
  readonly nothingWrong: number;
  /** With this chance a found-or-not test shows nothing, whatever is there. */
  readonly testWeakness?: Readonly<Partial<Record<TestId, number>>>;
}

/** Findings that are signs, in the order of the network. */
export const signIds: readonly FindingId[] = findingIds.filter((id) => findings[id].kind === "sign");
/** Findings that are circumstances: they bear on prior odds and are no part of the network. */
export const circumstanceIds: readonly FindingId[] = findingIds.filter((id) => findings[id].kind === "circumstance");

/** Ids of the network's findings: signs, then what stands for test results. */
export const networkFindingIds: readonly string[] = [...signIds, ...testFindings.map(({ id }) => id)];

/** Groups with an exclusive pair: their findings do not go together, so the joint rule is not for them. */
const exclusiveGroups = new Set(
  findingIds.filter((id) => findings[id].exclusiveWith !== undefined).map((id) => findings[id].group as string),
);

/** The network for a setting. */
export function networkFor(setting: Setting): Network {
  const rates = healthyRates[setting.season];
  const probability = priorProbabilities(setting);
  const group = (id: FindingId) => (exclusiveGroups.has(findings[id].group) ? null : findings[id].group);
  return {
    conditions: conditionIds.map((id) => {
      const p = probability[id];
      return { id, odds: p / (1 - p), rollUp: conditions[id].rollUp };
    }),
    findings: [
      ...signIds.map((id) => ({ id, healthy: gradeProbability[rates[id]], group: group(id) })),
      ...testFindings.map(({ id, healthy, group: shared }) => ({ id, healthy, group: shared })),
    ],
    pairs: [...signPairs(setting.season), ...testPairs(setting.testWeakness ?? {})],
    blocks: [
      {
        lead: conditionIds.indexOf("varroa_pms"),
        followers: [conditionIds.indexOf("dwv_overt"), conditionIds.indexOf("acute_virus_complex")],
        ratio: virusWithVarroaRatio,
      },
    ],
    nothingWrong: setting.nothingWrong,
    dependence: groupDependence,
  };
}

/** Pairs that bear on anything: a grade at or below the healthy rate does not, one that suppresses only below it. */
function signPairs(season: Season): readonly NetworkPair[] {
  return conditionIds.flatMap((id, condition) =>
    signIds.flatMap((sign, finding) => {
      const frequency = conditions[id].frequencies[sign];
      if (frequency === undefined) return [];
      const rate = gradeProbability[frequency.grade];
      const healthy = gradeProbability[healthyRates[season][sign]];
      const suppresses = frequency.suppresses === true;
      return (suppresses ? rate < healthy : rate > healthy) ? [{ condition, finding, rate, suppresses }] : [];
    }),
  );
}

/** A weak test finds a cause less often, down to what it finds without it. */
function testPairs(weakness: NonNullable<Setting["testWeakness"]>): readonly NetworkPair[] {
  return testFindings.flatMap(({ id: finding, test, rates, healthy }, index) =>
    (Object.keys(rates) as ConditionId[]).map((id) => ({
      condition: conditionIds.indexOf(id),
      finding: signIds.length + index,
      rate: healthy + ((rates[id] ?? healthy) - healthy) * (1 - (finding === harmfulDose ? 0 : (weakness[test] ?? 0))),
      suppresses: false,
    })),
  );
}

/** Largest prior probability that a factor may make. Judgement: a prior alone never makes a condition all but certain. */
const largestPrior = 0.6;

/** Prior probability of each condition in the season, as the region and the colony's state change it. */
export function priorProbabilities({ season, region, colonyState }: Setting): Readonly<Record<ConditionId, number>> {
  const result = Object.fromEntries(conditionIds.map((id) => [id, priors[id][season]])) as Record<ConditionId, number>;
  const apply = (key: keyof typeof regionAdjustments) => {
    const { conditions: changed, change, thenRenormalise } = regionAdjustments[key];
    const before = conditionIds.reduce((sum, id) => sum + result[id], 0);
    for (const id of changed) {
      if (change.kind === "factor") result[id] = Math.min(largestPrior, result[id] * change.factor);
      if (change.kind === "winter-percent") result[id] *= change.percent / 100 / priors[id].winter;
    }
    if (!thenRenormalise) return;
    const unchanged = conditionIds.filter((id) => !(changed as readonly ConditionId[]).includes(id));
    const kept = changed.reduce((sum, id) => sum + result[id], 0);
    const scale = (before - kept) / unchanged.reduce((sum, id) => sum + result[id], 0);
    for (const id of unchanged) result[id] = Math.min(largestPrior, result[id] * scale);
  };
  if (region.varroa === "absent") apply("no-varroa");
  if (region.smallHiveBeetle === "absent") apply("no-small-hive-beetle");
  if (region.smallHiveBeetle === "endemic") apply("small-hive-beetle-endemic");
  // "present" is between exotic and endemic; only the endemic factor is known, so its odds stay the judged ones.
  if (region.tropilaelaps === "endemic") apply("tropilaelaps-endemic");
  if (region.vespa === "established") apply("hornet-established");
  if (region.acarapisWoodi === "unknown") apply("acarapis-unknown");
  if (region.acarapisWoodi === "absent") apply("acarapis-absent");
  if (colonyState === "dead") apply("visited-after-death");
  return result;
}
