/** Efficacy against check values, published reductions and a published trial; zeros, negatives and refusals. */
import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import golden from "../../../tests/golden/efficacy-check-values.json" with { type: "json" };
import published from "../../../tests/golden/published-reductions.json" with { type: "json" };
import trial from "../../../tests/golden/varroa-splits-2025-henderson-tilton.json" with { type: "json" };
import type { Estimate, Result } from "../../units/index.ts";
import { abbott } from "./abbott.ts";
import { hendersonTilton } from "./henderson-tilton.ts";
import { schneiderOrelli, sunShepard } from "./other-formulas.ts";
import { katzRatio, koopmanRatio } from "./share-ratio.ts";
import { apparentFall, treatmentOutcome } from "./trial-outcome.ts";

const of = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(result.problems.map(({ code }) => code).join(", "));
  return result.value;
};
const codes = (result: { readonly problems: readonly { readonly code: string }[] }) =>
  result.problems.map(({ code }) => code);
const share = ([infested, examined]: readonly number[]) => ({
  infested: infested as number,
  examined: examined as number,
});
const percent = ({ value, low, high }: Estimate) => [100 * value, 100 * low, 100 * high] as const;
const near = (found: readonly number[], wanted: readonly number[], tolerance: number) => {
  expect(found).toHaveLength(wanted.length);
  for (const [i, each] of found.entries()) expect(Math.abs(each - (wanted[i] as number))).toBeLessThan(tolerance);
};

describe("Abbott", () => {
  it.each(golden.abbott)("[EF1] $treated against $control: $efficacy %", (row) => {
    const groups = { treated: share(row.treated), control: share(row.control) };
    near(percent(of(abbott(groups))), [row.efficacy, ...row.katz], 1e-8);
    near(percent(of(abbott({ ...groups, method: "koopman" }))), [row.efficacy, ...row.koopman], 1e-7);
  });

  it("[EF2] none left: 100 %, half a bee added for the low end, Koopman's higher; the high end is the value", () => {
    const { treated, control, katzWithHalf, koopmanLow } = golden.abbottZero;
    const groups = { treated: share(treated), control: share(control) };
    const katz = abbott(groups);
    near(percent(of(katz)), [100, katzWithHalf[0] as number, 100], 1e-8);
    expect(of(katz).method).toBe("abbott-katz-half");
    expect(codes(katz)).toEqual(["half-added-for-limits"]);
    near(percent(of(abbott({ ...groups, method: "koopman" }))), [100, koopmanLow, 100], 1e-7);
    const raw = katzRatio({ first: share(treated), second: share(control), level: 0.95 });
    near([100 * (1 - raw.high), 100 * (1 - raw.low)], katzWithHalf, 1e-8);
  });

  it("[EF1] Koopman's own example", () => {
    const { first, second, ratio, low, high } = golden.koopman1984;
    const found = koopmanRatio({ first: share(first), second: share(second), level: 0.95 });
    expect(found.ratio).toBe(ratio);
    near([found.low, found.high], [low, high], 0.005);
  });

  it("[EF1] Koopman's limits hold with none in the first group at any level: a lower level, a lower limit", () => {
    const highs = [0.01, 0.05, 0.5, 0.95].map(
      (level) => koopmanRatio({ first: share([0, 15]), second: share([12, 50]), level }).high,
    );
    expect(highs).toEqual([...highs].sort((one, other) => one - other));
    expect(highs[0]).toBeGreaterThan(0);
  });

  it("[EF4] worse than untreated is reported below 0, not cut off", () => {
    const result = abbott({ treated: share([36, 40]), control: share([16, 80]) });
    expect(of(result).value).toBe(-3.5);
    expect(codes(result)).toEqual(["negative-efficacy"]);
  });

  it("[EF5] without an untreated group there is none; a zero there leaves it undefined", () => {
    expect(codes(abbott({ treated: share([1, 10]), control: null }))).toEqual(["no-comparator"]);
    expect(codes(abbott({ treated: share([1, 10]), control: share([0, 10]) }))).toEqual(["efficacy-undefined"]);
    expect(codes(abbott({ treated: share([11, 10]), control: share([1, 0]) }))).toEqual([
      "infested-exceed-examined",
      "infested-exceed-examined",
    ]);
    expect(codes(abbott({ treated: share([0, 0]), control: share([1, 10]) }))).toEqual(["group-not-examined"]);
    expect(() => abbott({ treated: share([0.5, 10]), control: share([1, 10]) })).toThrow("treated.infested");
  });

  it("[EF1] equals Schneider-Orelli on the dead and lies inside its limits, whatever the counts", () => {
    const group = fc.tuple(fc.integer({ min: 1, max: 60 }), fc.integer({ min: 0, max: 60 })).map(([k, more]) => ({
      infested: k,
      examined: k + more,
    }));
    fc.assert(
      fc.property(group, group, (treated, control) => {
        for (const method of ["katz", "koopman"] as const) {
          const { value, low, high } = of(abbott({ treated, control, method }));
          expect(low).toBeLessThanOrEqual(value + 1e-9);
          expect(high).toBeGreaterThanOrEqual(value - 1e-9);
        }
        const dead = (each: typeof treated) => 1 - each.infested / each.examined;
        const other = of(schneiderOrelli({ treatedDead: dead(treated), controlDead: dead(control) }));
        expect(other).toBeCloseTo(of(abbott({ treated, control })).value, 8);
      }),
      { seed: 1925, numRuns: 200 },
    );
  });
});

