/** `reduction` against values computed in Python, and what it refuses. */
import { expect, it } from "vitest";
import golden from "../../../tests/golden/efficacy-check-values.json" with { type: "json" };
import { reduction } from "./reduction.ts";
import type { AnswerOf } from "./verb.ts";

type Answer = AnswerOf<typeof reduction>;
const look = ([found, of]: readonly number[]) => ({ found, of });
function answerTo(question: object): Answer {
  const reply = reduction.ask(question);
  if (reply.kind === "unfit") throw new Error(JSON.stringify(reply.problems));
  return reply.value as Answer;
}
/** Root finding on either side (Koopman) leaves eight digits of a per cent. */
const expectLimits = (found: { readonly low: number; readonly high: number } | null | undefined, wanted: number[]) => {
  expect(100 * (found?.low ?? Number.NaN)).toBeCloseTo(wanted[0] as number, 6);
  expect(100 * (found?.high ?? Number.NaN)).toBeCloseTo(wanted[1] as number, 6);
};

it("[EF1] Abbott's 12 of 100 against 80 of 100: 85 by both limits, and Schneider-Orelli the same", () => {
  const [printed] = golden.abbott;
  const found = answerTo({ treatedAfter: look([12, 100]), controlAfter: look([80, 100]) });
  expect(found.reduction?.value).toBeCloseTo(0.85, 12);
  expectLimits(found.reduction, printed?.katz ?? []);
  expectLimits(found.others[0], printed?.koopman ?? []);
  expect(found.withoutLimits).toMatchObject([{ method: "schneider-orelli", rule: "EF9" }]);
  expect(found.withoutLimits[0]?.value).toBeCloseTo(0.85, 12);
});

it("[EF3] Henderson and Tilton's shares stand first with a look before; mites take Poisson's limits and warn", () => {
  const shares = answerTo(reduction.example);
  const [wanted] = golden.shares;
  expect(shares.reduction?.method).toBe("henderson-tilton-shares");
  expectLimits(shares.reduction, [wanted?.low ?? 0, wanted?.high ?? 0]);
  expect(shares.withoutLimits.find(({ method }) => method === "sun-shepard")?.value).toBeCloseTo(
    shares.reduction?.value ?? 0,
    12,
  );
  const mites = {
    measure: "mites",
    treatedBefore: { found: 300 },
    treatedAfter: { found: 15 },
    controlBefore: { found: 250 },
    controlAfter: { found: 300 },
  };
  const counts = reduction.ask(mites);
  const [printed] = golden.counts;
  expectLimits((counts as { value: Answer }).value.reduction, [printed?.low ?? 0, printed?.high ?? 0]);
  expect(counts.problems).toMatchObject([{ code: "overdispersion-not-given", field: "designEffect" }]);
});

it("[EF4] a treated group that did worse is told as it is", () => {
  const reply = reduction.ask({ treatedAfter: look([36, 40]), controlAfter: look([16, 80]) });
  const found = (reply as { value: Answer }).value;
  expect(found.reduction?.value).toBeCloseTo(-3.5, 12);
  expectLimits(found.others[0], golden.abbott[1]?.koopman ?? []);
  expect(reply.problems.map(({ code }) => code)).toEqual(["negative-efficacy"]);
});

it("[EF2] none left: half is added for Katz's limits, and Koopman's need none", () => {
  const found = answerTo({ treatedAfter: look([0, 50]), controlAfter: look([45, 50]) });
  expect(found.reduction).toMatchObject({ value: 1, high: 1, method: "abbott-katz-half" });
  expect(100 * (found.reduction?.low ?? 0)).toBeCloseTo(golden.abbottZero.katzWithHalf[0] as number, 8);
  expect(100 * (found.others[0]?.low ?? 0)).toBeCloseTo(golden.abbottZero.koopmanLow, 6);
});

it("[EF5] without untreated colonies it is refused, and the fall alone stands by", () => {
  const reply = reduction.ask({ treatedBefore: look([20, 50]), treatedAfter: look([5, 50]) });
  expect(reply).toMatchObject({ kind: "refused", by: ["no-comparator"], value: { reduction: null } });
  expect((reply as { value: Answer }).value.apparentFall?.value).toBeCloseTo(0.75, 12);
});

it("[EF5] looks before that found none are not passed over: no form that ignores them stands in", () => {
  const after = { treatedAfter: look([4, 100]), controlAfter: look([35, 100]) };
  for (const [treated, control] of [
    [0, 28],
    [30, 0],
  ] as const) {
    const reply = reduction.ask({ ...after, treatedBefore: look([treated, 100]), controlBefore: look([control, 100]) });
    expect(reply).toMatchObject({
      kind: "answered",
      value: { reduction: null, whyNone: "no-mites-before", others: [], withoutLimits: [] },
      problems: [{ code: "efficacy-undefined" }],
    });
  }
});

it("[EF208] a design effect widens every range and moves no value", () => {
  const [alone, alike] = [reduction.example, { ...reduction.example, designEffect: 2 }].map(answerTo);
  expect(alike?.reduction?.value).toBe(alone?.reduction?.value);
  const ranges = (found?: Answer) => [found?.reduction, found?.apparentFall, ...(found?.others ?? [])];
  for (const [index, each] of ranges(alike).entries()) {
    const narrow = ranges(alone)[index];
    expect(each?.low).toBeLessThan(narrow?.low ?? 0);
  }
});

it("names the look that does not fit", () => {
  const fieldsOf = (question: object) => reduction.ask(question).problems.map(({ field }) => field);
  expect(fieldsOf({ treatedAfter: look([12, 10]), controlAfter: look([8, 10]) })).toEqual(["treatedAfter.found"]);
  expect(fieldsOf({ treatedAfter: { found: 1 }, controlAfter: look([8, 10]) })).toEqual(["treatedAfter.of"]);
  expect(fieldsOf({ treatedBefore: look([9, 10]), treatedAfter: look([1, 10]), controlAfter: look([8, 10]) })).toEqual([
    "controlBefore.found",
  ]);
  expect(fieldsOf({ treatedAfter: look([1, 10]), controlAfter: look([0, 10]) })).toEqual(["controlAfter.found"]);
  const before = { treatedBefore: look([5, 10]), controlBefore: look([5, 10]) };
  expect(reduction.ask({ ...before, treatedAfter: look([1, 10]), controlAfter: look([0, 10]) }).kind).toBe("unfit");
});
