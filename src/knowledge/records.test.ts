/** The records beside the matrix: sources, tests, notices, controls, words. */
import { describe, expect, it } from "vitest";
import { figure, span } from "./figure.ts";
import type { ControlStatement, Figure } from "./index.ts";
import {
  allRecords,
  type CautionTrigger,
  cautions,
  cautionsFor,
  citationsOf,
  coexistence,
  conditionIds,
  conditions,
  conditionsOf,
  controlIds,
  controls,
  defaultOf,
  findingIds,
  findings,
  isConditionId,
  isFindingId,
  isTestId,
  laboratoryTraps,
  levels,
  mayBeDefault,
  middleOf,
  mustNotMiss,
  noTrouble,
  redFlags,
  regionAdjustments,
  sources,
  testIds,
  tests,
  thresholds,
} from "./index.ts";
import { allowedDefaults } from "./knowledge.type-test.ts";

const marks = ["seen", "memory", "common-practice", "judgement", "computed"];

describe("sources", () => {
  it("[KN7] are each cited, and each citation names one or none", () => {
    const citations = citationsOf(allRecords);
    const pairs = conditionIds.flatMap((id) => Object.values(conditions[id].frequencies).map((each) => each.source));
    const used = new Set<string | null>([...citations.map((each) => each.source), ...pairs]);
    expect(Object.keys(sources).filter((key) => !used.has(key))).toEqual([]);
    for (const key of used) expect(key === null || key === "judgement" || key in sources, String(key)).toBe(true);
    for (const each of citations) {
      expect(marks).toContain(each.read);
      expect(each.at.length).toBeGreaterThan(0);
      if (each.read === "seen") expect(each.source, each.at).not.toBeNull();
    }
  });

  it("[KN7] carry a reading note, and no two are the same work under two keys", () => {
    const all = Object.values(sources);
    for (const source of all) expect(source.read.length).toBeGreaterThan(3);
    expect(new Set(all.map((each) => `${each.title} ${each.where}`)).size).toBe(all.length);
  });
});

describe("defaults", () => {
  it("[KN8] come from figures that were read, computed or judged, never from memory", () => {
    expect(allowedDefaults()).toEqual([59, 0.925]);
    const cite = { source: null, at: "somewhere" } as const;
    expect(mayBeDefault(figure(1, "bees", { ...cite, read: "memory" }))).toBe(false);
    expect(mayBeDefault(figure(1, "bees", { ...cite, read: "judgement" }))).toBe(true);
    expect(() => middleOf(span([0.9, null], "probability", { ...cite, read: "judgement" }))).toThrow("closed");
    const line: Figure | null = thresholds["nosema-action"].figure;
    expect(line && mayBeDefault(line)).toBe(false);
  });

  it("[KN8] are never taken from what a source reports was given", () => {
    const reports = controlIds.flatMap((id) =>
      controls[id].statements.flatMap((each) => (each.figure?.kind === "dose-report" ? [each.figure] : [])),
    );
    expect(reports.length).toBe(4);
    for (const each of reports) expect(mayBeDefault(each)).toBe(false);
  });

  it("[KN8] a figure that was seen gives its number", () => {
    expect(defaultOf(figure(50, "bees", { source: "spc-b451", at: "text", read: "seen" }))).toBe(50);
  });
});

describe("conditions", () => {
  it("[KN9] have the printed roles and groups", () => {
    const withRole = (role: string) => conditionIds.filter((id) => conditions[id].role === role);
    expect(withRole("secondary")).toEqual(["small_hive_beetle", "wax_moth", "robbing", "winter_damp"]);
    expect(withRole("syndrome")).toEqual(["unexplained_depopulation"]);
    expect(withRole("normal")).toEqual(conditionsOf("normal"));
    expect(withRole("normal").length).toBe(7);
    expect(conditionsOf("varroa_and_viruses")).toEqual(["varroa_pms", "dwv_overt", "acute_virus_complex"]);
    expect(conditionsOf("queen_trouble")).toEqual(["queenless", "drone_layer", "laying_workers", "failing_queen"]);
    expect(conditionsOf("nosema")).toEqual(["nosema_ceranae", "nosema_apis"]);
    expect(conditionsOf("brood_disease").length).toBe(5);
    expect(conditions.acute_poisoning.apiaryWide && conditions.plant_toxicity.apiaryWide).toBe(true);
    expect(conditions.queenless.apiaryWide || conditions.chronic_paralysis.apiaryWide).toBe(false);
  });

  it("[KN9] are told from other conditions, never from themselves", () => {
    for (const id of conditionIds)
      for (const look of conditions[id].lookAlikes) {
        expect(look.conditions).not.toContain(id);
        expect(look.conditions.every(isConditionId)).toBe(true);
        expect(look.tellApart.length).toBeGreaterThan(5);
      }
    for (const pair of coexistence) expect(pair.others).not.toContain(pair.first);
  });
});

