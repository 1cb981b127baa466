/** The network of the knowledge for one season and region: conditions, signs and tests of one colony. */
import {
  type ConditionId,
  conditionIds,
  type Evidence,
  type FindingId,
  findingIds,
  findings,
  hasEffect,
  priors,
  publishedEvidence,
  regionAdjustments,
  type TestId,
} from "../../knowledge/index.ts";
import { ensure, type Season } from "../../units/index.ts";
import type { Region } from "./input.ts";
import { deadOfNothing, groupDependence, virusWithVarroaRatio } from "./judgements.ts";
import type { Network, NetworkPair } from "./network.ts";
import { spreadOf } from "./start-counts.ts";
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

/** Ids of the network's findings: signs, then what stands for test results, then a programme's own signs. */
export const networkFindingIds = (evidence: Evidence = publishedEvidence): readonly string[] => [
  ...signIds,
  ...testFindings.map(({ id }) => id),
  ...ownSigns(evidence),
];

const ownSigns = ({ findingIds: all, findings: facts }: Evidence): readonly string[] =>
  all.slice(findingIds.length).filter((id) => facts[id]?.kind === "sign");

/** Groups with an exclusive pair: their findings do not go together, so the joint rule is not for them. */
const exclusiveGroups = new Set(
  findingIds.filter((id) => findings[id].exclusiveWith !== undefined).map((id) => findings[id].group as string),
);

/** The network for a setting. */
export function networkFor(setting: Setting, evidence: Evidence = publishedEvidence): Network {
  const probability = priorProbabilities(setting, evidence);
  const signOf = (id: string) => {
    const group = evidence.findings[id]?.group ?? null;
    const rate = evidence.healthy[setting.season][id];
    ensure(rate !== undefined, "evidence.healthy", id, "a rate for each finding");
    return {
      id,
      healthy: rate.value,
      group: exclusiveGroups.has(group ?? "") ? null : group,
      ...spreadOf(rate, "grade"),
    };
  };
  return {
    conditions: evidence.conditionIds.map((id) => {
      const p = probability[id] ?? 0;
      const prior = evidence.priors[id]?.[setting.season];
      const spread = prior === undefined ? {} : spreadOf(prior, "priorOdds");
      return { id, odds: p / (1 - p), rollUp: evidence.conditions[id]?.rollUp ?? null, ...spread };
    }),
    findings: [
      ...signIds.map(signOf),
      ...testFindings.map(({ id, healthy, group: shared }) => ({ id, healthy, group: shared })),
      ...ownSigns(evidence).map(signOf),
    ],
    pairs: [...signPairs(setting.season, evidence), ...testPairs(setting.testWeakness ?? {})],
    blocks: [
      {
        lead: conditionIds.indexOf("varroa_pms"),
        followers: [conditionIds.indexOf("dwv_overt"), conditionIds.indexOf("acute_virus_complex")],
        ratio: virusWithVarroaRatio,
      },
    ],
    nothingWrong: setting.nothingWrong * (setting.colonyState === "dead" ? deadOfNothing : 1),
    dependence: groupDependence,
  };
}

/** Pairs that bear on anything: a grade at or below the healthy rate does not, one that suppresses only below it. */
function signPairs(season: Season, evidence: Evidence): readonly NetworkPair[] {
  const own = ownSigns(evidence).map((id, at) => [id, signIds.length + testFindings.length + at] as const);
  const placeOf = new Map<string, number>([...signIds.map((id, at) => [id, at] as const), ...own]);
  return evidence.conditionIds.flatMap((id, condition) =>
    Object.entries(evidence.frequencies[id] ?? {})
      .flatMap(([sign, frequency]): readonly NetworkPair[] => {
        const finding = placeOf.get(sign);
        if (finding === undefined || !hasEffect(evidence, { condition: id, finding: sign, season })) return [];
        const { value: rate, suppresses } = frequency;
        return [{ condition, finding, rate, suppresses, ...spreadOf(frequency, "grade") }];
      })
      .sort((a, b) => a.finding - b.finding),
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
export function priorProbabilities(
  { season, region, colonyState }: Setting,
  evidence: Evidence = publishedEvidence,
): Readonly<Record<string, number>> {
  const ids = evidence.conditionIds;
  const result: Record<string, number> = Object.fromEntries(
    ids.map((id) => [id, evidence.priors[id]?.[season].value ?? 0]),
  );
  const priorOf = (id: string): number => result[id] ?? 0;
  const apply = (key: keyof typeof regionAdjustments) => {
    const { conditions: changed, change, thenRenormalise } = regionAdjustments[key];
    const before = ids.reduce((sum, id) => sum + priorOf(id), 0);
    for (const id of changed) {
      if (change.kind === "factor") result[id] = Math.min(largestPrior, priorOf(id) * change.factor);
      // As a factor on the published figure, so that a prior of the programme's own is changed in proportion.
      if (change.kind === "winter-percent") result[id] = priorOf(id) * (change.percent / 100 / priors[id].winter);
    }
    if (!thenRenormalise) return;
    const unchanged = ids.filter((id) => !(changed as readonly string[]).includes(id));
    const kept = changed.reduce((sum, id) => sum + priorOf(id), 0);
    const scale = (before - kept) / unchanged.reduce((sum, id) => sum + priorOf(id), 0);
    for (const id of unchanged) result[id] = Math.min(largestPrior, priorOf(id) * scale);
  };
  if (region.varroa === "absent") apply("no-varroa");
  if (region.smallHiveBeetle === "absent") apply("no-small-hive-beetle");
  if (region.smallHiveBeetle === "endemic") apply("small-hive-beetle-endemic");
  // "present" is between exotic and endemic; only the endemic factor is known, so its odds stay the judged ones.
  if (region.tropilaelaps === "endemic") apply("tropilaelaps-endemic");
  if (region.vespa === "established") apply("hornet-established");
  if (region.acarapisWoodi === "unknown") apply("acarapis-unknown");
  if (region.acarapisWoodi === "absent") apply("acarapis-absent");
  if (colonyState === "dead") {
    apply("visited-after-death");
    apply("states-of-the-living");
  }
  return result;
}
