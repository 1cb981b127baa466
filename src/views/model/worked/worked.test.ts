/** Question 6 over the records: efficacy only against an untreated colony, steps, outcomes, closing. */
import { describe, expect, it } from "vitest";
import { casebookOf, demonstrationCasebook } from "../../../../tests/casebook-of.ts";
import { programmeDrafts } from "../../../../tests/journals/programme-kinds.ts";
import type { Casebook } from "../../../casebook/index.ts";
import { wordsOf } from "../../words/index.ts";
import {
  checkView,
  comparators,
  confirmable,
  outcomeDraft,
  outcomeRows,
  readClosing,
  readOutcome,
  readStepDone,
  type StepRow,
  stepDoneDrafts,
  stepRows,
  workedAnswer,
} from "../index.ts";

const words = wordsOf("en");
const casebook = demonstrationCasebook();
const state = casebook.cases["demonstration-case-tv-26-014"] ?? expect.fail("no case");
const asked = { today: "2026-10-27", words };
const against = (control: string | null) =>
  checkView(casebook, state, { control, scored: "any-mite", words }) ?? expect.fail("no check");

/** The casebook as it would be had the step been done on that day. */
function casebookWith(from: Casebook, row: StepRow | undefined, on: string): Casebook {
  if (!row) return expect.fail("no step");
  const kept = row.plan.done[row.step.step] ?? expect.fail("not marked");
  const [first] = kept.candidates;
  const moved = { ...kept, candidates: [{ ...first, value: { ...first.value, on } }] as const };
  const plan = { ...row.plan, done: { [row.step.step]: moved } };
  return { ...from, plans: { ...from.plans, [plan.id]: plan } };
}

describe("before and after", () => {
  it("20 to 5 of 50 beside 18 to 9: apparent 75, corrected 50, 20 expected without treatment", () => {
    const view = against("demonstration-wb-03");
    expect(view.methods.map((method) => [method.key, method.value])).toEqual([
      ["apparent", "75"],
      ["henderson-tilton", "50"],
      ["abbott", "44"],
    ]);
    expect(view.expected).toBe(
      "Without treatment we would have expected about 20 in 100 by now; the treated have 10. So 20 of the fall of 30 is not the treatment’s.",
    );
    expect(view.notes.join(" ")).toContain("Dead mites stay in the trunks");
    const { efficacy } = view.outcome;
    expect(efficacy?.low).toBeLessThan(0.5);
    expect(efficacy?.high).toBeGreaterThan(0.5);
  });

  it("without a comparator: before and after alone, and no efficacy", () => {
    const view = against(null);
    expect(view.methods.map((method) => method.key)).toEqual(["apparent"]);
    expect(view.outcome.efficacy).toBeNull();
    expect(view.expected).toBeNull();
    expect(view.notes.join(" ")).toContain("cannot say what the treatment did");
  });

  it("only colonies counted about when the treated ones were can be compared with", () => {
    expect(comparators(casebook, state)).toEqual([{ id: "demonstration-wb-03", code: "WB-03" }]);
  });

  it("the answer of so few bees is that it cannot tell yet; the corrected fall stands before the plain one", () => {
    expect(workedAnswer(casebook, state, asked)).toBe(
      "**Cannot tell yet whether it worked.** Against the untreated, infestation fell by 50 in 100, but it could be anything from a rise by 56 to a fall by 84. Before and after alone it fell by 75.",
    );
  });
});

describe("steps", () => {
  const rows = stepRows(casebook, state, asked);

  it("those done say when; those left over say that they are overdue", () => {
    expect(rows.map((row) => [row.step.step, row.state])).toEqual([
      ["apply-1", "done"],
      ["remove-1", "done"],
      ["recheck-1", "overdue"],
    ]);
  });

  it("marking an application writes the treatment down for the apiary; taking it out ends it", () => {
    const apply = rows[0] ?? expect.fail("no step");
    const data = readStepDone({ state: "done", on: "2026-08-08", grams: "48" }, { ...asked, row: apply });
    if (!data.ok) return expect.fail("not read");
    const drafts = stepDoneDrafts(casebook, state, { row: apply, data: data.value, today: asked.today });
    expect(drafts.map((draft) => draft.kind)).toEqual(["plan-step-done", "treatment-recorded"]);
    expect(drafts[1]?.data).toMatchObject({ activeIngredient: "menthol", grams: 48, off: null });
    expect(drafts[0]?.replaces).toHaveLength(1);
  });

  it("the amount of a treatment on record is that of one colony: 150 g in three hives are 50 g", () => {
    const row = rows[0] ?? expect.fail("no step");
    const three = { ...row, body: { ...row.body, colonies: ["a", "b", "c"] } };
    const data = readStepDone({ state: "done", on: "2026-08-08", grams: "150" }, { ...asked, row: three });
    if (!data.ok) return expect.fail("not read");
    const drafts = stepDoneDrafts(casebook, state, { row: three, data: data.value, today: asked.today });
    expect(drafts[1]?.data).toMatchObject({ grams: 50, colonies: ["a", "b", "c"] });
  });

  it("a step not done writes no treatment down", () => {
    const apply = rows[0] ?? expect.fail("no step");
    const data = readStepDone({ state: "not-done" }, { ...asked, row: apply });
    if (!data.ok) return expect.fail("not read");
    expect(stepDoneDrafts(casebook, state, { row: apply, data: data.value, today: asked.today })).toHaveLength(1);
  });
});

