/** Plans and refusals. */
import { describe, expect, it } from "vitest";
import { addDays, celsius, daysBetween } from "../../units/index.ts";
import type { LabelRecord } from "./label-record.ts";
import { makePlan } from "./make-plan.ts";
import type { MadePlan, PlanRequest, RefusedPlan } from "./plan.ts";
import { recheckDays } from "./recheck.ts";

/** An invented label record of 50 g a colony for 28 days; no label says this. */
const label: LabelRecord = {
  jurisdiction: "Invented Territory",
  activeIngredient: "Menthol",
  doseGramsPerColony: 50,
  applications: 1,
  daysBetweenApplications: 0,
  minDailyHighCelsius: celsius(60),
  maxDailyHighCelsius: celsius(80),
  durationDays: 28,
  supersAllowed: false,
  daysBeforeSupers: 28,
  placement: "in a screen bag on the top bars",
  protectiveEquipment: "gloves and goggles",
  readOn: "2026-02-01",
  source: "invented for tests",
};

/** Tarn Ridge: twelve colonies in autumn, supers off on 2 September. An invented place. */
const tarnRidge: PlanRequest = {
  control: "menthol",
  colonies: Array.from({ length: 12 }, (_, index) => ({
    id: `c${index + 1}`,
    code: `TR-${String(index + 1).padStart(2, "0")}`,
  })),
  coloniesInApiary: 12,
  coloniesTested: 1,
  untestedReason: "one stand, shared drones, no time before the cold",
  jurisdiction: "Invented Territory",
  labelRecord: label,
  site: {
    latitude: 44,
    dailyMaxCelsius: Array.from({ length: 92 }, (_, day) => ({
      date: addDays("2026-08-15", day),
      value: 26 - day * 0.2,
    })),
  },
  supers: [{ on: "2026-05-01", off: "2026-09-02" }],
  startOn: null,
  from: "2026-08-20",
  to: "2026-11-14",
  madeOn: "2026-08-20",
};

function made(request: PlanRequest): MadePlan & { readonly codes: readonly string[] } {
  const result = makePlan(request);
  if (!result.ok || result.value.kind !== "plan") throw new Error(JSON.stringify(result));
  return { ...result.value, codes: result.problems.map(({ code }) => code) };
}
function refusal(request: PlanRequest): RefusedPlan {
  const result = makePlan(request);
  if (!result.ok || result.value.kind !== "refused") throw new Error(JSON.stringify(result));
  return result.value;
}
const step = (plan: MadePlan, name: string) => plan.steps.find((each) => each.step === name);

