/** From the casebook into a plan, and from a plan into the journal. */
import { describe, expect, it } from "vitest";
import { fold } from "../../casebook/index.ts";
import { type EntryDraft, kinds, newEntryId, sealChain } from "../../journal/index.ts";
import type { LabelRecord } from "./label-record.ts";
import { makePlan } from "./make-plan.ts";
import { planRecord } from "./plan-record.ts";
import { recordedSite } from "./recorded-site.ts";

const means = [0, 0, 5, 10, 14, 18, 21, 20, 16, 10, 5, 0];
const about = ["a1"];
/** An invented apiary: supers on one colony only, a flow recorded for another year. */
const drafts: readonly EntryDraft[] = [
  {
    kind: "apiary-registered",
    at: "2026-01-01",
    about,
    data: { code: "A", name: "Orsa Hollow", place: "invented", latitude: 45 },
  },
  { kind: "colony-registered", at: "2026-01-01", about: ["a1", "c1"], data: { code: "A-1" } },
  { kind: "colony-registered", at: "2026-01-01", about: ["a1", "c2"], data: { code: "A-2" } },
  {
    kind: "weather-year-recorded",
    at: "2026-01-01",
    about,
    data: { kind: "monthly-means", monthlyMeanCelsius: means, source: "invented" },
  },
  {
    kind: "flow-recorded",
    at: "2026-01-01",
    about: ["a1", "f1"],
    data: { name: "lime", from: "2024-06-20", to: "2024-07-05" },
  },
];
const supers: EntryDraft = {
  kind: "supers-recorded",
  at: "2026-05-01",
  about: ["a1", "s1"],
  data: { on: "2026-05-01", off: "2026-07-20", colonies: ["c1"] },
};
const thymol: EntryDraft = {
  kind: "treatment-recorded",
  at: "2026-06-01",
  about: ["a1", "t1"],
  data: { activeIngredient: "thymol", on: "2026-06-01", off: "2026-06-10", colonies: ["c2"] },
};

function apiaryOf(list: readonly EntryDraft[]) {
  const end = { device: "d1", programme: "main", author: "tester", recordedAt: "2026-07-01T10:00:00.000Z", head: null };
  const chance = list.map((_, index) => ({
    id: newEntryId(1_782_900_000_000 + index, new Uint8Array(16).fill(index)),
    salt: "0".repeat(32),
  }));
  const apiary = fold(sealChain(list, end, chance)).apiaries.a1;
  if (!apiary) throw new Error("the apiary folds");
  return apiary;
}
const asked = { from: "2026-06-01", to: "2026-09-30" };
function recorded(list: readonly EntryDraft[], colonies: readonly string[]) {
  const answer = recordedSite({ apiary: apiaryOf(list), colonies, ...asked });
  if (!answer.ok) throw new Error(JSON.stringify(answer.problems));
  return { ...answer.value, problems: answer.problems };
}

describe("records", () => {
  it("[CO26] flows move into the years asked about; other colonies' supers and treatments do not count", () => {
    const first = recorded([...drafts, supers, thymol], ["c1"]);
    expect(first.flows).toEqual([{ from: "2026-06-20", to: "2026-07-05" }]);
    expect(first.supers).toEqual([{ on: "2026-05-01", off: "2026-07-20" }]);
    expect(first.treatments).toEqual([]);
    expect(first.site).toEqual({ monthlyMeanCelsius: means, latitude: 45 });
    const second = recorded([...drafts, supers, thymol], ["c2"]);
    expect(second.supers).toEqual([]);
    expect(second.treatments).toEqual([{ activeIngredient: "thymol", on: "2026-06-01", off: "2026-06-10" }]);
  });
  it("[CO26] no supers on record means not known, and two records of supers both count", () => {
    expect(recorded(drafts, ["c1"])).not.toHaveProperty("supers");
    const other: EntryDraft = { ...supers, data: { on: "2026-05-01", off: "2026-08-01", colonies: [] } } as EntryDraft;
    const both = recorded([...drafts, supers, other], ["c1"]);
    expect(both.supers).toHaveLength(2);
    expect(both.problems.map(({ code }) => code)).toEqual(["records-in-conflict"]);
    const weather: EntryDraft = {
      ...drafts[3],
      data: { kind: "monthly-means", monthlyMeanCelsius: means.map((each) => each + 1), source: "other" },
    } as EntryDraft;
    const disputed = recordedSite({ apiary: apiaryOf([...drafts, weather]), colonies: ["c1"], ...asked });
    expect(disputed.ok).toBe(false);
    expect(disputed.problems[0]?.code).toBe("weather-in-conflict");
  });
  it("[CO25] a plan made from records fits the journal's shape with dates and grams unchanged", () => {
    const label: LabelRecord = {
      jurisdiction: "Invented Territory",
      activeIngredient: "menthol",
      doseGramsPerColony: 50,
      applications: 1,
      daysBetweenApplications: 0,
      minDailyHighCelsius: 16,
      maxDailyHighCelsius: 30,
      durationDays: 28,
      supersAllowed: false,
      daysBeforeSupers: 14,
      placement: "on the top bars",
      readOn: "2026-02-01",
      source: "invented for tests",
      invented: true,
    };
    const { problems, ...site } = recorded([...drafts, supers], ["c1"]);
    expect(problems).toEqual([]);
    const answer = makePlan({
      control: "menthol",
      colonies: [{ id: "c1", code: "A-1" }],
      coloniesInApiary: 2,
      coloniesTested: 1,
      jurisdiction: "Invented Territory",
      labelRecord: label,
      ...site,
      startOn: null,
      ...asked,
      madeOn: "2026-07-01",
    });
    if (!answer.ok || answer.value.kind !== "plan") throw new Error(JSON.stringify(answer));
    const plan = answer.value;
    const body = planRecord({ plan, case: "case-1", labelRecord: "l1", version: 1, noteOf: ({ code }) => code });
    expect(kinds["plan-made"].body.safeParse(body).success).toBe(true);
    expect(body.steps.map(({ step, on, gramsInAll }) => [step, on, gramsInAll])).toEqual(
      plan.steps.map(({ step, on, gramsInAll }) => [step, on, gramsInAll]),
    );
    expect(body.steps[0]).toMatchObject({ kind: "apply", on: "2026-07-20", until: "2026-08-17", gramsPerColony: 50 });
  });
});