describe("Henderson and Tilton", () => {
  it.each(golden.counts)("[EF3] counts $treated against $control: $efficacy %", (row) => {
    const look = ([before, after]: readonly number[]) => ({
      before: { mites: before as number },
      after: { mites: after as number },
    });
    const result = hendersonTilton({ kind: "counts", treated: look(row.treated), control: look(row.control) });
    near(percent(of(result)), [row.efficacy, row.low, row.high], 1e-8);
    expect(codes(result)).toEqual(["overdispersion-not-given"]);
  });

  it.each(golden.shares)("[EF3] shares $treated against $control: $efficacy %", (row) => {
    const look = ([before, after]: readonly number[][]) => ({
      before: share(before as number[]),
      after: share(after as number[]),
    });
    const result = hendersonTilton({ kind: "shares", treated: look(row.treated), control: look(row.control) });
    near(percent(of(result)), [row.efficacy, row.low, row.high], 1e-8);
    expect(of(result)).toMatchObject({ method: "henderson-tilton-shares", rule: "EF3", n: 400, level: 0.95 });
  });

  it("[EF3] an overdispersion of 4 doubles the width on the logarithmic scale", () => {
    const groups = {
      kind: "counts",
      treated: { before: { mites: 300 }, after: { mites: 15 } },
      control: { before: { mites: 250 }, after: { mites: 300 } },
    } as const;
    const log = ({ low, value }: Estimate) => Math.log((1 - low) / (1 - value));
    const plain = of(hendersonTilton({ ...groups, overdispersion: 1 }));
    const wide = hendersonTilton({ ...groups, overdispersion: 4 });
    expect(log(of(wide)) / log(plain)).toBeCloseTo(2, 10);
    expect(codes(wide)).toEqual([]);
  });

  it.each(trial.arms)("[EF7] trial of 2025, $treatment: $efficacy %", ({ treatment, efficacy, model }) => {
    const rows = readFileSync(new URL("../../../examples/varroa-splits-2025/colonies.csv", import.meta.url), "utf8")
      .trim()
      .split("\n")
      .map((line) => line.split(","));
    const at = (name: string) => rows[0]?.indexOf(name) ?? -1;
    const pooled = (arm: string) => {
      const chosen = rows.slice(1).filter((row) => row[at("issues")] === "0" && row[at("treatment")] === arm);
      const total = (name: string) => chosen.reduce((sum, row) => sum + Number(row[at(name)]), 0);
      return {
        before: { mites: total("d2_mites"), effort: total("d2_bees") },
        after: { mites: total("d77_mites"), effort: total("d77_bees") },
      };
    };
    const result = of(
      hendersonTilton({ kind: "counts", treated: pooled(treatment), control: pooled("untreated"), overdispersion: 22 }),
    );
    expect(Math.abs(100 * result.value - efficacy)).toBeLessThanOrEqual(0.005 + 1e-9);
    // the authors' model differs by up to 8 points; its figure still lies inside wide limits
    expect(Math.abs(100 * result.value - model)).toBeLessThan(8);
    expect(result.low).toBeLessThan(model / 100);
    expect(result.high).toBeGreaterThan(model / 100);
  });

  it("[EF2] none left in the treated: 100 % with a low end; a zero anywhere else is refused", () => {
    const make = (tb: number, ta: number, cb: number, ca: number) =>
      hendersonTilton({
        kind: "shares",
        treated: { before: share([tb, 50]), after: share([ta, 50]) },
        control: { before: share([cb, 50]), after: share([ca, 50]) },
      });
    const none = make(20, 0, 18, 9);
    expect(of(none)).toMatchObject({ value: 1, high: 1, method: "henderson-tilton-shares-half" });
    // by hand, with half added: 0.5 of 40.5 after 20.5 of 60.5; 9.5 of 30.5 after 18.5 of 50.5
    const unequal = hendersonTilton({
      kind: "shares",
      treated: { before: share([20, 60]), after: share([0, 40]) },
      control: { before: share([18, 50]), after: share([9, 30]) },
    });
    const variance = 1 / 0.5 - 1 / 40.5 + 1 / 20.5 - 1 / 60.5 + 1 / 9.5 - 1 / 30.5 + 1 / 18.5 - 1 / 50.5;
    const centre = 0.5 / 40.5 / (20.5 / 60.5) / (9.5 / 30.5 / (18.5 / 50.5));
    expect(of(unequal).low).toBeCloseTo(1 - centre * Math.exp(1.959963984540054 * Math.sqrt(variance)), 10);
    // cautious: lower than with one bee left, where nothing has to be added
    expect(of(none).low).toBeLessThan(of(make(20, 1, 18, 9)).low);
    expect(codes(none)).toEqual(["half-added-for-limits"]);
    for (const zero of [make(0, 5, 18, 9), make(20, 5, 0, 9), make(20, 5, 18, 0)]) {
      expect(codes(zero)).toEqual(["efficacy-undefined"]);
    }
  });

  it("[EF5] refuses without a comparator", () => {
    const result = hendersonTilton({
      kind: "shares",
      treated: { before: share([20, 50]), after: share([5, 50]) },
      control: null,
    });
    expect(result).toMatchObject({ ok: false, problems: [{ code: "no-comparator", severity: "blocked" }] });
  });

  it("[EF4] a group that fared worse gives a negative figure", () => {
    const result = hendersonTilton({
      kind: "shares",
      treated: { before: share([10, 50]), after: share([20, 50]) },
      control: { before: share([10, 50]), after: share([10, 50]) },
    });
    expect(of(result).value).toBeCloseTo(-1, 12);
    expect(codes(result)).toEqual(["negative-efficacy"]);
  });
});

