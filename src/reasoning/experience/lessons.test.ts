/** What teaches, by hand: which cases count, for what, and what becomes of a value. */
import { describe, expect, it } from "vitest";
import { type ExperienceUse, emptyCasebook, evidenceOf } from "../../casebook/index.ts";
import { gradeProbability, publishedEvidence } from "../../knowledge/index.ts";
import { trigamma } from "../../numerics/index.ts";
import { confirms, startCounts } from "../differential/index.ts";
import { closed } from "./cases-for-tests.ts";
import { evidenceInUse, experienceOf, noCounts, withExperience } from "./index.ts";

const all: ExperienceUse = { frequencies: true, healthyRates: true, priors: true, strength: 1 };
const learning = (experience: ExperienceUse) => {
  const programme = evidenceOf(emptyCasebook);
  return { ...programme, settings: { ...programme.settings, experience } };
};

describe("a value that has learnt", () => {
  const counts = { ...noCounts, frequencies: { queenless: { roar_agitated: { present: 3, looked: 4 } } } };

  it("[DX160] is the start and what was seen, added by hand", () => {
    const pair = withExperience(publishedEvidence, counts, all).frequencies.queenless?.roar_agitated;
    const published = publishedEvidence.frequencies.queenless?.roar_agitated?.value ?? 0;
    const start = startCounts(published, 0.5);
    expect(pair?.value).toBeCloseTo((start.present + 3) / (start.looked + 4), 12);
    expect(pair).toMatchObject({ published, seen: { present: 3, looked: 4 }, start });
    const variance = trigamma(start.present + 3) + trigamma(start.looked - start.present + 1);
    expect(pair?.spread).toBeCloseTo(Math.sqrt(variance), 12);
    expect(pair?.spread).toBeLessThan(0.5);
  });

  it("[DX160] is the same when it learns twice from the same cases, and leaves the published value alone", () => {
    const before = JSON.stringify(publishedEvidence);
    const once = withExperience(publishedEvidence, counts, all);
    expect(withExperience(once, counts, all)).toEqual(once);
    expect(JSON.stringify(publishedEvidence)).toBe(before);
  });

  it("[DX160] a prior has the width of priors, not of grades", () => {
    const priors = { robbing: { autumn: { present: 2, looked: 10 } } };
    const prior = withExperience(publishedEvidence, { ...noCounts, priors }, all).priors.robbing?.autumn;
    expect(prior?.start).toEqual(startCounts(prior?.published ?? 0, 0.4));
  });

  it("[DX169] a start worth twice as much moves less for the same cases, and is narrower where nothing was seen", () => {
    const [one, two] = [1, 2].map((strength) => withExperience(publishedEvidence, counts, { ...all, strength }));
    const value = (evidence: typeof one) => evidence?.frequencies.queenless?.roar_agitated;
    const published = value(one)?.published ?? 0;
    const moved = (evidence: typeof one) => Math.abs((value(evidence)?.value ?? 0) - published);
    expect(moved(two)).toBeLessThan(moved(one));
    const unseen = two?.frequencies.queenless?.normal_eggs_and_queen;
    expect(unseen?.value).toBeCloseTo(unseen?.published ?? 0, 12);
    expect(unseen?.spread).toBeLessThan(0.5);
    expect(one?.frequencies.queenless?.normal_eggs_and_queen?.spread).toBeNull();
  });
});

