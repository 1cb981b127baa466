/** The next step: bits against brute force, and the order people need. */
import { describe, expect, it } from "vitest";
import golden from "../../../tests/golden/noisy-or-network.json" with { type: "json" };
import { type FindingId, findingIds, findings, publishedEvidence } from "../../knowledge/index.ts";
import { philox } from "../../numerics/index.ts";
import { type Belief, type Candidate, type DifferentialInput, differential } from "../differential/index.ts";
import { differentialWithNext, type NextStep, nextSteps, visitMinutes, visitOf } from "./index.ts";
import { expectedLoss, lossTable } from "./loss-table.ts";
import { marginalsOf, worthOf } from "./value.ts";

function steps(input: DifferentialInput): readonly NextStep[] {
  const result = nextSteps(input);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value.next;
}

/** The reference network as a belief: all 32 sets, weighed by the evidence of a printed case. */
function printedBelief(evidence: Readonly<Record<string, number>>): {
  belief: Belief;
  absent: (f: number) => Float64Array;
} {
  const n = golden.prior.length;
  const parent = [-1];
  const added = [-1];
  for (let set = 1; set < 2 ** n; set++) {
    const highest = Math.floor(Math.log2(set));
    parent.push(set - 2 ** highest);
    added.push(highest);
  }
  const has = (set: number, condition: number) => ((set >> condition) & 1) === 1;
  const absent = (finding: number) =>
    Float64Array.from(parent, (_, set) =>
      golden.link.reduce(
        (product, row, condition) => product * (has(set, condition) ? 1 - (row[finding] ?? 0) : 1),
        1 - (golden.leak[finding] ?? 0),
      ),
    );
  const weight = Float64Array.from(parent, (_, set) =>
    golden.prior.reduce((product, prior, condition) => product * (has(set, condition) ? prior : 1 - prior), 1),
  ).map((prior, set) =>
    Object.entries(evidence).reduce((product, [finding, state]) => {
      const none = absent(Number(finding))[set] ?? 0;
      return product * (state === 1 ? 1 - none : none);
    }, prior),
  );
  const total = weight.reduce((sum, each) => sum + each, 0);
  const sets = { count: 2 ** n, parent: Int32Array.from(parent), added: Int32Array.from(added), weight, total };
  const belief: Belief = {
    setting: {
      season: "spring",
      colonyState: "alive",
      nothingWrong: 0.15,
      region: {
        varroa: "present",
        acarapisWoodi: "unknown",
        smallHiveBeetle: "absent",
        tropilaelaps: "absent",
        vespa: "absent",
      },
    },
    evidence: publishedEvidence,
    conditions: ["tracheal_mites", "varroa_pms", "starvation", "queenless", "robbing"],
    sets,
    probability: weight.map((each) => each / total),
    uncovered: 0,
    candidates: [],
  };
  return { belief, absent };
}