describe("notices", () => {
  it.each([
    ["american_foulbrood", ["ropy_thread"]],
    ["american_foulbrood", ["hard_flat_scale"]],
    ["tropilaelaps", ["fast_small_mites"]],
    ["small_hive_beetle", ["beetles_or_spined_larvae"]],
    ["european_foulbrood", ["twisted_discoloured_larva"]],
    ["stonebrood", ["green_hard_mummies"]],
    ["acute_poisoning", ["most_colonies", "onset_sudden", "dead_heap"]],
    ["starvation", ["stores_exhausted"]],
  ])("[KN10] %s fires on %s", (condition, keys) => {
    const notice = Object.values(mustNotMiss).find(
      (each) => each.condition === condition && each.findings.join() === keys.join(),
    );
    expect(notice?.act).toMatch(/^[A-Z].{10,}\.$/);
    expect(notice?.findings.every(isFindingId)).toBe(true);
  });

  it("[KN10] signs of trouble are the signs that people are asked, but for those of a colony doing well", () => {
    const good = ["normal_eggs_and_queen", "stores_ample", "calm_polished_cells", "hover_facing_hive"];
    const quiet = Object.values(findings).filter(
      (each) => each.kind === "circumstance" || "derived" in each || good.includes(each.id),
    );
    expect([...noTrouble].sort()).toEqual(quiet.map(({ id }) => id).sort());
  });

  it("[KN10] are ten, one by a test alone; red flags lead to notices that exist and come with an act", () => {
    expect(Object.keys(mustNotMiss).length).toBe(10);
    expect(
      Object.values(mustNotMiss)
        .filter(({ findings: keys }) => keys.length === 0)
        .map(({ tests: by }) => by),
    ).toEqual([["culture-pcr"]]);
    for (const flag of Object.values(redFlags)) {
      expect(flag.act.length).toBeGreaterThan(5);
      expect(flag.findings.every(isFindingId)).toBe(true);
      for (const key of flag.leadsTo) expect(mustNotMiss[key]).toBeDefined();
    }
  });
});

describe("tests", () => {
  it("[KN11] are complete, in order and judged where nobody has timed them", () => {
    for (const id of testIds) {
      const test = tests[id];
      expect(test.id).toBe(id);
      expect(test.conditions.length).toBeGreaterThan(0);
      expect(test.conditions.every(isConditionId)).toBe(true);
      expect(test.costClass.low).toBeLessThanOrEqual(test.costClass.high);
      expect(test.costClass.low).toBeGreaterThanOrEqual(1);
      expect(test.costClass.high).toBeLessThanOrEqual(4);
      expect(test.days.low).toBeLessThanOrEqual(test.days.high);
      expect(test.minutes.citation.read).toBe("judgement");
      expect(defaultOf(test.minutes)).toBeGreaterThan(0);
      expect(test.traps.length).toBeGreaterThan(0);
    }
  });

  it("[KN11] include the steps other programs name", () => {
    const named =
      "tracheal-dissection varroa-wash spore-count thoracic-disc pooled-pcr sugar-roll sticky-board uncap-brood bump-test gut-pull species-pcr tubule-squash rope-test milk-test afb-strip efb-strip smear-microscopy culture-pcr virus-panel residue-screen test-frame heft emergence-hold";
    for (const id of named.split(" ")) expect(isTestId(id), id).toBe(true);
    expect(testIds.length).toBe(27);
    expect(tests["bump-test"].sensitivity).toMatchObject({ value: 0.363, citation: { source: "pettis-2013" } });
    for (const trap of Object.values(laboratoryTraps)) expect(trap.tests.every(isTestId)).toBe(true);
  });
});

const speaksOfDose = (statement: ControlStatement) => statement.topic === "dose-reported";

