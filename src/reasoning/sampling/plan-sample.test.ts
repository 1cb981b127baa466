/** The plan: sizes and places per question, reasons with sources, and everything that weakens it. */
import fc from "fast-check";
import { expect, it } from "vitest";
import { cautions } from "../../knowledge/index.ts";
import { detectionProbability } from "./detection-sample-size.ts";
import { marginSampleSize, wilsonHalfWidth } from "./margin-sample-size.ts";
import { planSample, type SampleRequest } from "./plan-sample.ts";
import { samplingProblemCodes } from "./problems.ts";
import { planReasonCodes } from "./reasons.ts";

const base: SampleRequest = {
  purpose: "detect",
  season: "winter",
  colonies: [
    { id: "c1", code: "A-1" },
    { id: "c2", code: "A-2" },
  ],
  coloniesInApiary: 2,
  designPrevalence: 0.05,
  confidence: 0.95,
  sensitivity: 1,
  preservative: "frozen",
  supersOn: false,
  oilPattiesOrTreatmentDaysAgo: null,
  spareShare: 0.1,
};
const plan = (change: Partial<SampleRequest> = {}) => {
  const result = planSample({ ...base, ...change });
  if (!result.ok) throw new Error(result.problems.map(({ code }) => code).join(", "));
  return {
    ...result.value,
    problems: result.problems,
    codes: result.problems.map(({ code }) => code),
    why: result.value.reasons.map(({ code }) => code),
  };
};
const slotsOf = (change: Partial<SampleRequest>, code: string) =>
  plan(change).problems.find((each) => each.code === code)?.slots;

it("[SD13] to detect: 59 bees a colony for 5 % at 95 %, more when the bench misses some", () => {
  expect(plan()).toMatchObject({ beesPerColony: 59, colonies: ["c1", "c2"] });
  expect(plan({ sensitivity: 0.8 }).beesPerColony).toBe(74);
  expect(plan().reasons[0]).toMatchObject({ rule: "SD1", code: "size-for-detection", source: { source: "pirk-2013" } });
});

it("[SD13] to estimate: by the margin when one is given, else the handbook's 50 or the detection size", () => {
  expect(plan({ purpose: "estimate", designPrevalence: 0.2, margin: 0.1 })).toMatchObject({ beesPerColony: 60 });
  expect(plan({ purpose: "estimate", designPrevalence: 0.1 })).toMatchObject({ beesPerColony: 50 });
  expect(plan({ purpose: "estimate", designPrevalence: 0.1 }).why).toContain("size-of-handbook");
  expect(plan({ purpose: "estimate", designPrevalence: 0.02 }).beesPerColony).toBe(149);
  expect(plan({ purpose: "recheck", designPrevalence: 0.1 }).beesPerColony).toBe(50);
  const wide = plan({ purpose: "estimate", designPrevalence: 0.1 });
  expect(wide.expectedHalfWidth).toBeCloseTo((0.2136 - 0.0435) / 2, 4); // Wilson, 5 of 50
});

it("[SD13] the margin is kept, and one bee fewer would not keep it", () => {
  const share = fc.double({ min: 0.01, max: 0.99, noNaN: true });
  const margins = fc.double({ min: 0.01, max: 0.3, noNaN: true });
  fc.assert(
    fc.property(share, margins, (expectedPrevalence, margin) => {
      const bees = marginSampleSize({ expectedPrevalence, margin, level: 0.95 });
      const width = (n: number) => wilsonHalfWidth({ bees: n, expectedPrevalence, level: 0.95 });
      expect(width(bees)).toBeLessThanOrEqual(margin);
      if (bees > 1) expect(width(bees - 1)).toBeGreaterThan(margin);
    }),
    { seed: 1927, numRuns: 200 },
  );
});

