/** The differential from outside: reasons, ranges, circumstances, notices, and what input it refuses. */
import { describe, expect, it } from "vitest";
import { type ConditionId, conditionIds, type FindingId, findingIds, findings } from "../../knowledge/index.ts";
import { caseModel, circumstanceFactors, statedCase } from "./case-model.ts";
import { type DifferentialAnswer, type DifferentialInput, differential } from "./index.ts";
import { readInput } from "./read-input.ts";

function answer(input: DifferentialInput): DifferentialAnswer {
  const result = differential({ draws: 100, ...input });
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}
const codes = (input: DifferentialInput) => differential({ draws: 40, ...input }).problems.map(({ code }) => code);
const posterior = ({ conditions }: DifferentialAnswer, id: ConditionId) =>
  conditions.find((each) => each.id === id)?.posterior ?? Number.NaN;
const odds = (p: number) => p / (1 - p);

describe("reasons and ranges", () => {
  const crawling = { season: "spring", findings: { crawlers: "present", dead_heap: "absent" } } as const;

  it("[DX19] bits are the log odds with the finding less the log odds without it", () => {
    const both = answer(crawling);
    const without = answer({ season: "spring", findings: { dead_heap: "absent" } });
    for (const { id, for: reasons, posterior: p } of both.conditions) {
      const bits = reasons.find(({ finding }) => finding === "crawlers")?.bits;
      if (bits !== undefined) expect(bits).toBeCloseTo(Math.log2(odds(p) / odds(posterior(without, id))), 9);
    }
    expect(both.conditions.find(({ id }) => id === "chronic_paralysis")?.for[0]?.finding).toBe("crawlers");
  });

  it("[DX18] every condition stands in the list once, likeliest first, with a range that repeats", () => {
    const first = answer(crawling);
    expect(first.conditions.map(({ id }) => id).toSorted()).toEqual([...conditionIds].toSorted());
    for (const [index, each] of first.conditions.entries()) {
      expect(each.posterior).toBeLessThanOrEqual(first.conditions[index - 1]?.posterior ?? 1);
      expect(each.low).toBeLessThan(each.high);
    }
    expect(answer(crawling)).toEqual(first);
    expect(answer({ ...crawling, seed: 2 }).conditions[0]?.low).not.toBe(first.conditions[0]?.low);
  });

  it("[DX18] with many findings the ranges come from a list of sets, and keep about where all sets put them", () => {
    const ten: FindingId[] = ["crawlers", "k_wing", "weak_for_season", "dead_heap", "trembling"];
    const more: FindingId[] = [
      "spotty_brood",
      "deformed_wings",
      "varroa_on_adults",
      "white_cell_deposits",
      "stores_low",
    ];
    const nine = [...ten, ...more.slice(0, 4)];
    const at = (ids: readonly FindingId[]) =>
      answer({ season: "autumn", findings: Object.fromEntries(ids.map((id) => [id, "present" as const])), draws: 200 });
    // The tenth finding is one that hardly bears on paralysis: its range, now by list, stays near.
    const [all, list] = [at(nine), at([...nine, "stores_low"])];
    const range = (of: DifferentialAnswer) => of.conditions.find(({ id }) => id === "chronic_paralysis");
    expect(Math.abs((range(all)?.low ?? 0) - (range(list)?.low ?? 0))).toBeLessThan(0.05);
    expect(Math.abs((range(all)?.high ?? 0) - (range(list)?.high ?? 0))).toBeLessThan(0.05);
  });

  it("[DX26] the judged share is that of the pairs of what was looked for", () => {
    expect(answer({ season: "spring", findings: {} }).knowledge.judgedShare).toBe(1);
    const { judgedShare } = answer({ season: "spring", findings: { ropy_thread: "present" } }).knowledge;
    expect(judgedShare).toBeGreaterThan(0);
    expect(judgedShare).toBeLessThan(1);
  });
});

