/** `thresholds`, `value-of-sampling` and `value-of-knowing` against values computed in Python. */
import { expect, it } from "vitest";
import golden from "../../../tests/golden/decision-check-values.json" with { type: "json" };
import { thresholds } from "./thresholds.ts";
import { valueOfKnowing } from "./value-of-knowing.ts";
import { valueOfSampling } from "./value-of-sampling.ts";
import type { AnswerOf, Verb } from "./verb.ts";

function answerTo<V extends Verb<object>>(verb: V, question: object): AnswerOf<V> {
  const reply = verb.ask(question);
  if (reply.kind !== "answered") throw new Error(JSON.stringify(reply.problems));
  return reply.value as AnswerOf<V>;
}
const fieldsOf = (verb: Verb<object>, question: object) => verb.ask(question).problems.map(({ field }) => field);

it("[DE1] thresholds of both sets of stakes; where they cross the test is never worth its cost", () => {
  for (const { benefit, harm, se, sp, test_cost: testCost, ...wanted } of golden.thresholds) {
    const found = answerTo(thresholds, { benefit, harm, sensitivity: se, specificity: sp, testCost });
    expect(found.treatment).toBeCloseTo(wanted.treat_threshold, 12);
    expect(found.testing).toBeCloseTo(wanted.testing_threshold, 12);
    expect(found.testTreatment).toBeCloseTo(wanted.test_treat_threshold, 12);
    expect(found.largestTestCost).toBeCloseTo(wanted.max_test_cost, 12);
    expect(found.worthTesting).toBe(wanted.test_ever_useful);
    expect(found.here).toBeNull();
  }
});

it("[DE200] the best of three at a chance of .01, .2 and .6: wait, test, treat", () => {
  const best = { none: "wait", test: "test-first", treat: "act-now" } as Readonly<Record<string, string>>;
  for (const { p, benefit, harm, se, sp, test_cost: testCost, ...wanted } of golden.utilities) {
    const question = { benefit, harm, sensitivity: se, specificity: sp, testCost, chance: p, chances: [p] };
    const { here, worths } = answerTo(thresholds, question);
    expect(here?.actNow).toBeCloseTo(wanted.treat, 12);
    expect(here?.testFirst).toBeCloseTo(wanted.test, 12);
    expect(here?.best).toBe(best[wanted.best]);
    expect(worths).toEqual([here]);
  }
});

it("a test that misses nothing needs a harm, one without false alarms a sensitivity", () => {
  const sure = { benefit: 10, testCost: 1 };
  expect(fieldsOf(thresholds, { ...sure, harm: 0, sensitivity: 1, specificity: 0.9 })).toEqual(["harm"]);
  expect(fieldsOf(thresholds, { ...sure, harm: 1, sensitivity: 0, specificity: 1 })).toEqual(["sensitivity"]);
  expect(fieldsOf(thresholds, { ...sure, harm: 1, sensitivity: 95, specificity: 1 })).toEqual(["sensitivity"]);
});

const { a, b, loss_per_p: lossAtFull, cost_treat: actCost, ns: sizes } = golden.sampling;
const prices = { lossAtFull, actCost, costPerBee: 0.02, fixedCost: 0.2 };

it("[DE4] worth of samples of 0 to 100 bees; thirty are the best, and none beats knowing", () => {
  const found = answerTo(valueOfSampling, { a, b, ...prices, sizes, sensitivity: 1 });
  expect(found.evpi).toBeCloseTo(golden.sampling.evpi, 9); // exact sums
  expect(found.lossNow).toBeCloseTo(golden.sampling.loss_now, 12);
  for (const [index, row] of golden.sampling.rows.entries()) {
    expect(found.sizes[index]?.evsi).toBeCloseTo(row.evsi, 9);
    expect(found.sizes[index]?.net).toBeCloseTo(row.engs, 9);
    expect(found.sizes[index]?.actFrom).toBe(row.treat_if_x_ge);
  }
  expect(found.best.bees).toBe(golden.sampling.best_n);
});

it("[DE4] twenty bees at a bench that finds 90 and clears 98 in 100 are worth 1.30306", () => {
  const { n, se, sp, evsi } = golden.imperfect;
  const found = answerTo(valueOfSampling, { a, b, ...prices, sizes: [n], sensitivity: se, specificity: sp });
  expect(found.best.evsi).toBeCloseTo(evsi, 5); // by integration there
});

it("[DE201] says when no result of any sample leads to treating; the size that is too large is named", () => {
  const never = valueOfSampling.ask({ a: 1, b: 99, ...prices, actCost: 299, sizes: [2, 3], sensitivity: 1 });
  expect(never).toMatchObject({ kind: "answered", problems: [{ code: "no-result-leads-to-acting" }] });
  expect(fieldsOf(valueOfSampling, { a, b, ...prices, sizes: [10, 999], sensitivity: 1 })).toEqual(["sizes[1]"]);
});

it("[DE2] three choices and states: −54, −29.5, −24, and knowing is worth 10.5", () => {
  const { prior, utilities, expected, best, evpi } = golden.discrete;
  const found = answerTo(valueOfKnowing, { chances: prior, worths: utilities });
  for (const [index, each] of expected.entries()) expect(found.choices[index]?.expected).toBeCloseTo(each, 10);
  expect(found.best).toBe(best + 1);
  expect(found.evpi).toBeCloseTo(evpi, 10);
  expect(found.knowing - found.now).toBeCloseTo(evpi, 10);
});

it("chances that do not add up and a short row are named", () => {
  expect(fieldsOf(valueOfKnowing, { chances: [0.5, 0.4], worths: [[1, 2]] })).toEqual(["chances"]);
  expect(fieldsOf(valueOfKnowing, { chances: [0.5, 0.5], worths: [[1, 2], [3]] })).toEqual(["worths"]);
});
