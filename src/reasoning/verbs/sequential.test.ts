/** The verbs of sequential reading: figures computed apart from this program, refusals, and what stands at which field. */
import { describe, expect, it } from "vitest";
import golden from "../../../tests/golden/stopped-sample-check-values.json" with { type: "json" };
import type { Reply } from "./index.ts";
import { sequentialPlan } from "./sequential-plan.ts";
import { sequentialReading } from "./sequential-reading.ts";
import { threeWayPlan } from "./three-way-plan.ts";
import type { AnswerOf, Verb } from "./verb.ts";

function answerOf<V extends Verb<object>>(verb: V, question: object): AnswerOf<V> {
  const reply = verb.ask(question);
  if (reply.kind !== "answered") throw new Error(JSON.stringify(reply.problems));
  return reply.value as AnswerOf<V>;
}

const fields = (reply: Reply) => (reply.kind === "unfit" ? reply.problems.map(({ field }) => field) : []);

const nominal = { lowPrevalence: 0.05, highPrevalence: 0.15, errors: "nominal", maxBees: 100 };
/** The plan of the golden file: 5 against 20 in 100, at most 50 bees. */
const plan = { ...golden.plan, errors: "nominal" };

describe("sequential-plan", () => {
  it("the exact figures of a plan for 5 against 15, at most 100 bees (computed apart, to nine digits)", () => {
    const { characteristics, fixed, lines } = answerOf(sequentialPlan, { ...nominal, prevalences: [0.05, 0.1, 0.15] });
    const [low, between, high] = characteristics;
    expect(lines.slope).toBeCloseTo(0.09193432684, 10);
    expect([lines.firstLow, lines.firstHigh]).toEqual([20, 2]);
    expect(low?.low).toBeCloseTo(0.93084271701, 9);
    expect(low?.averageBees).toBeCloseTo(37.19638566, 7);
    expect(between?.low).toBeCloseTo(0.45807674265, 9);
    expect(between?.sdBees).toBeCloseTo(28.221149409, 7);
    expect(high?.low).toBeCloseTo(0.106789514, 9);
    expect(high?.reachesEnd).toBeCloseTo(0.01994017406, 9);
    expect(fixed).toMatchObject({ bees: 60, most: 5 });
  });

  it("Wald's approximations stand beside them: 34.6 and 25.0 bees where 37.2 and 30.1 are read", () => {
    const { wald, atLow, atHigh } = answerOf(sequentialPlan, { ...nominal, exponents: [1, -1] });
    expect(wald.map(({ averageBees }) => averageBees)).toEqual([
      expect.closeTo(34.64715393, 7),
      expect.closeTo(25.021755506, 7),
    ]);
    expect(atLow.averageBees).toBeGreaterThan(37);
    expect(atHigh.averageBees).toBeGreaterThan(30);
  });

  it("batches of 10 from 10 (computed apart)", () => {
    const { atLow, atHigh } = answerOf(sequentialPlan, { ...nominal, minBees: 10, batch: 10 });
    expect([atLow.low, atLow.averageBees]).toEqual([expect.closeTo(0.94757951154, 9), expect.closeTo(46.53407343, 7)]);
    expect([atHigh.low, atHigh.averageBees]).toEqual([
      expect.closeTo(0.08627519219, 9),
      expect.closeTo(39.242467159, 7),
    ]);
  });

  it("searched, it keeps both errors and gives back the lines that do", () => {
    const asked = { lowPrevalence: 0.05, highPrevalence: 0.15, alpha: 0.1, beta: 0.1, maxBees: 100 };
    const shares: number[] = [];
    const found = sequentialPlan.ask(asked, (share) => shares.push(share));
    expect(shares.length).toBeGreaterThan(20);
    const answer = answerOf(sequentialPlan, asked);
    expect(found).toMatchObject({ kind: "answered", value: answer });
    expect(answer.alpha).toBeLessThanOrEqual(0.1);
    expect(answer.beta).toBeLessThanOrEqual(0.1);
    const { lowUpTo, ...lines } = answer.plan;
    const again = answerOf(sequentialPlan, { ...lines, lowUpTo, errors: "nominal" });
    expect(again.looks).toEqual(answer.looks);
    expect([again.alpha, again.beta]).toEqual([answer.alpha, answer.beta]);
  });

  it("a plan that cannot be is refused lawfully, with the bees that would do", () => {
    const reply = sequentialPlan.ask({ lowPrevalence: 0.05, highPrevalence: 0.15, maxBees: 40 });
    expect(reply).toMatchObject({ kind: "refused", by: ["sequential-plan-needs-more-bees"] });
    expect(reply.problems[0]?.slots).toMatchObject({ maxBees: 40, neededBees: 59 });
  });

  it("names the field that does not fit", () => {
    const wrong = (over: object) => fields(sequentialPlan.ask({ ...nominal, ...over }));
    expect(wrong({ highPrevalence: 0.04 })).toEqual(["highPrevalence"]);
    expect(wrong({ alpha: 0.6, beta: 0.5 })).toEqual(["alpha"]);
    expect(wrong({ minBees: 200 })).toEqual(["minBees"]);
    expect(wrong({ errors: "actual", lowUpTo: 4 })).toEqual(["lowUpTo"]);
    expect(wrong({ errors: "actual", atEnd: "undecided" })).toEqual(["atEnd"]);
    expect(wrong({ maxBees: 2000 })).toEqual(["maxBees"]);
  });
});

