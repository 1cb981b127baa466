/** Whole cases against brute force: signs, circumstances, tests and levels together, set by set and level by level. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type ConditionId, conditionIds, type FindingId, findings } from "../../knowledge/index.ts";
import type { Season } from "../../units/index.ts";
import { likelihood } from "./brute-force.ts";
import { type CaseModel, caseModel, circumstanceFactors, evidenceOf, statedCase } from "./case-model.ts";
import { type DifferentialInput, differential } from "./index.ts";
import type { TestInput } from "./input.ts";
import { carriersPerClinical, mostCarriers, varroaCarriers } from "./judgements.ts";
import { findingsOnly, type Network } from "./network.ts";
import { circumstanceIds, signIds } from "./network-for.ts";
import { quickscore } from "./noisy-or.ts";
import { parametersOf } from "./parameters.ts";
import { posteriorOf } from "./posterior.ts";
import { readInput } from "./read-input.ts";

const counted: readonly ConditionId[] = ["tracheal_mites", "varroa_pms"];

/** The case with all conditions but a few struck out: few enough to take every set. */
function fewConditions(input: DifferentialInput, others: readonly number[]): CaseModel {
  const read = readInput(input);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const model = caseModel(read.value);
  const kept = new Set([...counted.map((id) => conditionIds.indexOf(id)), ...others]);
  const conditions = model.network.conditions.map((each, index) => (kept.has(index) ? each : { ...each, odds: 0 }));
  return { ...model, network: { ...model.network, conditions } };
}

/** Posterior of each condition: every set, and for each agent every level, weighed as the story of the model tells. */
function bySetsAndLevels(model: CaseModel): Float64Array {
  const { network, levels, read } = model;
  const odds = network.conditions.map((condition) => condition.odds);
  const kept = [...odds.keys()].filter((index) => (odds[index] ?? 0) > 0);
  const factor = circumstanceFactors(model, statedCase(model));
  const carriers = levels.map(({ condition }) =>
    condition === "varroa_pms"
      ? varroaCarriers[read.region.varroa]
      : Math.min(mostCarriers, (odds[conditionIds.indexOf(condition)] ?? 0) * carriersPerClinical.tracheal_mites),
  );
  const sets = Array.from({ length: 2 ** kept.length }, (_, state) => kept.filter((_c, at) => (state >> at) & 1));
  const prior = sets.map((members) => priorOf(network, members));
  const others = prior.slice(1).reduce((sum, each) => sum + each, 0);
  const nothingWrong = network.nothingWrong ?? 0;
  prior[0] = (nothingWrong * others) / (1 - nothingWrong);
  const result = new Float64Array(odds.length);
  let total = 0;
  for (const [index, members] of sets.entries()) {
    let weight = (prior[index] ?? 0) * likelihood(network, members, findingsOnly(network, model.present, model.absent));
    for (const member of members) weight *= factor[member] ?? 1;
    for (const [agent, { condition, likelihood: seen }] of levels.entries()) {
      const carried = carriers[agent] ?? 0;
      const isClinical = members.includes(conditionIds.indexOf(condition));
      weight *= isClinical ? seen.clinical : (1 - carried) * seen.none + carried * seen.background;
    }
    total += weight;
    for (const member of members) result[member] = (result[member] ?? 0) + weight;
  }
  return result.map((each) => each / total);
}

/** Prior weight of a set: each condition by itself, the viruses by whether varroa disease is there. */
function priorOf({ conditions, blocks }: Network, members: readonly number[]): number {
  const probability = (index: number) => {
    const odds = conditions[index]?.odds ?? 0;
    return odds / (1 + odds);
  };
  return conditions.reduce((product, _condition, index) => {
    const block = blocks.find(({ followers }) => followers.includes(index));
    let p = probability(index);
    if (block !== undefined) {
      const lead = probability(block.lead);
      p /= block.ratio * lead + 1 - lead;
      if (members.includes(block.lead)) p *= block.ratio;
    }
    return product * (members.includes(index) ? p : 1 - p);
  }, 1);
}

const state = fc.constantFrom("present" as const, "absent" as const);
const found = fc.constantFrom("found" as const, "none-found" as const);
const upTo = (most: number) => fc.integer({ min: 0, max: most });
const aTest: fc.Arbitrary<TestInput> = fc.oneof(
  upTo(40).map((mites): TestInput => ({ test: "varroa-wash", mites, bees: 300 })),
  upTo(25).map((positive): TestInput => ({ test: "tracheal-dissection", positive, examined: 50 })),
  fc.constantFrom(0, 0.5, 3).map((sporesMillionsPerBee): TestInput => ({ test: "spore-count", sporesMillionsPerBee })),
  fc
    .tuple(fc.constantFrom("gut-pull", "rope-test", "efb-strip", "pooled-pcr", "test-frame", "milk-test"), found)
    .map(([test, result]): TestInput => ({ test, result })),
);
const aCase = fc.record({
  season: fc.constantFrom<Season>("winter", "spring", "summer", "autumn"),
  signs: fc.uniqueArray(fc.tuple(fc.constantFrom(...signIds), state), { selector: ([id]) => id, maxLength: 9 }),
  circumstances: fc.uniqueArray(fc.tuple(fc.constantFrom(...circumstanceIds), state), {
    selector: ([id]) => id,
    maxLength: 3,
  }),
  tests: fc.uniqueArray(aTest, { selector: ({ test }) => test, maxLength: 3 }),
  others: fc.uniqueArray(fc.nat(conditionIds.length - 1), { minLength: 4, maxLength: 5 }),
});

