/** Tests as evidence: what each says and does not, weak answers, specimens that cannot answer, and checks from print. */
import { describe, expect, it } from "vitest";
import { type ConditionId, regionalMites, speaksForApiary } from "../../knowledge/index.ts";
import { agreement } from "../bench/index.ts";
import { detectionProbability, detectionSampleSize } from "../sampling/index.ts";
import { type DifferentialAnswer, type DifferentialInput, differential, type TestInput } from "./index.ts";
import { weighedTests } from "./weighed-tests.ts";

function answer(input: DifferentialInput): DifferentialAnswer {
  const result = differential({ draws: 100, ...input });
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}
const conditionOf = ({ conditions }: DifferentialAnswer, id: ConditionId) => {
  const found = conditions.find((each) => each.id === id);
  if (!found) throw new Error(`no ${id}`);
  return found;
};
const posterior = (result: DifferentialAnswer, id: ConditionId) => conditionOf(result, id).posterior;
const bits = (result: DifferentialAnswer, id: ConditionId, test: string) =>
  [...conditionOf(result, id).for, ...conditionOf(result, id).against].find(({ finding }) => finding === test)?.bits ??
  0;
const tested = (test: TestInput, more: Partial<DifferentialInput> = {}) =>
  answer({ season: "summer", findings: {}, ...more, tests: [test] });
const problemsOf = (tests: readonly TestInput[], more: Partial<DifferentialInput> = {}) =>
  differential({ season: "summer", findings: {}, draws: 40, ...more, tests }).problems;

it("[DX16] the tests that show a mite in a free region are those that are weighed as counts of it", () => {
  for (const { condition, counted } of regionalMites) {
    const model = condition === "tracheal_mites" ? "tracheal-count" : "varroa-count";
    const weighed = Object.entries(weighedTests).filter(([, test]) => test.model === model);
    expect(weighed.map(([id]) => id).sort()).toEqual([...counted].sort());
  }
});

describe("the test frame", () => {
  const open = { findings: { no_brood_in_season: "present", queen_not_found_no_eggs: "present" } } as const;
  it("[DX70] breaks the tie of a brood break and queenlessness, either way", () => {
    const cells = tested({ test: "test-frame", result: "found" }, open);
    expect(posterior(cells, "queenless")).toBeGreaterThan(0.85);
    expect(posterior(cells, "brood_break_swarm")).toBeLessThan(0.25);
    const none = tested({ test: "test-frame", result: "none-found" }, open);
    expect(posterior(none, "queenless")).toBeLessThan(0.15);
    expect(posterior(none, "brood_break_swarm")).toBeGreaterThan(0.75);
  });

  it("[DX71] without the brood season none says little, and it is said", () => {
    const inWinter = problemsOf([{ test: "test-frame", result: "none-found" }], { season: "winter", ...open });
    expect(inWinter.map(({ code, slots }) => [code, slots.reasons])).toEqual([["weak-answer", "out-of-season"]]);
    const none = { test: "test-frame", result: "none-found" } as const;
    const weak = bits(tested(none, { season: "winter", ...open }), "queenless", "test-frame");
    expect(weak).toBeLessThan(0);
    expect(weak).toBeGreaterThan(-0.6);
    expect(bits(tested(none, open), "queenless", "test-frame")).toBeLessThan(-2.5);
  });
});

