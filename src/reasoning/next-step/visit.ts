/** The best set of looks for one visit: what they tell together, with what they have in common counted once. */
import { type Evidence, type FindingId, type TestId, tests } from "../../knowledge/index.ts";
import { type Belief, type Candidate, groupOfTest } from "../differential/index.ts";
import { resultsOf } from "./value.ts";

/** A look or field test of the visit. */
export interface VisitStep<F extends string = FindingId> {
  readonly step: F | TestId;
  readonly kind: "look" | "test";
  readonly minutes: number;
  /** Bits that the visit tells with this step and those before it. */
  readonly bitsTogether: number;
}

/** What to look at within so many minutes. */
export interface Visit<F extends string = FindingId> {
  readonly steps: readonly VisitStep<F>[];
  /** Mutual information between all the results and the set of conditions, in bits. */
  readonly bits: number;
  readonly minutes: number;
}

/** Sets that the visit is reckoned over: the heaviest, their probability scaled to one. */
const setsWeighed = 600;
/** Steps in a visit at most: results multiply. */
const mostSteps = 6;
/** Minutes beside each step in a visit one is on anyway: to write it down. Judgement. */
const minutesBeside = 1;

export interface Weighed {
  readonly candidate: Candidate;
  readonly minutes: number;
  readonly group: string;
  /** For each result, its probability given each weighed set. */
  readonly results: readonly Float64Array[];
  /** Entropy of the result given the set, averaged over the sets. */
  readonly noise: number;
}

/**
 * Greedy choice: the step with most further bits per minute, as long as it fits.
 *
 * Given the set of conditions the results of steps from different groups of findings are independent, so the joint
 * information of a choice is exact over the weighed sets: entropy of all results together less that of each given the
 * set. Of a group that goes together one step is taken. Greed is near the best where steps take alike long, and no more
 * than a rule of thumb where they do not.
 *
 * `within`: minutes of the visit.
 */
export function visitOf(belief: Belief, candidates: readonly Candidate[], within: number): Visit {
  const heaviest = heaviestSets(belief);
  const weighed = candidates.map((candidate) =>
    weighedAt(heaviest, candidate, { results: resultsOf(candidate), evidence: belief.evidence }),
  );
  return visitFrom(heaviest, weighed, within);
}

/**
 * The same from steps that were weighed at the heaviest sets already. A step that checks what was reported, if there is
 * one, comes before any other, so that the visit begins where the next look is.
 */
export function visitFrom(
  heaviest: Heaviest,
  weighed: readonly Weighed[],
  within: number,
  checking: string | null = null,
): Visit {
  let open = weighed.filter(({ candidate }) => isOfTheYard(candidate));
  // Chance of every combination of results so far, set by set; at first there is one: nothing looked at.
  let joint: readonly Float64Array[] = [heaviest.probability];
  let [minutes, noise, bits] = [0, 0, 0];
  const steps: VisitStep[] = [];
  while (steps.length < mostSteps) {
    const fitting = open.filter((each) => minutes + each.minutes <= within);
    const due = steps.length === 0 ? fitting.filter(({ candidate: { id } }) => id === checking) : [];
    const [best] = (due.length > 0 ? due : fitting)
      .map((each) => ({ each, gain: entropyWith(joint, each.results) - noise - each.noise - bits }))
      .toSorted((a, b) => b.gain / (b.each.minutes + minutesBeside) - a.gain / (a.each.minutes + minutesBeside));
    if (best === undefined || (due.length === 0 && best.gain < smallestGain)) break;
    joint = split(joint, best.each.results);
    noise += best.each.noise;
    minutes += best.each.minutes;
    bits += best.gain;
    const { id, kind } = best.each.candidate;
    steps.push({ step: id, kind, minutes: best.each.minutes, bitsTogether: bits });
    open = open.filter(({ group }) => group !== best.each.group);
  }
  return { steps, bits, minutes };
}

/** A step that tells less than this is not worth its line. Judgement. */
const smallestGain = 0.005;

/** Looks, and tests that are done and read in the yard. */
const isOfTheYard = ({ kind, id, dependsOn }: Candidate): boolean =>
  kind === "look" ||
  (dependsOn === "set" && tests[id as TestId].costClass.low === 1 && tests[id as TestId].days.high === 0);

export interface Heaviest {
  readonly index: Int32Array;
  readonly probability: Float64Array;
}

export function heaviestSets({ probability }: Belief): Heaviest {
  const least = probability.toSorted()[Math.max(0, probability.length - setsWeighed)] ?? 0;
  const index = Int32Array.from([...probability.keys()].filter((set) => (probability[set] as number) >= least)).slice(
    0,
    setsWeighed,
  );
  const weights = Float64Array.from(index, (set) => probability[set] ?? 0);
  const total = weights.reduce((sum, each) => sum + each, 0);
  return { index, probability: weights.map((each) => each / total) };
}

export function weighedAt(
  { index, probability }: Heaviest,
  candidate: Candidate,
  given: { readonly results: readonly Float64Array[]; readonly evidence: Evidence },
): Weighed {
  const { id, kind } = candidate;
  const finding = given.evidence.findings[id];
  const results = given.results.map((result) => picked(result, index));
  const noise = results.reduce((sum, result) => sum + meanSurprise(result, probability), 0);
  return {
    candidate,
    minutes: kind === "look" ? (finding?.minutes ?? 0) : tests[id as TestId].minutes.value,
    group: kind === "look" ? (finding?.group ?? id) : (groupOfTest(id as TestId) ?? id),
    results,
    noise,
  };
}

function picked(values: Float64Array, index: Int32Array): Float64Array {
  const own = new Float64Array(index.length);
  for (let at = 0; at < index.length; at++) own[at] = values[index[at] as number] as number;
  return own;
}

function meanSurprise(values: Float64Array, probability: Float64Array): number {
  let sum = 0;
  for (let at = 0; at < values.length; at++) sum += (probability[at] as number) * surprise(values[at] as number);
  return sum;
}

/** p times the surprise of p. */
const surprise = (p: number): number => (p > 0 ? -p * Math.log2(p) : 0);

const split = (joint: readonly Float64Array[], results: readonly Float64Array[]): readonly Float64Array[] =>
  joint.flatMap((before) => results.map((result) => before.map((each, at) => each * (result[at] ?? 0))));

/** Entropy of all results together, were this step taken too. */
const entropyWith = (joint: readonly Float64Array[], results: readonly Float64Array[]): number =>
  joint.reduce(
    (sum, before) =>
      sum +
      results.reduce((inner, result) => {
        let chance = 0;
        for (let at = 0; at < before.length; at++) chance += (before[at] as number) * (result[at] as number);
        return inner + surprise(chance);
      }, 0),
    0,
  );
