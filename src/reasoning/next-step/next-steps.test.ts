/** The next step: bits against brute force, and the order people need. */
import { describe, expect, it } from "vitest";
import golden from "../../../tests/golden/noisy-or-network.json" with { type: "json" };
import { printedBelief } from "../../../tests/printed-belief.ts";
import { type FindingId, findingIds, findings } from "../../knowledge/index.ts";
import type { DifferentialInput } from "../differential/index.ts";
import { differentialWithNext, inOrder, type NextStep, nextSteps, type StepOrder, stepOrders } from "./index.ts";
import { expectedLoss, lossLeftAlone, lossTable } from "./loss-table.ts";
import { marginalsOf, worthOf } from "./value.ts";

function steps(input: DifferentialInput): readonly NextStep[] {
  const result = nextSteps(input);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value.next;
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

  it("[NX54] what goes from hive to hive loses three colonies: beside spotty brood the looks for foulbrood spare most", () => {
    const { times } = lossTable.spread;
    expect(lossLeftAlone("american_foulbrood")).toBeCloseTo(times * lossTable.leftAlone["same-day"], 12);
    expect(lossLeftAlone("starvation")).toBe(lossTable.leftAlone["same-day"]);
    const spotty = steps({ season: "summer", findings: { spotty_brood: "present" } });
    const first = (by: StepOrder) =>
      inOrder(spotty, by)
        .map(({ step }) => step as string)
        .slice(0, 4);
    expect(first("spares")).toEqual(expect.arrayContaining(["twisted_discoloured_larva", "ropy_thread"]));
    expect(first("tells")).not.toContain("ropy_thread");
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

  it("[NX12] goes by spared loss for the effort, or by the days until the result, when asked to", () => {
    const brood = steps({ season: "summer", findings: { foul_odour: "present", sunken_perforated_caps: "present" } });
    const money = { 1: 0, 2: 60, 3: 180, 4: 480 };
    const rest = (by: StepOrder) => inOrder(brood, by).filter(({ because }) => because === "worth-the-effort");
    const spared = rest("spares").map(({ decisionGain, minutes, cost }) => decisionGain / (minutes + 10 + money[cost]));
    expect(spared).toEqual(spared.toSorted((a, b) => b - a));
    const days = rest("soonest").map((step) => step.days.high);
    expect(days).toEqual(days.toSorted((a, b) => a - b));
    expect(new Set(days).size).toBeGreaterThan(3);
    for (const by of stepOrders) {
      expect(inOrder(brood, by)[0]?.because).toBe(brood[0]?.because);
      expect(inOrder(brood, by)).toHaveLength(brood.length);
    }
    expect(inOrder(brood, "tells")).toEqual(brood);
    const ids = (by: StepOrder) => rest(by).map(({ step }) => step);
    expect(ids("spares")).not.toEqual(ids("tells"));
  });

  it("[NX9] a dead colony is not asked what only live bees show, nor for brood in winter", () => {
    const dead = steps({ season: "winter", colony: { state: "dead" }, findings: {} }).map(({ step }) => step);
    for (const id of ["crawlers", "trembling", "hover_facing_hive", "no_brood_in_season"])
      expect(dead).not.toContain(id);
    expect(dead).toContain("heads_in_cells");
  });

  it("[NX9] a dead colony is offered no test of live bees, and a colony without brood nothing that takes brood", () => {
    const dead = steps({ season: "spring", colony: { state: "dead" }, findings: { small_cluster: "present" } });
    for (const id of ["test-frame", "sugar-roll", "normal_eggs_and_queen", "bump-test"])
      expect(dead.map(({ step }) => step)).not.toContain(id);
    expect(dead.map(({ step }) => step)).toEqual(expect.arrayContaining(["tracheal-dissection", "hard_flat_scale"]));
    const asked = steps({ season: "spring", findings: { no_brood_in_season: "present" } }).map(({ step }) => step);
    for (const id of ["spotty_brood", "efb-strip", "sealed_brood_only", "uncap-brood"]) expect(asked).not.toContain(id);
    expect(asked).toEqual(expect.arrayContaining(["hard_flat_scale", "chalk_mummies", "test-frame", "roar_agitated"]));
  });

  it("[NX9] in winter brood is asked about once some was seen", () => {
    const ids = (findings: DifferentialInput["findings"]) =>
      steps({ season: "winter", findings }).map(({ step }) => step);
    expect(ids({ small_cluster: "present" })).not.toContain("spotty_brood");
    expect(ids({ small_cluster: "present" })).not.toContain("uncap-brood");
    expect(ids({ dead_emerging: "present" })).toContain("spotty_brood");
  });

  it("[NX11] nothing is put on a strip or slide before a larva looks sick", () => {
    const ids = (findings: DifferentialInput["findings"]) =>
      steps({ season: "spring", findings }).map(({ step }) => step);
    for (const id of ["efb-strip", "afb-strip", "rope-test", "milk-test", "smear-microscopy"]) {
      expect(ids({ crawlers: "present", k_wing: "present" })).not.toContain(id);
      expect(ids({ sunken_perforated_caps: "present" })).toContain(id);
    }
  });

  it("[NX10] neither derived findings nor the other half of an exclusive pair are asked for", () => {
    const ids = steps({ season: "spring", findings: { onset_sudden: "present" } }).map(({ step }) => step);
    expect(ids).not.toContain("onset_gradual");
    for (const id of findingIds.filter((each) => findings[each].derived === true)) expect(ids).not.toContain(id);
  });
});
