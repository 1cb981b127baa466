/** Drift of signs over years: a rise is found, chance is not, and little is said to be little. */
import { describe, expect, it } from "vitest";
import { publishedEvidence } from "../../knowledge/index.ts";
import { randomStream } from "../../numerics/index.ts";
import { trendTest } from "../surveillance/index.ts";
import { closed } from "./cases-for-tests.ts";
import { type ClosedCase, driftOfSigns, holm } from "./index.ts";

const years = [2020, 2021, 2022, 2023, 2024, 2025];

/** Ten cases a year: crawlers rise from 1 to 6 of ten, few dead bees stay at half, drawn with a seed; k-wing in two. */
const cases: readonly ClosedCase[] = years.flatMap((year, at) => {
  const { next } = randomStream({ seed: 3, stream: year });
  return Array.from({ length: 10 }, (_, index) =>
    closed(
      `${year}-${index}`,
      [],
      {
        crawlers: index < 1 + at ? "present" : "absent",
        few_dead_depopulated: next() < 0.5 ? "present" : "absent",
        ...(year < 2022 ? { k_wing: index < 5 ? ("present" as const) : ("absent" as const) } : {}),
        ...(index === 0 ? { trembling: "absent" as const } : {}),
      },
      { closedOn: `${year}-10-20` },
    ),
  );
});

describe("drift of signs", () => {
  const found = driftOfSigns(cases, publishedEvidence);
  const of = (finding: string) => {
    const drift = found.find((each) => each.finding === finding);
    if (drift === undefined) throw new Error(`no ${finding}`);
    return drift;
  };

  it("[DX175] a sign that rises by one in ten a year is found, by the trend of its years", () => {
    const { trend, years: told } = of("crawlers");
    expect(told.map(({ year, present, looked }) => [year, present, looked])).toEqual(
      years.map((year, at) => [year, 1 + at, 10]),
    );
    const test = trendTest(years.map((year, at) => ({ positive: 1 + at, examined: 10, score: year })));
    expect(trend.ok && test.ok && trend.value.pValue).toBe(test.ok && test.value.pValue);
    expect(trend.ok && trend.value.z).toBeGreaterThan(0);
    expect(trend.ok && trend.value.adjusted).toBeLessThan(0.05);
    expect(found[0]?.finding).toBe("crawlers");
  });

  it("[DX175] a sign that stays is not", () => {
    const { trend } = of("few_dead_depopulated");
    expect(trend.ok && trend.value.adjusted).toBeGreaterThan(0.05);
  });

  it("[DX175] too few years, too few looks: it says so", () => {
    expect(of("k_wing").trend).toMatchObject({
      ok: false,
      problems: [{ code: "too-few-looked", slots: { looked: 20, needed: 30, years: 2, neededYears: 3 } }],
    });
    expect(of("trembling").trend).toMatchObject({ ok: false, problems: [{ slots: { looked: 6, years: 6 } }] });
  });

  it("[DX175] a rare sign in the one case of a year is no trend, however small its p would be", () => {
    const rare = [...Array.from({ length: 28 }, () => 2023), 2024, 2025].map((year, at) =>
      closed(`case-${at}`, [], { trembling: year === 2025 ? "present" : "absent" }, { closedOn: `${year}-10-20` }),
    );
    const naive = trendTest([
      { positive: 0, examined: 28, score: 2023 },
      { positive: 0, examined: 1, score: 2024 },
      { positive: 1, examined: 1, score: 2025 },
    ]);
    expect(naive.ok && naive.value.pValue).toBeLessThan(1e-5); // by chance alone the sign is in that case 1 time in 30
    expect(driftOfSigns(rare, publishedEvidence)[0]?.trend).toMatchObject({
      ok: false,
      problems: [{ code: "too-few-looked", slots: { looked: 30, years: 3, present: 1, neededOfEither: 5 } }],
    });
  });

  it("[DX175] ample stores in a year count as stores that are not exhausted; circumstances have no drift here", () => {
    const stores = years.flatMap((year, at) =>
      Array.from({ length: 6 }, (_, index) =>
        closed(
          `${year}-${index}`,
          [],
          { [index < at ? "stores_exhausted" : "stores_ample"]: "present", no_mite_control: "present" },
          { closedOn: `${year}-10-20` },
        ),
      ),
    );
    const told = driftOfSigns(stores, publishedEvidence);
    expect(told.map(({ finding }) => finding).sort()).toEqual(["stores_ample", "stores_exhausted"]);
    for (const { years: own } of told) expect(own.map(({ looked }) => looked)).toEqual([6, 6, 6, 6, 6, 6]);
  });

  it("[DX176] the p of each is held against the number tested", () => {
    const [one, two] = [of("crawlers"), of("few_dead_depopulated")].map(({ trend }) => {
      if (!trend.ok) throw new Error("not tested");
      return trend.value;
    });
    expect(one?.adjusted).toBe(2 * (one?.pValue ?? 0));
    expect(two?.adjusted).toBe(two?.pValue);
  });

  it("[DX176] Holm by hand: times m, m − 1 …, never falling, at most 1", () => {
    expect(holm([0.01, 0.02, 0.03, 0.6]).map((p) => Number(p.toFixed(12)))).toEqual([0.04, 0.06, 0.06, 0.6]);
    expect(holm([0.5, 0.4, 0.9])).toEqual([1, 1, 1]);
    expect(holm([])).toEqual([]);
  });

  it("[DX176] of many signs without a trend, one in twenty lists or fewer has any below 0.05", () => {
    let alarms = 0;
    const lists = 60;
    for (let list = 0; list < lists; list++) {
      const { next } = randomStream({ seed: 9, stream: list });
      const signs = ["crawlers", "k_wing", "trembling", "foul_odour", "heads_in_cells", "wet_mould"] as const;
      const drawn = years.flatMap((year) =>
        Array.from({ length: 10 }, (_, index) =>
          closed(
            `${year}-${index}`,
            [],
            Object.fromEntries(signs.map((sign) => [sign, next() < 0.4 ? "present" : "absent"])),
            { closedOn: `${year}-10-20` },
          ),
        ),
      );
      if (driftOfSigns(drawn, publishedEvidence).some(({ trend }) => trend.ok && trend.value.adjusted < 0.05))
        alarms += 1;
    }
    // 60 lists at 5 %: 3 expected; 9 or more have chance 0.3 %. Unadjusted it would be about 16.
    expect(alarms).toBeLessThan(9);
  });
});
