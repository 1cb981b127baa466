/** The reckoner: published sizes and ranges, and what it refuses. */
import { describe, expect, it } from "vitest";
import { wordsOf } from "../../words/index.ts";
import { reckonEstimate, reckonSize } from "../index.ts";

const words = wordsOf("en");
const size = { prevalence: "5", confidence: "95", sensitivity: "100", population: "" };
const count = { positive: "17", examined: "50", level: "95", line: "" };

describe("sample size", () => {
  it("59 bees find 5 in 100 infested 95 times in 100 (Pirk and others 2013), and the table twin holds it", () => {
    const view = reckonSize(size, words);
    if (!view.ok) return expect.fail("not reckoned");
    expect(view.value.bees).toBe(59);
    expect(view.value.says).toContain("59 bees");
    expect(view.value.rows.some(([bees, found]) => bees === 59 && found > 95)).toBe(true);
  });

  it("of 100 colonies with one infested 95 must be looked at", () => {
    const view = reckonSize({ ...size, prevalence: "1", population: "100" }, words);
    expect(view).toMatchObject({ ok: true, value: { bees: 95, isFinite: true } });
  });

  it("says how far one can get when even all do not suffice, at the field that must change", () => {
    const view = reckonSize({ ...size, prevalence: "3", sensitivity: "80", population: "30" }, words);
    expect(view).toMatchObject({ ok: false, problems: [{ code: "confidence-out-of-reach", field: "population" }] });
  });

  it("names the field, what was given and what is expected", () => {
    const view = reckonSize({ ...size, confidence: "100" }, words);
    expect(view.problems[0]).toMatchObject({ field: "confidence", slots: { given: "100", max: 99.99 } });
  });
});

describe("a range", () => {
  it("17 of 50: 34, and 21 to 49 by the exact method; three methods side by side", () => {
    const view = reckonEstimate(count, words);
    if (!view.ok) return expect.fail("not reckoned");
    expect(view.value.says).toBe("**34 in 100,** and it could be 21 to 49.");
    expect(view.value.rows.map((row) => row.method)).toEqual(["clopper-pearson", "wilson", "jeffreys"]);
  });

  it("stands on one side of a line or cannot say", () => {
    const against = (line: string) => {
      const view = reckonEstimate({ ...count, line }, words);
      return view.ok ? view.value.against : null;
    };
    expect(against("20")).toBe("All of the range lies above 20.");
    expect(against("60")).toBe("All of the range lies below 60.");
    expect(against("30")).toContain("cannot say");
  });

  it("none found in 50 is never a zero alone", () => {
    const view = reckonEstimate({ ...count, positive: "0" }, words);
    if (!view.ok) return expect.fail("not reckoned");
    expect(view.value.says).toBe("**None found in 50 bees.** It could still be up to 7 in 100.");
    expect(view.value.oneSided).toContain("below 5.8 in 100");
  });

  it("more bees with mites than bees read are refused", () => {
    expect(reckonEstimate({ ...count, positive: "51" }, words)).toMatchObject({
      ok: false,
      problems: [{ code: "positives-exceed-examined", field: "positive" }],
    });
  });
});
