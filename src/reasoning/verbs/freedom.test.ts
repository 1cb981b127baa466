/** Freedom, asked: printed and independent figures come out of rounds, trees, few apiaries and allocations. */
import { expect, it } from "vitest";
import { answerTo, objected } from "../../../tests/answer-to.ts";
import golden from "../../../tests/golden/martin-2007-surveillance.json" with { type: "json" };
import { keptCase } from "../../../tests/reference/kept.ts";
import { allocate } from "./allocate.ts";
import { freedom } from "./freedom.ts";
import { freedomFinite } from "./freedom-finite.ts";
import { freedomTree } from "./freedom-tree.ts";

interface Series {
  readonly rows: readonly { readonly prior_free: number; readonly post_free: number }[];
}

it.each(golden.monthly)(
  "a year of monthly rounds at $sensitivity gives $after, as Martin and others 2007 print",
  (row) => {
    const answer = answerTo(freedom, { priorFree: 0.5, sensitivities: [row.sensitivity], times: 12, introduction: 0 });
    // printed to two digits, as the mean of a model with chance in it
    expect(Math.abs(answer.probabilityFree - row.after)).toBeLessThan(0.01);
    expect(answer.settles?.after).toBe(1);
  },
);

it("twelve rounds of a half with one in 100 coming in: both readings of the first chance, as kept", () => {
  const question = { priorFree: 0.5, sensitivities: [0.5, 0.5, 0.5], times: 4, introduction: 0.01 };
  const at = (id: string) => keptCase<object, Series>("freedom", id).expected.rows;
  const [first, before] = [at("pfree_12"), at("pfree_12_df")];
  const answer = answerTo(freedom, question);
  for (const [index, row] of first.entries()) {
    expect(answer.rounds[index]?.before).toBeCloseTo(row.prior_free, 10);
    expect(answer.rounds[index]?.after).toBeCloseTo(row.post_free, 10);
  }
  expect(answer.otherReading.priorAt).toBe("period-before");
  expect(answer.otherReading.probabilityFree).toBeCloseTo(before.at(-1)?.post_free ?? 0, 10);
  const turned = answerTo(freedom, { ...question, priorAt: "period-before" });
  expect(turned.probabilityFree).toBe(answer.otherReading.probabilityFree);
  expect(turned.otherReading.probabilityFree).toBe(answer.probabilityFree);
  // rounds 1 to 5 before the target of 95 in 100 is reached: the kept rows say where
  expect(answer.reachedAt).toBe(1 + first.findIndex((row) => row.post_free >= 0.95));
});

it("where rounds settle, and what one round needs for a target, as kept", () => {
  const settled = answerTo(freedom, { priorFree: 0.5, sensitivities: [0.6], introduction: 0.02 });
  expect(settled.settles?.before).toBeCloseTo(0.9666666666666665, 10); // kept case pfree_eq
  expect(settled.settles?.after).toBeCloseTo(0.9863945578231291, 10);
  const target = answerTo(freedom, { priorFree: 0.75, sensitivities: [0.5], introduction: 0.01, target: 0.95 });
  expect(target.inOneRound.sensitivityNeeded).toBeCloseTo(0.848237097598365, 10); // kept case sse_target
  expect(target.reachedAt).toBeNull();
  const still = answerTo(freedom, { priorFree: 0.5, sensitivities: [0], introduction: 0 });
  expect(still).toMatchObject({ settles: null, probabilityFree: 0.5 });
});

it("surely infested and surely found, yet none found: refused, not divided by", () => {
  const question = { priorFree: 0, sensitivities: [1], introduction: 0 };
  expect(objected(freedom.ask(question))).toEqual(["zero-contradicts-certainty at null: blocked"]);
  expect(objected(freedom.ask({ ...question, priorFree: 1 }))).toEqual(["field-unfit at priorFree: blocked"]);
  expect(objected(freedom.ask({ ...question, sensitivities: Array(100).fill(0.1), times: 11 }))).toEqual([
    "fields-disagree at times: blocked",
  ]);
});