describe("what teaches", () => {
  it("[DX161] a case without a cause, with one that nothing confirms, or with an unknown one is refused and told", () => {
    const { lessons, refused } = experienceOf(
      [
        closed("none", [], { crawlers: "present" }),
        closed("hearsay", ["queenless"], { crawlers: "present" }, { confirmedBy: null }),
        closed("blank", ["queenless"], { crawlers: "present" }, { confirmedBy: "  " }),
        closed("odd", ["moon"], { crawlers: "present" }),
        closed("torn", ["queenless"], { crawlers: "present" }, { asked: { season: "autunm" as never } }),
        closed("good", ["queenless"], { crawlers: "present" }),
      ],
      publishedEvidence,
    );
    expect(lessons.map((lesson) => lesson.case)).toEqual(["good"]);
    expect(refused.map(({ code, slots }) => [code, slots.case])).toEqual([
      ["case-without-cause", "none"],
      ["cause-not-confirmed", "hearsay"],
      ["cause-not-confirmed", "blank"],
      ["cause-unknown", "odd"],
      ["case-unreadable", "torn"],
    ]);
  });

  it.each([
    [
      "mites in a third of the bees",
      { test: "tracheal-dissection", positive: 17, examined: 50 },
      "tracheal_mites",
      true,
    ],
    ["one bee, and it has mites", { test: "tracheal-dissection", positive: 1, examined: 1 }, "tracheal_mites", false],
    ["one of three bees", { test: "tracheal-dissection", positive: 1, examined: 3 }, "tracheal_mites", false],
    ["nine of thirty bees", { test: "tracheal-dissection", positive: 9, examined: 30 }, "tracheal_mites", true],
    [
      "more bees with mites than were read",
      { test: "tracheal-dissection", positive: 60, examined: 50 },
      "tracheal_mites",
      false,
    ],
    [
      "mites in a third of bees kept dry, which the differential leaves out",
      { test: "tracheal-dissection", positive: 17, examined: 50, kept: "dry" },
      "tracheal_mites",
      false,
    ],
    ["two mites on thirty bees", { test: "varroa-wash", mites: 2, bees: 30 }, "varroa_pms", false],
    ["one mite on twenty bees", { test: "varroa-wash", mites: 1, bees: 20 }, "varroa_pms", false],
    ["fifteen mites on three hundred bees", { test: "varroa-wash", mites: 15, bees: 300 }, "varroa_pms", true],
    ["mites in one bee", { test: "tracheal-dissection", positive: 1, examined: 50 }, "tracheal_mites", false],
    ["a heavy wash", { test: "varroa-wash", mites: 18, bees: 300 }, "varroa_pms", true],
    ["a light wash", { test: "varroa-wash", mites: 3, bees: 300 }, "varroa_pms", false],
    ["a heavy wash, for another cause", { test: "varroa-wash", mites: 18, bees: 300 }, "queenless", false],
    [
      "a stained smear that names it",
      { test: "smear-microscopy", result: "found", which: ["european_foulbrood"] },
      "european_foulbrood",
      true,
    ],
    [
      "a stained smear that does not say which",
      { test: "smear-microscopy", result: "found" },
      "european_foulbrood",
      false,
    ],
    [
      "a stained smear that names the other",
      { test: "smear-microscopy", result: "found", which: ["american_foulbrood"] },
      "european_foulbrood",
      false,
    ],
    [
      "a PCR that finds it in well colonies too",
      { test: "species-pcr", result: "found", which: ["nosema_ceranae"] },
      "nosema_ceranae",
      false,
    ],
    ["a rope test that found nothing", { test: "rope-test", result: "none-found" }, "american_foulbrood", false],
    ["a rope test that found it", { test: "rope-test", result: "found" }, "american_foulbrood", true],
  ] as const)("[DX162] %s", (_, result, cause, expected) => {
    expect(confirms(result, cause)).toBe(expected);
  });

  it("[DX162] a result able to confirm stands for a name", () => {
    const results = [{ test: "tracheal-dissection", positive: 20, examined: 50 }];
    const one = closed("one", ["tracheal_mites"], { k_wing: "present" }, { confirmedBy: null, results });
    expect(experienceOf([one], publishedEvidence).lessons).toHaveLength(1);
    const two = { ...one, confirmedCauses: ["tracheal_mites", "robbing"] };
    expect(experienceOf([two], publishedEvidence).refused).toMatchObject([
      { code: "cause-not-confirmed", slots: { cause: "robbing" } },
    ]);
  });

  it("[DX163] [DX164] [DX165] one case by hand", () => {
    const { counts } = experienceOf(
      [
        closed("one", ["queenless"], {
          roar_agitated: "present",
          normal_eggs_and_queen: "absent",
          k_wing: "not-looked",
          green_hard_mummies: "absent",
        }),
      ],
      publishedEvidence,
    );
    expect(publishedEvidence.frequencies.queenless?.green_hard_mummies).toBeUndefined();
    expect(counts.frequencies).toEqual({
      queenless: {
        roar_agitated: { present: 1, looked: 1 },
        normal_eggs_and_queen: { present: 0, looked: 1 },
      },
    });
    expect(counts.healthy).toEqual({ ...noCounts.healthy, autumn: { green_hard_mummies: { present: 0, looked: 1 } } });
    expect(counts.priors.queenless).toEqual({ autumn: { present: 1, looked: 1 } });
    expect(counts.priors.robbing).toEqual({ autumn: { present: 0, looked: 1 } });
  });

  it("[DX163] of two findings that exclude each other the one that is present settles the other", () => {
    const starved = (id: string, present: "stores_exhausted" | "stores_ample") =>
      closed(id, ["starvation"], { [present]: "present" });
    const { counts } = experienceOf(
      [starved("a", "stores_exhausted"), starved("b", "stores_exhausted"), starved("c", "stores_ample")],
      publishedEvidence,
    );
    expect(counts.frequencies.starvation).toEqual({
      stores_exhausted: { present: 2, looked: 3 },
      stores_ample: { present: 1, looked: 3 },
    });
  });

  it("[DX164] a mixed case teaches priors and no pair", () => {
    const { counts } = experienceOf(
      [closed("two", ["queenless", "robbing"], { roar_agitated: "present" })],
      publishedEvidence,
    );
    expect(counts.frequencies).toEqual({});
    expect(counts.healthy).toEqual(noCounts.healthy);
    expect(counts.priors.queenless?.autumn).toEqual({ present: 1, looked: 1 });
    expect(counts.priors.robbing?.autumn).toEqual({ present: 1, looked: 1 });
  });

  it("[DX164] a cause that a result confirms and nobody names makes the case a mixed one", () => {
    const results = [{ test: "varroa-wash", mites: 24, bees: 300 }];
    const one = closed("one", ["queenless"], { roar_agitated: "present" }, { results });
    const { counts } = experienceOf([one], publishedEvidence);
    expect(counts.frequencies).toEqual({});
    expect(counts.healthy).toEqual(noCounts.healthy);
    expect(counts.priors.queenless?.autumn).toEqual({ present: 1, looked: 1 });
    expect(counts.priors.varroa_pms).toBeUndefined();
    const light = { ...one, results: [{ test: "varroa-wash", mites: 3, bees: 300 }] };
    expect(experienceOf([light], publishedEvidence).counts.frequencies.queenless?.roar_agitated?.looked).toBe(1);
  });

  it("[DX160] a case that is there twice is a mistake of the caller", () => {
    const one = closed("one", ["queenless"], { roar_agitated: "present" });
    expect(() => experienceOf([one, one], publishedEvidence)).toThrow(/each there once; got one/);
  });

  it("[DX166] a dead colony tells nothing of the prior of queenlessness, nor the usual region of tracheal mites", () => {
    const dead = closed("dead", ["queenless"], {}, { asked: { colony: { state: "dead" } } });
    const { priors } = experienceOf([dead], publishedEvidence).counts;
    expect(priors.queenless).toBeUndefined();
    expect(priors.tracheal_mites).toBeUndefined();
    expect(priors.robbing?.autumn).toEqual({ present: 0, looked: 1 });
    const region = { acarapisWoodi: "found" as const };
    const found = { ...dead, whole: { ...dead.whole, region }, before: { ...dead.whole, region } };
    expect(experienceOf([found], publishedEvidence).counts.priors.tracheal_mites?.autumn).toEqual({
      present: 0,
      looked: 1,
    });
  });

  it("[DX166] a region called infested because of the case itself teaches nothing of that prior", () => {
    const found = { season: "autumn", findings: { k_wing: "present" }, region: { acarapisWoodi: "found" } } as const;
    const one = closed("one", ["tracheal_mites"], {}, { whole: found, before: { ...found, region: {} } });
    expect(experienceOf([one], publishedEvidence).counts.priors.tracheal_mites).toBeUndefined();
    expect(experienceOf([{ ...one, before: null }], publishedEvidence).counts.priors.tracheal_mites).toBeUndefined();
    expect(experienceOf([{ ...one, before: found }], publishedEvidence).counts.priors.tracheal_mites).toEqual({
      autumn: { present: 1, looked: 1 },
    });
  });

  it("[DX166] priors learn only when asked, and then say what the cases are not", () => {
    const cases = [closed("one", ["queenless"], { roar_agitated: "present" })];
    const without = evidenceInUse(learning({ ...all, priors: false }), cases);
    expect(without.evidence.priors).toEqual(publishedEvidence.priors);
    expect(without.problems).toEqual([]);
    const withPriors = evidenceInUse(learning(all), cases);
    expect(withPriors.evidence.priors.queenless?.autumn.value).toBeGreaterThan(
      publishedEvidence.priors.queenless?.autumn.value ?? 1,
    );
    expect(withPriors.problems).toMatchObject([{ code: "confirmed-not-random", slots: { cases: 1 } }]);
  });

  it("[DX166] healthy rates say that failing colonies stand in for well ones, and which pairs they take out", () => {
    expect(publishedEvidence.frequencies.queenless?.green_hard_mummies).toBeUndefined();
    const cases = Array.from({ length: 400 }, (_, at) =>
      closed(`case-${at}`, ["queenless"], { green_hard_mummies: "present" }),
    );
    const { problems, start, evidence } = evidenceInUse(learning({ ...all, priors: false, frequencies: false }), cases);
    const healthy = evidence.healthy.autumn.green_hard_mummies?.value ?? 0;
    const lost = start.conditionIds.filter((condition) => {
      const value = start.frequencies[condition]?.green_hard_mummies?.value ?? 0;
      return value > (start.healthy.autumn.green_hard_mummies?.value ?? 1) && value <= healthy;
    });
    expect(lost.length).toBeGreaterThan(0);
    expect(problems).toMatchObject([
      { code: "healthy-from-failing", slots: { findings: 1 } },
      {
        code: "evidence-without-effect",
        slots: { finding: "green_hard_mummies", conditions: lost.join(", "), seasons: "autumn" },
      },
    ]);
  });

  it("[DX167] is taken back by leaving the case out, or by the setting, to the last bit", () => {
    const cases = [closed("one", ["queenless"], { roar_agitated: "present" }), closed("two", ["robbing"], {})];
    const used = evidenceInUse(learning(all), cases);
    expect(used.evidence).not.toEqual(used.start);
    expect(evidenceInUse(learning(all), []).evidence).toEqual(publishedEvidence);
    const off = { frequencies: false, healthyRates: false, priors: false, strength: 1 };
    expect(evidenceInUse(learning(off), cases).evidence).toBe(used.start);
    expect(evidenceInUse(learning(off), cases).experience.counts).toEqual(used.experience.counts);
    expect(publishedEvidence.frequencies.queenless?.roar_agitated?.value).toBe(gradeProbability.usual);
  });
});