describe("bits", () => {
  it.each(golden.cases)(
    "[NX2] expected information of case $id, as printed for the joint state",
    ({ evidence, expected }) => {
      const { belief, absent } = printedBelief(evidence as unknown as Record<string, number>);
      for (const [finding, bits] of Object.entries(expected.eig_joint_bits)) {
        const none = absent(Number(finding));
        const results = [none.map((each) => 1 - each), none];
        const worth = worthOf(belief, marginalsOf(belief), {
          kind: "look",
          id: "crawlers",
          dependsOn: "set",
          results: () => results,
        });
        expect(worth.bits).toBeCloseTo(bits, 9);
      }
    },
  );

  it("[NX2] a count that bears on one condition tells as much by itself as set by set", () => {
    const { belief } = printedBelief({ "0": 1 });
    const [yes, no] = [Float64Array.of(0.1, 0.2, 0.7), Float64Array.of(0.6, 0.3, 0.1)];
    const holds = (set: number) => (set & 2) !== 0;
    const bySet = [0, 1, 2].map((result) =>
      belief.probability.map((_, set) => (holds(set) ? (yes[result] ?? 0) : (no[result] ?? 0))),
    );
    const marginals = marginalsOf(belief);
    const one = worthOf(belief, marginals, {
      kind: "test",
      id: "varroa-wash",
      dependsOn: "condition",
      condition: 1,
      withCondition: yes,
      without: no,
    });
    const other = worthOf(belief, marginals, {
      kind: "test",
      id: "varroa-wash",
      dependsOn: "set",
      results: () => bySet,
    });
    expect(one.bits).toBeCloseTo(other.bits, 10);
    expect(one.decisionGain).toBeCloseTo(other.decisionGain, 10);
  });

  it("[NX4] what no condition changes is worth nothing", () => {
    const { belief } = printedBelief({});
    const flat = belief.probability.map(() => 0.3);
    const results = [flat, flat.map((each) => 1 - each)];
    const worth = worthOf(belief, marginalsOf(belief), {
      kind: "look",
      id: "crawlers",
      dependsOn: "set",
      results: () => results,
    });
    expect(worth.bits).toBeCloseTo(0, 12);
    expect(worth.decisionGain).toBeCloseTo(0, 12);
  });

  it("[NX2] [NX5] neither bits nor gains are below zero in real cases", () => {
    for (const findings of [{}, { crawlers: "present" }, { ropy_thread: "present", k_wing: "absent" }] as const) {
      for (const { bits, decisionGain } of steps({ season: "summer", findings })) {
        expect(bits).toBeGreaterThanOrEqual(0);
        expect(decisionGain).toBeGreaterThanOrEqual(-1e-9);
      }
    }
  });
});

describe("gain", () => {
  it("[NX5] the better of acting and leaving alone, condition by condition", () => {
    // Starvation asks for something the same day: .6 lost when left alone; acting costs .1 and leaves four tenths of it.
    const { act, residual, leftAlone } = lossTable;
    const lost = leftAlone["same-day"];
    expect(expectedLoss(["starvation"], Float64Array.of(0.1))).toBeCloseTo(0.1 * lost, 12);
    expect(expectedLoss(["starvation"], Float64Array.of(0.9))).toBeCloseTo(act + residual * 0.9 * lost, 12);
    expect(expectedLoss(["orientation_flight"], Float64Array.of(1))).toBe(0);
  });
});

