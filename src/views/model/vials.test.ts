/** Vials from label to reading: what question 3 says of each, and what can still be taken back. */
import { expect, it } from "vitest";
import { colony, following, opened, today } from "../../../tests/case-story.ts";
import { demonstrationCasebook } from "../../../tests/casebook-of.ts";
import { wordsOf } from "../words/index.ts";
import { samplePlanView, samplingDrafts, takeBackVialDraft, vialsAwaited, vialsOf } from "./index.ts";

const words = wordsOf("en");
const start = opened();
const { casebook, state } = following(start);
const colonies = [colony(casebook, 1), colony(casebook, 2)];
const form = {
  purpose: "detect",
  colonies,
  designPrevalence: 0.1,
  confidence: 0.95,
  sensitivity: 1,
  preservative: "frozen",
  laboratory: "",
} as const;
const { plan } = samplePlanView({ casebook, state, form, today, words });
if (!plan) throw new Error("no plan");
const label: Parameters<typeof following>[1] = () =>
  samplingDrafts({ caseId: start.caseId, plan: plan.body, codes: plan.codes, today, newId: start.newId });
const takeBack: Parameters<typeof following>[1] = (book) => {
  const [first] = vialsOf(book, book.cases[start.caseId] as never, words);
  return first ? [takeBackVialDraft(first, today)] : [];
};

it("a labelled vial waits until it is received, and one can be taken back", () => {
  const labelled = following(start, label);
  const vials = vialsOf(labelled.casebook, labelled.state, words);
  expect(vials.map((vial) => [vial.colony, vial.says])).toEqual([
    ["WB-01", "not here yet"],
    ["WB-02", "not here yet"],
  ]);
  expect(vialsAwaited(vials, colonies)).toHaveLength(2);
  expect(vialsAwaited(vials, [colony(casebook, 3)])).toEqual([]);
  const back = following(start, label, takeBack);
  expect(vialsOf(back.casebook, back.state, words).map((vial) => vial.colony)).toEqual(["WB-02"]);
});

it("a vial that came is said to be here or read, never not taken, and cannot be taken back", () => {
  const demonstration = demonstrationCasebook();
  const all = Object.values(demonstration.cases).flatMap((each) => vialsOf(demonstration, each, words));
  const came = all.filter((vial) => vial.state === "waits" || vial.state === "read" || vial.state === "reading");
  expect(came.length).toBeGreaterThan(0);
  for (const vial of came) {
    expect(vial.takeBack).toEqual([]);
    expect(vial.takenOn).not.toBeNull();
    expect(vial.says).toMatch(/^(here, waits to be read|being read|read and locked)$/);
  }
});

it("bees from elsewhere are written down as such, with what that means", () => {
  const away = samplePlanView({ casebook, state, form: { ...form, from: "F" }, today, words }).plan;
  expect(plan).toMatchObject({ advised: "S", elsewhere: [], body: { from: "S" } });
  expect(away).toMatchObject({ advised: "S", body: { from: "F" } });
  expect(away?.takes).toContain("from the entrance");
  expect(away?.elsewhere.join(" ")).toContain("good to find them, wrong to estimate");
  const dead = samplePlanView({ casebook, state, form: { ...form, from: "D" }, today, words }).plan;
  expect(dead?.cautions.join(" ")).toContain("wear a mask");
});
