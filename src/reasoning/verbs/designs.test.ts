/** Designs: printed and independently computed numbers come out of the verbs. */
import { expect, it } from "vitest";
import printed from "../../../tests/golden/cameron-baldock-1998.json" with { type: "json" };
import woah from "../../../tests/golden/woah-aquatic-code-1-4.json" with { type: "json" };
import { margin } from "./margin.ts";
import { survey } from "./survey.ts";
import { twoStage } from "./two-stage.ts";
import type { AnswerOf, Verb } from "./verb.ts";

function ask<V extends Verb>(verb: V, raw: object): AnswerOf<V> {
  const reply = verb.ask(raw);
  if (reply.kind !== "answered") throw new Error(JSON.stringify(reply.problems));
  return reply.value as AnswerOf<V>;
}
const troubles = (verb: Verb, raw: object) => verb.ask(raw).problems.map(({ code, field }) => `${field}: ${code}`);

it("60 bees know 20 in 100 within 10, 59 do not (own numbers; Wilson's formula by hand)", () => {
  const { bees, halfWidth, oneFewer } = ask(margin, { expectedPrevalence: 0.2, margin: 0.1 });
  expect(bees).toBe(60);
  const by = (n: number) => (1.959963985 * Math.sqrt(0.16 / n + 3.841458821 / (4 * n * n))) / (1 + 3.841458821 / n);
  expect(halfWidth).toBeCloseTo(by(60), 9);
  expect(oneFewer).toBeCloseTo(by(59), 9);
  expect(by(59)).toBeGreaterThan(0.1);
});

it("the margin asks for the most bees at a half, and for as many at p as at 1 − p", () => {
  const { byPrevalence } = ask(margin, { expectedPrevalence: 0.2, margin: 0.1, prevalences: [0.1, 0.5, 0.9] });
  const [low, half, high] = byPrevalence.map(({ bees }) => bees);
  expect(low).toBe(high);
  expect(half).toBeGreaterThan(low ?? 0);
  expect(troubles(margin, { expectedPrevalence: 0.2, margin: 0.6 })).toEqual(["margin: field-unfit"]);
});

it("the survey of 5000: 194, called infested from 8, read as free up to the printed 7 (Cameron and Baldock 1998)", () => {
  const { examined, callInfestedFrom, readAsNoneUpTo, finds, clears, infested } = ask(survey, survey.example);
  expect([examined, callInfestedFrom, readAsNoneUpTo, infested]).toEqual([194, 8, 7, 250]);
  expect(printed.survey.readAsNoneUpTo).toBe(readAsNoneUpTo);
  expect(finds).toBeCloseTo(printed.survey.finds, 10);
  expect(clears).toBeCloseTo(printed.survey.clears, 10);
});

it.each(printed.chances)("30 of $population, from 2 positive on: finds $finds as printed", (row) => {
  const { finds, falseAlarm, chosen, rule, byCutPoint } = ask(survey, {
    designPrevalence: 0.1,
    sensitivity: 0.9,
    specificity: 0.98,
    examined: 30,
    callInfestedFrom: 2,
    ...(row.population === null ? {} : { population: row.population }),
  });
  expect(finds).toBeCloseTo(row.computed, 10);
  expect(falseAlarm).toBeCloseTo(1 - 0.87945431084, 10);
  expect([chosen, rule]).toEqual(["given", "SD102"]);
  expect(byCutPoint.find(({ callInfestedFrom }) => callInfestedFrom === 2)?.missed).toBeCloseTo(1 - finds, 12);
});

it.each(woah.rows)("$prevalence, Se $sensitivity, Sp $specificity: $examined (WOAH Aquatic Code 1.4)", (row) => {
  const { prevalence: designPrevalence, sensitivity, specificity } = row;
  const { examined, readAsNoneUpTo } = ask(survey, { designPrevalence, sensitivity, specificity });
  expect([examined, readAsNoneUpTo]).toEqual([row.examined, row.falsePositives]);
});

it("a survey that cannot be is refused by name, one that is not found says so", () => {
  const test = { designPrevalence: 0.1, sensitivity: 0.9, specificity: 0.98 };
  expect(troubles(survey, { ...test, examined: 30 })).toEqual(["callInfestedFrom: field-missing"]);
  expect(troubles(survey, { ...test, examined: 31, callInfestedFrom: 2, population: 30 })).toEqual([
    "examined: fields-disagree",
  ]);
  expect(troubles(survey, { ...test, sensitivity: 0.5, specificity: 0.5, population: 60 })).toEqual([
    "sensitivity: test-no-better-than-chance",
  ]);
  expect(troubles(survey, { ...test, sensitivity: 0.55, specificity: 0.5, population: 60 })).toEqual([
    "missAllowed: no-size-in-search",
  ]);
});

const few = { colonyPrevalence: 0.01, beePrevalence: 0.1, sensitivity: 0.95 };

it("31 bees attain 0.9547, so 313 colonies, where print enters the wanted 0.95 and has 314", () => {
  const { colonies, colonySensitivity, rule } = ask(twoStage, { ...few, beesPerColony: 31 });
  expect(colonySensitivity).toBeCloseTo(printed.twoStage.attained, 10);
  expect(colonies).toBe(printed.twoStage.clustersPrinted - 1);
  expect(rule).toBe("SD106");
});

it("of 120 colonies, 6 of them infested: 50 exactly, 63 of very many (own numbers; Python and R)", () => {
  const design = { colonies: 120, colonyPrevalence: 0.05, beePrevalence: 0.1, sensitivity: 0.9, beesPerColony: 30 };
  const { colonies, ofMany, infested, colonySensitivity, bees } = ask(twoStage, design);
  expect([colonies, ofMany, infested, bees]).toEqual([50, 63, 6, 1500]);
  expect(colonySensitivity).toBeCloseTo(0.94094702663, 10);
});

it("the cheapest: 24 bees from each of 105 colonies for 7224, the next at 7233.2 and 7280 (own numbers; Python)", () => {
  const { beesPerColony, colonies, cost, near, byBees } = ask(twoStage, twoStage.example);
  expect([beesPerColony, colonies]).toEqual([24, 105]);
  expect(cost).toBeCloseTo(7224, 9);
  const costs = near.map((each) => each.cost);
  expect(costs[1]).toBeCloseTo(7233.2, 9);
  expect(costs[3]).toBeCloseTo(7280, 9);
  expect(Math.min(...byBees.map((each) => each.cost ?? Infinity))).toBe(cost);
});

it("says when no number of bees reaches the certainty, and asks for bees or costs", () => {
  const one = { colonies: 5, colonyPrevalence: 0.2, beePrevalence: 0.01, sensitivity: 0.5 };
  expect(troubles(twoStage, { ...one, costPerColony: 1, costPerBee: 1, mostBees: 10 })).toEqual([
    "confidence: no-design-reaches",
  ]);
  expect(troubles(twoStage, { ...one, beesPerColony: 10 })).toEqual(["confidence: confidence-out-of-reach"]);
  expect(troubles(twoStage, few)).toEqual(["beesPerColony: field-missing"]);
});
