/** Which rule for findings of one group keeps probabilities calibrated, on cases in which groups go together otherwise. */
import type { FindingId } from "../../src/knowledge/index.ts";
import { drawNormal, normalCdf, type RandomStream, randomStream } from "../../src/numerics/index.ts";
import { weightsOf } from "../../src/reasoning/differential/best-first.ts";
import { caseModel } from "../../src/reasoning/differential/case-model.ts";
import { type Calibration, calibration } from "../../src/reasoning/differential/index.ts";
import { findingsOnly, type Network } from "../../src/reasoning/differential/network.ts";
import { signIds } from "../../src/reasoning/differential/network-for.ts";
import { readInput } from "../../src/reasoning/differential/read-input.ts";
import type { Season } from "../../src/units/index.ts";
import { worthSaying } from "./figures.ts";
import { drawnLook } from "./looks.ts";
import { givenSets, membersOf, smallSets, tied } from "./pair-sets.ts";

/** How findings of a group are put together. */
export type Rule = "independent" | "the joint rule" | "strongest and 0.3";
export const rules: readonly Rule[] = ["independent", "the joint rule", "strongest and 0.3"];

export interface RuleTest {
  readonly cases: number;
  readonly seed: number;
  readonly signs: number;
  /** Correlation of the normal variables behind two findings of a group, given the causes. */
  readonly correlation: number;
}

/** What each rule said of the conditions it gave `worthSaying` or more, against what held. */
export interface RuleResult {
  readonly rule: Rule;
  readonly calibration: Calibration;
  /** Mean of −log2 of the probability given to the set of causes that held. */
  readonly bitsLost: number;
}

const seasons: readonly Season[] = ["winter", "spring", "summer", "autumn"];
const sets = smallSets(45, 2);

/**
 * Cases from a generator that is none of the rules: given the causes, each sign has its noisy-OR probability, and signs
 * of one group are thresholds of normal variables that share a part. At most two causes; grades as stated.
 */
export function testedRules(test: RuleTest): readonly RuleResult[] {
  const worlds = seasons.map(worldOf);
  const said = rules.map(() => ({ stated: [] as number[], outcomes: [] as boolean[], bits: 0 }));
  for (let number = 0; number < test.cases; number++) {
    const stream = randomStream({ seed: test.seed, stream: number });
    const world = worlds[number % worlds.length] as World;
    const held = drawnSet(world.prior, stream);
    const looked = drawnLook(test.signs, stream).map((id: FindingId) => signIds.indexOf(id));
    const isPresent = copula(world, held, looked, test.correlation, stream);
    const causes = membersOf(sets, held);
    for (const [at, rule] of rules.entries()) {
      const likelihood = likelihoods[rule](world, looked, isPresent);
      const weight = likelihood.map((each, set) => each * (world.prior[set] as number));
      const total = weight.reduce((sum, each) => sum + each, 0);
      const into = said[at] as (typeof said)[number];
      into.bits -= Math.log2((weight[held] as number) / total);
      for (const [condition, each] of sharesOf(weight).entries()) {
        if (each / total < worthSaying) continue;
        into.stated.push(each / total);
        into.outcomes.push(causes.includes(condition));
      }
    }
  }
  return said.map(({ bits, ...forecasts }, at) => {
    const result = calibration(forecasts);
    if (!result.ok) throw new Error("a rule said nothing");
    return { rule: rules[at] as Rule, calibration: result.value, bitsLost: bits / test.cases };
  });
}

interface World {
  readonly network: Network;
  /** Probability of each set. */
  readonly prior: Float64Array;
  /** Probability of each sign given each set, each sign by itself: entry `sign`. */
  readonly present: readonly Float64Array[];
}

function worldOf(season: Season): World {
  const read = readInput({ season, findings: {} });
  if (!read.ok) throw new Error("the empty case does not fit");
  const { network } = caseModel(read.value);
  const alone = tied(network, 0);
  const weight = weightsOf(alone, findingsOnly(network, [], []), sets);
  const total = weight.reduce((sum, each) => sum + each, 0);
  const present = signIds.map((_, sign) => givenSets(network, alone, sets, { present: [sign], absent: [] }));
  return { network, prior: weight.map((each) => each / total), present };
}

function drawnSet(prior: Float64Array, stream: RandomStream): number {
  let left = stream.next();
  for (const [set, each] of prior.entries()) {
    left -= each;
    if (left < 0) return set;
  }
  return 0;
}

/** Signs as thresholds of normal variables; those of a group share a normal variable of the given part. */
function copula(
  { network, present }: World,
  set: number,
  looked: readonly number[],
  correlation: number,
  stream: RandomStream,
): readonly boolean[] {
  const shared = new Map<string, number>();
  return looked.map((sign) => {
    const group = network.findings[sign]?.group ?? null;
    let common = drawNormal(stream);
    if (group !== null) {
      common = shared.get(group) ?? common;
      shared.set(group, common);
    }
    const own = drawNormal(stream);
    const z = group === null ? own : Math.sqrt(correlation) * common + Math.sqrt(1 - correlation) * own;
    return normalCdf(z) < ((present[sign] as Float64Array)[set] as number);
  });
}

type Likelihood = (world: World, looked: readonly number[], isPresent: readonly boolean[]) => Float64Array;

const ofModel =
  (dependence: (network: Network) => number): Likelihood =>
  ({ network }, looked, isPresent) =>
    givenSets(network, tied(network, dependence(network)), sets, {
      present: looked.filter((_, at) => isPresent[at]),
      absent: looked.filter((_, at) => !isPresent[at]),
    });

const likelihoods: Readonly<Record<Rule, Likelihood>> = {
  independent: ofModel(() => 0),
  "the joint rule": ofModel(({ dependence }) => dependence),
  "strongest and 0.3": strongestInFull,
};

/** In each group the sign that tells a set most from the empty one counts in full, each other one at 0.3 of its bits. */
function strongestInFull(
  { network, present }: World,
  looked: readonly number[],
  isPresent: readonly boolean[],
): Float64Array {
  const groups = new Map<string, number[]>();
  for (const [at, sign] of looked.entries()) {
    const key = network.findings[sign]?.group ?? `alone ${sign}`;
    groups.set(key, [...(groups.get(key) ?? []), at]);
  }
  const log = new Float64Array(sets.count);
  for (const members of groups.values()) {
    for (let set = 0; set < sets.count; set++) {
      let [all, strongest] = [0, 0];
      for (const at of members) {
        const chance = present[looked[at] as number] as Float64Array;
        const of = (each: number) => (isPresent[at] ? (chance[each] as number) : 1 - (chance[each] as number));
        const ratio = Math.log(of(set) / of(0));
        all += ratio;
        if (Math.abs(ratio) > Math.abs(strongest)) strongest = ratio;
      }
      log[set] = (log[set] as number) + strongest + 0.3 * (all - strongest);
    }
  }
  return log.map(Math.exp);
}

/** Weight of the sets that hold each condition. */
function sharesOf(weight: Float64Array): Float64Array {
  const shares = new Float64Array(45);
  for (let set = 1; set < sets.count; set++) {
    for (const member of membersOf(sets, set)) shares[member] = (shares[member] as number) + (weight[set] as number);
  }
  return shares;
}