describe("a treatment checked", () => {
  const treated = { before: share([20, 50]), after: share([5, 50]) };
  const control = { before: share([18, 50]), after: share([9, 50]) };
  const look = { treated, control, scored: "living-mites", daysAfter: 28 } as const;

  it("[EF6] 40 → 10 % beside 36 → 18 %: fell by 75 %, corrected 50 %, 20 in 100 expected anyway", () => {
    const outcome = of(treatmentOutcome(look));
    expect(outcome.apparentFall.value).toBeCloseTo(0.75, 12);
    expect(outcome.efficacy?.value).toBeCloseTo(0.5, 12);
    expect(outcome.expectedWithout).toBeCloseTo(0.2, 12);
    expect(outcome.fallNotByTreatment).toBeCloseTo(0.2, 12); // of the 0.3
    // by hand: Σ(1/x − 1/n) = 1/20 + 1/5 + 1/18 + 1/9 − 4/50
    const width = 1.959964 * Math.sqrt(1 / 20 + 1 / 5 + 1 / 18 + 1 / 9 - 4 / 50);
    expect(outcome.efficacy?.low).toBeCloseTo(1 - 0.5 * Math.exp(width), 6);
    expect(outcome.efficacy?.low).toBeLessThan(0); // ten bees can be chance
  });

  it("[EF6] without a comparator: before and after only, and the problem says why", () => {
    const alone = treatmentOutcome({ ...look, control: null });
    expect(of(alone)).toMatchObject({ efficacy: null, expectedWithout: null, fallNotByTreatment: null });
    expect(of(alone).apparentFall.value).toBeCloseTo(0.75, 12);
    expect(alone.problems).toMatchObject([{ code: "no-comparator", severity: "warned" }]);
  });

  it("[EF6] a comparator that went to zero: no efficacy, but 0 in 100 expected without treatment", () => {
    const gone = treatmentOutcome({ ...look, control: { before: share([18, 50]), after: share([0, 50]) } });
    expect(of(gone)).toMatchObject({ efficacy: null, expectedWithout: 0 });
    expect(codes(gone)).toEqual(["efficacy-undefined"]);
  });

  it("[EF8] bees scored for any mite may carry dead ones: said", () => {
    expect(codes(treatmentOutcome({ ...look, scored: "any-mite" }))).toEqual(["dead-mites-still-counted"]);
    expect(codes(treatmentOutcome(look))).toEqual([]);
  });

  it("[EF6] none infested before: no fall to speak of; none after: 100 % with a low end", () => {
    expect(codes(apparentFall({ before: share([0, 50]), after: share([0, 50]) }))).toEqual(["efficacy-undefined"]);
    const none = apparentFall({ before: share([20, 50]), after: share([0, 50]) });
    expect(of(none)).toMatchObject({ value: 1, high: 1, method: "before-after-katz-half" });
    expect(codes(treatmentOutcome({ ...look, treated: { before: share([60, 50]), after: share([0, 50]) } }))).toEqual([
      "infested-exceed-examined",
    ]);
    expect(() => treatmentOutcome({ ...look, daysAfter: -1 })).toThrow("daysAfter");
  });
});

