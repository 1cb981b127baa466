/** `agreement` against printed tables and values computed in R. */
import { expect, it } from "vitest";
import reference from "../../../tests/reference/values/agreement.json" with { type: "json" };
import { agreement } from "./agreement.ts";
import type { AnswerOf } from "./verb.ts";

type Answer = AnswerOf<typeof agreement>;
function answerTo(question: object): Answer {
  const reply = agreement.ask(question);
  if (reply.kind !== "answered") throw new Error(JSON.stringify(reply.problems));
  return reply.value as Answer;
}
const caseOf = (id: string) => {
  const found = reference.cases.find((each) => each.id === id);
  return { table: found?.input.table, wanted: found?.expected as unknown as Readonly<Record<string, number>> };
};
const close = (got: number | null | undefined, wanted: number | undefined) =>
  expect(got ?? Number.NaN).toBeCloseTo(wanted ?? 0, 9); // closed forms

it("[BE200] the printed antibody test: kappa .6736 with its proper limits, z 11.53 by the null standard error", () => {
  const { table, wanted } = caseOf("kappa_salmon");
  const found = answerTo({ table });
  close(found.kappa?.value, wanted.kappa);
  close(found.kappa?.low, wanted.lo);
  close(found.kappa?.high, wanted.hi);
  close(found.pabak?.value, wanted.pabak);
  close(found.pabak?.low, wanted.pabak_lo);
  close(found.prevalenceIndex, wanted.prevalence_index);
  close(found.biasIndex, wanted.bias_index);
  close(found.onFirst, wanted.p_pos);
  close(found.onSecond, wanted.p_neg);
  const [detail] = found.details;
  close(detail?.standardError, wanted.se);
  close(detail?.nullStandardError, wanted.se0);
  close(detail?.z, wanted.z);
  expect(found.ac1.value).toBeCloseTo(caseOf("ac1_salmon").wanted.ac1 as number, 9);
});

it("[BE203] the abstractors' table: AC1 .8493 with the limits of Student's t", () => {
  const { table, wanted } = caseOf("ac1_abs");
  const found = answerTo({ table });
  close(found.ac1.value, wanted.ac1);
  expect(found.ac1.low).toBeCloseTo(wanted.lo_t as number, 8); // a quantile found by search
  expect(found.ac1.high).toBeCloseTo(wanted.hi_t as number, 8);
  close(found.details.at(-1)?.standardError, wanted.se_n_minus_1);
});

it("[BE200] classes in order: kappa by distance and by its square", () => {
  const [linear, quadratic] = [caseOf("wkappa_linear"), caseOf("wkappa_quadratic")];
  const found = answerTo({ table: linear.table, ordered: true });
  expect(found.weighted.map(({ method }) => method)).toEqual(["cohen-kappa-linear", "cohen-kappa-quadratic"]);
  for (const [index, { wanted }] of [linear, quadratic].entries()) {
    close(found.weighted[index]?.value, wanted.kappa);
    close(found.weighted[index]?.low, wanted.lo);
    close(found.details[index + 1]?.standardError, wanted.se);
  }
  expect(answerTo({ table: linear.table }).weighted).toEqual([]);
});

it("[BE201] one class only: agreement and AC1 are told, kappa is not, with the reason", () => {
  const reply = agreement.ask({
    table: [
      [50, 0],
      [0, 0],
    ],
  });
  expect(reply).toMatchObject({
    kind: "answered",
    value: { kappa: null, observed: 1, ac1: { value: 1 }, onSecond: null },
  });
  expect(reply.problems.map(({ code, severity }) => [code, severity])).toEqual([
    ["kappa-undefined", "unknown"],
    ["agreement-without-error", "warned"],
    ["class-never-used", "unknown"],
  ]);
});

it("a table that is not square, an empty one and one bee are named by their field", () => {
  const troubleOf = (table: unknown) => agreement.ask({ table }).problems.map(({ code, field }) => [code, field]);
  expect(troubleOf([[1, 2], [3]])).toEqual([["table-not-square", "table"]]);
  expect(
    troubleOf([
      [0, 0],
      [0, 0],
    ]),
  ).toEqual([["nothing-examined", "table"]]);
  expect(
    troubleOf([
      [1, 0],
      [0, 0],
    ]),
  ).toEqual([["fields-disagree", "table"]]);
  expect(
    troubleOf([
      [1, 0.5],
      [0, 0],
    ]),
  ).toEqual([["field-unfit", "table[0][1]"]]);
});