describe("tests that find an agent, not a disease", () => {
  const winter = {
    season: "winter",
    region: { acarapisWoodi: "found" },
    findings: { crawlers: "present", k_wing: "present" },
  } as const;
  const level = (tests: readonly TestInput[]) => {
    const result = answer({ ...winter, tests });
    const { level = { none: 0, background: 0, clinical: 0 } } = conditionOf(result, "tracheal_mites");
    return { ...level, verdict: result.verdict };
  };
  const pcr = { test: "pooled-pcr", result: "found" } as const;

  it("[DX72] a PCR for the genus with nothing at dissection is no tracheal mite disease", () => {
    const both = level([pcr, { test: "tracheal-dissection", positive: 0, examined: 50 }]);
    expect(both.clinical).toBeLessThan(0.02);
    expect(both.verdict.condition).not.toBe("tracheal_mites");
    const alone = level([pcr]);
    expect(alone.clinical).toBeLessThan(0.5);
    expect(alone.verdict.condition).not.toBe("tracheal_mites");
  });

  it("[DX72] sequenced it says that the mite is there, still not how many; none found speaks against it", () => {
    const [before, genus, sequenced] = [level([]), level([pcr]), level([{ ...pcr, sequenced: true }])];
    expect(sequenced.none).toBeLessThan(genus.none);
    expect(genus.none).toBeLessThan(before.none);
    // What is there is about as often background as it was before anything was found.
    const share = ({ background, clinical }: typeof before) => clinical / (background + clinical);
    expect(share(sequenced)).toBeCloseTo(share(before), 1);
    expect(sequenced.verdict.condition).not.toBe("tracheal_mites");
    expect(level([{ ...pcr, result: "none-found" }]).none).toBeGreaterThan(before.none);
  });

  it("[DX73] nosema by PCR moves little: it is in nine of ten colonies without losses; none found moves much", () => {
    const found = tested({ test: "species-pcr", result: "found", which: ["nosema_ceranae"] });
    expect(bits(found, "nosema_ceranae", "species-pcr")).toBeGreaterThan(0);
    expect(bits(found, "nosema_ceranae", "species-pcr")).toBeLessThan(0.3);
    expect(bits(found, "nosema_apis", "species-pcr")).toBeLessThan(-2);
    const none = tested({ test: "species-pcr", result: "none-found" });
    expect(bits(none, "nosema_ceranae", "species-pcr")).toBeLessThan(-2);
  });

  it("[DX73] foulbrood spores without signs do not lead, and are to be reported", () => {
    const spores = tested({ test: "culture-pcr", result: "found" }, { findings: { ropy_thread: "absent" } });
    expect(spores.verdict.condition).not.toBe("american_foulbrood");
    expect(posterior(spores, "american_foulbrood")).toBeLessThan(0.2);
    expect(spores.mustNotMiss).toEqual([expect.objectContaining({ finding: "culture-pcr", report: true })]);
  });

  it("[DX74] a panel that names the virus in its highest class raises that one alone", () => {
    const before = answer({ season: "summer", findings: {} });
    const found = tested({ test: "virus-panel", result: "found", which: ["chronic_paralysis"] });
    expect(posterior(found, "chronic_paralysis")).toBeGreaterThan(5 * posterior(before, "chronic_paralysis"));
    expect(posterior(found, "dwv_overt")).toBeLessThan(posterior(before, "dwv_overt"));
    // A panel that does not say which raises each a little.
    const unnamed = tested({ test: "virus-panel", result: "found" });
    expect(posterior(unnamed, "chronic_paralysis")).toBeLessThan(posterior(found, "chronic_paralysis"));
    expect(posterior(unnamed, "chronic_paralysis")).toBeGreaterThan(posterior(before, "chronic_paralysis"));
  });

  it("[DX74] mites in opened brood say which; varroa there is a level, Tropilaelaps a find", () => {
    const unsaid = problemsOf([{ test: "uncap-brood", result: "found" }]);
    expect(unsaid.map(({ code, field }) => [code, field])).toEqual([["test-needs-which", "tests[0].which"]]);
    const varroa = tested({ test: "uncap-brood", result: "found", which: ["varroa_pms"] });
    expect(conditionOf(varroa, "varroa_pms").level?.none).toBeLessThan(0.02);
    expect(posterior(varroa, "varroa_pms")).toBeLessThan(0.5);
    const other = tested(
      { test: "uncap-brood", result: "found", which: ["tropilaelaps"] },
      { region: { tropilaelaps: "endemic" } },
    );
    expect(bits(other, "tropilaelaps", "uncap-brood")).toBeGreaterThan(4);
  });
});

