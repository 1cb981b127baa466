import { describe, expect, it } from "vitest";
import { DomainError } from "../units/index.ts";
import { trigamma } from "./trigamma.ts";

/** Relative difference. */
const apart = (got: number, wanted: number) => Math.abs(got / wanted - 1);

describe("trigamma", () => {
  it("[NU210] equals its closed forms at 1, 2, 1/2 and 3/2", () => {
    const sixth = Math.PI ** 2 / 6;
    for (const [x, exact] of [
      [1, sixth],
      [2, sixth - 1],
      [0.5, 3 * sixth],
      [1.5, 3 * sixth - 4],
    ] as const)
      expect(apart(trigamma(x), exact)).toBeLessThan(1e-14); // a few roundings of fifteen added terms
  });

  it("[NU210] obeys reflection and duplication between 0 and 1", () => {
    for (let x = 0.01; x < 1; x += 0.07) {
      const reflected = (Math.PI / Math.sin(Math.PI * x)) ** 2;
      expect(apart(trigamma(x) + trigamma(1 - x), reflected)).toBeLessThan(1e-13);
      expect(apart((trigamma(x) + trigamma(x + 0.5)) / 4, trigamma(2 * x))).toBeLessThan(1e-13);
    }
  });

  it("[NU210] lies between 1/x + 1/(2x²) and that with 1/(6x³) more, far out", () => {
    for (const x of [20, 1e3, 1e5]) {
      const first = 1 / x + 1 / (2 * x * x);
      expect(trigamma(x)).toBeGreaterThanOrEqual(first);
      expect(trigamma(x)).toBeLessThanOrEqual((first + 1 / (6 * x ** 3)) * (1 + 1e-15)); // the last bit
    }
  });

  it("[NU210] refuses what is not above 0", () => {
    for (const x of [0, 1e-160, -1, Number.NaN, Number.POSITIVE_INFINITY])
      expect(() => trigamma(x)).toThrow(DomainError);
  });
});
