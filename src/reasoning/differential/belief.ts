/** What is believed of one colony, set by set, and what each further look or test would show: for the next step. */

import { conditionIds, type Evidence, type FindingId, publishedEvidence, type TestId } from "../../knowledge/index.ts";
import { answered, blocked, problem, type Result } from "../../units/index.ts";
import { bestSets, byProbability, type SetList } from "./best-first.ts";
import { type CaseModel, carriedShare, caseModel, evidenceOf, statedCase } from "./case-model.ts";
import { checkedCase } from "./checked-case.ts";
import type { AnyInput, TestInput } from "./input.ts";
import { sporeRates } from "./judgements.ts";
import { possibleCount, possibleLevels } from "./levels.ts";
import type { NetworkEvidence } from "./network.ts";
import type { Setting } from "./network-for.ts";
import { type Parameters, parametersOf } from "./parameters.ts";
import { statedPosterior } from "./reasons.ts";
import { setsForPosterior } from "./sets-posterior.ts";
import { byGroup, type GroupEvidence, isSuppressed, levelOf } from "./terms.ts";
import { testFindings, weighedTests } from "./weighed-tests.ts";

/** A look or test that was not made, and how its results depend on the state. */
export type Candidate =
  | {
      readonly kind: "look" | "test";
      readonly id: FindingId | TestId;
      readonly dependsOn: "set";
      /** For each result, its probability given each set; the results of a set sum to one. Reckoned when asked for. */
      readonly results: () => readonly Float64Array[];
      /** Of a test: as it would be with one of these results. A look has none, its results are present and absent. */
      readonly made?: Made;
    }
  | {
      readonly kind: "test";
      readonly id: TestId;
      readonly dependsOn: "condition";
      /** Index of the condition whose clinical level the count bears on. */
      readonly condition: number;
      /** Probability of each result with the condition at the clinical level, and without. */
      readonly withCondition: Float64Array;
      readonly without: Float64Array;
      readonly made?: Made;
    };

/** A test as it would be on record with the result of this index; counts rise with the index. */
type Made = (result: number) => MadeTest;
/** A test that is not made, with a result it could have. */
export type MadeTest = TestInput & { readonly test: TestId };

/** Belief over sets of conditions. */
export interface Belief {
  /** Season, region and state of the colony. */
  readonly setting: Setting;
  readonly evidence: Evidence;
  readonly conditions: readonly string[];
  readonly sets: SetList;
  /** Probability of each listed set among those listed. */
  readonly probability: Float64Array;
  /** Posterior mass of the sets that are not listed. */
  readonly uncovered: number;
  readonly candidates: readonly Candidate[];
}

/** The posterior mass at which the list is long enough, and the sets listed at most. */
const listed = { mass: 0.9, sets: 80_000 } as const;

/**
 * The sets that carry the belief, and every finding and weighed test that was not looked at.
 *
 * @returns the belief, or the problems of the input
 */
export function belief(input: AnyInput, evidenceInUse: Evidence = publishedEvidence): Result<Belief> {
  const read = checkedCase(input, evidenceInUse);
  if (!read.ok) return read;
  const model = caseModel(read.value.checked, [], evidenceInUse);
  const posterior = statedPosterior(model);
  if (posterior === null) return blocked(problem("evidence-contradicts-model", "blocked", "findings"));
  const numbers = statedCase(model);
  const parameters = parametersOf(model.network, numbers);
  const evidence = evidenceOf(model, numbers);
  const order = byProbability(posterior.condition);
  // With too many present findings the posterior itself rests on a list: the same list serves, and leaves out the same.
  const isListed = posterior.method === "sets";
  const all = isListed ? Number.POSITIVE_INFINITY : posterior.total;
  const stop = { sets: isListed ? setsForPosterior : listed.sets, weight: listed.mass * all };
  const sets = bestSets(parameters, evidence, order, stop);
  const probability = sets.weight.map((each) => each / sets.total);
  const uncovered = isListed ? posterior.neglectedMass : Math.max(0, 1 - sets.total / all);
  return answered({
    setting: read.value.checked,
    evidence: evidenceInUse,
    conditions: evidenceInUse.conditionIds,
    sets,
    probability,
    uncovered,
    candidates: candidatesOf(model, { parameters, evidence, sets }),
  });
}

/** Every finding and weighed test that was not looked at, with its results given each of the sets. */
export const candidatesOf = (
  model: CaseModel,
  {
    parameters,
    evidence,
    sets,
  }: { readonly parameters: Parameters; readonly evidence: NetworkEvidence; readonly sets: SetList },
): readonly Candidate[] => {
  const asked = setsAsked(parameters, evidence, sets);
  return [...looks(model, asked), ...tests(model, asked)];
};

type SetCandidate = Extract<Candidate, { dependsOn: "set" }>;

function looks(model: CaseModel, asked: SetsAsked): SetCandidate[] {
  const { read, network } = model;
  const { findingIds, findings } = model.evidence;
  const isOpen = (id: FindingId) => {
    const { kind, derived, exclusiveWith } = findings[id] ?? { kind: null, derived: true, exclusiveWith: null };
    const looked = read.present.includes(id) || read.absent.includes(id);
    const isRuledOut = exclusiveWith !== null && read.present.includes(exclusiveWith as FindingId);
    return kind === "sign" && !looked && !derived && !isRuledOut;
  };
  return (findingIds as readonly FindingId[]).filter(isOpen).map((id) => {
    const results = () => {
      const at = network.findings.findIndex((each) => each.id === id);
      const present = presentGiven(asked, at);
      return [present, present.map((each) => 1 - each)];
    };
    return { kind: "look", id, dependsOn: "set", results };
  });
}

