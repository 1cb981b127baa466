/** The three actions side by side: check values, brute force, the strip, the flips, the readings, the refusals. */
import fc from "fast-check";
import { expect, it } from "vitest";
import golden from "../../../tests/golden/decision-check-values.json" with { type: "json" };
import { beta, integral, randomStream } from "../../numerics/index.ts";
import { type Belief, beliefFromCounts, benchChances, signals } from "./belief.ts";
import { type ActionComparison, asLine, compareActions, type DecisionRequest } from "./compare-actions.ts";
import { bestOf, lossesFrom } from "./losses.ts";
import { expectedUtilities, testThresholds } from "./thresholds.ts";
import { type LossCurve, lossCurveProblem, winterLossAt, winterLossReadings } from "./winter-loss.ts";

const proportional: LossCurve = [
  { prevalence: 0, loss: 0 },
  { prevalence: 1, loss: 1 },
];
const of = (request: DecisionRequest): ActionComparison => {
  const result = compareActions(request);
  if (!result.ok) throw new Error(result.problems.map(({ code }) => code).join(", "));
  return result.value;
};
/** The best action alone, without strip and flips. */
const bestFor = (request: Pick<DecisionRequest, "belief" | "prices" | "test">) => {
  const line = asLine(winterLossReadings.middle);
  return bestOf(
    lossesFrom(signals(request.belief, request.test, benchChances(request.test), line), line, request.prices),
  );
};
const prices = { colonyValue: 250, actCost: 20, testCost: 2, residualShare: 0.2 };
const test = { bees: 50, sensitivity: 0.95, specificity: 1 };
const belief: Belief = { a: 1.5, b: 12 };

it("[DE3] Beta(2, 18), V 300, C 45, loss = prevalence: 30, 45, and 30 − EVSI + cost", () => {
  for (const { n, evsi, treat_if_x_ge } of golden.sampling.rows.slice(1)) {
    const found = of({
      belief: { a: 2, b: 18 },
      prices: { colonyValue: 300, actCost: 45, testCost: 1, residualShare: 0 },
      test: { bees: n, sensitivity: 1, specificity: 1 },
      winterLossByPrevalence: proportional,
    });
    expect(found.wait).toBeCloseTo(30, 10);
    expect(found.actNow).toBeCloseTo(45, 10);
    expect(Math.abs(found.testFirst - (30 - evsi + 1))).toBeLessThan(1e-9);
    expect(Math.abs(found.valueOfTest - evsi)).toBeLessThan(1e-9);
    expect(Math.abs(found.valueOfKnowing - golden.sampling.evpi)).toBeLessThan(1e-9);
    expect(found.actFrom).toBe(treat_if_x_ge);
    expect(found.knownPrevalenceThreshold).toBeCloseTo(0.15, 12);
  }
});

it("[DE3] losses agree with integrating the curve, and with 20 000 simulated colonies", () => {
  const curve = winterLossReadings.middle;
  const found = of({ belief, prices, test });
  const density = beta(belief as { a: number; b: number });
  const knots = [0, 0.2, 0.3, 0.4, 0.6, 1];
  const mean = knots.slice(1).reduce((sum, right, i) => {
    const f = (p: number) => winterLossAt(curve, p) * density.pdf(p);
    return sum + integral({ f, low: knots[i] as number, high: right, relative: 1e-9 }).value;
  }, 0);
  expect(found.wait).toBeCloseTo(prices.colonyValue * mean, 5);
  expect(found.actNow).toBeCloseTo(prices.actCost + prices.colonyValue * (0.11 + 0.2 * (mean - 0.11)), 5);

  const stream = randomStream({ seed: 1961, stream: 0 });
  const runs = 20_000;
  let [sum, squares] = [0, 0];
  for (let run = 0; run < runs; run++) {
    const p = density.quantile(0.5 / 4000 + Math.floor(stream.next() * 4000) / 4000);
    let positive = 0;
    for (let bee = 0; bee < test.bees; bee++) positive += stream.next() < p * test.sensitivity ? 1 : 0;
    const loss = winterLossAt(curve, p);
    const acts = found.actFrom !== null && positive >= found.actFrom;
    const lost = acts ? prices.actCost + prices.colonyValue * (0.11 + 0.2 * (loss - 0.11)) : prices.colonyValue * loss;
    sum += lost;
    squares += lost * lost;
  }
  const standardError = Math.sqrt((squares / runs - (sum / runs) ** 2) / runs);
  expect(Math.abs(prices.testCost + sum / runs - found.testFirst)).toBeLessThan(4 * standardError);
});

