/** Every tabled case of the special functions, tails, quantiles and distributions. */
import { describe, expect, it } from "vitest";
import { allowance, outcomes } from "../../tests/reference/numerics/cases.ts";

const label = (name: string, args: readonly number[]) => `${name}(${args.join(", ")})`;

describe("against mpmath", () => {
  for (const each of outcomes("numerics-special-functions.json")) {
    it(`[NU1] ${label(each.function, each.args)}`, () => {
      expect(each.relativeError).toBeLessThanOrEqual(allowance);
    });
  }
  for (const each of outcomes("numerics-tails.json")) {
    const rule = each.function.startsWith("log") ? "NU3" : "NU2";
    it(`[${rule}] ${label(each.function, each.args)}`, () => {
      expect(each.relativeError).toBeLessThanOrEqual(allowance);
    });
  }
  for (const each of outcomes("numerics-quantiles.json")) {
    it(`[NU4] ${label(each.function, each.args)}`, () => {
      expect(each.relativeError).toBeLessThanOrEqual(allowance);
    });
  }
  for (const each of outcomes("numerics-distributions.json")) {
    it(`[NU5] ${label(each.function, each.args)}`, () => {
      expect(each.relativeError).toBeLessThanOrEqual(allowance);
    });
  }
  it("[NU2] [NU3] the table reaches below 1e-290, and below the smallest double in logs", () => {
    const tails = outcomes("numerics-tails.json");
    expect(tails.some(({ function: name, got }) => !name.startsWith("log") && got < 1e-290)).toBe(true);
    expect(tails.some(({ function: name, got }) => name.startsWith("log") && got < -745)).toBe(true);
  });
});