it.each(published.against)("[EF9] published change $treatedChange beside $controlChange: $efficacyPercent %", (row) => {
  const found = of(sunShepard({ treatedDead: -row.treatedChange, controlChange: row.controlChange }));
  expect(100 * found).toBeCloseTo(row.efficacyPercent, 1);
});

it("[EF9] published shares after treatment: below 1 % beside 25 % is more than 96 %", () => {
  const { treatedShareBelow, controlShare, efficacyPercentAbove } = published.atLeast;
  const found = of(schneiderOrelli({ treatedDead: 1 - treatedShareBelow, controlDead: 1 - controlShare }));
  expect(100 * found).toBeGreaterThanOrEqual(efficacyPercentAbove - 1e-9);
});

it("[EF9] the older forms, from percentages alone", () => {
  const { sunShepard: ss, schneiderOrelli: so } = golden;
  expect(100 * of(sunShepard(ss))).toBeCloseTo(ss.efficacy, 10);
  expect(100 * of(schneiderOrelli(so))).toBeCloseTo(so.efficacy, 10);
  expect(codes(schneiderOrelli({ treatedDead: 0.5, controlDead: 1 }))).toEqual(["efficacy-undefined"]);
  expect(codes(sunShepard({ treatedDead: 0.5, controlChange: -1 }))).toEqual(["efficacy-undefined"]);
  expect(() => sunShepard({ treatedDead: 1.5, controlChange: 0 })).toThrow("treatedDead");
});

describe("all infested everywhere", () => {
  const all = { infested: 10, examined: 10 };
  // With all of n infested, Pearson's chi-square at the ratio r > 1 is n(r − 1): the limit is 1 + z²/n, z² = 3.8415.
  const high = 1 + 3.841458820694124 / 10;

  it("[EF10] Abbott's form and the fall alone take Koopman's limits", () => {
    for (const found of [abbott({ treated: all, control: all }), apparentFall({ before: all, after: all })]) {
      const { value, low, high: upper, method } = of(found);
      expect([value, method]).toEqual([0, expect.stringMatching(/koopman$/)]);
      near([low, upper], [1 - high, 1 - 1 / high], 1e-8);
    }
  });

  it("[EF10] Henderson and Tilton's joins those of the two groups", () => {
    const group = { before: all, after: all };
    const { value, low, high: upper } = of(hendersonTilton({ kind: "shares", treated: group, control: group }));
    near([value, low, upper], [0, 1 - high ** Math.SQRT2, 1 - high ** -Math.SQRT2], 1e-8);
  });
});
