/** Tests as evidence: levels, bands, weak answers, and tests that are a finding. */
import { describe, expect, it } from "vitest";
import { levels as facts } from "../../knowledge/index.ts";
import { betaBinomial, gamma } from "../../numerics/index.ts";
import { type DifferentialAnswer, type DifferentialInput, differential, type TestInput } from "./index.ts";
import { trachealShare, varroaLoad } from "./judgements.ts";

function answer(input: DifferentialInput): DifferentialAnswer {
  const result = differential({ draws: 100, ...input });
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}
const tracheal = { season: "winter", region: { acarapisWoodi: "found" }, findings: { crawlers: "present" } } as const;
const of = ({ conditions }: DifferentialAnswer, id: string) => conditions.find((each) => each.id === id);
const dissected = (positive: number, examined: number, more: Partial<TestInput> = {}): DifferentialAnswer =>
  answer({ ...tracheal, tests: [{ test: "tracheal-dissection", positive, examined, ...more }] });
const washed = (mites: number, bees: number, more: Partial<TestInput> = {}): DifferentialAnswer =>
  answer({ season: "autumn", findings: {}, tests: [{ test: "varroa-wash", mites, bees, ...more }] });
const bits = (result: DifferentialAnswer, id: string, test: string) => {
  const reasons = [...(of(result, id)?.for ?? []), ...(of(result, id)?.against ?? [])];
  return reasons.find(({ finding }) => finding === test)?.bits ?? 0;
};

describe("levels", () => {
  it("[DX13] none, background and clinical sum to one, and clinical is the posterior", () => {
    for (const result of [dissected(0, 50), dissected(4, 50), dissected(17, 50), washed(9, 300)]) {
      for (const id of ["tracheal_mites", "varroa_pms"]) {
        const found = of(result, id);
        const { none, background, clinical } = found?.level ?? { none: 0, background: 0, clinical: 0 };
        expect(none + background + clinical).toBeCloseTo(1, 12);
        expect(clinical).toBe(found?.posterior);
      }
    }
  });

  it("[DX14] the drawn levels keep to the bands of the knowledge", () => {
    const { background, clinical } = trachealShare;
    const many = 100_000; // a beta-binomial of many bees is as good as the share itself
    const below = (shape: { a: number; b: number }, percent: number) =>
      betaBinomial({ n: many, ...shape }).cdf((percent / 100) * many);
    expect(below(background, facts.tracheal_mites.backgroundBelow)).toBeGreaterThan(0.85);
    expect(below(clinical, facts.tracheal_mites.backgroundBelow)).toBeLessThan(0.05);
    expect(below(clinical, facts.tracheal_mites.clinicalFrom)).toBeLessThan(0.25);
    const load = ({ shape, mean }: { shape: number; mean: number }, mites: number) =>
      gamma({ shape, rate: shape / mean }).cdf(mites);
    expect(load(varroaLoad.background, facts.varroa_pms.backgroundBelow)).toBeGreaterThan(0.85);
    expect(load(varroaLoad.clinical, facts.varroa_pms.clinicalFrom)).toBeLessThan(0.3);
  });

  it("[DX14] 2 of 50 speaks for background, 17 of 50 for clinical; few mites washed against varroa disease, many for it", () => {
    const [few, many] = [of(dissected(2, 50), "tracheal_mites")?.level, of(dissected(17, 50), "tracheal_mites")?.level];
    expect(few?.background).toBeGreaterThan(0.8);
    expect(many?.clinical).toBeGreaterThan(few?.clinical ?? 1);
    expect(bits(washed(1, 300), "varroa_pms", "varroa-wash")).toBeLessThan(-1);
    expect(bits(washed(24, 300), "varroa_pms", "varroa-wash")).toBeGreaterThan(3);
  });

  it("[DX14] two samples of one colony are weighed as one", () => {
    const twice = answer({
      ...tracheal,
      tests: [
        { test: "tracheal-dissection", positive: 3, examined: 20 },
        { test: "tracheal-dissection", positive: 5, examined: 30 },
      ],
    });
    expect(of(twice, "tracheal_mites")?.posterior).toBeCloseTo(
      of(dissected(8, 50), "tracheal_mites")?.posterior ?? 0,
      12,
    );
  });

  it("[DX35] 17 of 50 in autumn: tracheal mites may lead", () => {
    const { verdict } = answer({
      season: "autumn",
      findings: { crawlers: "present", weak_for_season: "present" },
      tests: [{ test: "tracheal-dissection", positive: 17, examined: 50 }],
    });
    expect(verdict).toEqual({ kind: "leading", condition: "tracheal_mites", because: "leads" });
  });
});