describe("a plan under a label record", () => {
  it("[CO13] twelve colonies at 50 g take 600 g, 21.2 oz (scenario: full path)", () => {
    const plan = made(tarnRidge);
    expect(plan.gramsInAll).toBe(600);
    expect(plan.ouncesInAll?.toFixed(1)).toBe("21.2");
    expect(step(plan, "apply-1")).toMatchObject({
      on: "2026-09-02",
      until: "2026-09-30",
      gramsPerColony: 50,
      gramsInAll: 600,
    });
    expect(step(plan, "apply-1")?.ouncesPerColony?.toFixed(2)).toBe("1.76");
    expect(plan.steps.map(({ kind }) => kind)).toEqual(["apply", "check", "remove", "recheck"]);
    expect(step(plan, "check-1")).toMatchObject({ on: "2026-09-05", basis: "judgement" });
    expect(step(plan, "remove-1")?.on).toBe("2026-09-30");
    expect(plan.supersFrom).toBe("2026-10-28");
    expect(plan.placement).toBe("in a screen bag on the top bars");
    expect(plan.protectiveEquipment).toBe("gloves and goggles");
    expect(plan.cautions).toContain("menthol-vapour");
  });
  it("[CO13] three weekly applications each have their dates and the sum of their doses", () => {
    const plan = made({
      ...tarnRidge,
      labelRecord: { ...label, applications: 3, daysBetweenApplications: 7, durationDays: 7, doseGramsPerColony: 20 },
    });
    expect(plan.gramsInAll).toBe(20 * 12 * 3);
    expect(plan.steps.filter(({ kind }) => kind === "apply").map(({ on, until }) => [on, until])).toEqual([
      ["2026-09-02", "2026-09-09"],
      ["2026-09-09", "2026-09-16"],
      ["2026-09-16", "2026-09-23"],
    ]);
    const names = plan.steps.map((each) => each.step);
    expect(new Set(names).size).toBe(names.length);
  });
  it("[CO14] without a reason eleven untested colonies get no plan; with one it stands in the plan", () => {
    const { untestedReason: reason, ...silent } = tarnRidge;
    const refused = refusal(silent);
    expect(refused.refused).toMatchObject([
      { rule: "CO14", reason: "reason-needed-for-untested", slots: { planned: 12, tested: 1 } },
    ]);
    expect(refusal({ ...silent, untestedReason: "  " }).refused).toHaveLength(1);
    expect(made(tarnRidge).untestedReason).toBe(reason);
    expect(made({ ...silent, coloniesTested: 12 }).untestedReason).toBeNull();
  });
  it("[CO15] an old label is warned of from day 366, an invented one named, one of the future blocks", () => {
    const read = (readOn: string) => made({ ...tarnRidge, labelRecord: { ...label, readOn } }).codes;
    expect(read(addDays(tarnRidge.madeOn, -365))).not.toContain("label-record-old");
    expect(read(addDays(tarnRidge.madeOn, -366))).toContain("label-record-old");
    expect(made({ ...tarnRidge, labelRecord: { ...label, invented: true } }).codes).toContain("label-record-invented");
    const future = makePlan({ ...tarnRidge, labelRecord: { ...label, readOn: "2026-08-21" } });
    expect(future.ok).toBe(false);
    expect(future.problems[0]?.code).toBe("label-read-in-future");
  });
  it("[CO16] another jurisdiction or active ingredient gives no plan", () => {
    const elsewhere = refusal({ ...tarnRidge, jurisdiction: "Elsewhere" });
    expect(elsewhere.refused).toMatchObject([
      { reason: "label-for-another-jurisdiction", slots: { wanted: "Elsewhere" } },
    ]);
    const thymol = refusal({ ...tarnRidge, labelRecord: { ...label, activeIngredient: "thymol" } });
    expect(thymol.refused).toMatchObject([{ reason: "label-for-another-ingredient" }]);
    const oils = {
      ...tarnRidge,
      control: "plant-oils" as const,
      labelRecord: { ...label, activeIngredient: "thymol" },
    };
    expect(made(oils).gramsInAll).toBe(600);
    expect(thymol.options[0]?.option).toBe("load-label-record");
    expect(made({ ...tarnRidge, jurisdiction: null }).codes).toContain("jurisdiction-unknown");
  });
  it("[CO17] the recheck waits for one bee's life after removal, and earlier ways are named", () => {
    const plan = made(tarnRidge);
    const recheck = step(plan, "recheck");
    expect(daysBetween("2026-09-30", recheck?.on as string)).toBe(42);
    expect(recheck?.slots).toEqual(recheckDays("2026-09-30"));
    expect(recheck?.slots).toEqual({
      liveStainFrom: "2026-09-30",
      emergedSinceFrom: "2026-10-07",
      lifespanFrom: "2026-11-11",
    });
    expect(plan.codes).toContain("recheck-among-winter-bees");
    const { latitude, ...nowhere } = tarnRidge.site;
    expect(latitude).toBe(44);
    expect(made({ ...tarnRidge, site: nowhere }).codes).toContain("season-of-recheck-unknown");
    const [first, ...others] = tarnRidge.colonies;
    const broodless = { ...(first as (typeof tarnRidge.colonies)[number]), brood: "absent" as const };
    expect(made({ ...tarnRidge, colonies: [broodless, ...others] }).codes).toContain("no-bees-emerge-to-recheck");
  });
  it("[CO23] cool days the label allows are warned of, and vapour is told as a ratio", () => {
    const plan = made(tarnRidge);
    // Highs fall from 22.4 on 2 September to 17.0 on 29 September: below 21.1 °C from the 9th on.
    expect(plan.codes).toContain("vapour-doubtful");
    expect(plan.vapour?.atWarmest).toBeGreaterThan(1);
    expect(plan.vapour?.atCoolest).toBeLessThan(0.7);
    const hot = {
      ...tarnRidge,
      labelRecord: { ...label, maxDailyHighCelsius: 36 },
      site: { dailyMaxCelsius: (tarnRidge.site.dailyMaxCelsius ?? []).map(({ date }) => ({ date, value: 34 })) },
    };
    expect(made(hot).codes).toContain("heat-harms-bees");
    expect(made(hot).codes).not.toContain("vapour-doubtful");
  });
  it("[CO24] a new queen is warned of", () => {
    const [first, ...others] = tarnRidge.colonies;
    const queen = { ...(first as (typeof tarnRidge.colonies)[number]), queen: "new" as const };
    expect(made({ ...tarnRidge, colonies: [queen, ...others] }).codes).toContain("queen-not-settled");
    expect(made(tarnRidge).codes).not.toContain("queen-not-settled");
  });
});

