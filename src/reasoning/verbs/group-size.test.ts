/** `group-size` against values computed in Python and R. */
import { expect, it } from "vitest";
import { groupSize } from "./group-size.ts";
import type { AnswerOf } from "./verb.ts";

function answerTo(question: object): AnswerOf<typeof groupSize> {
  const reply = groupSize.ask(question);
  if (reply.kind !== "answered") throw new Error(JSON.stringify(reply.problems));
  return reply.value as AnswerOf<typeof groupSize>;
}

it("[EF204] .6 against .4 at power .8: 97, and 107 with the correction (R's power.prop.test has 96.92)", () => {
  const found = answerTo({ firstShare: 0.6, secondShare: 0.4 });
  expect(found).toMatchObject({ perGroup: 97, perGroupCorrected: 107, coloniesPerGroup: null });
  expect(found.pooled).toBeCloseTo(96.92364294157379, 8);
  expect(found.unpooled).toBeCloseTo(94.18655681218911, 8);
  expect(found.corrected).toBeCloseTo(106.68931770134698, 8);
});

it("[EF204] .3 against .1 at power .9, ten bees a colony, correlation .1: 16 colonies, 17 with one more", () => {
  const found = answerTo({ firstShare: 0.3, secondShare: 0.1, power: 0.9, perColony: 10, intraclassCorrelation: 0.1 });
  expect(found).toMatchObject({ designEffect: 1.9, coloniesPerGroup: 16, coloniesPerGroupPlusOne: 17 });
});

it("[EF205] thirty and thirty show .3 against .05 in .6313 of trials; power rises to what was wanted", () => {
  const found = answerTo({ firstShare: 0.3, secondShare: 0.05, sizes: [30] });
  expect(found.power.find(({ perGroup }) => perGroup === 30)?.fisher).toBeCloseTo(0.6313129666465833, 10);
  expect(found.power.find(({ perGroup }) => perGroup === found.perGroupCorrected)?.fisher).toBeGreaterThan(0.8);
  // It falls a little here and there, for counts are whole; over half as many again it has risen.
  expect(found.power.at(-1)?.fisher).toBeGreaterThan(found.power[0]?.fisher ?? 1);
});

it("equal shares, half a clustering and no share at all are named", () => {
  const fieldsOf = (question: object) => groupSize.ask(question).problems.map(({ code, field }) => [code, field]);
  expect(fieldsOf({ firstShare: 0.3, secondShare: 0.3 })).toEqual([["shares-equal", "secondShare"]]);
  expect(fieldsOf({ firstShare: 0.3, secondShare: 0.1, perColony: 10 })).toEqual([
    ["field-missing", "intraclassCorrelation"],
  ]);
  expect(fieldsOf({ firstShare: 0.3 })).toEqual([["field-missing", "secondShare"]]);
});