describe("residues", () => {
  const screen = { test: "residue-screen", result: "found", daysUntilFrozen: 0.5 } as const;
  const poisoned = { findings: { dead_heap: "present", onset_sudden: "present", most_colonies: "present" } } as const;

  it("[DX75] any residue moves little, a dose that harms much", () => {
    const any = tested(screen, poisoned);
    expect(bits(any, "acute_poisoning", "residue-screen")).toBeLessThan(0.8);
    const harmful = tested({ ...screen, harmfulDose: true }, poisoned);
    expect(bits(harmful, "acute_poisoning", "residue-screen")).toBeGreaterThan(3);
    const harmless = tested({ ...screen, harmfulDose: false }, poisoned);
    expect(posterior(harmless, "acute_poisoning")).toBeLessThan(posterior(any, "acute_poisoning"));
  });

  it("[DX75] found 8 times in 10 if frozen within a day, 4 in 10 at three days; then none says nothing and it is said", () => {
    const none = (daysUntilFrozen: number) => tested({ ...screen, result: "none-found", daysUntilFrozen }, poisoned);
    const moved = [1, 2, 3, 6].map((days) => bits(none(days), "acute_poisoning", "residue-screen"));
    expect(moved[0]).toBeLessThan(-0.9);
    expect([...moved].sort((a, b) => a - b)).toEqual(moved);
    const late = problemsOf([{ ...screen, result: "none-found", daysUntilFrozen: 3 }]);
    expect(late.map(({ code, slots }) => [code, slots.reasons])).toEqual([["weak-answer", "late"]]);
    const unsaid = problemsOf([{ test: "residue-screen", result: "none-found" }]);
    expect(unsaid.map(({ slots }) => slots.reasons)).toEqual(["freezing-unsaid"]);
  });

  it("[DX62] a test of nothing but what strikes whole apiaries speaks for all its colonies, no other does", () => {
    expect(speaksForApiary("residue-screen")).toBe(true);
    for (const test of ["varroa-wash", "tracheal-dissection", "virus-panel", "test-frame", "afb-strip"])
      expect(speaksForApiary(test)).toBe(false);
  });
});

describe("what cannot answer", () => {
  it("[DX76] a field that the test has not is left out, and both are named", () => {
    const [problem] = problemsOf([{ test: "varroa-wash", mites: 3, bees: 300, sporesMillionsPerBee: 2 }]);
    expect(problem).toMatchObject({
      code: "field-not-of-test",
      severity: "warned",
      field: "tests[0].sporesMillionsPerBee",
      slots: { test: "varroa-wash", field: "sporesMillionsPerBee" },
    });
    const wash = { test: "varroa-wash", mites: 3, bees: 300 };
    expect(tested({ ...wash, sporesMillionsPerBee: 2 })).toEqual(tested(wash));
  });

  it.each([
    [{ test: "virus-panel", result: "none-found" }, "ethanol-70"],
    [{ test: "residue-screen", result: "none-found" }, "ethanol-70"],
    [{ test: "tracheal-dissection", positive: 0, examined: 50 }, "dry"],
  ] as const)("[DX77] %o from bees kept %s is kept and counts for nothing; both are named", (test, kept) => {
    const problems = problemsOf([{ ...test, kept }]);
    expect(problems.map(({ code, slots }) => [code, slots.test, slots.kept])).toEqual([
      ["specimen-unfit", test.test, kept],
    ]);
    expect(tested({ ...test, kept }).conditions).toEqual(answer({ season: "summer", findings: {} }).conditions);
    expect(problemsOf([{ ...test, kept: "frozen" }]).map(({ code }) => code)).not.toContain("specimen-unfit");
  });

  it("[DX77] bees from among the dead were not alive when taken", () => {
    const bad = {
      test: "tracheal-dissection",
      positive: 0,
      examined: 50,
      takenFrom: "D",
      aliveWhenTaken: true,
    } as const;
    expect(problemsOf([bad]).map(({ field, severity }) => [field, severity])).toEqual([
      ["tests[0].aliveWhenTaken", "blocked"],
    ]);
  });

  it("[DX78] a carbon dioxide roll counts once the laboratory has measured what it brings down", () => {
    const roll = { test: "co2-roll", mites: 9, bees: 300 } as const;
    expect(problemsOf([roll]).map(({ code, severity }) => [code, severity])).toEqual([
      ["test-needs-recovery", "noted"],
    ]);
    expect(bits(tested({ ...roll, recovery: 0.5 }), "varroa_pms", "co2-roll")).toBeGreaterThan(1);
  });

  it("[DX79] a weak test says less the weaker it is, never the contrary", () => {
    const hold = { test: "emergence-hold", result: "none-found" } as const;
    const inSeason = bits(tested(hold, { season: "autumn" }), "fly_parasitoids", "emergence-hold");
    const outOfIt = bits(tested(hold, { season: "spring" }), "fly_parasitoids", "emergence-hold");
    expect(inSeason).toBeLessThan(outOfIt);
    expect(outOfIt).toBeLessThan(0);
    const bump = { test: "bump-test", result: "none-found", daysSinceControl: 10 } as const;
    expect(problemsOf([bump]).map(({ slots }) => slots.reasons)).toEqual(["after-control"]);
  });
});