describe("the list", () => {
  const crawling = { season: "spring", findings: { crawlers: "present", k_wing: "absent" } } as const;

  it("[NX1] holds what was not looked at and nothing that was", () => {
    const tested = steps({ ...crawling, tests: [{ test: "varroa-wash", mites: 1, bees: 300 }] });
    const ids = tested.map(({ step }) => step as string);
    for (const done of ["crawlers", "k_wing", "varroa-wash"]) expect(ids).not.toContain(done);
    for (const open of ["stores_exhausted", "tracheal-dissection", "spore-count"]) expect(ids).toContain(open);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it("[NX3] says what was left out", () => {
    const result = nextSteps(crawling);
    expect(result.ok && result.value.uncovered).toBeLessThanOrEqual(0.1);
    expect(result.ok && result.value.uncovered).toBeGreaterThanOrEqual(0);
  });

  it("[NX3] says so too when the posterior came from the tables", () => {
    const ids: FindingId[] = ["crawlers", "k_wing", "weak_for_season", "dead_heap", "trembling", "spotty_brood"];
    const more: FindingId[] = [
      "deformed_wings",
      "varroa_on_adults",
      "white_cell_deposits",
      "stores_low",
      "no_bee_bread",
    ];
    const all = [...ids, ...more, "wet_mould" as const, "faeces_inside" as const];
    const result = nextSteps({
      season: "autumn",
      findings: Object.fromEntries(all.map((id) => [id, "present" as const])),
    });
    expect(result.ok && result.value.uncovered).toBeGreaterThan(1e-6);
    expect(result.ok && result.value.uncovered).toBeLessThanOrEqual(0.1);
  });

  it("[NX6] crawlers on a cold morning: first warm ten bees and watch", () => {
    for (const season of ["winter", "spring", "autumn"] as const) {
      const first = steps({ season, findings: { crawlers: "present" } })[0];
      expect(first).toMatchObject({ step: "revive_on_warming", kind: "look", because: "checks-what-was-reported" });
    }
  });

  it("[NX7] opening the tracheae comes first when a verdict waits for nothing else", () => {
    const signs: FindingId[] = ["crawlers", "k_wing", "loose_cluster", "weak_for_season", "onset_gradual"];
    const result = differentialWithNext({
      season: "winter",
      region: { acarapisWoodi: "found" },
      findings: { ...Object.fromEntries(signs.map((id) => [id, "present" as const])), revive_on_warming: "absent" },
      thresholds: { leading: 0.2 },
      tests: [{ test: "varroa-wash", mites: 0, bees: 300 }],
    });
    if (!result.ok) throw new Error(JSON.stringify(result.problems));
    expect(result.value.verdict.because).toBe("tracheae-not-opened");
    expect(result.value.next[0]).toMatchObject({ step: "tracheal-dissection", because: "the-verdict-waits-for-it" });
  });

  it("[NX8] goes by bits per minute of effort", () => {
    const list = steps({ season: "summer", findings: {} });
    const money = { 1: 0, 2: 60, 3: 180, 4: 480 };
    const worth = list.map(({ bits, minutes, cost }) => bits / (minutes + 10 + money[cost]));
    expect(worth).toEqual(worth.toSorted((a, b) => b - a));
  });

  it("[NX9] a dead colony is not asked what only live bees show, nor for brood in winter", () => {
    const dead = steps({ season: "winter", colony: { state: "dead" }, findings: {} }).map(({ step }) => step);
    for (const id of ["crawlers", "trembling", "hover_facing_hive", "no_brood_in_season"])
      expect(dead).not.toContain(id);
    expect(dead).toContain("heads_in_cells");
  });

  it("[NX10] neither derived findings nor the other half of an exclusive pair are asked for", () => {
    const ids = steps({ season: "spring", findings: { onset_sudden: "present" } }).map(({ step }) => step);
    expect(ids).not.toContain("onset_gradual");
    for (const id of findingIds.filter((each) => findings[each].derived === true)) expect(ids).not.toContain(id);
  });
});

describe("one visit", () => {
  /** The five findings of the reference network under names of five groups, with their minutes. */
  const names = ["crawlers", "spotty_brood", "faecal_streaks_front", "roar_agitated", "hairless_black"] as const;
  const candidatesOf = (absent: (finding: number) => Float64Array, used: readonly number[]): readonly Candidate[] =>
    names.flatMap((id, finding) => {
      if (used.includes(finding)) return [];
      const none = absent(finding);
      return [
        { kind: "look" as const, id, dependsOn: "set" as const, results: () => [none.map((each) => 1 - each), none] },
      ];
    });
  /** Joint information of some looks, by every combination of their results and every set. */
  function together({ probability }: Belief, chosen: readonly Candidate[]): number {
    const results = chosen.map((each) => (each.dependsOn === "set" ? each.results() : []));
    let [all, given] = [0, 0];
    for (let combination = 0; combination < 2 ** chosen.length; combination++) {
      let chance = 0;
      for (const [set, weight] of probability.entries()) {
        const p = results.reduce((product, each, at) => product * (each[(combination >> at) & 1]?.[set] ?? 0), 1);
        chance += weight * p;
        if (p > 0) given -= weight * p * Math.log2(p);
      }
      if (chance > 0) all -= chance * Math.log2(chance);
    }
    return all - given;
  }
  const subsets = <T>(items: readonly T[]): readonly (readonly T[])[] =>
    Array.from({ length: 2 ** items.length }, (_, bits) => items.filter((_item, at) => ((bits >> at) & 1) === 1));
  const minutesOf = (chosen: readonly Candidate[]) =>
    chosen.reduce((sum, { id }) => sum + findings[id as FindingId].minutes, 0);

  it.each(golden.cases.slice(0, 3))(
    "[NX50] bits of case $id together are those of all combinations, and at least 63 in 100 of the best choice's",
    ({ evidence }) => {
      const { belief, absent } = printedBelief(evidence as unknown as Record<string, number>);
      const open = candidatesOf(absent, Object.keys(evidence).map(Number));
      for (const within of [5, 10, 15]) {
        const visit = visitOf(belief, open, within);
        const chosen = open.filter(({ id }) => visit.steps.some(({ step }) => step === id));
        expect(visit.bits).toBeCloseTo(together(belief, chosen), 9);
        expect(visit.minutes).toBeLessThanOrEqual(within);
        const best = Math.max(
          ...subsets(open)
            .filter((each) => minutesOf(each) <= within)
            .map((each) => together(belief, each)),
        );
        expect(visit.bits).toBeGreaterThanOrEqual((1 - 1 / Math.E) * best - 1e-9);
        expect(visit.bits).toBeLessThanOrEqual(best + 1e-9);
      }
    },
  );

  it("[NX51] of signs that go together one is taken, and what overlaps is counted once", () => {
    const result = nextSteps({ season: "spring", findings: { crawlers: "present" } });
    if (!result.ok) throw new Error("an answer was expected");
    const { visit, next } = result.value;
    const looks = visit.steps
      .filter(({ kind }) => kind === "look")
      .map(({ step }) => findings[step as FindingId].group);
    expect(new Set(looks).size).toBe(looks.length);
    const alone = visit.steps.reduce((sum, { step }) => sum + (next.find((each) => each.step === step)?.bits ?? 0), 0);
    expect(visit.bits).toBeLessThan(alone);
    expect(visit.minutes).toBeLessThanOrEqual(visitMinutes);
  });
});

describe("what would put another cause first", () => {
  const input = {
    season: "summer",
    findings: { no_brood_in_season: "present", queen_not_found_no_eggs: "present" },
  } as const;

  it("[NX52] each change is what the whole ranking says once the result is in, on looks drawn by chance", () => {
    let drawnSoFar = 0;
    const chance = () => philox([drawnSoFar++, 0, 0, 0], [52, 0])[0] / 2 ** 32;
    const signs = findingIds.filter((id) => findings[id].kind === "sign" && findings[id].exclusiveWith === undefined);
    const drawn = Array.from({ length: 4 }, () => ({
      season: (["winter", "spring", "summer", "autumn"] as const)[Math.floor(4 * chance())] ?? "winter",
      findings: Object.fromEntries(
        Array.from({ length: 5 }, () => [
          signs[Math.floor(signs.length * chance())] ?? "crawlers",
          chance() < 0.6 ? ("present" as const) : ("absent" as const),
        ]),
      ),
    }));
    let told = 0;
    for (const asked of [input, { season: "spring", findings: { stores_ample: "absent" } } as const, ...drawn]) {
      const result = nextSteps(asked);
      if (!result.ok) continue;
      for (const { step, kind, result: seen, condition, posterior, instead, left } of result.value.changes) {
        const then =
          kind === "look"
            ? { ...asked, findings: { ...asked.findings, [step]: seen } }
            : { ...asked, tests: [{ test: step, result: seen as "found" | "none-found" }] };
        const answer = differential({ ...then, draws: 40 });
        if (!answer.ok) throw new Error("an answer was expected");
        const of = (id: string) => answer.value.conditions.find((each) => each.id === id)?.posterior ?? 0;
        expect(answer.value.conditions[0]?.id).toBe(condition);
        expect(of(condition)).toBeCloseTo(posterior, 9);
        expect(of(instead)).toBeCloseTo(left, 9);
        told += 1;
      }
    }
    expect(told).toBeGreaterThan(4);
  });

  it("[NX52] each step is told once, and never one that leaves the first place as it is", () => {
    for (const findings of [{}, { crawlers: "present" }, { ropy_thread: "present" }] as const) {
      const result = nextSteps({ season: "spring", findings });
      if (!result.ok) throw new Error("an answer was expected");
      const { changes } = result.value;
      expect(new Set(changes.map(({ step }) => step)).size).toBe(changes.length);
      for (const { condition, instead, posterior, left, chance } of changes) {
        expect(condition).not.toBe(instead);
        expect(posterior).toBeGreaterThan(left);
        expect(chance).toBeGreaterThan(0);
      }
    }
  });
});