describe("days of steps", () => {
  const [apply, remove] = stepRows(casebook, state, asked);
  const trouble = (row: typeof apply, on: string, plan: Partial<StepRow["plan"]> = {}) => {
    if (!row) return expect.fail("no step");
    const read = readStepDone({ state: "done", on }, { ...asked, row: { ...row, plan: { ...row.plan, ...plan } } });
    return read.ok ? null : read.problems[0]?.code;
  };

  it("never a day to come, never before the plan, never five years back", () => {
    expect(trouble(apply, "2026-10-28")).toBe("day-to-come");
    expect(trouble(apply, "1999-08-08")).toBe("day-long-ago");
    expect(trouble(apply, "2026-01-02")).toBe("step-before-plan");
  });

  it("in the order of the plan: not out before in, not out while in is not marked", () => {
    expect(trouble(remove, apply?.body.madeOn ?? "")).toBe("step-out-of-order");
    expect(trouble(remove, "2026-10-01", { done: {} })).toBe("step-needs-earlier");
    expect(trouble(apply, "2026-10-27")).toBe("step-out-of-order");
    expect(trouble(remove, "2026-10-01")).toBeNull();
  });

  it("a step done beside its day, or in heat the label bars, says so and shows the year", () => {
    const late = casebookWith(casebook, apply, "2026-12-20");
    const [row] = stepRows(late, state, asked);
    expect(row?.says).toBe("done 20 December 2026");
    expect(row?.heed[0]).toMatch(/^Planned for \d+ \w+ 2026: done \d+ days later\.$/);
    expect(row?.heed[1]).toMatch(/^Outside the label: daily means of an ordinary year/);
  });
});

describe("the end", () => {
  it("an outcome of a day to come is refused", () => {
    const fields = { colony: "demonstration-wb-07", on: "2031-01-01", survived: "yes" };
    expect(readOutcome(fields, asked.today)).toMatchObject({
      ok: false,
      problems: [{ code: "day-to-come" }],
    });
  });

  it("outcomes of the colonies, lost ones too", () => {
    const sedge = casebook.cases["demonstration-case-tv-26-003"] ?? expect.fail("no case");
    expect(outcomeRows(casebook, sedge, words)[0]).toMatchObject({ colony: "SE-02", says: "lost" });
    expect(workedAnswer(casebook, sedge, asked)).toContain("Confirmed: Starvation");
  });

  it("a second outcome of a colony on one day replaces the first", () => {
    const body = readOutcome({ colony: "demonstration-wb-07", on: "2026-10-12", survived: "no" }, asked.today);
    if (!body.ok) return expect.fail("not read");
    expect(outcomeDraft(state, body.value).replaces).toHaveLength(1);
  });

  it("[DX190] a condition that the programme added can be confirmed, by its name", () => {
    const own = confirmable(casebookOf(programmeDrafts));
    expect(own.find(({ id }) => id === "own_flooded_stand")?.term).toBe("Flooded stand");
    const fields = { outcome: "answered", cause1: "own_flooded_stand", confirmedBy: "inspector 2" };
    const closing = (causes: typeof own) => readClosing(fields, { today: asked.today, causes, untold: [] });
    expect(closing(own)).toMatchObject({ ok: true, value: { confirmedCauses: ["own_flooded_stand"] } });
    expect(closing(confirmable(casebook))).toMatchObject({ ok: true, value: { confirmedCauses: [] } });
  });

  it("a confirmed cause needs what confirmed it; without an answer there is no cause", () => {
    const causes = confirmable(casebook);
    expect(
      readClosing({ outcome: "answered", cause1: "starvation" }, { today: asked.today, causes, untold: [] }),
    ).toMatchObject({
      ok: false,
      problems: [{ field: "confirmedBy" }],
    });
    expect(
      readClosing({ outcome: "without-answer", cause1: "starvation" }, { today: asked.today, causes, untold: [] }),
    ).toMatchObject({
      ok: true,
      value: { confirmedCauses: [] },
    });
  });
});