function tests(model: CaseModel, asked: SetsAsked): Candidate[] {
  const numbers = statedCase(model);
  const isDone = (id: TestId) => model.items.some((item) => item.id === id);
  return (Object.keys(weighedTests) as TestId[]).flatMap((id): Candidate[] => {
    const weighed = weighedTests[id];
    // Opened brood bears on a level and on finds at once: what its results would be is not reckoned here.
    if (isDone(id) || weighed === undefined || id === "uncap-brood") return [];
    if (weighed.model === "found" || weighed.model === "spores") {
      const answers = testFindings
        .filter(({ test, which }) => test === id && which === null)
        .map((each) => model.network.findings.findIndex(({ id: other }) => other === each.id));
      const results = () => testResults(answers.map((finding) => presentGiven(asked, finding)));
      return [
        { kind: "test", id, dependsOn: "set", results, made: weighed.model === "spores" ? sporesIn : foundBy(id) },
      ];
    }
    const at = model.levels.findIndex(({ condition }) =>
      weighed.model === "varroa-count" ? condition === "varroa_pms" : condition === "tracheal_mites",
    );
    const reading = model.levels[at];
    // A second count of the same agent shares the colony's level with the first; it is not offered here.
    if (reading === undefined || reading.tests.length > 0) return [];
    const carried = carriedShare(model, numbers, at);
    const counts = possibleLevels(model.read, id);
    if (counts.length === 0) return [];
    const made = (result: number) => possibleCount(id, result) ?? foundBy(id)(result);
    return [
      {
        kind: "test",
        id,
        dependsOn: "condition",
        condition: conditionIds.indexOf(reading.condition),
        withCondition: Float64Array.from(counts, ({ clinical }) => clinical),
        without: Float64Array.from(counts, ({ none, background }) => (1 - carried) * none + carried * background),
        made,
      },
    ];
  });
}

const foundBy =
  (test: TestId): Made =>
  (result) => ({ test, result: result === 0 ? "found" : "none-found" });

/** None, some below the line, and the line reached; all below it say the same, a tenth below stands for them. */
const sporesIn: Made = (result) => ({
  test: "spore-count",
  sporesMillionsPerBee: ([0, 0.9, 1][result] ?? 1) * sporeRates.lineMillions,
});

/** Results of a test from the findings that stand for it: found or not; or none, some, and enough. */
function testResults([first, second]: readonly Float64Array[]): readonly Float64Array[] {
  if (first === undefined) return [];
  const none = first.map((each) => 1 - each);
  if (second === undefined) return [first, none];
  const enough = first.map((each, set) => each * (second[set] as number));
  return [none, first.map((each, set) => each - (enough[set] as number)), enough];
}

/** What the sets say of findings not looked for; likelihoods of a group are reckoned once for all its findings. */
interface SetsAsked {
  readonly parameters: Parameters;
  /** Probability of what was looked for in one group, for each set. */
  readonly likelihood: (found: GroupEvidence) => Float64Array;
  /** What was looked for in the group, and its probability for each set. */
  readonly known: (group: number) => { readonly found: GroupEvidence; readonly likelihood: Float64Array };
}

function setsAsked(parameters: Parameters, evidence: NetworkEvidence, sets: SetList): SetsAsked {
  const looked = new Map(byGroup(parameters, evidence).map((each) => [each.group, each]));
  const kept = new Map<number, { found: GroupEvidence; likelihood: Float64Array }>();
  const signed = new Float64Array(sets.count);
  const likelihood = (found: GroupEvidence) => groupLikelihood(parameters, found, sets, signed);
  const known = (group: number) => {
    const before = kept.get(group);
    if (before !== undefined) return before;
    const found = looked.get(group) ?? { group, present: [], absent: [], absentSuppressed: [] };
    const made = { found, likelihood: likelihood(found) };
    kept.set(group, made);
    return made;
  };
  return { parameters, likelihood, known };
}

/** Probability that a finding is present, for each set, given the set and what else of its group was looked for. */
function presentGiven({ parameters, likelihood, known }: SetsAsked, finding: number): Float64Array {
  const { found, likelihood: before } = known(parameters.groupOf[finding] ?? 0);
  const field = isSuppressed(parameters, finding) ? "absentSuppressed" : "absent";
  const absent = likelihood({ ...found, [field]: [...found[field], finding] });
  for (let set = 0; set < absent.length; set++) {
    const all = before[set] as number;
    absent[set] = all > 0 ? Math.min(1, Math.max(0, 1 - (absent[set] as number) / all)) : 0;
  }
  return absent;
}

/** Probability of what was looked for in one group, for each set; `signed` is room to work in. */
function groupLikelihood(
  parameters: Parameters,
  found: GroupEvidence,
  sets: SetList,
  signed: Float64Array,
): Float64Array {
  const { conditions } = parameters;
  const { options, coefficient, factor } = levelOf(parameters, found);
  const sum = new Float64Array(sets.count);
  for (let option = 0; option < options; option++) {
    const start = option * conditions;
    signed[0] = coefficient[option] as number;
    sum[0] = (sum[0] as number) + (signed[0] as number);
    for (let set = 1; set < sets.count; set++) {
      const value =
        (signed[sets.parent[set] as number] as number) * (factor[start + (sets.added[set] as number)] as number);
      signed[set] = value;
      sum[set] = (sum[set] as number) + value;
    }
  }
  return sum;
}

/** Posterior of each condition at the stated grades, exact as in the ranking but without ranges; null where none can be. */
export function statedPosteriors(input: AnyInput, evidence: Evidence = publishedEvidence): Float64Array | null {
  const read = checkedCase(input, evidence);
  return read.ok ? (statedPosterior(caseModel(read.value.checked, [], evidence), [])?.condition ?? null) : null;
}