it("a tree of two groups, 120 apiaries: as kept, and says that parts are taken as independent", () => {
  const { expected } = keptCase<
    object,
    {
      readonly ar: readonly number[];
      readonly epi: readonly number[];
      readonly sse_by_stratum: readonly number[];
      readonly sse: number;
    }
  >("freedom", "tree");
  const reply = freedomTree.ask(freedomTree.example);
  expect(objected(reply)).toEqual(["parts-taken-as-independent at clusters: noted"]);
  const answer = answerTo(freedomTree, freedomTree.example);
  expect(answer.sensitivity).toBeCloseTo(expected.sse, 10);
  expect(answer.groups.map(({ tested }) => tested)).toEqual([40, 80]);
  for (const [index, each] of answer.groups.entries()) {
    expect(each.adjustedRisk).toBeCloseTo(expected.ar[index] as number, 10);
    expect(each.infestedShare).toBeCloseTo(expected.epi[index] as number, 10);
    expect(each.sensitivity).toBeCloseTo(expected.sse_by_stratum[index] as number, 10);
  }
});

it("a tree whose shares do not make 1, or whose tests lie in no group, is refused by its field", () => {
  const strata = [
    { relativeRisk: 4, share: 0.2 },
    { relativeRisk: 1, share: 0.7 },
  ];
  expect(objected(freedomTree.ask({ ...freedomTree.example, strata }))).toEqual([
    "shares-not-whole at strata: blocked",
  ]);
  const clusters = [{ stratum: 3, count: 1, units: 3, sensitivity: 0.9 }];
  expect(objected(freedomTree.ask({ ...freedomTree.example, clusters }))).toEqual([
    "fields-disagree at clusters: blocked",
  ]);
});

it("60 of 500 apiaries, 5 infested: exact and shortcut as kept; all tested finds it but for the bench", () => {
  const { expected } = keptCase<object, { readonly approx: number; readonly exact_equal_seh: number }>(
    "freedom",
    "ebl_2st",
  );
  const answer = answerTo(freedomFinite, { clusters: 500, infested: 5, tested: [{ count: 60, sensitivity: 0.95 }] });
  expect(answer.sensitivity).toBeCloseTo(expected.exact_equal_seh, 10);
  expect(answer.approximate).toBeCloseTo(expected.approx, 10);
  const all = answerTo(freedomFinite, { clusters: 8, infested: 2, tested: [{ count: 8, sensitivity: 0.9 }] });
  expect(all.sensitivity).toBeCloseTo(1 - 0.1 ** 2, 12);
  const over = { clusters: 8, infested: 2, tested: [{ count: 9, sensitivity: 0.9 }] };
  expect(objected(freedomFinite.ask(over))).toEqual(["more-tested-than-places at tested: blocked"]);
  expect(objected(freedomFinite.ask({ ...over, infested: 9 }))).toEqual([
    "more-infested-than-places at infested: blocked",
  ]);
});

interface Allocation {
  readonly rr: readonly number[];
  readonly pop: readonly number[];
  readonly pstar: number;
  readonly se: number;
  readonly cost: readonly number[];
  readonly caps: readonly number[];
  readonly target: number;
}

it.each(["alloc", "alloc_cost"])("the cheapest allocation of case %s is the kept one", (id) => {
  const { input, expected } = keptCase<
    Allocation,
    { readonly n: readonly number[]; readonly cost: number; readonly sse: number; readonly proportional_n: number }
  >("freedom", id);
  const answer = answerTo(allocate, {
    designPrevalence: input.pstar,
    sensitivity: input.se,
    target: input.target,
    strata: input.rr.map((relativeRisk, index) => ({
      relativeRisk,
      share: input.pop[index],
      cost: input.cost[index],
      cap: input.caps[index],
    })),
  });
  expect(answer.groups.map(({ units }) => units)).toEqual(expected.n);
  expect(answer.cost).toBeCloseTo(expected.cost, 9);
  expect(answer.sensitivity).toBeCloseTo(expected.sse, 9);
  expect(answer.representativeUnits).toBe(expected.proportional_n);
});

it("a target that all there is to test cannot reach is a lawful refusal, with what can be reached", () => {
  const strata = [{ relativeRisk: 1, share: 1, cap: 5 }];
  const reply = allocate.ask({ ...allocate.example, strata });
  expect(reply).toMatchObject({ kind: "refused", by: ["target-out-of-reach"] });
  // five at 0.9·0.1 each
  expect(reply.problems[0]?.slots.reachable).toBeCloseTo(1 - 0.91 ** 5, 12);
});
