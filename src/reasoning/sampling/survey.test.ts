/** Surveys with a test that errs: printed cases, every draw counted, both cut-points, two stages, least cost. */
import fc from "fast-check";
import { expect, it } from "vitest";
import printed from "../../../tests/golden/cameron-baldock-1998.json" with { type: "json" };
import woah from "../../../tests/golden/woah-aquatic-code-1-4.json" with { type: "json" };
import {
  cheapestTwoStage,
  detectionSampleSize,
  finiteDetectionProbability,
  finiteDetectionSampleSize,
  marginSampleSize,
  smallestSurvey,
  surveyChances,
  twoStageDesign,
} from "./index.ts";

const value = <T>(result: { readonly ok: boolean; readonly value?: T }): T => {
  if (!result.ok || result.value === undefined) throw new Error(`no answer: ${JSON.stringify(result)}`);
  return result.value;
};

it.each(printed.chances)("[SD102] 2 or more of 30, population $population: $finds as printed", (row) => {
  const { population, infested, finds, computed } = row;
  const test = { sensitivity: 0.9, specificity: 0.98 };
  const chances = value(surveyChances({ population, infested, ...test, examined: 30, callInfestedFrom: 2 }));
  expect(Math.abs(chances.finds - finds)).toBeLessThan(0.005);
  expect(Math.abs(chances.finds - computed)).toBeLessThan(1e-12);
  expect(chances.clears).toBeCloseTo(0.8794543108410722, 12);
});

it("[SD102] agrees with counting every draw and every result of a group of seven", () => {
  const [population, infested, sensitivity, specificity] = [7, 3, 0.8, 0.9];
  for (const examined of [1, 3, 5, 7]) {
    for (let from = 0; from <= examined + 1; from += 1) {
      let [draws, finds] = [0, 0];
      for (let drawn = 0; drawn < 2 ** population; drawn += 1) {
        const members = [...Array(population).keys()].filter((i) => drawn & (1 << i));
        if (members.length !== examined) continue;
        draws += 1;
        for (let results = 0; results < 2 ** examined; results += 1) {
          const chance = members.reduce((product, member, i) => {
            const positive = member < infested ? sensitivity : 1 - specificity;
            return product * (results & (1 << i) ? positive : 1 - positive);
          }, 1);
          const positives = results.toString(2).replaceAll("0", "").length;
          if (positives >= from) finds += chance;
        }
      }
      const group = { population, infested, sensitivity, specificity };
      const ours = value(surveyChances({ ...group, examined, callInfestedFrom: from }));
      expect(ours.finds).toBeCloseTo(finds / draws, 13);
    }
  }
});

it("[SD102] with a perfect specificity and cut-point 1 it is plain detection", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 200 }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      fc.double({ min: 0.2, max: 1, noNaN: true }),
      (population, share, part, sensitivity) => {
        const infested = Math.round(share * population);
        const examined = Math.max(1, Math.round(part * population));
        const group = { population, infested, sensitivity, examined };
        const survey = value(surveyChances({ ...group, specificity: 1, callInfestedFrom: 1 }));
        expect(survey.finds).toBeCloseTo(value(finiteDetectionProbability(group)), 12);
        expect(survey.clears).toBe(1);
      },
    ),
    { seed: 1998, numRuns: 150 },
  );
});

it("[SD103] trap: two cut-points of one survey of 5000: called infested from 8, printed as 7, read as none up to 7", () => {
  const design = value(
    smallestSurvey({
      population: 5000,
      infested: 250,
      sensitivity: 0.95,
      specificity: 0.98,
      missAllowed: 0.05,
      falseAlarmAllowed: 0.05,
    }),
  );
  expect(design.examined).toBe(printed.survey.examined);
  expect(design.readAsNoneUpTo).toBe(printed.survey.readAsNoneUpTo);
  expect(design.callInfestedFrom).toBe(8);
  expect(design.finds).toBeCloseTo(printed.survey.finds, 10);
  expect(design.clears).toBeCloseTo(printed.survey.clears, 10);
});

it("[SD103] a cut-point of 0 calls all infested, and no count lies below it", () => {
  const survey = { population: 50, infested: 5, sensitivity: 0.9, specificity: 0.98, examined: 20 };
  const { finds, clears, oneShort } = value(surveyChances({ ...survey, callInfestedFrom: 0 }));
  expect([finds, clears]).toEqual([1, 0]);
  expect(oneShort.problems[0]?.code).toBe("no-count-below-zero");
});

