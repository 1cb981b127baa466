/** Scores of stated probabilities, single causes, and networks that contradict what was seen. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import golden from "../../../tests/golden/noisy-or-network.json" with { type: "json" };
import type { Result } from "../../units/index.ts";
import { calibration, noisyOr, quickscore, rankingScores, singleFault } from "./index.ts";

const of = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(result.problems.map(({ code }) => code).join(", "));
  return result.value;
};
const codeOf = (result: Result<unknown>) => (result.ok ? "answered" : result.problems[0]?.code);

describe("networks of one's own", () => {
  it("[DX200] a finding that nothing can bring is said to contradict the model, by both ways", () => {
    const given = {
      prior: [0.2, 0.3],
      link: [
        [0, 0.5],
        [0, 0.4],
      ],
      leak: [0, 0.1],
      evidence: new Map([[0, true]]),
    };
    expect([noisyOr(given), quickscore(given)].map(codeOf)).toEqual(Array(2).fill("evidence-contradicts-model"));
    expect(singleFault({ prior: [1, 1], rates: [[0], [0]], evidence: given.evidence })).toMatchObject({ ok: false });
  });

  it("[DX201] fourteen present findings whose signed sum cancels: the tables agree with every state listed", () => {
    const findings = Array.from({ length: 14 }, (_, i) => i);
    const given = {
      prior: [0.1, 0.2, 0.05],
      link: [findings.map(() => 0.02), findings.map((i) => 0.01 + 0.001 * i), findings.map(() => 0.03)],
      leak: findings.map(() => 0.001),
      evidence: new Map(findings.map((finding) => [finding, true])),
    };
    const [quick, listed] = [of(quickscore(given)), of(noisyOr(given))];
    expect(quick.evidenceProbability / listed.evidenceProbability).toBeCloseTo(1, 9);
    for (const [i, posterior] of listed.posterior.entries()) expect(quick.posterior[i]).toBeCloseTo(posterior, 9);
  });

  it("[DX201] seventeen such findings are refused rather than answered without digits", () => {
    const findings = Array.from({ length: 17 }, (_, i) => i);
    const given = {
      prior: [0.1],
      link: [findings.map(() => 0.02)],
      leak: findings.map(() => 0.001),
      evidence: new Map(findings.map((finding) => [finding, true])),
    };
    expect(["signed-sum-cancels", "evidence-contradicts-model"]).toContain(codeOf(quickscore(given)));
    expect(of(noisyOr(given)).evidenceProbability).toBeGreaterThan(0);
  });

  it("[DX206] bits are never below 0 nor above what is unknown, and 0 for a finding without a link", () => {
    const chance = fc.double({ min: 0.001, max: 0.999, noNaN: true });
    const link = fc.oneof(fc.constant(0), fc.double({ min: 0, max: 0.99, noNaN: true }));
    fc.assert(
      fc.property(
        fc.array(chance, { minLength: 5, maxLength: 5 }),
        fc.array(fc.array(link, { minLength: 6, maxLength: 6 }), { minLength: 5, maxLength: 5 }),
        fc.array(fc.double({ min: 0.001, max: 0.9, noNaN: true }), { minLength: 6, maxLength: 6 }),
        fc.array(fc.boolean(), { minLength: 2, maxLength: 2 }),
        (prior, rows, leak, seen) => {
          const unlinked = rows.map((row) => [...row.slice(0, 5), 0]);
          const evidence = new Map(seen.map((present, finding) => [finding, present]));
          const { outlook, entropyBits } = of(noisyOr({ prior, link: unlinked, leak, evidence }));
          expect(outlook.map(({ finding }) => finding)).toEqual([2, 3, 4, 5]);
          for (const { finding, jointBits, marginalBits, probability } of outlook) {
            expect(jointBits).toBeGreaterThanOrEqual(0);
            expect(marginalBits).toBeGreaterThanOrEqual(0);
            expect(jointBits).toBeLessThanOrEqual(Math.min(entropyBits, 1) + 1e-12);
            if (finding !== 5) continue;
            expect(jointBits).toBeLessThan(1e-12);
            expect(marginalBits).toBeLessThan(1e-12);
            expect(probability).toBeCloseTo(leak[5] as number, 12);
          }
        },
      ),
      { seed: 1991, numRuns: 100 },
    );
  });

  it("[DX202] one cause alone: by hand, and the network's single-cause states in the same proportions", () => {
    const evidence = new Map([
      [0, true],
      [1, false],
    ]);
    const found = of(
      singleFault({
        prior: [0.5, 0.3, 0.2],
        rates: [
          [0.8, 0.1],
          [0.4, 0.5],
          [0.1, 0.9],
        ],
        evidence,
      }),
    );
    const weights = [0.5 * 0.8 * 0.9, 0.3 * 0.4 * 0.5, 0.2 * 0.1 * 0.1];
    const total = weights.reduce((sum, each) => sum + each, 0);
    for (const [i, weight] of weights.entries()) expect(found[i]).toBeCloseTo(weight / total, 12);

    const { prior, link, leak } = golden;
    const states = of(noisyOr({ prior, link, leak, evidence })).states.filter(({ present }) => present.length === 1);
    const single = of(
      singleFault({
        prior: prior.map((p) => p / (1 - p)),
        rates: link.map((row) => row.map((each, finding) => 1 - (1 - (leak[finding] as number)) * (1 - each))),
        evidence,
      }),
    );
    const sum = states.reduce((mass, { probability }) => mass + probability, 0);
    for (const { present, probability } of states) {
      expect(single[present[0] as number]).toBeCloseTo(probability / sum, 10);
    }
  });

  it("[DX202] a rate that is missing or no probability is the caller's error", () => {
    const evidence = new Map([[3, true]]);
    expect(() => singleFault({ prior: [1], rates: [[0.5]], evidence })).toThrow("rates must be");
    expect(() => singleFault({ prior: [-1], rates: [[0.5]], evidence: new Map() })).toThrow("prior must be");
  });
});

const cases = fc.array(fc.record({ p: fc.integer({ min: 0, max: 100 }).map((i) => i / 100), y: fc.boolean() }), {
  minLength: 1,
  maxLength: 60,
});
const listsOf = (rows: readonly { readonly p: number; readonly y: boolean }[]) => ({
  stated: rows.map(({ p }) => p),
  outcomes: rows.map(({ y }) => y),
});

describe("calibration", () => {
  it("[DX203] Murphy's parts add up to the Brier score of the bin means, and the area counts pairs", () => {
    fc.assert(
      fc.property(cases, (rows) => {
        const found = of(calibration(listsOf(rows)));
        const { reliability, resolution, uncertainty } = found.murphy;
        const binned = found.bins.reduce((sum, { n, meanStated, observed }) => {
          const share = observed.value;
          return sum + (n / rows.length) * (share * (1 - meanStated) ** 2 + (1 - share) * meanStated ** 2);
        }, 0);
        expect(reliability - resolution + uncertainty).toBeCloseTo(binned, 10);
        expect(found.largestError).toBeGreaterThanOrEqual(found.expectedError - 1e-12);
        const [yes, no] = [true, false].map((wanted) => rows.filter(({ y }) => y === wanted));
        if (yes?.length && no?.length) {
          const pairs = yes.flatMap(({ p }) => no.map((other) => (p > other.p ? 1 : p === other.p ? 0.5 : 0)));
          const area = pairs.reduce((sum: number, each) => sum + each, 0) / pairs.length;
          expect(of(found.areaUnderCurve)).toBeCloseTo(area, 10);
        } else expect(codeOf(found.areaUnderCurve)).toBe("outcomes-all-alike");
      }),
      { seed: 1973, numRuns: 100 },
    );
  });

  it("[DX203] certain and wrong: the logarithm is held at 1e-15, and that is counted", () => {
    const found = of(calibration({ stated: [0, 1, 0.5], outcomes: [true, true, false] }));
    expect(found.held).toBe(2);
    expect(found.logLoss).toBeCloseTo((-Math.log(1e-15) + 1e-15 + Math.log(2)) / 3, 9);
    expect(codeOf(calibration({ stated: [], outcomes: [] }))).toBe("no-forecasts");
    expect(() => calibration({ stated: [1.2], outcomes: [true] })).toThrow("stated must be");
  });

  it("[DX203] equal mass with fewer cases than bins is one case a bin", () => {
    const found = of(calibration({ stated: [0.9, 0.2, 0.6], outcomes: [true, false, false] }));
    expect(found.expectedErrorEqualMass).toBeCloseTo((0.1 + 0.2 + 0.6) / 3, 12);
  });

  it("[DX204] at the answer the slopes of the likelihood are 0; outcomes that p parts are refused", () => {
    fc.assert(
      fc.property(cases, (rows) => {
        const found = of(calibration(listsOf(rows)));
        if (!found.recalibration.ok) {
          expect(["outcomes-parted", "stated-all-alike"]).toContain(codeOf(found.recalibration));
          return;
        }
        const { intercept, slope } = found.recalibration.value;
        let [a, b] = [0, 0];
        for (const { p, y } of rows) {
          const held = Math.min(1 - 1e-15, Math.max(1e-15, p));
          const x = Math.log(held / (1 - held));
          const gap = Number(y) - 1 / (1 + Math.exp(-intercept - slope * x));
          [a, b] = [a + gap, b + gap * x];
        }
        expect(Math.abs(a)).toBeLessThan(1e-8); // sums of up to sixty terms, steps ended at 1e-12
        expect(Math.abs(b)).toBeLessThan(1e-6); // the logits reach 35
      }),
      { seed: 1958, numRuns: 150 },
    );
    const parted = of(calibration({ stated: [0.2, 0.3, 0.7], outcomes: [false, false, true] }));
    expect(codeOf(parted.recalibration)).toBe("outcomes-parted");
    const tied = of(calibration({ stated: [0.2, 0.5, 0.5, 0.7], outcomes: [false, false, true, true] }));
    expect(codeOf(tied.recalibration)).toBe("outcomes-parted");
    const alike = of(calibration({ stated: [0.5, 0.5, 0.5], outcomes: [false, false, true] }));
    expect(codeOf(alike.recalibration)).toBe("stated-all-alike");
    expect(of(alike.inTheLarge)).toBeCloseTo(Math.log(0.5), 9);
  });
});

it("[DX205] ranks, top one and three, and no mean loss once a cause that held was ruled out", () => {
  const stated = [
    [0.4, 0.3, 0.2, 0.1],
    [0.1, 0.2, 0.3, 0.4],
    [0.25, 0.25, 0.25, 0.25],
  ];
  const found = of(rankingScores({ stated, held: [0, 0, 3] }));
  expect(found.topOne).toBeCloseTo(1 / 3, 12);
  expect(found.topThree).toBeCloseTo(1 / 3, 12);
  expect(found.meanReciprocalRank).toBeCloseTo((1 + 1 / 4 + 1 / 4) / 3, 12);
  expect(of(found.logLoss)).toBeCloseTo(-(Math.log(0.4) + Math.log(0.1) + Math.log(0.25)) / 3, 12);
  expect(found.brier).toBeCloseTo((0.36 + 0.09 + 0.04 + 0.01 + (0.81 + 0.04 + 0.09 + 0.16) + 0.75) / 3, 12);
  const ruledOut = of(rankingScores({ stated: [[1, 0]], held: [1] }));
  expect(ruledOut.logLoss).toMatchObject({
    ok: false,
    problems: [{ code: "cause-was-ruled-out", slots: { cases: 1 } }],
  });
  expect(codeOf(rankingScores({ stated: [], held: [] }))).toBe("no-forecasts");
  expect(() => rankingScores({ stated: [[0.5, 0.5]], held: [2] })).toThrow("held must be");
});