describe("circumstances", () => {
  it("[DX9] one multiplies prior odds by grade over healthy rate, at most tenfold", () => {
    const spray = answer({ season: "spring", findings: { recent_spray: "present" } });
    const before = answer({ season: "spring", findings: {} });
    const others = odds(posterior(spray, "chalkbrood")) / odds(posterior(before, "chalkbrood"));
    const ratio = odds(posterior(spray, "acute_poisoning")) / odds(posterior(before, "acute_poisoning")) / others;
    // Common (.35) where a healthy colony has it occasionally (.10): 3.5 times, but for the weight of the empty set.
    expect(ratio).toBeGreaterThan(3.3);
    expect(ratio).toBeLessThan(3.7);
  });

  it("[DX9] never more than tenfold by one, in a season in which it is never met", () => {
    const moved = answer({ season: "winter", findings: { swarmed_5w: "present" } });
    const before = answer({ season: "winter", findings: {} });
    for (const id of conditionIds) {
      expect(odds(posterior(moved, id)) / odds(posterior(before, id))).toBeLessThan(10 * 1.3);
    }
  });
});

describe("all circumstances at once", () => {
  it.each([
    ["winter", 30],
    ["spring", 30],
    ["summer", 22.75], // usual over occasional times common over occasional: 6.5 · 3.5, below the limit
    ["autumn", 30],
  ] as const)("[DX9] in %s never more than thirtyfold up or down: at most %d-fold", (season, most) => {
    const ids = findingIds.filter((id) => findings[id].kind === "circumstance");
    const factorsOf = (state: "present" | "absent", only: readonly FindingId[]) => {
      const read = readInput({ season, findings: Object.fromEntries(only.map((id) => [id, state])) });
      if (!read.ok) throw new Error(JSON.stringify(read.problems));
      const model = caseModel(read.value);
      return circumstanceFactors(model, statedCase(model));
    };
    for (const state of ["present", "absent"] as const) {
      const together = factorsOf(state, ids);
      const alone = ids.map((id) => factorsOf(state, [id]));
      for (const [index, factor] of together.entries()) {
        const product = alone.reduce((all, each) => all * (each[index] ?? 1), 1);
        expect(factor).toBeCloseTo(Math.min(30, Math.max(1 / 30, product)), 12);
        for (const each of alone) {
          expect(each[index]).toBeLessThanOrEqual(10);
          expect(each[index]).toBeGreaterThanOrEqual(1 / 10);
        }
      }
    }
    expect(Math.max(...factorsOf("present", ids))).toBeCloseTo(most, 12);
  });
});

describe("must not be missed", () => {
  it.each([
    ["ropy_thread", "american_foulbrood"],
    ["hard_flat_scale", "american_foulbrood"],
    ["fast_small_mites", "tropilaelaps"],
    ["beetles_or_spined_larvae", "small_hive_beetle"],
    ["twisted_discoloured_larva", "european_foulbrood"],
    ["green_hard_mummies", "stonebrood"],
    ["stores_exhausted", "starvation"],
  ] as const)("[DX25] %s fires its notice, whatever else was seen", (finding, condition) => {
    const { mustNotMiss } = answer({
      season: "summer",
      findings: { [finding]: "present", varroa_on_adults: "present", white_cell_deposits: "present" },
    });
    expect(mustNotMiss.map((each) => [each.finding, each.condition])).toContainEqual([finding, condition]);
    expect(mustNotMiss.every(({ act }) => act.length > 0)).toBe(true);
  });

  it.each([
    ["rope-test", "american_foulbrood"],
    ["milk-test", "american_foulbrood"],
    ["culture-pcr", "american_foulbrood"],
    ["efb-strip", "european_foulbrood"],
    ["bump-test", "tropilaelaps"],
  ] as const)(
    "[DX25] %s that finds something fires a notice to report, weighed or not; none found does not",
    (test, id) => {
      const notices = (result: "found" | "none-found") =>
        answer({ season: "summer", findings: {}, tests: [{ test, result }] }).mustNotMiss;
      expect(notices("found")).toMatchObject([{ condition: id, finding: test, report: true }]);
      expect(notices("none-found")).toEqual([]);
    },
  );

  it.each([
    ["smear-microscopy", ["american_foulbrood"], ["american_foulbrood"]],
    ["smear-microscopy", ["european_foulbrood"], ["european_foulbrood"]],
    ["smear-microscopy", undefined, ["american_foulbrood", "european_foulbrood"]],
    ["uncap-brood", ["tropilaelaps"], ["tropilaelaps"]],
    ["uncap-brood", ["american_foulbrood"], ["american_foulbrood"]],
    ["uncap-brood", ["varroa_pms"], []],
    ["uncap-brood", undefined, ["american_foulbrood", "tropilaelaps"]],
  ] as const)("[DX25] %s that found %s fires the notices of %s", (test, which, conditions) => {
    const found = { test, result: "found", ...(which ? { which } : {}) } as const;
    const { mustNotMiss } = answer({ season: "summer", findings: {}, tests: [found] });
    expect(mustNotMiss.map(({ condition }) => condition).toSorted()).toEqual([...conditions].toSorted());
  });

  it("[DX25] poisoning needs all three; food is not asked of a dead colony", () => {
    const three = { most_colonies: "present", onset_sudden: "present", dead_heap: "present" } as const;
    const poisoned = (findings: DifferentialInput["findings"]) =>
      answer({ season: "summer", findings }).mustNotMiss.some(({ condition }) => condition === "acute_poisoning");
    expect(poisoned(three)).toBe(true);
    expect(poisoned({ ...three, most_colonies: "not-looked" })).toBe(false);
    const dead = answer({ season: "winter", colony: { state: "dead" }, findings: { stores_exhausted: "present" } });
    expect(dead.mustNotMiss).toEqual([]);
  });
});

