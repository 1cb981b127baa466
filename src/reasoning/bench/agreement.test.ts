/** Agreement of readers against print, by hand, and at its edges. */
import fc from "fast-check";
import { expect, it } from "vitest";
import golden from "../../../tests/golden/agreement-of-readers.json" with { type: "json" };
import { hypergeometric } from "../../numerics/index.ts";
import type { Result } from "../../units/index.ts";
import { agreement, agreementAc1, fisherTest, mcnemarTest } from "./index.ts";

const of = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(result.problems.map(({ code }) => code).join(", "));
  return result.value;
};
const table = fc.integer({ min: 2, max: 4 }).chain((classes) =>
  fc
    .array(fc.array(fc.integer({ min: 0, max: 20 }), { minLength: classes, maxLength: classes }), {
      minLength: classes,
      maxLength: classes,
    })
    .filter((rows) => rows.flat().reduce((sum, each) => sum + each, 0) > 1),
);

it("[BE200] trap: printed limits of kappa, .56 to .79 are those of the null standard error; the proper ones are .524 to .823", () => {
  const { table: printed, kappa, z, limitsByNull } = golden.antibodyTest;
  const found = of(of(agreement({ table: printed })).kappa);
  expect(found.value).toBeCloseTo(kappa, 2);
  expect(of(found.z)).toBeCloseTo(z, 2);
  const byNull = [-1, 1].map((side) => found.value + side * 1.959964 * found.nullStandardError);
  expect(byNull.map((each) => Number(each.toFixed(2)))).toEqual(limitsByNull);
  expect([found.low, found.high].map((each) => Number(each.toFixed(3)))).toEqual([0.524, 0.823]);
  expect(found.standardError).toBeCloseTo(0.07622389286, 10);
});

it("[BE200] the abstractors' table as printed", () => {
  const { table: printed, kappa, standardError } = golden.abstractors;
  const found = of(of(agreement({ table: printed })).kappa);
  expect(Math.abs(found.value - kappa)).toBeLessThanOrEqual(0.5e-7); // seven decimals are printed
  expect(Math.abs(found.standardError - standardError)).toBeLessThanOrEqual(0.5e-8); // eight
});

it("[BE200] with two classes every weighting is the plain one; full agreement is 1; readers change places freely", () => {
  fc.assert(
    fc.property(table, (rows) => {
      const turned = rows.map((_, j) => rows.map((row) => row[j] as number));
      for (const weights of ["none", "linear", "quadratic"] as const) {
        const found = of(agreement({ table: rows, weights })).kappa;
        const back = of(agreement({ table: turned, weights })).kappa;
        expect(back.ok).toBe(found.ok);
        if (!found.ok || !back.ok) continue;
        expect(found.value.value).toBeCloseTo(back.value.value, 10);
        expect(found.value.standardError).toBeCloseTo(back.value.standardError, 8);
        expect(found.value.value).toBeLessThanOrEqual(1 + 1e-12);
        if (rows.length === 2) {
          expect(found.value.value).toBeCloseTo(of(of(agreement({ table: rows })).kappa).value, 12);
        }
      }
    }),
    { seed: 1969, numRuns: 100 },
  );
  const full = of(
    of(
      agreement({
        table: [
          [7, 0],
          [0, 9],
        ],
      }),
    ).kappa,
  );
  expect(full).toMatchObject({ value: 1, low: 1, high: 1 });
});

it("[BE201] one class only: kappa undefined, agreement still shown, AC1 is 1", () => {
  const one = of(
    agreement({
      table: [
        [50, 0],
        [0, 0],
      ],
    }),
  );
  expect(one.observed).toBe(1);
  expect(one.kappa).toMatchObject({ ok: false, problems: [{ code: "kappa-undefined" }] });
  expect(one.indices).toMatchObject({ prevalence: 1, bias: 0 });
  expect(one.indices?.onSecond).toMatchObject({ ok: false, problems: [{ code: "class-never-used" }] });
  expect(
    of(
      agreementAc1({
        table: [
          [50, 0],
          [0, 0],
        ],
      }),
    ),
  ).toMatchObject({ value: 1, low: 1, high: 1 });
});

it("[BE211] limits that close on kappa or AC1 are warned of; one disagreement opens them", () => {
  const all = [
    [5, 0],
    [0, 5],
  ];
  const kappa = of(agreement({ table: all })).kappa;
  expect(of(kappa)).toMatchObject({ low: 1, high: 1 });
  for (const { problems } of [kappa, agreementAc1({ table: all })])
    expect(problems).toMatchObject([{ code: "agreement-without-error", severity: "warned", slots: { readings: 10 } }]);
  const but = [
    [5, 1],
    [0, 5],
  ];
  expect([agreementAc1({ table: but }), of(agreement({ table: but })).kappa].flatMap((each) => each.problems)).toEqual(
    [],
  );
});