it("[DE3] names the action of least loss and how much worse the others are", () => {
  const found = of({ belief, prices, test });
  const losses = { wait: found.wait, "test-first": found.testFirst, "act-now": found.actNow };
  const least = Math.min(...Object.values(losses));
  expect(losses[found.best]).toBe(least);
  for (const action of ["wait", "test-first", "act-now"] as const) {
    expect(found.margins[action]).toBeCloseTo(losses[action] - least, 12);
  }
});

it("[DE3] two states and a line are Pauker and Kassirer's three actions", () => {
  // infested at 100 % or not; one bee read: B = V − C, R = C, and the strip's turns are the thresholds
  const stakes = { benefit: 255, harm: 45, sensitivity: 0.9, specificity: 0.95, testCost: 3 };
  const found = of({
    belief: { probability: 0.1, prevalence: 1 },
    prices: { colonyValue: 300, actCost: 45, testCost: 3, residualShare: 0 },
    test: { bees: 1, sensitivity: 0.9, specificity: 0.95 },
    winterLossByPrevalence: proportional,
  });
  const { testing, testTreatment } = testThresholds(stakes);
  expect(found.testingThreshold).toBeCloseTo(testing, 6);
  expect(found.testTreatmentThreshold).toBeCloseTo(testTreatment, 6);
  const utilities = expectedUtilities({ ...stakes, probability: 0.1 });
  expect(found.wait - found.testFirst).toBeCloseTo(utilities.testFirst, 9);
  expect(found.wait - found.actNow).toBeCloseTo(utilities.actNow, 9);
  expect(found.stripOver).toBe("probability");
  expect(found.here).toEqual({ centre: 0.1, range: null });
});

it("[DE5] the strip covers 0 to 1 without gap and agrees with asking at any place", () => {
  const found = of({ belief, prices, test });
  expect(found.strip[0]?.from).toBe(0);
  expect(found.strip.at(-1)?.to).toBe(1);
  for (const [i, stretch] of found.strip.entries()) {
    if (i > 0) expect(stretch.from).toBe(found.strip[i - 1]?.to);
    const middle = (stretch.from + stretch.to) / 2;
    const moved = { a: middle * 13.5, b: (1 - middle) * 13.5 };
    expect(bestFor({ belief: moved, prices, test })).toBe(stretch.best);
  }
  expect(found.strip.map(({ best }) => best)).toEqual(["wait", "test-first", "act-now"]);
  expect(found.testingThreshold).toBe(found.strip[1]?.from);
  expect(found.testTreatmentThreshold).toBe(found.strip[2]?.from);
});

it("[DE5] says where the belief stands, with its range", () => {
  const { here, stripOver } = of({ belief: beliefFromCounts({ positive: 3, examined: 50 }), prices, test });
  expect(stripOver).toBe("mean-prevalence");
  expect(here.centre).toBeCloseTo(3.5 / 51, 12);
  expect(here.range).toMatchObject({ level: 0.9, interval: "credible", rule: "DE5" });
  expect(here.range?.low).toBeLessThan(here.centre);
  expect(here.range?.high).toBeGreaterThan(here.centre);
});

it("[DE6] at each flip the choice changes, and just before it does not", () => {
  const request = { belief, prices, test };
  const found = of(request);
  expect(found.flips.length).toBeGreaterThanOrEqual(4);
  for (const { input, given, at, becomes, direction } of found.flips) {
    const best = (value: number) => {
      if (input === "sensitivity") return bestFor({ ...request, test: { ...test, sensitivity: value } });
      if (input === "centre-of-belief") {
        return bestFor({ ...request, belief: { a: value * 13.5, b: (1 - value) * 13.5 } });
      }
      return bestFor({ ...request, prices: { ...prices, [input]: value } });
    };
    expect(direction === "up" ? at > given : at < given).toBe(true);
    const nudge = (at - given) * 1e-5;
    expect(best(at + nudge)).toBe(becomes);
    expect(best(at - nudge)).toBe(found.best);
  }
});

