/** True prevalence: printed examples, the misprint, closed forms, a brute-force posterior and what is refused. */
import fc from "fast-check";
import { expect, it } from "vitest";
import printed from "../../../tests/golden/lang-reiczigel-2014-examples.json" with { type: "json" };
import checks from "../../../tests/golden/prevalence-posterior-checks.json" with { type: "json" };
import limits from "../../../tests/golden/reiczigel-2010-limits.json" with { type: "json" };
import { beta } from "../../numerics/index.ts";
import {
  correctedShare,
  deltaPrevalence,
  imperfectPools,
  langReiczigelPrevalence,
  prevalencePosterior,
  shareOf,
  truePrevalence,
} from "./index.ts";

const value = <T>(result: { readonly ok: boolean; readonly value?: T }): T => {
  if (!result.ok || result.value === undefined) throw new Error(`no answer: ${JSON.stringify(result)}`);
  return result.value;
};

it.each(limits.rows)("[BE100] $positive of $examined is $percent in 100", ({ percent, low, high, ...request }) => {
  const found = value(truePrevalence(request));
  expect(Math.round(100 * found.raw)).toBe(percent);
  if (low === null || high === null) return;
  for (const each of [found.blaker, found.clopperPearson]) {
    expect([Math.round(100 * each.low), Math.round(100 * each.high)]).toEqual([low, high]);
  }
});

it("[BE100] is the formula turned about: the share that the test would show", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 1, noNaN: true }),
      fc.double({ min: 0.6, max: 1, noNaN: true }),
      fc.double({ min: 0.6, max: 1, noNaN: true }),
      (truth, sensitivity, specificity) => {
        const apparent = Math.min(1, truth * sensitivity + (1 - truth) * (1 - specificity));
        const { raw } = value(correctedShare({ apparent, sensitivity, specificity }));
        expect(Math.abs(raw - truth)).toBeLessThan(1e-14); // rounding over Se + Sp − 1 ≥ 0.2
      },
    ),
    { seed: 1978, numRuns: 200 },
  );
});

it("[BE101] refuses a test that is no better than chance", () => {
  const coin = { positive: 5, examined: 50, sensitivity: 0.4, specificity: 0.6 };
  expect(truePrevalence(coin).problems[0]?.code).toBe("test-no-better-than-chance");
  const trials = { apparent: shareOf(5, 50), sensitivity: shareOf(4, 10), specificity: shareOf(6, 10) };
  expect(deltaPrevalence(trials).problems[0]?.code).toBe("test-no-better-than-chance");
  expect(langReiczigelPrevalence(trials).problems[0]?.code).toBe("test-no-better-than-chance");
  for (const [sensitivity, specificity] of [
    [0.4, 0.6],
    [{ a: 2, b: 3 }, 0.6],
    [
      { a: 2, b: 2 },
      { a: 2, b: 2 },
    ],
  ] as const) {
    const believed = prevalencePosterior({ positive: 5, examined: 50, sensitivity, specificity });
    expect(believed.problems[0]?.code).toBe("test-no-better-than-chance");
  }
  expect(() => truePrevalence({ ...coin, sensitivity: 0 })).toThrow("sensitivity");
  expect(truePrevalence({ ...coin, positive: 51 }).problems[0]?.code).toBe("positives-exceed-examined");
});

it("[BE102] keeps the raw value below 0 and above 1, and warns", () => {
  const few = truePrevalence({ positive: 6, examined: 151, sensitivity: 0.964, specificity: 0.927 });
  expect(value(few).raw).toBeCloseTo(-0.03733434418, 10);
  expect(value(few).value).toBe(0);
  expect(few.problems.map(({ code }) => code)).toEqual(["fewer-than-false-positives"]);
  const many = truePrevalence({ positive: 19, examined: 20, sensitivity: 0.8, specificity: 1 });
  expect(value(many).raw).toBeCloseTo(1.1875, 12);
  expect(value(many).value).toBe(1);
  expect(many.problems.map(({ code }) => code)).toEqual(["more-than-sensitivity"]);
});

it("[BE102] limits that were cut to one point are told, whichever way the errors are known", () => {
  const counts = { positive: 0, examined: 150, sensitivity: 0.96, specificity: 0.89 };
  const known = truePrevalence(counts);
  expect(value(known).clopperPearson).toEqual({ low: 0, high: 0 });
  const tried = {
    apparent: { share: 0, of: 150 },
    sensitivity: { share: 0.96, of: 100 },
    specificity: { share: 0.89, of: 100 },
  };
  const pools = { size: 10, pools: 150, positive: 0, sensitivity: 0.96, specificity: 0.89 };
  for (const each of [known, deltaPrevalence(tried), langReiczigelPrevalence(tried), imperfectPools(pools)]) {
    expect(each.problems.map(({ code }) => code)).toEqual(["fewer-than-false-positives", "limits-cut-to-a-point"]);
    expect(each.problems.map(({ severity }) => severity)).toEqual(["warned", "warned"]);
  }
  const all = truePrevalence({ ...counts, positive: 150, sensitivity: 0.8 });
  expect(all.problems.map(({ code }) => code)).toEqual(["more-than-sensitivity", "limits-cut-to-a-point"]);
  expect(all.problems[1]?.slots).toEqual({ at: 1 });
});