it("[SD14] old bees from the top to detect, mixed ages from the comb edge to estimate, the same place to recheck", () => {
  expect(plan({ supersOn: true })).toMatchObject({ from: "S" });
  expect(plan({ supersOn: true }).why).toContain("old-bees-from-super");
  expect(plan().why).toContain("old-bees-under-inner-cover");
  expect(plan({ purpose: "estimate" })).toMatchObject({ from: "E" });
  expect(plan({ purpose: "recheck", earlierFrom: "S" })).toMatchObject({ from: "S" });
  expect(plan({ purpose: "recheck" })).toMatchObject({ from: "E" });
  expect(plan().why).toContain("find-queen-first");
});

it("[SD15] summer is warned of, autumn tells that sources differ, winter and spring favour detection", () => {
  expect(plan({ season: "summer" }).codes).toEqual(["summer-zero-is-weak"]);
  expect(plan({ season: "summer" }).why).toEqual(expect.arrayContaining(["summer-dilutes", "drones-if-any"]));
  expect(plan({ season: "autumn" }).why).toContain("season-views-differ");
  for (const season of ["winter", "spring"] as const)
    expect(plan({ season }).why).toContain("season-favours-detection");
  expect(plan().codes).toEqual([]);
});

it("[SD16] an earlier treatment, untested colonies and a second question for the vial are warned of", () => {
  expect(slotsOf({ oilPattiesOrTreatmentDaysAgo: 35 }, "treated-before")).toEqual({ daysAgo: 35 });
  expect(slotsOf({ oilPattiesOrTreatmentDaysAgo: 0 }, "treated-before")).toEqual({ daysAgo: 0 });
  expect(slotsOf({ coloniesInApiary: 8 }, "some-colonies-untested")).toEqual({
    chosen: 2,
    coloniesInApiary: 8,
    missedIfOne: 0.75,
  });
  const two = plan({ alsoAsked: ["varroa", "nosema"] });
  expect(two.codes).toEqual(["one-vial-two-questions", "one-vial-two-questions"]);
  expect(two.problems[0]?.slots).toEqual({ question: "varroa", takes: "open-brood" });
});

it("[SD23] of dead colonies the freshest dead, without a queen to find; dead among living ones are told", () => {
  const dead = plan({ deadColonies: ["c1", "c2"] });
  expect(dead).toMatchObject({ from: "D", codes: ["dead-colony-sampled"] });
  expect(dead.why).toContain("freshest-of-the-dead");
  expect(dead.why).not.toContain("find-queen-first");
  expect(plan({ purpose: "estimate", deadColonies: ["c1", "c2"] }).from).toBe("D");
  expect(plan({ deadColonies: ["c2", "c9"] })).toMatchObject({ from: "S", codes: ["dead-among-chosen"] });
  expect(slotsOf({ deadColonies: ["c2"] }, "dead-among-chosen")).toEqual({ colonies: "A-2" });
  expect(plan({ deadColonies: [] })).toEqual(plan());
});

it("[SD17] spare bees make up for the unreadable; a judged share is said", () => {
  expect(plan()).toMatchObject({ spareBees: 7, totalBees: 132 }); // 66 of which 59.4 readable
  expect(plan({ spareShare: 0 })).toMatchObject({ spareBees: 0, totalBees: 118 });
  expect(plan({ spareShare: 0.6 }).spareBees).toBe(89);
  const { spareShare: _, ...without } = base;
  expect(planSample(without).problems.map(({ code }) => code)).toEqual(["spare-share-judged"]);
  fc.assert(
    fc.property(fc.double({ min: 0, max: 0.9, noNaN: true }), (spareShare) => {
      const { beesPerColony, spareBees } = plan({ spareShare });
      expect((beesPerColony + spareBees) * (1 - spareShare)).toBeGreaterThanOrEqual(beesPerColony - 1e-6);
      expect((beesPerColony + spareBees - 1) * (1 - spareShare)).toBeLessThan(beesPerColony);
    }),
    { seed: 12, numRuns: 100 },
  );
});