it("[DE6] the dearest test still worth making costs what it tells", () => {
  const found = of({ belief, prices, test });
  const flip = found.flips.find(({ input, direction }) => input === "testCost" && direction === "up");
  expect(found.best).toBe("test-first");
  expect(flip?.at).toBeCloseTo(found.valueOfTest, 8);
});

it("[DE6] a test that costs nothing and a colony worth nothing still give answers", () => {
  const free = of({ belief, prices: { ...prices, testCost: 0 }, test });
  expect(free.best).toBe("test-first");
  expect(free.flips.some(({ input, direction }) => input === "testCost" && direction === "up")).toBe(true);
  const worthless = of({ belief, prices: { ...prices, colonyValue: 0 }, test });
  expect(worthless.best).toBe("wait");
  expect(worthless.knownPrevalenceThreshold).toBeNull();
  expect(worthless.testTreatmentThreshold).toBeNull();
});

it("[DE7] without a curve of the user's the judged one is used and said, and readings that disagree are told", () => {
  const judged = compareActions({ belief, prices, test });
  expect(judged.problems.map(({ code }) => code)).toContain("loss-curve-judged");
  const own = compareActions({ belief, prices, test, winterLossByPrevalence: winterLossReadings.middle });
  expect(own.problems.map(({ code }) => code)).not.toContain("loss-curve-judged");
  const dear = compareActions({ belief: { a: 8, b: 40 }, prices: { ...prices, actCost: 60, testCost: 20 }, test });
  expect(dear.ok && dear.value.readings).toEqual({ middle: "wait", cold: "act-now", mild: "wait" });
  expect(dear.problems.map(({ code }) => code)).toContain("loss-readings-disagree");
});

it("[DE7] every point of every reading names its source and mark, and each reading is a sound curve", () => {
  for (const curve of Object.values(winterLossReadings)) {
    expect(lossCurveProblem(curve)).toBeNull();
    for (const point of curve) {
      expect(point.citation.at.length).toBeGreaterThan(20);
      expect(["seen", "judgement"]).toContain(point.citation.read);
    }
  }
  expect(winterLossAt(winterLossReadings.middle, 0.25)).toBeCloseTo(0.3, 12);
  expect(winterLossAt(winterLossReadings.middle, 0.9)).toBe(0.85);
  expect(() => winterLossAt([], 0.5)).toThrow("curve");
});

it("[DE7] the mild reading never costs more than the middle one, the middle never more than the cold", () => {
  for (let p = 0; p <= 1.0001; p += 0.01) {
    const at = (curve: LossCurve) => winterLossAt(curve, Math.min(1, p));
    expect(at(winterLossReadings.mild)).toBeLessThanOrEqual(at(winterLossReadings.middle));
    expect(at(winterLossReadings.middle)).toBeLessThanOrEqual(at(winterLossReadings.cold));
  }
});

it.each([
  [[], "loss-curve-empty"],
  [
    [
      [0.3, 0.1],
      [0.2, 0.2],
    ],
    "loss-curve-disordered",
  ],
  [
    [
      [0.3, 0.1],
      [1.2, 0.2],
    ],
    "loss-curve-disordered",
  ],
  [
    [
      [0, 0.3],
      [0.5, 0.2],
    ],
    "loss-curve-falls",
  ],
  [
    [
      [0, 0.3],
      [0.5, 1.2],
    ],
    "loss-curve-falls",
  ],
] as const)("[DE8] a curve %j is refused: %s", (points, code) => {
  // biome-ignore format: table
  const curve = points.map(([prevalence, loss]) => ({ prevalence, loss }));
  const result = compareActions({ belief, prices, test, winterLossByPrevalence: curve });
  expect(result).toMatchObject({ ok: false, problems: [{ code }] });
});