it.each(woah.rows)("[SD104] $prevalence, Se $sensitivity, Sp $specificity: $examined, $falsePositives", (row) => {
  const { prevalence, sensitivity, specificity, examined, falsePositives } = row;
  const test = { population: null, infested: prevalence, sensitivity, specificity };
  const bounds = { missAllowed: 0.05, falseAlarmAllowed: 0.05 };
  const design = value(smallestSurvey({ ...test, ...bounds }));
  expect([design.examined, design.readAsNoneUpTo]).toEqual([examined, falsePositives]);
  expect(design.missed).toBeLessThanOrEqual(0.05);
  expect(design.falseAlarm).toBeLessThanOrEqual(0.05);
  // No cut-point serves one fewer.
  for (let from = 1; from <= falsePositives + 5; from += 1) {
    const { finds, clears } = value(surveyChances({ ...test, examined: examined - 1, callInfestedFrom: from }));
    expect(finds < 0.95 || clears < 0.95).toBe(true);
  }
});

it("[SD104] with a perfect test it is the size to detect", () => {
  const bounds = { sensitivity: 1, specificity: 1, missAllowed: 0.05, falseAlarmAllowed: 0.05 };
  expect(value(smallestSurvey({ population: null, infested: 0.1, ...bounds })).examined).toBe(29);
  for (const [population, infested] of [
    [100, 5],
    [100, 1],
    [500, 5],
  ] as const) {
    const plain = value(finiteDetectionSampleSize({ population, infested, confidence: 0.95, sensitivity: 1 }));
    expect(value(smallestSurvey({ population, infested, ...bounds })).examined).toBe(plain);
  }
});

it("[SD104] passes over no number: the first of all that does, by trying each", () => {
  const designs = [
    { population: null, infested: 0.1, sensitivity: 0.9, specificity: 0.95 },
    { population: 120, infested: 30, sensitivity: 0.8, specificity: 0.9 },
    { population: 300, infested: 60, sensitivity: 0.7, specificity: 0.8 },
    { population: 90, infested: 30, sensitivity: 0.95, specificity: 0.6 },
  ];
  for (const design of designs) {
    const found = smallestSurvey({ ...design, missAllowed: 0.1, falseAlarmAllowed: 0.1 });
    const first = Array.from({ length: 300 }, (_, index) => index + 1).find((examined) => {
      for (let callInfestedFrom = 1; callInfestedFrom <= examined; callInfestedFrom += 1) {
        const at = surveyChances({ ...design, examined, callInfestedFrom });
        if (at.ok && at.value.clears >= 0.9) return at.value.finds >= 0.9;
      }
      return false;
    });
    expect(found.ok && found.value.examined).toBe(first);
  }
});

it("[SD105] says how far it searched", () => {
  const wanted = { population: 40, infested: 2, sensitivity: 0.8, specificity: 0.8, missAllowed: 0.05 };
  const found = smallestSurvey({ ...wanted, falseAlarmAllowed: 0.05 });
  expect(found.ok).toBe(false);
  expect(found.problems[0]).toMatchObject({ code: "no-size-in-search", slots: { searched: 40 } });
  expect(smallestSurvey({ ...wanted, infested: 0, falseAlarmAllowed: 0.05 }).problems[0]?.code).toBe(
    "nothing-to-detect",
  );
  expect(smallestSurvey({ ...wanted, infested: 41, falseAlarmAllowed: 0.05 }).problems[0]?.code).toBe(
    "infested-exceed-population",
  );
});

it("[SD113] a test no better than chance, and a margin narrower than any count of bees, are refused at once", () => {
  const coin = { population: null, infested: 0.1, sensitivity: 0.4, specificity: 0.6 };
  const found = smallestSurvey({ ...coin, missAllowed: 0.05, falseAlarmAllowed: 0.05 });
  expect(found.problems[0]).toMatchObject({ code: "test-no-better-than-chance", slots: { sensitivity: 0.4 } });
  // This search never ended before: numbers of bees beyond 2^53 are no longer told apart.
  expect(() => marginSampleSize({ expectedPrevalence: 0.2, margin: 1e-12, level: 0.95 })).toThrow("margin must be");
});

const yard = { colonyPrevalence: 0.01, beePrevalence: 0.1, sensitivity: 0.95, confidence: 0.95 };