describe("strong answers", () => {
  it.each([60, 200, 300, 1200])(
    "[DX61] %i mites on 300 bees name varroa disease, with the wash as the reason",
    (mites) => {
      const result = washed(mites, 300);
      expect(result.verdict).toMatchObject({ kind: "leading", condition: "varroa_pms" });
      expect(bits(result, "varroa_pms", "varroa-wash")).toBeGreaterThan(10);
      expect(bits(result, "varroa_pms", "varroa-wash")).toBeLessThan(60);
    },
  );

  it("[DX61] several strong results at once leave every posterior and range within 0 and 1", () => {
    const strong = answer({
      season: "winter",
      findings: { k_wing: "present" },
      tests: [
        { test: "varroa-wash", mites: 100, bees: 300 },
        { test: "tracheal-dissection", positive: 100, examined: 100 },
        { test: "smear-microscopy", result: "found", which: ["european_foulbrood", "american_foulbrood"] },
        { test: "rope-test", result: "found" },
      ],
    });
    for (const { posterior, low, high } of [...strong.conditions, ...strong.groups])
      for (const each of [posterior, low, high]) expect(each >= 0 && each <= 1).toBe(true);
    expect(of(strong, "varroa_pms")?.posterior).toBeGreaterThan(0.999);
  });

  it("[DX61] a thousand bees, all with mites, name tracheal mites", () => {
    expect(dissected(1000, 1000).verdict).toMatchObject({ kind: "leading", condition: "tracheal_mites" });
  });

  it.each([
    [5000, 300, {}],
    [1400, 300, { takenFrom: "E" }],
    [300, 300, { recovery: 0.1 }],
  ] as const)("[DX28] %i mites on %i bees is a slip of the pen, and the field is named", (mites, bees, more) => {
    const tests = [{ test: "varroa-wash", mites, bees, ...more }];
    const { ok, problems } = differential({ season: "autumn", findings: {}, tests });
    expect([ok, problems.map(({ field }) => field)]).toEqual([false, ["tests[0].mites"]]);
  });
});

describe("weak answers", () => {
  it("[DX15] none found moves less when the sample was weak, and it is said why", () => {
    const good = bits(dissected(0, 50), "tracheal_mites", "tracheal-dissection");
    expect(good).toBeLessThan(-4);
    for (const weak of [{ aliveWhenTaken: false }, { daysSinceControl: 20 }, { takenFrom: "D" }] as const) {
      const moved = bits(dissected(0, 50, weak), "tracheal_mites", "tracheal-dissection");
      expect(moved).toBeGreaterThan(-1.5);
      expect(moved).toBeLessThan(0);
    }
    const few = differential({ ...tracheal, tests: [{ test: "tracheal-dissection", positive: 0, examined: 12 }] });
    expect(few.problems.map(({ code, slots }) => [code, slots.reasons])).toEqual([["weak-answer", "few-bees"]]);
    const july = differential({
      season: "summer",
      findings: {},
      tests: [{ test: "tracheal-dissection", positive: 0, examined: 30, daysSinceControl: 35 }],
    });
    expect(july.problems.map(({ code, slots }) => [code, slots.reasons])).toEqual([
      ["weak-answer", "summer after-control"],
    ]);
  });

  it("[DX15] a dead colony's bees are taken as dead unless said otherwise", () => {
    const dead = { ...tracheal, colony: { state: "dead" } } as const;
    const tests = [{ test: "tracheal-dissection", positive: 0, examined: 50 }];
    expect(differential({ ...dead, tests }).problems.map(({ code }) => code)).toContain("weak-answer");
    expect(
      differential({
        ...dead,
        tests: [{ ...tests[0], test: "tracheal-dissection", aliveWhenTaken: true }],
      }).problems.map(({ code }) => code),
    ).not.toContain("weak-answer");
  });

  it("[DX15] bees from honey combs count for half, and a colony long dead is said to be one", () => {
    const at = (takenFrom: "B" | "E") => bits(washed(6, 300, { takenFrom }), "varroa_pms", "varroa-wash");
    expect(at("E")).toBeGreaterThan(at("B"));
    const dead = { season: "spring", colony: { state: "dead", daysSinceDeath: 40 }, findings: {} } as const;
    expect(differential(dead).problems.map(({ code }) => code)).toEqual(["dead-long-ago"]);
  });

  it("[DX15] fewer bees say less", () => {
    const at = (examined: number) => bits(dissected(0, examined), "tracheal_mites", "tracheal-dissection");
    expect(at(10)).toBeGreaterThan(at(30));
    expect(at(30)).toBeGreaterThan(at(100));
  });
});

