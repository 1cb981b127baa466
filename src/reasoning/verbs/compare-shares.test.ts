/** `compare-shares` against printed and computed values. */
import { expect, it } from "vitest";
import reference from "../../../tests/reference/values/efficacy.json" with { type: "json" };
import { compareShares } from "./compare-shares.ts";
import type { AnswerOf } from "./verb.ts";

type Answer = AnswerOf<typeof compareShares>;
function answerTo(question: object): Answer {
  const reply = compareShares.ask(question);
  if (reply.kind !== "answered") throw new Error(JSON.stringify(reply.problems));
  return reply.value as Answer;
}
const expectedOf = (id: string) =>
  reference.cases.find((each) => each.id === id)?.expected as unknown as Readonly<Record<string, number>>;
const pOf = ({ tests }: Answer, name: string) => tests.find(({ test }) => test === name)?.pValue;
const vaccine = { first: { positive: 7, examined: 15 }, second: { positive: 12, examined: 15 } };

it("[EF202] 56 of 70 against 48 of 80: Newcombe's, Miettinen and Nurminen's and Mee's limits", () => {
  const found = answerTo({ first: { positive: 56, examined: 70 }, second: { positive: 48, examined: 80 } });
  const wanted = expectedOf("rd1");
  for (const { method, low, high, value } of found.differences) {
    const name = method.replace("-", "_");
    expect(value).toBeCloseTo(0.2, 12);
    expect(low).toBeCloseTo(wanted[`${name}_lo`] as number, 8); // limits found by root search
    expect(high).toBeCloseTo(wanted[`${name}_hi`] as number, 8);
  }
  expect(found.differences).toHaveLength(3);
});

it("[BE204] 7 of 15 against 12 of 15, the manual's vaccines: Fisher .064 one-sided, .128 two-sided, and mid-P", () => {
  const wanted = expectedOf("fisher_vacc");
  const [either, less] = [answerTo(vaccine), answerTo({ ...vaccine, alternative: "less" })];
  expect(pOf(either, "fisher")).toBeCloseTo(wanted.two_sided as number, 12);
  expect(pOf(either, "fisher-mid-p")).toBeCloseTo(wanted.midp_two_sided_minlike as number, 12);
  expect(pOf(less, "fisher")).toBeCloseTo(wanted.less as number, 12);
  expect(pOf(less, "fisher-mid-p")).toBeCloseTo(wanted.midp_less as number, 12);
  expect(pOf(less, "pearson")).toBeUndefined();
});

it("[EF200] Boschloo's P as the manual has it, and Barnard's with its ties counted", () => {
  const less = answerTo({ ...vaccine, alternative: "less" });
  const wanted = expectedOf("uncond_vacc");
  expect(pOf(less, "boschloo")).toBeCloseTo(wanted.boschloo_p as number, 5); // maximised over the common share
  expect(less.tests.find(({ test }) => test === "barnard")?.statistic).toBeCloseTo(wanted.barnard_stat as number, 10);
  // The manual's 0.03407672 loses a tie to rounding; with the tie it is Boschloo's region
  expect(pOf(less, "barnard")).toBeCloseTo(0.0341091547, 8);
});

it("[EF206] Koopman's ratio 36/40 over 16/80 is 4.5, 2.94 to 7.15; none in the second group leaves no ratio", () => {
  const found = answerTo({ first: { positive: 36, examined: 40 }, second: { positive: 16, examined: 80 } });
  expect(found.ratios.find(({ method }) => method === "koopman")).toMatchObject({ value: 4.5 });
  expect(found.ratios[1]?.low).toBeCloseTo(2.9395691922, 7);
  expect(found.ratios[1]?.high).toBeCloseTo(7.1522234349, 7);
  expect(answerTo({ ...vaccine, second: { positive: 0, examined: 15 } }).ratios).toEqual([]);
  const all = answerTo({ first: { positive: 9, examined: 9 }, second: { positive: 7, examined: 7 } });
  expect(all.ratios.map(({ method }) => method)).toEqual(["koopman"]);
  expect(all.oddsRatio).toBeNull();
});

it("names the count that does not fit, and leaves out the long tests of large groups with a word", () => {
  const bad = compareShares.ask({ ...vaccine, first: { positive: 16, examined: 15 } });
  expect(bad).toMatchObject({ kind: "unfit", problems: [{ field: "first.positive" }] });
  const large = compareShares.ask({
    first: { positive: 300, examined: 2000 },
    second: { positive: 350, examined: 2000 },
  });
  expect(large).toMatchObject({ kind: "answered", problems: [{ code: "too-many-tables", severity: "unknown" }] });
  expect(pOf((large as { value: Answer }).value, "boschloo")).toBeUndefined();
});

it("tells how far the long tests are", () => {
  const told: number[] = [];
  compareShares.ask(vaccine, (share) => told.push(share));
  expect(told.length).toBeGreaterThan(1);
  expect([...told].sort((a, b) => a - b)).toEqual(told);
});