it("[SD18] how the bees are kept has a reason; alcohol has its caution, and every caution exists", () => {
  expect(plan({ preservative: "ethanol-70" }).cautions).toContain("alcohol-flammable");
  expect(plan({ preservative: "frozen" }).cautions).not.toContain("alcohol-flammable");
  expect(plan({ preservative: "dry" }).why).toContain("dry-bees-rot");
  expect(plan({ preservative: "fresh" }).why).toContain("fresh-opens-better");
  for (const id of plan({ preservative: "ethanol-70" }).cautions) expect(cautions[id].words.length).toBeGreaterThan(10);
});

it("[SD12] the plan shows what it could miss, the design prevalence among the rows", () => {
  const { couldMiss, beesPerColony } = plan({ designPrevalence: 0.03 });
  expect(couldMiss.map(({ prevalence }) => prevalence)).toEqual([0.01, 0.02, 0.03, 0.05, 0.1, 0.2]);
  const own = couldMiss.find(({ prevalence }) => prevalence === 0.03);
  expect(own?.missed).toBeCloseTo(
    1 - detectionProbability({ bees: beesPerColony, designPrevalence: 0.03, sensitivity: 1 }),
    12,
  );
  expect(own?.missed).toBeLessThanOrEqual(0.05);
});

it("[SD19] no colony, one colony twice, more colonies than the apiary has: refused", () => {
  const code = (change: Partial<SampleRequest>) => planSample({ ...base, ...change }).problems[0]?.code;
  expect(code({ colonies: [] })).toBe("no-colony-chosen");
  expect(code({ coloniesInApiary: 1 })).toBe("colonies-exceed-apiary");
  const one = { id: "c1", code: "A-1" };
  expect(code({ colonies: [one, one] })).toBe("colony-chosen-twice");
  expect(() => planSample({ ...base, coloniesInApiary: 0 })).toThrow("coloniesInApiary");
  expect(() => planSample({ ...base, oilPattiesOrTreatmentDaysAgo: -3 })).toThrow("oilPattiesOrTreatmentDaysAgo");
});

it("[SD24] more bees than anybody opens are warned of, more than a colony holds are refused", () => {
  expect(plan({ designPrevalence: 0.002 })).toMatchObject({ beesPerColony: 1497, codes: ["many-bees-to-open"] });
  expect(plan({ designPrevalence: 0.003 }).codes).toEqual([]);
  expect(planSample({ ...base, designPrevalence: 0.00005 })).toMatchObject({
    ok: false,
    problems: [{ code: "more-bees-than-a-colony", severity: "blocked", slots: { bees: 59_914 } }],
  });
});

it("[SD20] every reason carries a rule, a known code, filled slots and a source", () => {
  const purposes = ["detect", "estimate", "recheck"] as const;
  const seasons = ["winter", "spring", "summer", "autumn"] as const;
  const preservatives = ["ethanol-70", "frozen", "fresh", "dry"] as const;
  const met = new Set<string>();
  for (const purpose of purposes) {
    for (const season of seasons) {
      for (const preservative of preservatives) {
        for (const supersOn of [true, false]) {
          const margin = supersOn ? { margin: 0.1 } : {};
          const deadColonies = season === "winter" && supersOn ? ["c1", "c2"] : [];
          const made = plan({
            purpose,
            season,
            preservative,
            supersOn,
            deadColonies,
            designPrevalence: 0.1,
            ...margin,
          });
          for (const { rule, code, slots, source } of made.reasons) {
            met.add(code);
            expect(rule).toMatch(/^SD\d+$/);
            expect(source.at.length).toBeGreaterThan(2);
            for (const slot of Object.values(slots)) expect(["string", "number"]).toContain(typeof slot);
          }
        }
      }
    }
  }
  expect([...met].sort()).toEqual([...planReasonCodes].sort());
  expect(new Set(samplingProblemCodes).size).toBe(samplingProblemCodes.length);
});