describe("whole cases", () => {
  it("[DX120] signs, circumstances, tests and levels together equal brute force to 1e-9", () => {
    fc.assert(
      fc.property(aCase, ({ season, signs, circumstances, tests, others }) => {
        const states = [...signs, ...circumstances];
        const isSecond = (id: FindingId, at: number) =>
          states.slice(0, at).some(([other]) => findings[id].exclusiveWith === other);
        const input = { season, findings: Object.fromEntries(states.filter(([id], at) => !isSecond(id, at))), tests };
        const model = fewConditions(input, others);
        const numbers = statedCase(model);
        const posterior = posteriorOf(parametersOf(model.network, numbers), evidenceOf(model, numbers), []);
        const brute = bySetsAndLevels(model);
        for (const [index, each] of brute.entries()) {
          expect(Math.abs((posterior?.condition[index] ?? Number.NaN) - each)).toBeLessThan(1e-9);
        }
      }),
      { seed: 1959, numRuns: 60 },
    );
  });

  it("[DX120] networks without suppression, groups and blocks equal the plain signed sum to 1e-9", () => {
    const share = fc.double({ min: 0.01, max: 0.9, noNaN: true });
    const network = fc.record({
      prior: fc.array(share, { minLength: 6, maxLength: 6 }),
      leak: fc.array(share, { minLength: 8, maxLength: 8 }),
      link: fc.array(fc.array(share, { minLength: 8, maxLength: 8 }), { minLength: 6, maxLength: 6 }),
      states: fc.array(fc.constantFrom(true, false, null), { minLength: 8, maxLength: 8 }),
    });
    fc.assert(
      fc.property(network, ({ prior, leak, link, states }) => {
        const looked = states.flatMap((each, finding) => (each === null ? [] : [[finding, each] as const]));
        const plain = quickscore({ prior, leak, link, evidence: new Map(looked) });
        const engine: Network = {
          conditions: prior.map((p, index) => ({ id: `c${index}`, odds: p / (1 - p), rollUp: null })),
          findings: leak.map((healthy, index) => ({ id: `f${index}`, healthy, group: null })),
          pairs: link.flatMap((row, condition) =>
            row.map((each, finding) => {
              const rate = 1 - (1 - (leak[finding] ?? 0)) * (1 - each);
              return { condition, finding, rate, suppresses: false };
            }),
          ),
          blocks: [],
          nothingWrong: null,
          dependence: 0,
        };
        const having = (wanted: boolean) => looked.filter(([, each]) => each === wanted).map(([finding]) => finding);
        const posterior = posteriorOf(parametersOf(engine), findingsOnly(engine, having(true), having(false)), []);
        if (!plain.ok) throw new Error("possible evidence was refused");
        for (const [index, each] of plain.value.posterior.entries()) {
          expect(Math.abs((posterior?.condition[index] ?? Number.NaN) - each)).toBeLessThan(1e-9);
        }
      }),
      { seed: 1989, numRuns: 200 },
    );
  });
});

describe("evidence that is possible", () => {
  /** Two absent findings that something suppresses, beside eight present ones that make the signed sum cancel. */
  const present: readonly FindingId[] = [
    "most_colonies",
    "onset_sudden",
    "stores_exhausted",
    "loose_cluster",
    "trembling",
    "foul_odour",
    "wet_mould",
    "tongue_out",
  ];
  const absent: readonly FindingId[] = [
    "ropy_thread",
    "hard_flat_scale",
    "fast_small_mites",
    "beetles_or_spined_larvae",
    "twisted_discoloured_larva",
    "green_hard_mummies",
    "dead_heap",
    "dead_pile_floor",
    "chewed_or_bald_pupae",
    "night_flight",
    "wet_regurgitating",
    "no_brood_in_season",
    "webbing_tunnels",
    "mostly_young_bees",
    "varroa_on_adults",
    "sac_larva",
    "emergency_or_supersedure_cells",
  ];

  it("[DX121] is never said to contradict the model, however many absent findings something makes rarer", () => {
    const states = [...present.map((id) => [id, "present"]), ...absent.map((id) => [id, "absent"])];
    const answer = differential({ season: "winter", draws: 40, findings: Object.fromEntries(states) });
    expect(answer.ok).toBe(true);
  });
});