it("[BE201] one class by one reader: kappa is 0 and there is nothing to test; a crooked or empty table is refused", () => {
  const half = of(
    of(
      agreement({
        table: [
          [30, 20],
          [0, 0],
        ],
      }),
    ).kappa,
  );
  expect(half.value).toBeCloseTo(0, 12);
  expect(half.z).toMatchObject({ ok: false, problems: [{ code: "one-class-by-a-reader" }] });
  expect(agreement({ table: [[1, 2], [3]] })).toMatchObject({ ok: false, problems: [{ code: "table-not-square" }] });
  expect(
    agreement({
      table: [
        [0, 0],
        [0, 0],
      ],
    }),
  ).toMatchObject({ ok: false, problems: [{ code: "nothing-examined" }] });
  expect(() =>
    agreement({
      table: [
        [1, 0.5],
        [2, 3],
      ],
    }),
  ).toThrow("table must be");
});

it("[BE202] high prevalence pulls kappa down although readers agree as often", () => {
  const even = of(
    agreement({
      table: [
        [45, 5],
        [5, 45],
      ],
    }),
  );
  const skewed = of(
    agreement({
      table: [
        [85, 5],
        [5, 5],
      ],
    }),
  );
  expect(even.observed).toBe(skewed.observed);
  expect(of(even.kappa).value).toBeCloseTo(0.8, 12);
  expect(of(skewed.kappa).value).toBeLessThan(0.5);
  expect(even.pabak?.value).toBeCloseTo(0.8, 12);
  expect(skewed.pabak?.value).toBeCloseTo(0.8, 12);
  expect(skewed.indices?.prevalence).toBeCloseTo(0.8, 12);
  expect(
    of(
      agreement({
        table: [
          [3, 1],
          [1, 3],
        ],
        weights: "linear",
      }),
    ).pabak,
  ).toBeNull();
});

it("[BE203] trap: AC1 as printed; the recalled standard error is the one with n, its limits Student's t", () => {
  const { table: printed, ac1, fromMemory } = golden.abstractors;
  const found = of(agreementAc1({ table: printed }));
  expect(Math.abs(found.value - ac1)).toBeLessThanOrEqual(0.5e-7);
  expect(Math.abs(found.standardErrorByN - fromMemory.standardErrorByN)).toBeLessThanOrEqual(0.5e-8);
  expect(found.standardError / found.standardErrorByN).toBeCloseTo(Math.sqrt(100 / 99), 12);
  const width = 1.9842169515; // Student's t at 0.975 with 99 degrees
  expect(found.value - width * found.standardErrorByN).toBeCloseTo(fromMemory.low, 3);
  expect(found.value + width * found.standardErrorByN).toBeCloseTo(fromMemory.high, 3);
  expect(found.low).toBeCloseTo(found.value - width * found.standardError, 9);
  expect(found.method).toBe("gwet-ac1-t-n-minus-1");
  const high = of(
    agreementAc1({
      table: [
        [1, 0],
        [1, 20],
      ],
    }),
  );
  expect(high.high).toBe(1);
  expect(high.highRaw).toBeGreaterThan(1);
});

it("[BE204] trap: a table as likely as the observed one counts, though the two chances differ in the last bits", () => {
  // the mirrored table of equal groups has the same chance
  const found = fisherTest({ a: 3, b: 12, c: 9, d: 6 });
  expect(found.twoSided).toBeCloseTo(2 * found.less, 12);
  expect(found.midP.twoSided).toBeCloseTo(2 * found.midP.less, 12);
  expect(found.midP.doubled).toBeCloseTo(2 * found.midP.less, 12);
  expect(found.midP.less + found.midP.greater).toBeCloseTo(1, 12);
  // 0 of 3 against 2 of 7, and its fellow 1 of 3 against 1 of 7, both 7/15: as doubles they differ.
  const law = hypergeometric({ population: 10, marked: 2, drawn: 3 });
  expect(law.pmf(1)).toBeGreaterThan(law.pmf(0));
  expect(law.pmf(1) - law.pmf(0)).toBeLessThan(1e-15);
  expect(fisherTest({ a: 0, b: 3, c: 2, d: 5 }).twoSided).toBeCloseTo(1, 12);
});

it("[BE205] 1 against 9: exact .021484, mid-P .011719; an even split is 1 less half its chance; none is refused", () => {
  expect(of(mcnemarTest(1, 9))).toMatchObject({ chiSquare: { statistic: 6.4 } });
  expect(of(mcnemarTest(1, 9)).exact).toBeCloseTo(0.021484375, 14);
  expect(of(mcnemarTest(1, 9)).midP).toBeCloseTo(0.01171875, 14);
  expect(of(mcnemarTest(4, 4)).midP).toBeCloseTo(1 - 70 / 512, 12);
  expect(of(mcnemarTest(4, 4)).corrected.statistic).toBe(0);
  expect(mcnemarTest(0, 0)).toMatchObject({ ok: false, problems: [{ code: "no-bee-read-differently" }] });
});
