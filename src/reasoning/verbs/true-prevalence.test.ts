/** True prevalence by three ways of knowing the test: printed and independently computed figures come out of the verbs. */
import { expect, it } from "vitest";
import printedTrials from "../../../tests/golden/lang-reiczigel-2014-examples.json" with { type: "json" };
import posterior from "../../../tests/golden/prevalence-posterior-checks.json" with { type: "json" };
import printed from "../../../tests/golden/reiczigel-2010-limits.json" with { type: "json" };
import { truePrevalence } from "./true-prevalence.ts";
import { truePrevalenceBelief } from "./true-prevalence-belief.ts";
import { truePrevalenceTrials } from "./true-prevalence-trials.ts";
import type { AnswerOf, Verb } from "./verb.ts";

function ask<V extends Verb>(verb: V, raw: object): AnswerOf<V> {
  const reply = verb.ask(raw);
  if (reply.kind !== "answered") throw new Error(JSON.stringify(reply.problems));
  return reply.value as AnswerOf<V>;
}
const troubles = (verb: Verb, raw: object) => verb.ask(raw).problems.map(({ code, field }) => `${field}: ${code}`);
const per100 = (share: number | undefined) => Math.round(100 * (share ?? Number.NaN));

it.each(printed.rows)("$positive of $examined: $percent in 100, $low to $high (epiR manual)", (row) => {
  const { percent, low, high, ...question } = row;
  const { raw, estimates } = ask(truePrevalence, question);
  expect(per100(raw)).toBe(percent);
  for (const each of estimates.filter(({ method }) => low !== null && method !== "wilson"))
    expect([per100(each.low), per100(each.high)]).toEqual([low, high]);
});

it("45 of 150: every limit to eight digits (R and Python)", () => {
  const { value, estimates } = ask(truePrevalence, truePrevalence.example);
  expect(value).toBeCloseTo(0.22352941176, 10);
  const limits = new Map(estimates.map(({ method, low, high }) => [method, [low, high]]));
  const expected = [
    ["clopper-pearson", 0.13878825389, 0.31778968662],
    ["blaker", 0.13917386181, 0.31677268593],
    ["wilson", 0.1440097574, 0.31479976936],
  ] as const;
  for (const [method, low, high] of expected) {
    expect(limits.get(method)?.[0]).toBeCloseTo(low, 8);
    expect(limits.get(method)?.[1]).toBeCloseTo(high, 8);
  }
});

it("6 of 151 lie below what false positives give: raw and cut value, and the warning", () => {
  const question = { positive: 6, examined: 151, sensitivity: 0.964, specificity: 0.927 };
  const { raw, value, estimates } = ask(truePrevalence, question);
  expect(raw).toBeCloseTo(-0.03733434418, 10);
  expect(value).toBe(0);
  expect(estimates[0]?.high).toBeCloseTo(0.01288217762, 8);
  expect(troubles(truePrevalence, question)).toEqual(["positive: fewer-than-false-positives"]);
});

it.each(printedTrials.examples.filter(({ apparent }) => apparent.share !== 0.06))(
  "trials of $sensitivity.of and $specificity.of: $low to $high (Lang and Reiczigel 2014)",
  ({ apparent, sensitivity, specificity, low, high }) => {
    const found = (each: { readonly share: number; readonly of: number }) => Math.round(each.share * each.of);
    const { estimates } = ask(truePrevalenceTrials, {
      positive: found(apparent),
      examined: apparent.of,
      infestedFound: found(sensitivity),
      infestedTried: sensitivity.of,
      cleanCleared: found(specificity),
      cleanTried: specificity.of,
    });
    expect(estimates[0]?.method).toBe("lang-reiczigel");
    expect(estimates[0]?.low).toBeCloseTo(low, 3);
    expect(estimates[0]?.high).toBeCloseTo(high, 3);
  },
);

it("40 of 200, trials 45 of 50 and 97 of 100: by the delta method 0.1954, standard error 0.0374 (own numbers)", () => {
  const trials = { infestedFound: 45, infestedTried: 50, cleanCleared: 97, cleanTried: 100 };
  const { value, uncut } = ask(truePrevalenceTrials, { positive: 40, examined: 200, ...trials });
  expect(value).toBeCloseTo(0.19540229885, 10);
  expect(uncut.find(({ method }) => method === "delta")?.standardError).toBeCloseTo(0.03737160689, 10);
});

it.each(posterior.rows)("$positive of $examined with priors: mean $mean (JAGS and Python)", (row) => {
  const { estimate, median, aboveLine } = ask(truePrevalenceBelief, {
    positive: row.positive,
    examined: row.examined,
    prior: row.prevalence,
    sensitivityPrior: row.sensitivity,
    specificityPrior: row.specificity,
    line: row.threshold,
  });
  // The golden figures come from a midpoint rule good to 1e-5.
  expect(Math.abs(estimate.value - row.mean)).toBeLessThan(1e-5);
  expect(Math.abs(estimate.low - row.low)).toBeLessThan(1e-5);
  expect(Math.abs(estimate.high - row.high)).toBeLessThan(1e-5);
  expect(Math.abs(median - row.median)).toBeLessThan(1e-5);
  expect(Math.abs((aboveLine?.chance ?? 0) - row.above)).toBeLessThan(1e-5);
  expect(estimate.interval).toBe("credible");
});

it("9 of 50 with known errors and a flat prior: mean 0.2137 (R)", () => {
  const { estimate } = ask(truePrevalenceBelief, { positive: 9, examined: 50, sensitivity: 0.9, specificity: 1 });
  expect(Math.abs(estimate.value - 0.2136752137)).toBeLessThan(1e-5); // the figure's own integration
});

it("names the field that cannot be", () => {
  expect(troubles(truePrevalence, { positive: 51, examined: 50, sensitivity: 0.9, specificity: 1 })).toEqual([
    "positive: positives-exceed-examined",
  ]);
  expect(troubles(truePrevalence, { positive: 5, examined: 50, sensitivity: 0.4, specificity: 0.6 })).toEqual([
    "sensitivity: test-no-better-than-chance",
  ]);
  const trials = { infestedFound: 51, infestedTried: 50, cleanCleared: 97, cleanTried: 100 };
  expect(troubles(truePrevalenceTrials, { positive: 4, examined: 20, ...trials })).toEqual([
    "infestedFound: fields-disagree",
  ]);
  const both = { sensitivity: 0.9, sensitivityPrior: { a: 9, b: 1 }, specificity: 1 };
  expect(troubles(truePrevalenceBelief, { positive: 4, examined: 20, ...both })).toEqual([
    "sensitivity: fields-disagree",
  ]);
});