describe("tests that are findings", () => {
  it("[DX16] mites in a region without them: taken as unknown, said, and the authority called", () => {
    const result = differential({
      season: "winter",
      region: { acarapisWoodi: "absent" },
      findings: {},
      tests: [{ test: "tracheal-dissection", positive: 20, examined: 50 }],
    });
    expect(result.problems.map(({ code }) => code)).toEqual(["exotic-found"]);
    if (!result.ok) throw new Error("an answer was expected");
    expect(of(result.value, "tracheal_mites")?.posterior).toBeGreaterThan(0.3);
    expect(result.value.mustNotMiss[0]).toMatchObject({ condition: "tracheal_mites", report: true });
  });

  it("[DX16] varroa where there should be none is said as well, and reckoned as where it lives", () => {
    const tests = [{ test: "varroa-wash", mites: 12, bees: 300 }];
    const result = differential({ season: "autumn", region: { varroa: "absent" }, findings: {}, tests });
    expect(result.problems.map(({ code, field }) => [code, field])).toEqual([["exotic-found", "region.varroa"]]);
    if (!result.ok) throw new Error("an answer was expected");
    expect(of(result.value, "varroa_pms")?.posterior).toBe(of(washed(12, 300), "varroa_pms")?.posterior);
    expect(result.value.mustNotMiss[0]).toMatchObject({ condition: "varroa_pms", report: true });
  });

  it("[DX16] a varroa mite seen by eye where there should be none weighs like one that was washed", () => {
    const findings = { varroa_on_adults: "present" } as const;
    const result = differential({ season: "summer", region: { varroa: "absent" }, findings });
    expect(result.problems.map(({ code, field }) => [code, field])).toEqual([["exotic-found", "region.varroa"]]);
    if (!result.ok) throw new Error("an answer was expected");
    expect(of(result.value, "varroa_pms")?.posterior).toBe(
      of(answer({ season: "summer", findings }), "varroa_pms")?.posterior,
    );
    expect(result.value.mustNotMiss[0]).toMatchObject({
      condition: "varroa_pms",
      finding: "varroa_on_adults",
      report: true,
    });
    const absent = { season: "summer", region: { varroa: "absent" }, findings: {} } as const;
    expect(answer(absent).mustNotMiss).toEqual([]);
  });

  it("[DX17] a kit that finds American foulbrood raises it by its likelihood ratio and fires the notice", () => {
    const before = answer({ season: "summer", findings: {} });
    const found = answer({ season: "summer", findings: {}, tests: [{ test: "afb-strip", result: "found" }] });
    const odds = (result: DifferentialAnswer, id: string) => {
      const p = of(result, id)?.posterior ?? 0;
      return p / (1 - p);
    };
    // Sensitivity .9 or more, specificity .99: a ratio of ninety, but for causes that stay possible beside it.
    const ratio = odds(found, "american_foulbrood") / odds(before, "american_foulbrood");
    expect(ratio).toBeGreaterThan(60);
    expect(ratio).toBeLessThan(130);
    expect(found.mustNotMiss.map(({ finding }) => finding)).toEqual(["afb-strip"]);
  });

  it("[DX17] a thread and the matchstick test that shows it are not counted twice", () => {
    const thread = answer({ season: "summer", findings: { ropy_thread: "present" } });
    const both = answer({
      season: "summer",
      findings: { ropy_thread: "present" },
      tests: [{ test: "rope-test", result: "found" }],
    });
    expect(bits(thread, "american_foulbrood", "ropy_thread")).toBeGreaterThan(5);
    expect(bits(both, "american_foulbrood", "rope-test")).toBeLessThan(3);
  });

  it("[DX17] a test without figures is left out and said so", () => {
    const result = differential({ season: "winter", findings: {}, tests: [{ test: "heft", result: "found" }] });
    expect(result.problems.map(({ code, severity }) => [code, severity])).toEqual([["test-not-weighed", "noted"]]);
  });

  it("[DX17] a count of no bees at all is kept out and said so, and the rest of the case is answered", () => {
    const rotten = { test: "tracheal-dissection", positive: 0, examined: 0, unreadable: 30 };
    const result = differential({ season: "winter", findings: { crawlers: "present" }, tests: [rotten] });
    expect(result.problems.map(({ code, field }) => [code, field])).toEqual([["test-unclear", "tests[0].examined"]]);
    if (!result.ok) throw new Error("an answer was expected");
    const without = differential({ season: "winter", findings: { crawlers: "present" } });
    expect(without.ok && result.value).toEqual(without.ok && without.value);
  });

  it("[DX17] spores: none, below the line, over it", () => {
    const at = (sporesMillionsPerBee: number) =>
      of(
        answer({ season: "spring", findings: {}, tests: [{ test: "spore-count", sporesMillionsPerBee }] }),
        "nosema_ceranae",
      )?.posterior ?? 0;
    expect(at(0)).toBeLessThan(at(0.4));
    expect(at(0.4)).toBeLessThan(at(2));
  });
});
