/** Proposed codes are new, readable and keep counting. */
import { expect, it } from "vitest";
import { readCode } from "./check-letter.ts";
import { apiaryCode, caseCode, colonyCodes, lettersOf, specimenCodes } from "./codes.ts";

it("takes letters that are read without doubt", () => {
  expect(lettersOf("Óisín's Oak")).toBe("SA");
  expect(lettersOf("IOQ")).toBe("XX");
  expect(lettersOf("École")).toBe("EC");
});

it("never proposes a code that is taken", () => {
  expect(apiaryCode("Water Barn", ["WB", "WB2"])).toBe("WB3");
  expect(colonyCodes("WB", ["WB-01", "WB-03"], 2)).toEqual(["WB-02", "WB-04"]);
});

it("counts cases and specimens within district and year", () => {
  expect(caseCode("Tarrow Valley", 2027, ["TV-26-014"])).toBe("TV-27-001");
  const codes = specimenCodes("Tarrow Valley", 2026, ["TV26-0009-X", "XX26-0100-A"], 3);
  expect(codes.map((code) => code.slice(0, 9))).toEqual(["TV26-0010", "TV26-0011", "TV26-0012"]);
  expect(codes.every((code) => readCode(code).ok)).toBe(true);
});
