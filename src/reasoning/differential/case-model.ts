/** One case as the engine reckons it: network, what was looked for, circumstances and counts. */
import {
  conditionIds,
  type Evidence,
  type FindingId,
  publishedEvidence,
  type RollUp,
  type TestId,
  tellsApart,
} from "../../knowledge/index.ts";
import type { Problem } from "../../units/index.ts";
import type { Groups } from "./expansion.ts";
import type { ReadCase, TestInput } from "./input.ts";
import { carriersPerClinical, circumstanceLimits, mostCarriers, sporeRates, varroaCarriers } from "./judgements.ts";
import { type LevelReading, levelReadings } from "./levels.ts";
import type { Network, NetworkEvidence } from "./network.ts";
import { networkFindingIds, networkFor } from "./network-for.ts";
import { type Judged, statedNumbers } from "./parameters.ts";
import { spreadOf } from "./start-counts.ts";
import { noteWeakFinds, testWeaknesses } from "./weakness.ts";
import { harmfulDose, type TestFinding, testFindings, weighedTests } from "./weighed-tests.ts";

/** What bears on the answer, one item each: a sign, a circumstance, or a test. */
export interface EvidenceItem {
  readonly kind: "sign" | "circumstance" | "test";
  readonly id: FindingId | TestId;
  /** Present, or found. */
  readonly isPositive: boolean;
}

/** How one looked-for circumstance bears on one condition. */
interface CircumstancePair {
  readonly condition: number;
  readonly finding: FindingId;
  readonly isPresent: boolean;
  readonly rate: number;
  readonly healthy: number;
  /** Standard deviations of the draws, where they are not those of a judged grade. */
  readonly spread?: number;
  readonly healthySpread?: number;
}

/** A case ready to be reckoned. */
export interface CaseModel {
  readonly read: ReadCase;
  readonly evidence: Evidence;
  readonly network: Network;
  readonly rollUps: readonly RollUp[];
  readonly groups: Groups;
  readonly present: readonly number[];
  readonly absent: readonly number[];
  readonly circumstances: readonly CircumstancePair[];
  readonly levels: readonly LevelReading[];
  readonly items: readonly EvidenceItem[];
}

/** Everything judged that the posterior rests on. */
export interface CaseNumbers extends Judged {
  readonly circumstanceRates: Float64Array;
  readonly circumstanceHealthy: Float64Array;
  /** Factor on the odds of carriage below the clinical level, one per counted agent. */
  readonly carriage: Float64Array;
}

/** Roll-up groups, in the order they are listed. */
export const rollUps: readonly RollUp[] = ["varroa_and_viruses", "queen_trouble", "nosema", "brood_disease", "normal"];
const rollUpMembers = ({ conditionIds: ids, conditions }: Evidence): Groups =>
  rollUps.map((rollUp) =>
    Int32Array.from([...ids.keys()].filter((index) => conditions[ids[index] ?? ""]?.rollUp === rollUp)),
  );

const positionsIn = (evidence: Evidence) => {
  const indexOfFinding = new Map(networkFindingIds(evidence).map((id, at) => [id, at]));
  return (ids: readonly string[]) => ids.flatMap((id) => indexOfFinding.get(id) ?? []).sort((a, b) => a - b);
};

/** The case as the engine reckons it. */
export function caseModel(read: ReadCase, problems: Problem[] = [], evidence: Evidence = publishedEvidence): CaseModel {
  const positions = positionsIn(evidence);
  const results = testResults(read);
  noteWeakFinds(read, problems);
  const idsOf = (found: boolean) => results.filter((result) => result.found === found).map(({ id }) => id);
  return {
    read,
    evidence,
    network: networkFor({ ...read, testWeakness: testWeaknesses(read) }, evidence),
    rollUps,
    groups: rollUpMembers(evidence),
    present: positions([...read.present, ...idsOf(true)]),
    absent: positions([...read.absent, ...idsOf(false)]),
    circumstances: circumstancePairs(read, evidence),
    levels: levelReadings(read, problems),
    items: evidenceItems(read, results, evidence),
  };
}

/** The same case had one item of evidence not been looked at. */
export function withoutItem(model: CaseModel, { kind, id }: EvidenceItem): CaseModel {
  if (kind === "circumstance") {
    return { ...model, circumstances: model.circumstances.filter(({ finding }) => finding !== id) };
  }
  const positions = positionsIn(model.evidence);
  const gone = new Set(
    kind === "sign"
      ? positions([id])
      : positions(testFindings.filter(({ test }) => test === id).map((each) => each.id)),
  );
  const kept = (finding: number) => !gone.has(finding);
  const left = { ...model, present: model.present.filter(kept), absent: model.absent.filter(kept) };
  if (kind !== "test") return left;
  const read = { ...model.read, tests: model.read.tests.filter(({ test }) => test !== id) };
  return { ...left, read, levels: levelReadings(read, []) };
}

function circumstancePairs({ season, present, absent }: ReadCase, evidence: Evidence): readonly CircumstancePair[] {
  return evidence.findingIds.flatMap((id) => {
    const finding = id as FindingId;
    const isPresent = present.includes(finding);
    if (evidence.findings[id]?.kind !== "circumstance" || (!isPresent && !absent.includes(finding))) return [];
    const well = evidence.healthy[season][id];
    if (well === undefined) return [];
    const { spread: healthySpread } = spreadOf(well, "grade");
    return evidence.conditionIds.flatMap((cause, condition) => {
      const frequency = evidence.frequencies[cause]?.[id];
      if (frequency === undefined || frequency.value <= well.value) return [];
      return [
        {
          ...{ condition, finding, isPresent, rate: frequency.value, healthy: well.value },
          ...spreadOf(frequency, "grade"),
          ...(healthySpread === undefined ? {} : { healthySpread }),
        },
      ];
    });
  });
}