describe("controls", () => {
  it("[KN12] report doses only as reports, and chemicals need a label record", () => {
    for (const id of controlIds) {
      const control = controls[id];
      for (const statement of control.statements.filter(speaksOfDose))
        expect(statement.figure?.kind).toBe("dose-report");
      if (control.kind === "vapour" || control.kind === "contact") expect(control.needsLabelRecord).toBe(true);
      expect(control.cautions.length).toBeGreaterThan(0);
    }
  });

  it("[KN12] management of a condition names no amount", () => {
    for (const id of conditionIds)
      for (const words of conditions[id].management) expect(words).not.toMatch(/\d\s?(g|mg|ml|oz|%|days?)\b/);
  });

  it("[KN16] name cautions that exist; each caution is set off by its triggers", () => {
    for (const id of controlIds) for (const caution of controls[id].cautions) expect(cautions[caution]).toBeDefined();
    const triggers = new Set(Object.values(cautions).flatMap((each) => each.triggers as readonly CautionTrigger[]));
    for (const trigger of triggers) expect(cautionsFor(trigger).length).toBeGreaterThan(0);
    expect(cautionsFor("menthol")).toEqual(["menthol-vapour"]);
    expect(cautionsFor("vapour")).toEqual(["honey-supers-off", "temperature-window"]);
  });
});

describe("levels, thresholds, regions", () => {
  it("[KN18] levels lie in order and belong to their condition", () => {
    for (const [id, level] of Object.entries(levels)) {
      expect(level.condition).toBe(id);
      if (level.backgroundBelow !== null && level.clinicalFrom !== null)
        expect(level.backgroundBelow).toBeLessThanOrEqual(level.clinicalFrom);
    }
    expect(levels.tracheal_mites).toMatchObject({ backgroundBelow: 15, clinicalFrom: 30 });
    expect(levels.varroa_pms).toMatchObject({ backgroundBelow: 3, clinicalFrom: 5 });
  });

  it("[KN18] bands rise, the autumn rule is said to be disputed, and the Ontario ratio follows from its counts", () => {
    for (const threshold of Object.values(thresholds)) {
      const bands: readonly { readonly from: number; readonly to: number | null }[] = threshold.bands;
      for (const band of bands) if (band.to !== null) expect(band.from).toBeLessThan(band.to);
    }
    expect(thresholds["tracheal-autumn-rule"].but).toContain("conflicts");
    expect(12 / 25 / (99 / 383)).toBeCloseTo(thresholds["tracheal-ontario"].figure.value, 3);
  });

  it("[KN19] region adjustments name conditions, and only the absence of tracheal mites is cited", () => {
    for (const adjustment of Object.values(regionAdjustments))
      expect(adjustment.conditions.every(isConditionId)).toBe(true);
    expect(regionAdjustments["acarapis-absent"].change.percent).toBe(0);
    expect(regionAdjustments["acarapis-unknown"].change.percent).toBe(0.5);
    expect(regionAdjustments["hornet-established"].change.factor).toBe(20);
    const seen = Object.entries(regionAdjustments).filter(([, each]) => each.citations[0].read === "seen");
    expect(seen.map(([id]) => id)).toEqual(["acarapis-absent"]);
  });
});

const jargon =
  /\b(negative|cleared|free of|leak|symptoms?|yard|acarin\w+|acarapisosis|prothorac\w+|tergite|prevalence|aetiolog\w+|moribund|faec\w+|regurgit\w+|supersedure|supersede|distended|phoretic)\b/i;

describe("words", () => {
  it("[KN15] of conditions and findings are plain", () => {
    for (const id of conditionIds) expect(conditions[id].term).not.toMatch(jargon);
    for (const id of findingIds) {
      const { term, question, lookFor, tellApart = "" } = findings[id];
      for (const words of [term, question, lookFor, tellApart]) expect(words, id).not.toMatch(jargon);
      expect(term.length, id).toBeLessThanOrEqual(36);
      expect(question, id).toMatch(/\?$/);
    }
  });

  it("[KN15] of notices, flags and cautions are plain", () => {
    const all = [
      ...Object.values(mustNotMiss).flatMap((each) => [each.act, ...each.doNot]),
      ...Object.values(redFlags).flatMap((each) => [each.question, each.act]),
      ...Object.values(cautions).map((each) => each.words),
    ];
    for (const words of all) expect(words).not.toMatch(jargon);
  });

  it("[KN15] nothing said of controls, thresholds or tests promises a colony without mites", () => {
    const all = [
      ...Object.values(controls).flatMap((each) => each.statements.map(({ words }) => words)),
      ...Object.values(thresholds).map(({ words }) => words),
      ...Object.values(tests).flatMap(({ traps, answers }) => [answers, ...traps]),
    ];
    for (const words of all) expect(words).not.toMatch(/\b(free of|negative|cure[sd]?|eliminat\w+|guarantee\w*)\b/i);
  });
});