describe("sequential-reading", () => {
  const row = [0, 0, 1, 0, 0, 0, 0, 0, 0, 1, 0, 0, 0, 0, 0, 0, 1, 0, 0, 0, 0, 0, 1];

  it("4 of 23: limits that know of the stop and limits that forget it (computed apart)", () => {
    for (const read of [{ results: row }, { examined: 23, positive: 4 }]) {
      const { says, estimate, naive, allBees } = answerOf(sequentialReading, { ...plan, ...read });
      expect(says).toBe("high");
      expect(estimate?.low).toBeCloseTo(golden.stageWise[0] as number, 4);
      expect(estimate?.high).toBeCloseTo(golden.stageWise[1] as number, 4);
      expect(naive?.low).toBeCloseTo(golden.naive[0] as number, 4);
      expect(naive?.high).toBeCloseTo(golden.naive[1] as number, 4);
      expect(allBees).toBe(null);
    }
  });

  it("reads on past the stop: both are told, and the warning only where no number was set", () => {
    const results = [...row, ...Array<number>(27).fill(0)];
    const planned = sequentialReading.ask({ ...plan, results, setBeforehand: 50 });
    expect(planned).toMatchObject({ kind: "answered", problems: [], value: { allBeesHold: true, examined: 23 } });
    const unplanned = sequentialReading.ask({ ...plan, examined: 23, positive: 4, allExamined: 50, allPositive: 4 });
    expect(unplanned.problems.map(({ code }) => code)).toEqual(["read-on-unplanned"]);
    expect(unplanned).toMatchObject({ value: { allBeesHold: false, allBees: { n: 50 } } });
  });

  it("reading that has not stopped has no range, and says what would stop it", () => {
    const reply = sequentialReading.ask({ ...plan, results: row.slice(0, 22) });
    expect(reply).toMatchObject({
      kind: "answered",
      value: { says: "read-on", estimate: null, ifNoneMore: { said: "low" }, ifAllMore: { bees: 23, said: "high" } },
    });
    expect(reply.problems).toMatchObject([{ code: "reading-not-stopped", severity: "unknown" }]);
  });

  it("tells how often each range holds the truth, at its level or above only where it knows of the stop", () => {
    const coverageAt = Array.from({ length: 60 }, (_, index) => (index + 1) / 100);
    const { coverage } = answerOf(sequentialReading, { ...plan, results: row, coverageAt });
    expect(Math.min(...coverage.map(({ stageWise }) => stageWise))).toBeGreaterThanOrEqual(0.95 - 1e-12);
    expect(Math.min(...coverage.map(({ naive }) => naive))).toBeLessThan(0.95);
  });

  it("names the field that does not fit", () => {
    const wrong = (over: object) => fields(sequentialReading.ask({ ...plan, ...over }));
    expect(wrong({ examined: 22, positive: 3 })).toEqual(["positive"]);
    expect(wrong({ examined: 23, positive: 24 })).toEqual(["positive"]);
    expect(wrong({ examined: 23 })).toEqual(["positive"]);
    expect(wrong({})).toEqual(["results"]);
    expect(wrong({ examined: 23, positive: 4, allExamined: 22, allPositive: 4 })).toEqual(["allPositive"]);
    expect(wrong({ results: [0, 2] })).toEqual(["results[1]"]);
    expect(wrong({ results: row, allExamined: 30, allPositive: 4 })).toEqual(["allExamined"]);
  });
});

describe("three-way-plan", () => {
  const asked = { lightShare: 0.05, moderateFrom: 0.15, moderateTo: 0.25, severeShare: 0.4, maxBees: 100 };

  it("the exact figures of .05/.15 and .25/.40, at most 100 bees (computed apart)", () => {
    const { characteristics } = answerOf(threeWayPlan, { ...asked, prevalences: [0.05, 0.2, 0.3, 0.45] });
    const [light, moderate, between, severe] = characteristics;
    expect([light?.light, light?.averageBees]).toEqual([
      expect.closeTo(0.93084271701, 9),
      expect.closeTo(37.501008328, 7),
    ]);
    expect(moderate).toMatchObject({
      light: expect.closeTo(0.02093828793, 9),
      moderate: expect.closeTo(0.9646130577, 9),
      severe: expect.closeTo(0.01444865437, 9),
      averageBees: expect.closeTo(34.072676284, 7),
    });
    expect(between?.severe).toBeCloseTo(0.33079760864, 9);
    expect(severe?.averageBees).toBeCloseTo(25.67612617, 7);
  });

  it("names the field that does not fit", () => {
    const wrong = (over: object) => fields(threeWayPlan.ask({ ...asked, ...over }));
    expect(wrong({ moderateFrom: 0.05 })).toEqual(["moderateFrom"]);
    expect(wrong({ severeShare: 0.2 })).toEqual(["severeShare"]);
    expect(wrong({ moderateTo: 0.04 })).toEqual(["moderateTo"]);
    expect(wrong({ minBees: 200 })).toEqual(["minBees"]);
  });
});

it("a low share that no number of bees can tell from none is told by its field", () => {
  const reply = sequentialReading.ask({ lowPrevalence: 1e-320, highPrevalence: 0.2, maxBees: 50, results: [0, 1] });
  expect(reply).toMatchObject({ kind: "unfit", problems: [{ field: "lowPrevalence" }] });
});