describe("refusals", () => {
  const july: PlanRequest = {
    ...tarnRidge,
    labelRecord: { ...label, durationDays: 14, daysBeforeSupers: 14 },
    site: {
      latitude: 44,
      dailyMaxCelsius: Array.from({ length: 100 }, (_, day) => ({ date: addDays("2026-06-25", day), value: 24 })),
    },
    supers: [{ on: "2026-05-01", off: "2026-07-30" }],
    startOn: "2026-07-05",
    from: "2026-07-01",
    to: "2026-09-30",
    madeOn: "2026-07-01",
  };
  it("[CO1] without a label record there is no dose, and the answer is a refusal", () => {
    const refused = refusal({ ...tarnRidge, labelRecord: null });
    expect(refused.refused).toMatchObject([{ rule: "CO1", reason: "no-label-record" }]);
    expect(JSON.stringify(refused)).not.toMatch(/gram|ounce|dose/i);
  });
  it("[CO12] supers until 30 July bar a start on 5 July; 30 July is the first lawful one (scenario: supers on)", () => {
    const refused = refusal(july);
    expect(refused.refused).toMatchObject([
      { rule: "CO4", reason: "supers-on", from: "2026-07-01", until: "2026-07-29", slots: { off: "2026-07-30" } },
    ]);
    expect(refused.earliestStart).toBe("2026-07-30");
    expect(refused.earliestStartRestsOn).toBe("site");
    expect(made({ ...july, startOn: "2026-07-30" }).steps[0]?.on).toBe("2026-07-30");
    expect(made({ ...july, startOn: null }).steps[0]?.on).toBe("2026-07-30");
  });
  it("[CO12] a start too late for the whole treatment names the end of the days", () => {
    const refused = refusal({ ...july, startOn: "2026-09-25" });
    expect(refused.refused).toMatchObject([{ reason: "start-outside-days-asked", from: "2026-09-25" }]);
    expect(refused.earliestStart).toBeNull();
    expect(refusal({ ...july, startOn: null, madeOn: "2026-10-05" }).refused).toMatchObject([
      { reason: "season-over" },
    ]);
  });
  it("[CO12] too cold a forecast asks the ordinary year for a later start (scenario: too cold)", () => {
    const cold: PlanRequest = {
      ...july,
      supers: [],
      labelRecord: { ...label, durationDays: 5 },
      site: {
        dailyMaxCelsius: [58, 59.9, 60, 62, 66, 59, 61, 58].map((value, day) => ({
          date: addDays("2026-05-01", day),
          value: celsius(value),
        })),
      },
      ordinaryYear: { monthlyMeanCelsius: [0, 0, 5, 10, 14, 18, 21, 20, 16, 10, 5, 0] },
      startOn: null,
      from: "2026-05-01",
      to: "2026-09-30",
      madeOn: "2026-05-01",
    };
    const refused = refusal(cold);
    expect(refused.refused.map(({ reason }) => reason)).toContain("too-few-days");
    expect(refused.earliestStartRestsOn).toBe("ordinary-year");
    expect(refused.earliestStart?.slice(0, 7)).toBe("2026-05");
    const { ordinaryYear, ...alone } = cold;
    expect(ordinaryYear).toBeDefined();
    expect(refusal(alone).earliestStart).toBeNull();
  });
  it("[CO21] says what can be done instead", () => {
    expect(refusal(july).options).toEqual([
      { option: "wait", from: "2026-07-30" },
      { option: "oil-patty", from: null },
      { option: "requeen", from: null },
    ]);
    expect(refusal({ ...tarnRidge, labelRecord: null }).options[0]?.option).toBe("load-label-record");
  });
  it("[CO22] plans for colonies that do not stand there, twice or not at all are blocked", () => {
    const code = (change: Partial<PlanRequest>) => {
      const result = makePlan({ ...tarnRidge, ...change });
      return result.ok ? null : result.problems[0]?.code;
    };
    const [colony] = tarnRidge.colonies;
    expect(code({ colonies: [] })).toBe("no-colonies-in-plan");
    expect(code({ colonies: colony ? [colony, colony] : [] })).toBe("colony-twice-in-plan");
    expect(code({ coloniesInApiary: 11 })).toBe("more-colonies-planned-than-stand");
    expect(code({ coloniesTested: 13 })).toBe("more-colonies-tested-than-stand");
    expect(code({ startOn: "2026-09-31" })).toBe("date-unknown");
    expect(code({ labelRecord: { ...label, readOn: "spring" } })).toBe("label-read-date-unknown");
    expect(() => makePlan({ ...tarnRidge, control: "smoke" as "menthol" })).toThrow("control must be");
  });
});