it("[SD106] trap: 31 bees attain 0.9547 and take 313 colonies, where the wanted 0.95 would ask for the printed 314", () => {
  const { beesPerColony, wantedSensitivity, clustersPrinted, attained } = printed.twoStage;
  const design = twoStageDesign({ ...yard, colonies: null, beesPerColony });
  expect(design.colonySensitivity).toBeCloseTo(attained, 12);
  expect(design.ofMany).toBe(313);
  const nominal = { designPrevalence: 0.01, confidence: 0.95, sensitivity: wantedSensitivity };
  expect(detectionSampleSize(nominal)).toBe(clustersPrinted);
});

it("[SD107] 120 colonies, 5 % infested: 6 of them, 50 to take", () => {
  const stages = { colonies: 120, colonyPrevalence: 0.05, beePrevalence: 0.1, sensitivity: 0.9, confidence: 0.95 };
  const design = twoStageDesign({ ...stages, beesPerColony: 30 });
  expect(design.ofMany).toBe(63);
  expect(design.ofCounted?.infested).toBe(6);
  expect(design.ofCounted?.colonies).toMatchObject({ value: 50 });
  const supposed = (colonies: number) => twoStageDesign({ ...stages, colonies, beesPerColony: 30 }).ofCounted?.infested;
  expect([5, 49, 50, 51, 70].map(supposed)).toEqual([1, 2, 2, 3, 4]);
  const hopeless = twoStageDesign({ ...stages, colonies: 10, beesPerColony: 1 });
  expect(hopeless.ofCounted?.colonies.problems[0]?.code).toBe("confidence-out-of-reach");
});

it("[SD108] no number of bees gives a cheaper design", () => {
  const stages = { colonies: 400, colonyPrevalence: 0.03, beePrevalence: 0.08, sensitivity: 0.9, confidence: 0.95 };
  const best = value(cheapestTwoStage({ ...stages, costPerColony: 40, costPerBee: 1.2, mostBees: 150 }));
  expect([best.beesPerColony, best.colonies]).toEqual([24, 105]);
  expect(best.cost).toBeCloseTo(7224, 9);
  for (let beesPerColony = 1; beesPerColony <= 150; beesPerColony += 1) {
    const taken = twoStageDesign({ ...stages, beesPerColony }).ofCounted?.colonies;
    if (taken?.ok) expect(taken.value * (40 + 1.2 * beesPerColony)).toBeGreaterThanOrEqual(best.cost - 1e-9);
  }
  // Bees for nothing: as many as allowed never lose, and the fewest with the fewest colonies win.
  const free = value(cheapestTwoStage({ ...stages, costPerColony: 1, costPerBee: 0, mostBees: 150 }));
  const fewer = twoStageDesign({ ...stages, beesPerColony: free.beesPerColony - 1 }).ofCounted?.colonies;
  expect(fewer?.ok === false || (fewer?.value ?? 0) > free.colonies).toBe(true);
});

it("[SD108] equal costs go to fewer bees: 39 colonies of 4 or 30 of 6 for 780 each", () => {
  const stages = { colonies: 40, colonyPrevalence: 0.1, beePrevalence: 0.2, sensitivity: 0.9, confidence: 0.95 };
  const best = value(cheapestTwoStage({ ...stages, costPerColony: 8, costPerBee: 3, mostBees: 60 }));
  expect([best.beesPerColony, best.colonies, best.cost]).toEqual([4, 39, 780]);
  expect(twoStageDesign({ ...stages, beesPerColony: 6 }).ofCounted?.colonies).toMatchObject({ value: 30 });
  expect(30 * (8 + 6 * 3)).toBe(780);
  // In money that is no whole number the two costs differ in the last bits and still tie.
  const cents = value(cheapestTwoStage({ ...stages, costPerColony: 0.8, costPerBee: 0.3, mostBees: 60 }));
  expect(cents.beesPerColony).toBe(4);
});

it("[SD108] refuses when no number of bees reaches the confidence", () => {
  const stages = { colonies: 10, colonyPrevalence: 0.1, beePrevalence: 0.01, sensitivity: 0.9, confidence: 0.95 };
  const found = cheapestTwoStage({ ...stages, costPerColony: 1, costPerBee: 1, mostBees: 5 });
  expect(found.problems[0]?.code).toBe("no-design-reaches");
});