it("[BE103] a perfect test changes nothing", () => {
  const found = value(truePrevalence({ positive: 9, examined: 50, sensitivity: 1, specificity: 1 }));
  expect([found.raw, found.value, found.apparent]).toEqual([0.18, 0.18, 0.18]);
  // Clopper–Pearson 9/50 as computed for Se 0.9, Sp 1 elsewhere, times 0.9
  expect(found.clopperPearson.low).toBeCloseTo(0.9 * 0.0952911978996264, 10);
  expect(found.clopperPearson.high).toBeCloseTo(0.9 * 0.34929934587294487, 10);
});

it("[BE104] larger trials of the test narrow the limits, down to Wald's", () => {
  const known = value(truePrevalence({ positive: 40, examined: 200, sensitivity: 0.9, specificity: 0.97 }));
  const width = (times: number) =>
    value(
      deltaPrevalence({
        apparent: shareOf(40, 200),
        sensitivity: shareOf(45 * times, 50 * times),
        specificity: shareOf(97 * times, 100 * times),
      }),
    ).standardError;
  expect(width(1)).toBeCloseTo(0.0373716068849, 11); // computed elsewhere
  expect(width(10)).toBeLessThan(width(1));
  expect(width(1e7)).toBeCloseTo(known.standardError, 7);
});

it.each(printed.examples)("[BE105] $apparent.share of $apparent.of: $low to $high as printed", (example) => {
  const { low, high, ...request } = example;
  const found = value(langReiczigelPrevalence(request));
  const halfUnit = 0.5e-3; // three decimals are printed
  expect(Math.abs(found.limits.low - low)).toBeLessThanOrEqual(halfUnit);
  expect(Math.abs(found.limits.high - high)).toBeLessThanOrEqual(halfUnit);
});

it("[BE105] trap: with (1 + P)² as misprinted the third example would not come out", () => {
  const { low: _, high, ...request } = printed.examples[1] as (typeof printed.examples)[number];
  const { rawLimits, centre } = value(langReiczigelPrevalence(request));
  const z = 1.959963984540054;
  const [n, se, sp] = [request.apparent.of + z * z, 9 / 12, 13 / 14];
  const shown = (request.apparent.of * request.apparent.share + (z * z) / 2) / n;
  const youden = se + sp - 1;
  const p = (shown + sp - 1) / youden;
  const reach = (sign: 1 | -1) =>
    (z / youden) *
    Math.sqrt((shown * (1 - shown)) / n + (p * p * se * (1 - se)) / 12 + ((1 + sign * p) ** 2 * sp * (1 - sp)) / 14);
  expect(rawLimits.high).toBeCloseTo(centre + reach(-1), 12);
  expect(Math.abs(centre + reach(1) - high)).toBeGreaterThan(0.5e-3);
});

it.each(checks.rows)("[BE106] $positive of $examined with beliefs about the test", (row) => {
  const { positive, examined, prevalence, sensitivity, specificity, threshold } = row;
  const found = value(
    prevalencePosterior({ positive, examined, prevalence, sensitivity, specificity, thresholds: [threshold] }),
  );
  const integration = 1e-5;
  for (const figure of ["mean", "standardDeviation", "low", "median", "high"] as const) {
    expect(Math.abs(found[figure] - row[figure]), figure).toBeLessThan(integration);
  }
  expect(Math.abs((found.above[0]?.probability as number) - row.above)).toBeLessThan(integration);
});

it("[BE106] with a perfect test it is the beta posterior, priors infinite at the ends included", () => {
  for (const [a, b, positive, examined] of [
    [1, 1, 9, 50],
    [0.5, 0.5, 0, 20],
    [0.1, 3, 2, 10],
    [20, 5, 4000, 5000],
  ] as const) {
    const exact = beta({ a: a + positive, b: b + examined - positive });
    const found = value(
      prevalencePosterior({
        positive,
        examined,
        prevalence: { a, b },
        sensitivity: 1,
        specificity: 1,
        thresholds: [0, 0.05, 0.8, 1],
      }),
    );
    const settled = 1e-7;
    expect(Math.abs(found.mean - exact.mean)).toBeLessThan(settled);
    expect(Math.abs(found.standardDeviation - Math.sqrt(exact.variance))).toBeLessThan(settled);
    expect(Math.abs(found.low - exact.quantile(0.025))).toBeLessThan(settled);
    expect(Math.abs(found.median - exact.quantile(0.5))).toBeLessThan(settled);
    expect(Math.abs(found.high - exact.quantile(0.975))).toBeLessThan(settled);
    for (const { threshold, probability } of found.above) {
      expect(Math.abs(probability - exact.sf(threshold))).toBeLessThan(settled);
    }
  }
});

it("[BE107] refuses beliefs about the test that a huge sample makes too sharp to integrate", () => {
  const vague = { a: 2.1, b: 2 };
  const huge = { positive: 400_000, examined: 1_000_000, sensitivity: vague, specificity: vague };
  const found = prevalencePosterior(huge);
  expect(found.ok).toBe(false);
  expect(found.problems[0]?.code).toBe("posterior-did-not-settle");
});

it("[BE106] a sample that the beliefs about the test all but exclude has a posterior all the same", () => {
  const sure = { a: 1e6, b: 1e6 };
  const found = prevalencePosterior({ positive: 100, examined: 100_000, sensitivity: 1, specificity: sure });
  // Far fewer positive than half: the likelihood falls as exp(−99 900·p), so the mean is near 1/99 900.
  expect(found.ok && found.value.mean * 99_900).toBeCloseTo(1, 2);
});