describe("controls without a label", () => {
  const patty: PlanRequest = {
    ...tarnRidge,
    control: "oil-patty",
    labelRecord: null,
    site: { latitude: 44 },
    flows: [],
    smallHiveBeetle: "absent",
  };
  it("[CO18] patties lie without a gap to the end, 113 g each, and the sum is told", () => {
    const plan = made(patty);
    const feeds = plan.steps.filter(({ kind }) => kind === "feed");
    expect(feeds[0]).toMatchObject({
      on: "2026-08-20",
      gramsPerColony: 113,
      gramsInAll: 12 * 113,
      slots: { fatParts: 1, sugarParts: 2 },
    });
    feeds.forEach(({ until }, index) => {
      expect(until).toBe(feeds[index + 1]?.on ?? "2026-11-14");
    });
    expect(plan.gramsInAll).toBe(113 * 12 * feeds.length);
    expect(plan.codes).toContain("check-jurisdiction");
    expect(plan.codes).toContain("patty-does-not-kill");
    expect(plan.cautions).toContain("patty-pests");
    expect(plan.codes).toContain("patty-in-summer");
  });
  it("[CO18] pieces are renewed every ten days where the beetle lives; not knowing is told; a flow is told", () => {
    const beetle = made({ ...patty, smallHiveBeetle: "endemic" }).steps.filter(({ kind }) => kind === "feed");
    expect(daysBetween(beetle[0]?.on as string, beetle[1]?.on as string)).toBe(10);
    const { smallHiveBeetle, ...unknown } = patty;
    expect(smallHiveBeetle).toBe("absent");
    expect(made(unknown).codes).toContain("small-hive-beetle-unknown");
    expect(made({ ...patty, flows: [{ from: "2026-09-01", to: "2026-09-20" }] }).codes).toContain("patty-in-flow");
    expect(refusal({ ...patty, madeOn: "2026-11-14" }).refused).toMatchObject([{ reason: "season-over" }]);
  });
  it("[CO19] requeening is rechecked nine weeks after the queen went in", () => {
    const plan = made({ ...patty, control: "requeen", startOn: "2026-08-25" });
    expect(plan.steps.map(({ kind, on }) => [kind, on])).toEqual([
      ["requeen", "2026-08-25"],
      ["check", "2026-09-08"],
      ["recheck", addDays("2026-08-25", 63)],
    ]);
    expect(plan.codes).toContain("requeening-may-be-worse");
    expect(plan.gramsInAll).toBeNull();
    expect(refusal({ ...patty, control: "requeen", madeOn: "2026-11-15" }).refused).toMatchObject([
      { reason: "season-over" },
    ]);
  });
});
