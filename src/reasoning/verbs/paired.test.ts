/** `paired` and `paired-readings` against values computed in Python and R. */
import { expect, it } from "vitest";
import reference from "../../../tests/reference/values/efficacy.json" with { type: "json" };
import { paired } from "./paired.ts";
import { pairedReadings } from "./paired-readings.ts";
import type { AnswerOf } from "./verb.ts";

const caseOf = (id: string) => {
  const found = reference.cases.find((each) => each.id === id);
  return {
    input: found?.input as unknown as Readonly<Record<string, readonly number[]>>,
    expected: found?.expected as unknown as Readonly<Record<string, number>>,
  };
};
const asked = (id: string) => {
  const { before = [], after = [] } = caseOf(id).input;
  return { pairs: before.map((each, index) => ({ before: each, after: after[index] as number })) };
};
function answerTo(question: object): AnswerOf<typeof paired> {
  const reply = paired.ask(question);
  if (reply.kind !== "answered") throw new Error(JSON.stringify(reply.problems));
  return reply.value as AnswerOf<typeof paired>;
}

it("[EF203] eight colonies: signs .0703, ranks and flips .0234, seven of them fell", () => {
  const { expected } = caseOf("pair2");
  const { tests, fell, rose } = answerTo(asked("pair2"));
  expect([fell, rose]).toEqual([7, 1]);
  for (const [index, name] of ["sign_two_sided", "wilcoxon_exact", "permutation_mean_two_sided"].entries())
    expect(tests[index]?.pValue).toBeCloseTo(expected[name] as number, 12);
  expect(tests[1]?.statistic).toBe(expected.wilcoxon_stat);
});

it("[EF203] changes of one size: the test by ranks is refused by itself, the others stand", () => {
  const reply = paired.ask(asked("pair1"));
  expect(reply).toMatchObject({
    kind: "answered",
    problems: [{ code: "changes-tie", severity: "unknown", field: "pairs" }],
  });
  const { tests } = answerTo(asked("pair1"));
  expect(tests[0]?.pValue).toBeCloseTo(0.0703125, 12);
  expect(tests[1]?.pValue).toBeNull();
  expect(tests[2]?.pValue).toBeCloseTo(caseOf("pair1").expected.permutation_mean_two_sided as number, 12);
});

it("pairs that do not differ are refused; a line without its second number is named", () => {
  expect(paired.ask({ pairs: [{ before: 3, after: 3 }] })).toMatchObject({ kind: "refused", by: ["no-pair-differs"] });
  expect(paired.ask({ pairs: [{ before: 3 }] })).toMatchObject({
    kind: "unfit",
    problems: [{ field: "pairs[0].after" }],
  });
});

it("[BE205] 1 against 9: exact .021484, mid-P .011719, chi-square 6.4", () => {
  const reply = pairedReadings.ask({ onlyFirst: 1, onlySecond: 9 });
  const found = (reply as { value: AnswerOf<typeof pairedReadings> }).value;
  const { expected } = caseOf("mcn1");
  expect(found.exact).toBeCloseTo(expected.exact as number, 12);
  expect(found.midP).toBeCloseTo(expected.midp as number, 12);
  expect(found.chiSquare.statistic).toBeCloseTo(expected.chi2 as number, 12);
  expect(found.chiSquare.pValue).toBeCloseTo(expected.p_asym as number, 10);
  expect(found.corrected.statistic).toBeCloseTo(expected.chi2_cc as number, 12);
  // Clopper and Pearson's 1 of 10: 0.25 to 44.5 in 100 (Newcombe 1998, Table I prints such rows)
  expect(found.firstOfDiffering.low).toBeCloseTo(0.0025, 4);
  expect(found.firstOfDiffering.high).toBeCloseTo(0.445, 3);
});

it("readings that agree on every bee are refused; a part of a bee is named", () => {
  expect(pairedReadings.ask({ onlyFirst: 0, onlySecond: 0 })).toMatchObject({ by: ["no-bee-read-differently"] });
  expect(pairedReadings.ask({ onlyFirst: 1.5, onlySecond: 0 })).toMatchObject({ problems: [{ field: "onlyFirst" }] });
});
