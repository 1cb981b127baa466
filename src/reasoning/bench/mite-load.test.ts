/** Mites per bee and per infested bee: the values, their identity, and how good the limits are. */
import fc from "fast-check";
import { expect, it } from "vitest";
import { drawGamma, drawPoisson, randomStream } from "../../numerics/index.ts";
import type { Estimate, Result } from "../../units/index.ts";
import { abundance, intensity } from "./mite-load.ts";

const of = (result: Result<Estimate>): Estimate => {
  if (!result.ok) throw new Error("refused");
  return result.value;
};

it("[BE6] keeps the three quantities apart", () => {
  const mitesPerBee = [0, 0, 0, 0, 0, 0, 12, 3, 1, 40];
  expect(of(abundance({ mitesPerBee })).value).toBe(5.6);
  expect(of(intensity({ mitesPerBee })).value).toBe(14);
  expect(of(abundance({ mitesPerBee })).n).toBe(10);
  expect(of(intensity({ mitesPerBee })).n).toBe(4);
});

it("[BE6] abundance = prevalence × intensity, and limits lie above 0 around the value", () => {
  const count = fc.oneof(fc.constant(0), fc.integer({ min: 0, max: 60 }));
  fc.assert(
    fc.property(fc.array(count, { minLength: 3, maxLength: 80 }), (mitesPerBee) => {
      const infested = mitesPerBee.filter((mites) => mites > 0).length;
      fc.pre(infested >= 2);
      const [all, some] = [of(abundance({ mitesPerBee })), of(intensity({ mitesPerBee }))];
      expect(all.value).toBeCloseTo((infested / mitesPerBee.length) * some.value, 10);
      for (const { low, value, high } of [all, some]) {
        expect(low).toBeGreaterThan(0);
        expect(low).toBeLessThanOrEqual(value);
        expect(high).toBeGreaterThanOrEqual(value);
      }
    }),
    { seed: 1997, numRuns: 200 },
  );
});

it("[BE6] the t quantile is used: four bees 1, 2, 3, 6 by hand", () => {
  // mean 3, s² = 14/3, standard error 1.0801, t(3, 0.975) = 3.1824 (printed tables)
  const { low, high } = of(abundance({ mitesPerBee: [1, 2, 3, 6] }));
  expect(low).toBeCloseTo(3 * Math.exp((-3.1824 * Math.sqrt(14 / 3 / 4)) / 3), 3);
  expect(high).toBeCloseTo(3 * Math.exp((3.1824 * Math.sqrt(14 / 3 / 4)) / 3), 3);
});

it("[BE6] the limits are approximate: 50 bees, mean 2, k 0.8 covered in 85 to 97 of 100 samples", () => {
  const stream = randomStream({ seed: 1953, stream: 1 });
  let covered = 0;
  for (let sample = 0; sample < 400; sample++) {
    const mitesPerBee = Array.from({ length: 50 }, () => drawPoisson(stream, (drawGamma(stream, 0.8) * 2) / 0.8));
    const { low, high } = of(abundance({ mitesPerBee }));
    if (low <= 2 && 2 <= high) covered++;
  }
  expect(covered / 400).toBeGreaterThan(0.85);
  expect(covered / 400).toBeLessThan(0.97);
});

it("[BE6] refuses where there is no answer", () => {
  expect(abundance({ mitesPerBee: [] }).problems[0]?.code).toBe("nothing-examined");
  expect(intensity({ mitesPerBee: [] }).problems[0]?.code).toBe("nothing-examined");
  expect(abundance({ mitesPerBee: [0, 0] }).problems[0]?.code).toBe("no-mites-counted");
  expect(intensity({ mitesPerBee: [0, 0] }).problems[0]?.code).toBe("no-mites-counted");
  expect(intensity({ mitesPerBee: [0, 5] }).problems[0]?.code).toBe("too-few-to-estimate");
  expect(() => abundance({ mitesPerBee: [1, -1] })).toThrow("mitesPerBee");
  expect(() => intensity({ mitesPerBee: [1, -1] })).toThrow("mitesPerBee");
});

it("[BE15] two infested bees with one mite each do not make a mean without doubt", () => {
  const { value, low, high, method } = of(intensity({ mitesPerBee: [0, 0, 1, 1] }));
  expect([value, method]).toEqual([1, "student-t-log-mean-poisson"]);
  // t(1, 0.975) = 12.7062 (printed tables), variance 1, two bees.
  expect(Math.log(high)).toBeCloseTo(12.7062 * Math.sqrt(1 / 2), 3);
  expect(Math.log(low)).toBeCloseTo(-12.7062 * Math.sqrt(1 / 2), 3);
});