it("[DE8] a curve that starts late and ends early is flat beyond its ends", () => {
  const curve: LossCurve = [
    { prevalence: 0.2, loss: 0.2 },
    { prevalence: 0.5, loss: 0.5 },
  ];
  const at = (mean: number) => {
    const firm = { a: mean * 1e6, b: (1 - mean) * 1e6 };
    return of({ belief: firm, prices, test, winterLossByPrevalence: curve }).wait / prices.colonyValue;
  };
  expect(at(0.1)).toBeCloseTo(0.2, 6);
  expect(at(0.35)).toBeCloseTo(0.35, 4);
  expect(at(0.9)).toBeCloseTo(0.5, 6);
});

it("[DE9] a sample taken with limits or rejected names no action unless someone asks anyway", () => {
  const request = { belief: beliefFromCounts({ positive: 2, examined: 12 }), prices, test } as const;
  const withheld = compareActions({ ...request, acceptance: "accepted-with-limits" });
  expect(withheld).toMatchObject({
    ok: false,
    problems: [{ code: "decision-withheld", slots: { acceptance: "accepted-with-limits" } }],
  });
  expect(compareActions({ ...request, acceptance: "rejected" }).ok).toBe(false);
  expect(compareActions({ ...request, acceptance: "accepted-with-limits", decideAnyway: true }).ok).toBe(true);
});

it("[DE10] a test that is never best is said to be so", () => {
  const dear = compareActions({ belief, prices: { ...prices, testCost: 500 }, test });
  expect(dear.problems.map(({ code }) => code)).toContain("testing-never-best");
  expect(compareActions({ belief, prices, test }).problems.map(({ code }) => code)).not.toContain("testing-never-best");
});

it("[DE202] a bench that tells the wrong way is refused by name, one that tells nothing is answered", () => {
  const request = {
    belief: { a: 2, b: 18 },
    prices: { colonyValue: 300, actCost: 45, testCost: 1, residualShare: 0 },
    test: { bees: 10, sensitivity: 0.3, specificity: 0.6 },
  };
  expect(compareActions(request)).toMatchObject({ ok: false, problems: [{ code: "test-no-better-than-chance" }] });
  expect(compareActions({ ...request, test: { ...request.test, sensitivity: 0.4 } }).ok).toBe(true);
});

it("[DE3] refuses prices, beliefs and tests outside their range by name", () => {
  const request = { belief, prices, test };
  expect(() => compareActions({ ...request, prices: { ...prices, actCost: -1 } })).toThrow("prices.actCost");
  expect(() => compareActions({ ...request, prices: { ...prices, residualShare: 1.5 } })).toThrow("residualShare");
  expect(() => compareActions({ ...request, belief: { a: 0, b: 1 } })).toThrow("belief.a");
  expect(() => compareActions({ ...request, belief: { probability: 2, prevalence: 0.5 } })).toThrow("probability");
  expect(() => compareActions({ ...request, test: { ...test, bees: 0 } })).toThrow("test.bees");
});

it("[DE3] the test is never worth less than nothing nor more than knowing; waiting costs more when more is believed", () => {
  const shape = fc.double({ min: 0.3, max: 30, noNaN: true });
  const share = fc.double({ min: 0.5, max: 1, noNaN: true });
  fc.assert(
    fc.property(shape, shape, share, share, (a, b, sensitivity, specificity) => {
      const request = { prices, test: { bees: 6, sensitivity, specificity } };
      const found = of({ ...request, belief: { a, b } });
      expect(found.valueOfTest).toBeGreaterThanOrEqual(-1e-9);
      expect(found.valueOfTest).toBeLessThanOrEqual(found.valueOfKnowing + 1e-9);
      expect(of({ ...request, belief: { a: a + 1, b } }).wait).toBeGreaterThanOrEqual(found.wait - 1e-9);
    }),
    { seed: 1975, numRuns: 15 },
  );
});

it("[DE3] a test that cannot change the act is never named, not even for nothing; at a tie one waits", () => {
  const firm = { belief: beliefFromCounts({ positive: 170, examined: 500 }), test: { ...test, bees: 5 } };
  const found = of({ ...firm, prices: { ...prices, testCost: 0 } });
  expect(found.valueOfTest).toBeCloseTo(0, 9);
  expect(found.best).toBe("act-now");
  expect(found.flips.filter(({ input }) => input === "testCost")).toEqual([]);
  expect(of({ belief, test, prices: { colonyValue: 0, actCost: 0, testCost: 0, residualShare: 0 } }).best).toBe("wait");
});