describe("the bees that a test asks for", () => {
  it.each([
    [{ test: "varroa-wash", mites: 0, bees: 300 }, { takenFrom: "F" }, "varroa_pms", "wrong-bees"],
    [{ test: "spore-count", sporesMillionsPerBee: 0 }, { takenFrom: "B" }, "nosema_ceranae", "wrong-bees"],
    [{ test: "spore-count", sporesMillionsPerBee: 0 }, { kept: "dry" }, "nosema_ceranae", "kept-dry"],
    [{ test: "pooled-pcr", result: "none-found" }, { kept: "dry" }, "tracheal_mites", "kept-dry"],
  ] as const)("[DX39] %o taken or kept otherwise, %o, says less of %s and says why: %s", (test, other, id, reason) => {
    const [good, less] = [test, { ...test, ...other }].map((each) => tested(each, { season: "winter" }));
    const without = posterior(answer({ season: "winter", findings: {} }), id);
    if (!good || !less) return expect.fail("no answer");
    expect(posterior(less, id)).toBeGreaterThan(posterior(good, id));
    expect(posterior(less, id)).toBeLessThan(without);
    expect(problemsOf([{ ...test, ...other }], { season: "winter" }).map(({ slots }) => slots.reasons)).toEqual([
      reason,
    ]);
    expect(problemsOf([test], { season: "winter" })).toEqual([]);
  });
});

describe("made more than once, or elsewhere", () => {
  const winter = { season: "winter", region: { acarapisWoodi: "found" }, findings: { crawlers: "present" } } as const;
  const mites = (tests: readonly TestInput[]) => posterior(answer({ ...winter, tests }), "tracheal_mites");

  it("[DX81] a test that does not count is one answer however often it was made; found prevails", () => {
    const pcr = { test: "pooled-pcr", result: "found" } as const;
    expect(mites([pcr, pcr, pcr])).toBe(mites([pcr]));
    expect(mites([pcr, { ...pcr, result: "none-found" }])).toBe(mites([pcr]));
    const none = { test: "tracheal-flotation", result: "none-found" } as const;
    expect(mites([none, none, none])).toBe(mites([none]));
  });

  it("[DX81] a few good bees do not make many weak ones good", () => {
    const dead = { test: "tracheal-dissection", positive: 0, examined: 300, aliveWhenTaken: false } as const;
    const live = { test: "tracheal-dissection", positive: 0, examined: 2, aliveWhenTaken: true } as const;
    // Two clear bees of a clinical colony: Beta(4, 5) gives 5 · 6 / (9 · 10), a third.
    expect(mites([dead, live]) / mites([dead])).toBeCloseTo(1 / 3, 1);
    const all = { test: "tracheal-dissection", positive: 0, examined: 302, aliveWhenTaken: true } as const;
    expect(mites([dead, live])).toBeGreaterThan(1000 * mites([all]));
    const { problems } = differential({ ...winter, tests: [dead, live], draws: 40 });
    expect(problems.map(({ code, slots }) => [code, slots.reasons])).toEqual([["weak-answer", "few-bees"]]);
  });

  it("[DX79] what was found was found, however late or weak: no dose grows less by waiting", () => {
    const found = { test: "residue-screen", result: "found", harmfulDose: true } as const;
    const at = (daysUntilFrozen: number) => posterior(tested({ ...found, daysUntilFrozen }), "acute_poisoning");
    expect(at(20)).toBe(at(0));
  });

  it("[DX16] a mite named in opened brood, or by a sequenced PCR, outweighs the map too", () => {
    const brood = { test: "uncap-brood", result: "found", which: ["varroa_pms"] } as const;
    const codes = (test: TestInput, region: DifferentialInput["region"]) =>
      problemsOf([test], { region: region ?? {} }).map(({ code }) => code);
    expect(codes(brood, { varroa: "absent" })).toContain("exotic-found");
    const pcr = { test: "pooled-pcr", result: "found" } as const;
    expect(codes({ ...pcr, sequenced: true }, { acarapisWoodi: "absent" })).toContain("exotic-found");
    expect(codes(pcr, { acarapisWoodi: "absent" })).not.toContain("exotic-found");
  });

  it("[DX28] spores beside a word that denies them are a slip of the pen; an unclear count is noted", () => {
    const fields = (test: object) =>
      problemsOf([{ test: "spore-count", ...test }]).map(({ code, severity }) => [code, severity]);
    expect(fields({ sporesMillionsPerBee: 0, result: "found" })).toEqual([["wrong-value", "blocked"]]);
    expect(fields({ result: "unclear" })).toEqual([["test-unclear", "noted"]]);
  });
});