interface TestResult {
  readonly id: string;
  readonly test: TestId;
  readonly found: boolean;
}

/** Test results as states of the findings that stand for them. Of several results of one test, "found" prevails. */
function testResults({ tests }: ReadCase): readonly TestResult[] {
  return testFindings.flatMap(({ id, test, which }) => {
    const made = tests.filter((each) => each.test === test);
    if (made.length === 0) return [];
    if (weighedTests[test]?.model === "found") return foundResults({ id, test, which }, made);
    const most = Math.max(...made.map(({ sporesMillionsPerBee }) => sporesMillionsPerBee ?? 0));
    if (id === "spores-any") return [{ id, test, found: most > 0 }];
    return most > 0 ? [{ id, test, found: most >= sporeRates.lineMillions }] : [];
  });
}

/**
 * A result that names what was found is one answer for each thing it could have found; one that does not is an answer
 * to whether anything was found. The dose is asked only of what was found.
 */
function foundResults(
  { id, test, which }: Pick<TestFinding, "id" | "test" | "which">,
  made: readonly TestInput[],
): readonly TestResult[] {
  const finds = made.filter(({ result }) => result === "found");
  if (id === harmfulDose) {
    const told = finds.flatMap((each) => each.harmfulDose ?? []);
    return told.length === 0 ? [] : [{ id, test, found: told.includes(true) }];
  }
  const isNamed = tellsApart(test).length > 0 && finds.every((each) => each.which !== undefined);
  if (isNamed !== (which !== null)) return [];
  return [{ id, test, found: which === null ? finds.length > 0 : finds.some((each) => each.which?.includes(which)) }];
}

function evidenceItems(read: ReadCase, results: readonly TestResult[], evidence: Evidence): readonly EvidenceItem[] {
  const item = (id: FindingId, isPositive: boolean): EvidenceItem => ({
    kind: evidence.findings[id]?.kind ?? "sign",
    id,
    isPositive,
  });
  const counted = (id: string) =>
    read.tests.some((each) => each.test === id && ((each.positive ?? 0) > 0 || (each.mites ?? 0) > 0));
  const tests = [...new Set(read.tests.map(({ test }) => test as TestId))].map(
    (id): EvidenceItem => ({
      kind: "test",
      id,
      isPositive:
        counted(id) ||
        results.some(({ test, found }) => test === id && found) ||
        read.tests.some((each) => each.test === id && each.result === "found"),
    }),
  );
  return [
    ...read.present.map((id) => item(id, true)),
    ...read.absent.map((id) => item(id, false)),
    ...tests.sort((a, b) => (a.id < b.id ? -1 : 1)),
  ];
}

/** The numbers as the knowledge states them. */
export const statedCase = ({ network, circumstances, levels }: CaseModel): CaseNumbers => ({
  ...statedNumbers(network),
  circumstanceRates: Float64Array.from(circumstances, ({ rate }) => rate),
  circumstanceHealthy: Float64Array.from(circumstances, ({ healthy }) => healthy),
  carriage: new Float64Array(levels.length).fill(1),
});

/** The evidence with what circumstances and counts make of the prior odds. */
export function evidenceOf(model: CaseModel, numbers: CaseNumbers): NetworkEvidence {
  const oddsFactor = circumstanceFactors(model, numbers);
  for (const [index, reading] of model.levels.entries()) {
    const at = conditionIds.indexOf(reading.condition);
    const { none, background, clinical } = reading.likelihood;
    const carriers = carrierShare(model, numbers, index);
    oddsFactor[at] = (oddsFactor[at] ?? 1) * (clinical / ((1 - carriers) * none + carriers * background));
  }
  return { present: model.present, absent: model.absent, oddsFactor };
}

/**
 * What the circumstances make of each condition's odds: rate over healthy rate when present, the complements when
 * absent; each at most tenfold up or down, all together at most thirtyfold.
 */
export function circumstanceFactors(model: CaseModel, numbers: CaseNumbers): Float64Array {
  const { one, together } = circumstanceLimits;
  const factors = new Float64Array(model.network.conditions.length).fill(1);
  for (const [index, { condition, isPresent }] of model.circumstances.entries()) {
    const rate = numbers.circumstanceRates[index] ?? 1;
    const healthy = numbers.circumstanceHealthy[index] ?? 1;
    const ratio = isPresent ? rate / healthy : (1 - rate) / (1 - healthy);
    factors[condition] = (factors[condition] ?? 1) * Math.min(one, Math.max(1 / one, ratio));
  }
  return factors.map((each) => Math.min(together, Math.max(1 / together, each)));
}

/** Share of colonies without clinical signs of the agent that carry it all the same. */
export function carrierShare({ levels, read }: CaseModel, numbers: CaseNumbers, index: number): number {
  const factor = numbers.carriage[index] ?? 1;
  const { condition } = levels[index] as LevelReading;
  if (condition === "varroa_pms") {
    const odds = (share: number) => (share / (1 - share)) * factor;
    const carried = odds(varroaCarriers[read.region.varroa]);
    return carried / (1 + carried);
  }
  const odds = numbers.odds[conditionIds.indexOf(condition)] ?? 0;
  return Math.min(mostCarriers, odds * carriersPerClinical.tracheal_mites * factor);
}

/** Share of the colonies without clinical signs that carry the agent, once the counts are known. */
export function carriedShare(model: CaseModel, numbers: CaseNumbers, index: number): number {
  const { none, background } = (model.levels[index] as LevelReading).likelihood;
  const carriers = carrierShare(model, numbers, index);
  const carried = carriers * background;
  return carried / (carried + (1 - carriers) * none);
}
