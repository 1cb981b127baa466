/** Shortcuts for a small group stand beside the exact number, never in its place. */
import { expect, it } from "vitest";
import table from "../../../tests/golden/cannon-roe-1982-table-1.json" with { type: "json" };
import { sampleSize } from "./sample-size.ts";
import type { AnswerOf } from "./verb.ts";

const ask = (raw: object): AnswerOf<typeof sampleSize> => {
  const reply = sampleSize.ask(raw);
  if (reply.kind !== "answered") throw new Error(JSON.stringify(reply.problems));
  return reply.value as AnswerOf<typeof sampleSize>;
};

it.each(table.finite)("$infested of $population: exactly $examined, the shortcut $shortcut rounded up", (row) => {
  const { population, infested } = row;
  const answer = ask({ designPrevalence: infested / population, sensitivity: 1, population });
  expect(answer.bees).toBe(row.examined);
  expect(answer.infested).toBe(infested);
  expect(answer.approximations?.cannonRoe).toBe(Math.ceil(row.shortcut));
});

it("50 of 1000, 0.9 found: exactly 64, MacDiarmid's printed 65 (epiR manual)", () => {
  const answer = ask({ designPrevalence: 0.05, sensitivity: 0.9, population: 1000 });
  expect([answer.bees, answer.approximations?.macDiarmid]).toEqual([64, 65]);
  expect(answer.detectionProbability).toBeCloseTo(0.95193977015, 10);
});

it("[SD22] a sample larger than a colony is warned of, and one beyond counting is refused", () => {
  const reply = sampleSize.ask({ designPrevalence: 1e-7, sensitivity: 0.9 });
  expect(reply).toMatchObject({ kind: "answered", value: { bees: 33_285_913 } });
  expect(reply.problems).toMatchObject([{ code: "more-bees-than-a-colony", severity: "warned" }]);
  expect(sampleSize.ask({ designPrevalence: 0.001, sensitivity: 0.9 }).problems).toEqual([]);
  for (const designPrevalence of [1e-12, 1e-320])
    expect(sampleSize.ask({ designPrevalence, sensitivity: 0.9 })).toMatchObject({
      kind: "unfit",
      problems: [{ field: "designPrevalence", code: "fields-disagree" }],
    });
});

it("a large colony has no such shortcut", () => {
  expect(ask({ designPrevalence: 0.05, sensitivity: 0.9 }).approximations).toBeNull();
});