describe("input", () => {
  it("[DX27] season and date agree, south of the equator too", () => {
    const date = "2026-02-14";
    expect(codes({ date, latitude: 45.2, season: "winter", findings: {} })).toEqual([]);
    expect(codes({ date, latitude: 45.2, season: "summer", findings: {} })).toEqual(["season-and-date-differ"]);
    expect(codes({ date, latitude: -38, season: "summer", findings: {} })).toEqual([]);
    expect(codes({ date, findings: {} })).toEqual(["wrong-value"]);
    expect(codes({ findings: {} })).toEqual(["wrong-value"]);
  });

  it("[DX28] each problem names its field, what was given and what is expected", () => {
    const bad = {
      season: "monsoon",
      findings: { crawlerz: "present", k_wing: "maybe" },
      tests: [{ test: "x" }],
      extra: 1,
    };
    const { problems } = differential(bad as unknown as DifferentialInput);
    expect(problems.map(({ field }) => field)).toEqual([
      "extra",
      "season",
      "findings.crawlerz",
      "findings.k_wing",
      "tests[0].test",
    ]);
    expect(problems.every(({ expected, severity }) => expected !== undefined && severity === "blocked")).toBe(true);
    const counts = { test: "tracheal-dissection", positive: 51, examined: 50 };
    expect(differential({ season: "winter", findings: {}, tests: [counts] }).problems[0]?.field).toBe(
      "tests[0].positive",
    );
    const spores = { test: "spore-count", sporesMillionsPerBee: 3, result: "none-found" } as const;
    expect(differential({ season: "spring", findings: {}, tests: [spores] }).problems[0]?.field).toBe(
      "tests[0].result",
    );
  });

  it("[DX29] exclusive findings both present are refused, beside the present one absence adds nothing", () => {
    expect(codes({ season: "spring", findings: { onset_sudden: "present", onset_gradual: "present" } })).toEqual([
      "exclusive-findings",
    ]);
    expect(answer({ season: "spring", findings: { onset_sudden: "present", onset_gradual: "absent" } })).toEqual(
      answer({ season: "spring", findings: { onset_sudden: "present" } }),
    );
  });

  it("[DX30] region and state of the colony change the priors", () => {
    const base = answer({ season: "winter", findings: {} });
    const at = (more: Partial<DifferentialInput>, id: ConditionId) =>
      posterior(answer({ season: "winter", findings: {}, ...more }), id) / posterior(base, id);
    expect(at({ region: { acarapisWoodi: "found" } }, "tracheal_mites")).toBeGreaterThan(3.5);
    expect(at({ region: { acarapisWoodi: "absent" } }, "tracheal_mites")).toBe(0);
    expect(at({ region: { varroa: "absent" } }, "varroa_pms")).toBeLessThan(0.1);
    expect(at({ region: { smallHiveBeetle: "endemic" } }, "small_hive_beetle")).toBeGreaterThan(300);
    expect(at({ region: { tropilaelaps: "endemic" } }, "tropilaelaps")).toBeGreaterThan(800);
    expect(at({ region: { vespa: "established" } }, "hornet_predation")).toBeGreaterThan(15);
    // Halved, and a little more likely for what a dead colony cannot be.
    expect(at({ colony: { state: "dead" } }, "queenless")).toBeLessThan(0.7);
    expect(at({ colony: { state: "dead" } }, "winter_losses_normal")).toBeLessThan(0.07);
  });
});
