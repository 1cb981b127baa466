/** `scores` against two hundred pairs scored in Python. */
import { expect, it } from "vitest";
import reference from "../../../tests/reference/values/diagnosis.json" with { type: "json" };
import { scores } from "./scores.ts";
import type { AnswerOf } from "./verb.ts";

type Answer = AnswerOf<typeof scores>;
const kept = reference.cases.find(({ id }) => id === "calib1") as unknown as {
  readonly input: { readonly p: readonly number[]; readonly y: readonly number[] };
  readonly expected: Readonly<Record<string, number>> & {
    readonly bins: readonly {
      readonly n: number;
      readonly mean_p: number;
      readonly obs: number;
      readonly cp_lo: number;
      readonly cp_hi: number;
    }[];
  };
};
const pairs = kept.input.p.map((stated, index) => ({ stated, cameTrue: kept.input.y[index] as number }));
function answerTo(question: object): Answer {
  const reply = scores.ask(question);
  if (reply.kind !== "answered") throw new Error(JSON.stringify(reply.problems));
  return reply.value as Answer;
}

it("[DX203] every score of the two hundred pairs", () => {
  const found = answerTo({ cases: pairs });
  const wanted = kept.expected;
  const names: readonly (readonly [keyof Answer, string])[] = [
    ["brier", "brier"],
    ["brierSkill", "brier_skill"],
    ["logLoss", "log_loss"],
    ["expectedError", "ece_equal_width"],
    ["expectedErrorEqualMass", "ece_equal_mass"],
    ["largestError", "mce"],
    ["reliability", "reliability"],
    ["resolution", "resolution"],
    ["uncertainty", "uncertainty"],
    ["areaUnderCurve", "auc"],
  ];
  for (const [name, key] of names) expect(found[name], name).toBeCloseTo(wanted[key] as number, 9); // sums of 200 terms
  for (const [index, bin] of wanted.bins.entries()) {
    const each = found.bins[index];
    expect(each).toMatchObject({ cases: bin.n, method: "clopper-pearson" });
    expect(each?.meanStated).toBeCloseTo(bin.mean_p, 10);
    expect(each?.observed).toBeCloseTo(bin.obs, 10);
    expect(each?.low).toBeCloseTo(bin.cp_lo, 8); // quantiles found by search
    expect(each?.high).toBeCloseTo(bin.cp_hi, 8);
  }
});

it("[DX204] slope and intercept of the logit, and the shift at slope 1", () => {
  const found = answerTo({ cases: pairs });
  expect(found.slope).toBeCloseTo(kept.expected.recal_slope as number, 4); // a fit
  expect(found.intercept).toBeCloseTo(kept.expected.recal_intercept as number, 4);
  // calibration_in_the_large is the plain difference of the means there; the shift has its sign
  expect(Math.sign(found.inTheLarge ?? 0)).toBe(Math.sign(kept.expected.calibration_in_the_large as number));
});

it("[DX204] outcomes that do not overlap: scores stand, the slope is refused once", () => {
  const reply = scores.ask({
    cases: [
      { stated: 0.2, cameTrue: 0 },
      { stated: 0.8, cameTrue: 1 },
    ],
  });
  expect(reply).toMatchObject({
    kind: "answered",
    value: { slope: null, areaUnderCurve: 1 },
    problems: [{ code: "outcomes-parted", severity: "unknown", field: "cases" }],
  });
});

it("a chance of 80 and an outcome that is neither yes nor no are named by their line", () => {
  const fieldsOf = (cases: unknown) => scores.ask({ cases }).problems.map(({ field }) => field);
  expect(fieldsOf([{ stated: 80, cameTrue: 1 }])).toEqual(["cases[0].stated"]);
  expect(fieldsOf([{ stated: 0.8, cameTrue: 0.5 }])).toEqual(["cases[0].cameTrue"]);
  expect(fieldsOf([])).toEqual(["cases"]);
});