describe("from print", () => {
  it("[DX80] bumped combs: 0.363 a colony, 7 colonies find an infested apiary 957 times in 1,000, 312 apiaries for 1 in 100 (Pettis and others 2013)", () => {
    const inApiary = detectionProbability({ bees: 7, designPrevalence: 1, sensitivity: 0.363 });
    expect(inApiary).toBeCloseTo(0.957, 3);
    expect(detectionSampleSize({ designPrevalence: 0.01, confidence: 0.95, sensitivity: inApiary })).toBe(312);
    expect(bits(tested({ test: "bump-test", result: "none-found" }), "tropilaelaps", "bump-test")).toBeCloseTo(
      Math.log2(1 - 0.363),
      1,
    );
  });

  it("[DX80] two composites of 588 colonies: 28 % both, 36 % neither, so they agree 64 times in 100 with a kappa of .275 (J. Apic. Sci. 62:61)", () => {
    const table = [
      [28, 18],
      [18, 36],
    ];
    const found = agreement({ table });
    if (!found.ok || !found.value.kappa.ok) throw new Error("a kappa was expected");
    expect(found.value.observed).toBeCloseTo(0.64, 12);
    expect(found.value.kappa.value.value).toBeCloseTo(0.275, 3);
  });

  it("[DX80] 89.47 % of 78, as printed of the kit for European foulbrood, is no count; 68 of 76 and 34 of 38 are (J. Insect Sci. 21(6):6, abstract)", () => {
    const inPercent = (k: number, n: number) => ((100 * k) / n).toFixed(2);
    expect(Array.from({ length: 79 }, (_, k) => inPercent(k, 78))).not.toContain("89.47");
    expect([inPercent(68, 76), inPercent(34, 38)]).toEqual(["89.47", "89.47"]);
    // The kit has no counts here; a share reckoned back to bees is told as the share of 78 that it is.
    const positive = 0.8947 * 78;
    const problems = problemsOf([{ test: "tracheal-dissection", positive, examined: 78 }]);
    expect(problems.map(({ field, severity, given, expected }) => [field, severity, given, expected])).toEqual([
      [
        "tests[0].positive",
        "blocked",
        positive,
        `a whole number, 0 to the 78 bees examined; ${positive} would be 89.47 % of 78`,
      ],
    ]);
    expect(problemsOf([{ test: "tracheal-dissection", positive: 70, examined: 78 }])).not.toContainEqual(
      expect.objectContaining({ severity: "blocked" }),
    );
  });

  it("[DX34] a day of 1,200 to 1,500 dead while formic acid is in the hive is no verdict of poisoning", () => {
    const result = answer({
      season: "autumn",
      findings: { dead_heap: "present", recent_hive_treatment: "present", recent_spray: "absent" },
    });
    expect(result.verdict.condition).not.toBe("acute_poisoning");
    expect(posterior(result, "treatment_injury")).toBeGreaterThan(posterior(result, "acute_poisoning"));
  });

  it("[DX34] a sudden heap in most treated colonies is no report while no spraying is seen, and bees are frozen all the same", () => {
    const heap = { dead_heap: "present", most_colonies: "present", onset_sudden: "present" } as const;
    const noticeOf = (more: DifferentialInput["findings"]) => {
      const result = answer({ season: "autumn", findings: { ...heap, ...more } });
      expect(result.mustNotMiss).toHaveLength(1);
      return { ...result.mustNotMiss[0], verdict: result.verdict };
    };
    for (const recent_spray of ["absent", "not-looked"] as const) {
      const milder = noticeOf({ recent_hive_treatment: "present", recent_spray });
      expect(milder.verdict.condition).not.toBe("acute_poisoning");
      expect(milder).toMatchObject({ condition: "acute_poisoning", finding: "most_colonies", report: false });
      expect(milder.act).toMatch(
        /^A treatment is in the hives.*freeze fresh dead bees today.*hives without the treatment/,
      );
    }
    expect(noticeOf({ recent_hive_treatment: "absent" })).toMatchObject({ report: true });
    const sprayed = answer({
      season: "autumn",
      findings: { ...heap, recent_hive_treatment: "present", recent_spray: "present" },
    });
    expect(sprayed.mustNotMiss).toEqual([
      expect.objectContaining({ report: true, act: expect.stringMatching(/^Photograph and note the time, call/) }),
    ]);
  });
});
