/** The engine against brute force and against print: sums over all sets, whichever way they are taken. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import golden from "../../../tests/golden/noisy-or-network.json" with { type: "json" };
import type { Result } from "../../units/index.ts";
import { bestSets, byProbability } from "./best-first.ts";
import { bruteForce } from "./brute-force.ts";
import { expand } from "./expansion.ts";
import { findingsOnly, type Network, type NetworkEvidence } from "./network.ts";
import { noisyOr, quickscore } from "./noisy-or.ts";
import { parametersOf } from "./parameters.ts";
import { setsPosterior } from "./sets-posterior.ts";
import { termsOf } from "./terms.ts";
import { unionTables } from "./union-tables.ts";

const reference: Network = {
  conditions: golden.prior.map((prior, index) => ({ id: `D${index + 1}`, odds: prior / (1 - prior), rollUp: null })),
  findings: golden.leak.map((healthy, index) => ({ id: `f${index}`, healthy, group: null })),
  pairs: golden.link.flatMap((row, condition) =>
    row.map((link, finding) => ({
      condition,
      finding,
      rate: 1 - (1 - (golden.leak[finding] ?? 0)) * (1 - link),
      suppresses: false,
    })),
  ),
  blocks: [],
  nothingWrong: null,
  dependence: 0,
};
const of = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(result.problems.map(({ code }) => code).join(", "));
  return result.value;
};
const whole = golden.prior.reduce((product, prior) => product / (1 - prior), 1);

describe("the reference network", () => {
  it.each(golden.cases)("[DX1] posterior of $id, by expansion and by tables, to 1e-9", ({ evidence, expected }) => {
    const found = Object.entries(evidence) as [string, number][];
    const states = findingsOnly(
      reference,
      found.filter(([, state]) => state === 1).map(([finding]) => Number(finding)),
      found.filter(([, state]) => state === 0).map(([finding]) => Number(finding)),
    );
    const parameters = parametersOf(reference);
    for (const sums of [expand(parameters, termsOf(parameters, states)), unionTables(parameters, states)]) {
      expect(sums.total / whole).toBeCloseTo(expected.p_evidence, 10);
      for (const [index, posterior] of expected.posterior.entries()) {
        expect((sums.withCondition[index] ?? 0) / sums.total).toBeCloseTo(posterior, 9);
      }
      expect(sums.empty / sums.total).toBeCloseTo(expected.p_no_disease, 9);
    }
  });
});

describe("the bare network", () => {
  it.each(golden.cases)(
    "[DX1] $id: posterior, entropy, states and both kinds of bits as printed",
    ({ evidence, expected }) => {
      const found = Object.entries(evidence) as [string, number][];
      const given = { ...golden, evidence: new Map(found.map(([finding, state]) => [Number(finding), state === 1])) };
      const [answer, quick] = [of(noisyOr(given)), of(quickscore(given))];
      expect(answer.evidenceProbability).toBeCloseTo(expected.p_evidence, 10);
      expect(quick.evidenceProbability).toBeCloseTo(expected.p_evidence, 10);
      for (const [index, posterior] of expected.posterior.entries()) {
        expect(answer.posterior[index]).toBeCloseTo(posterior, 9);
        expect(quick.posterior[index]).toBeCloseTo(posterior, 9);
      }
      expect(answer.entropyBits).toBeCloseTo(expected.entropy_bits, 9);
      expect(answer.noCondition).toBeCloseTo(expected.p_no_disease, 10);
      for (const [index, { state, p }] of expected.top_states.entries()) {
        expect(answer.states[index]?.present).toEqual([...state.keys()].filter((condition) => state[condition] === 1));
        expect(answer.states[index]?.probability).toBeCloseTo(p, 9);
      }
      const joint = expected.eig_joint_bits as Readonly<Record<string, number>>;
      const marginal = expected.eig_sum_of_marginals_bits as Readonly<Record<string, number>>;
      expect(answer.outlook.map(({ finding }) => String(finding))).toEqual(Object.keys(joint));
      for (const { finding, jointBits, marginalBits } of answer.outlook) {
        expect(jointBits).toBeCloseTo(joint[String(finding)] ?? 0, 9);
        expect(marginalBits).toBeCloseTo(marginal[String(finding)] ?? 0, 9);
      }
    },
  );

  it("[DX1] is no friend of impossible numbers", () => {
    const broken = { ...golden, prior: [0, 0.3, 0.1, 0.03, 0.08], evidence: new Map() };
    expect(() => noisyOr(broken)).toThrow("prior must be between 0 and 1");
  });
});

const share = fc.double({ min: 0.004, max: 0.96, noNaN: true });
const small: fc.Arbitrary<{ network: Network; evidence: NetworkEvidence }> = fc
  .record({
    odds: fc.array(fc.double({ min: 0.001, max: 2, noNaN: true }), { minLength: 3, maxLength: 6 }),
    findings: fc.array(fc.record({ healthy: share, group: fc.constantFrom(null, "a", "b") }), {
      minLength: 3,
      maxLength: 7,
    }),
    pairs: fc.array(
      fc.record({ c: fc.nat(5), f: fc.nat(6), rate: share, suppresses: fc.integer({ min: 0, max: 3 }) }),
      { maxLength: 20 },
    ),
    states: fc.array(fc.constantFrom("present", "absent", "not-looked"), { minLength: 7, maxLength: 7 }),
    factors: fc.array(fc.double({ min: 0.1, max: 10, noNaN: true }), { minLength: 6, maxLength: 6 }),
    nothingWrong: fc.option(fc.double({ min: 0.05, max: 0.6, noNaN: true })),
    dependence: fc.constantFrom(0, 0.7, 0.95),
    block: fc.option(fc.double({ min: 1, max: 6, noNaN: true })),
  })
  .map(({ odds, findings, pairs, states, factors, nothingWrong, dependence, block }) => {
    const seen = new Set<string>();
    const network: Network = {
      conditions: odds.map((each, index) => ({ id: `c${index}`, odds: each, rollUp: null })),
      findings: findings.map((each, index) => ({ id: `f${index}`, ...each })),
      pairs: pairs
        .filter(({ c, f }) => c < odds.length && f < findings.length)
        .filter(({ c, f }) => !seen.has(`${c} ${f}`) && seen.add(`${c} ${f}`))
        .map(({ c, f, rate, suppresses }) => ({ condition: c, finding: f, rate, suppresses: suppresses === 0 })),
      blocks: block === null ? [] : [{ lead: 0, followers: [1, 2], ratio: block }],
      nothingWrong,
      dependence,
    };
    const of = (state: string) => [...findings.keys()].filter((index) => states[index] === state);
    const oddsFactor = Float64Array.from(factors.slice(0, odds.length));
    return { network, evidence: { present: of("present"), absent: of("absent"), oddsFactor } };
  });

describe("small networks of every make", () => {
  const groups = [Int32Array.of(0, 2), Int32Array.of(1)];

  it("[DX2] expansion and tables equal brute force to 1e-9, groups, blocks, suppression and all", () => {
    fc.assert(
      fc.property(small, ({ network, evidence }) => {
        const brute = bruteForce(network, evidence, groups);
        const parameters = parametersOf(network);
        const ways = [
          expand(parameters, termsOf(parameters, evidence), groups),
          unionTables(parameters, evidence, groups),
        ];
        for (const sums of ways) {
          const slack = 1e-9 + 10 * sums.relativeError; // expansion cancels when evidence is all but impossible
          for (const index of network.conditions.keys()) {
            const difference =
              (sums.withCondition[index] ?? 0) / sums.total - (brute.withCondition[index] ?? 0) / brute.total;
            expect(Math.abs(difference)).toBeLessThan(slack);
          }
          for (const [index, without] of brute.withoutGroup.entries()) {
            expect(Math.abs((sums.withoutGroup[index] ?? 0) / sums.total - without / brute.total)).toBeLessThan(slack);
          }
          expect(Math.abs(sums.empty / sums.total - brute.empty / brute.total)).toBeLessThan(slack);
        }
      }),
      { seed: 1989, numRuns: 150 },
    );
  });

  it("[DX3] all patterns of what was looked for sum to one, so a case can be drawn from the model", () => {
    fc.assert(
      fc.property(small, ({ network, evidence }) => {
        const looked = [...evidence.present, ...evidence.absent].slice(0, 5);
        const parameters = parametersOf(network);
        const none = expand(parameters, termsOf(parameters, { ...evidence, present: [], absent: [] })).total;
        let sum = 0;
        for (let pattern = 0; pattern < 2 ** looked.length; pattern++) {
          const present = looked.filter((_, index) => ((pattern >> index) & 1) === 1);
          const absent = looked.filter((_, index) => ((pattern >> index) & 1) === 0);
          sum += expand(parameters, termsOf(parameters, { ...evidence, present, absent })).total;
        }
        expect(sum / none).toBeCloseTo(1, 10);
      }),
      { seed: 1991, numRuns: 60 },
    );
  });

  it("[DX4] the best sets, when all are taken, are all of brute force", () => {
    fc.assert(
      fc.property(small, ({ network, evidence }) => {
        const brute = bruteForce(network, evidence, groups);
        const parameters = parametersOf(network);
        const order = byProbability(expand(parameters, termsOf(parameters, evidence)).withCondition);
        const sets = bestSets(parameters, evidence, order, { sets: 64, weight: Number.POSITIVE_INFINITY });
        expect(sets.count).toBe(2 ** network.conditions.length);
        const heaviest = Math.max(...sets.weight) / sets.total;
        expect(heaviest).toBeCloseTo(Math.max(...brute.sets.map(({ weight }) => weight)) / brute.total, 7);
        const posterior = setsPosterior(parameters, evidence, groups);
        for (const [index, weight] of brute.withCondition.entries()) {
          expect(posterior?.condition[index]).toBeCloseTo(weight / brute.total, 7);
        }
        expect(posterior?.neglectedMass).toBeLessThan(1e-6);
      }),
      { seed: 1990, numRuns: 100 },
    );
  });
});
