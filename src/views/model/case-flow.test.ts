/** From the call to what was seen: the entries that acts become, and what the pages then show. */
import { describe, expect, it } from "vitest";
import { answerFlags, colony, following, opened, see, today } from "../../../tests/case-story.ts";
import { demonstrationCasebook } from "../../../tests/casebook-of.ts";
import { type Casebook, coloniesOf, wholeApiary } from "../../casebook/index.ts";
import { publishedEvidence } from "../../knowledge/index.ts";
import { addDays } from "../../units/index.ts";
import { wordsOf } from "../words/index.ts";
import {
  answeredFindings,
  apiaryView,
  askedFindings,
  casesView,
  cellState,
  countFindings,
  countRedFlags,
  findingGroups,
  handOnDraft,
  readHandOn,
  redFlagDraft,
  redFlags,
  spineView,
  undoDrafts,
  walkOf,
} from "./index.ts";

const words = wordsOf("en");

describe("opening a case", () => {
  it("registers the place and its colonies and lists the case", () => {
    const start = opened();
    const { casebook } = following(start);
    const apiary = apiaryView(casebook, Object.keys(casebook.apiaries)[0] ?? "");
    expect(apiary?.colonies.map((each) => each.code)).toEqual(["WB-01", "WB-02", "WB-03", "WB-04", "WB-05"]);
    const view = casesView({ casebook, today, who: null, words });
    expect(view.groups.map((group) => group.key)).toEqual(["later"]);
    expect(view.groups[0]?.rows[0]).toMatchObject({
      code: "TV-26-014",
      colonies: 5,
      question: 1,
      state: "red flags not asked",
    });
    expect(view.waiting).toEqual([{ who: "inspector 2", count: 1 }]);
  });

  it("puts overdue cases first and says so", () => {
    const { casebook } = following(opened({ openedOn: "2026-02-20", due: "2026-02-24" }));
    const view = casesView({ casebook, today, who: null, words });
    expect(view.groups[0]).toMatchObject({ key: "overdue", rows: [{ late: "6 days", isOverdue: true }] });
    expect(view.answer).toBe("**1 case is overdue.** Nothing more is due this week.");
    expect(casesView({ casebook, today, who: "keeper", words }).groups).toEqual([]);
  });
});

describe("a plan past its day", () => {
  const casebook = demonstrationCasebook();
  const plans = Object.values(casebook.plans).flatMap((plan) => plan.record?.candidates[0].value ?? []);
  const planned = plans[0] ?? expect.fail("no plan in the demonstration");
  const last =
    planned.steps
      .map((step) => step.on)
      .sort()
      .at(-1) ?? "";
  it("counts as overdue from its oldest step that nobody marked, whatever day the case is due", () => {
    const after = addDays(last, 1);
    const view = casesView({ casebook, today: after, who: null, words });
    const row = view.groups.flatMap((group) => group.rows).find((each) => each.id === planned.case);
    expect(row).toMatchObject({ isOverdue: true });
    expect(row?.state).toMatch(/^\d+ plan steps? overdue$/);
    expect(view.answer).not.toContain("Nothing is overdue");
    expect(view.groups.find((group) => group.key === "overdue")?.rows.map((each) => each.id)).toContain(planned.case);
  });
});

describe("handing a case on", () => {
  it("moves it to another person and day, in the list and on its page", () => {
    const start = opened();
    const read = readHandOn({ waitsOn: "keeper", due: "2026-03-20" });
    if (!read.ok) throw new Error("the form is not read");
    const { casebook } = following(start, (book) => [
      handOnDraft(book.cases[start.caseId] as never, read.value, today),
    ]);
    const view = casesView({ casebook, today, who: null, words });
    expect(view.groups[0]?.rows[0]).toMatchObject({ waitsOn: "keeper", due: "2026-03-20" });
    expect(spineView(casebook, start.caseId, words)?.waits.says).toBe("Waits on keeper, due 20 March");
    expect(readHandOn({ waitsOn: "", due: "soon" }).problems.map((trouble) => trouble.code)).toEqual([
      "field-empty",
      "field-not-day",
    ]);
  });
});

describe("what was seen", () => {
  it("stays at the red flags until each has an answer, not looked included", () => {
    const start = opened();
    const before = following(start);
    expect(countRedFlags(redFlags(before.state)).complete).toBe(false);
    expect(spineView(before.casebook, start.caseId, words)?.questions[0]?.says).toBe("5 red flags not asked");
    const { state } = following(start, answerFlags(start.caseId));
    expect(countRedFlags(redFlags(state))).toMatchObject({ complete: true, absent: 1, notLooked: 4 });
  });

  it("says stop and report when brood ropes, and what not to do", () => {
    const start = opened();
    const { casebook, state } = following(start, (book) => [
      redFlagDraft(book.cases[start.caseId] as never, "brood-ropes-or-smells", "present", today),
    ]);
    expect(redFlags(state).find((flag) => flag.stopAndReport)).toMatchObject({ id: "brood-ropes-or-smells" });
    expect(casesView({ casebook, today, who: null, words }).stops).toHaveLength(1);
  });

  it("counts what was looked at and nothing else", () => {
    const start = opened();
    const first = colony(following(start).casebook, 1);
    const { state } = following(start, see(start.caseId, first, "crawlers", "present"));
    const groups = findingGroups(state, [{ id: first, code: "WB-01" }], words, publishedEvidence);
    expect(countFindings(groups)).toEqual({ answered: 1, present: 1, notLooked: askedFindings.length - 1 });
    expect(askedFindings).toHaveLength(81);
  });

  it("shows what was answered for the whole apiary, so that sheet and spine count the same in every case", () => {
    const casebook = demonstrationCasebook();
    for (const state of Object.values(casebook.cases)) {
      const colonies = coloniesOf(casebook, state.id).map(({ id, code }) => ({ id, code: code ?? id }));
      expect(countFindings(findingGroups(state, colonies, words, publishedEvidence)).answered, state.id).toBe(
        answeredFindings(state),
      );
    }
  });
  it("sets the excluded finding back to not looked", () => {
    const start = opened();
    const first = colony(following(start).casebook, 1);
    const { state } = following(
      start,
      see(start.caseId, first, "stores_exhausted", "present"),
      see(start.caseId, first, "stores_ample", "present"),
    );
    expect(cellState(state, first, "stores_ample")).toBe("present");
    expect(cellState(state, first, "stores_exhausted")).toBe("not-looked");
  });

  it("takes a press back: to nothing where nothing stood, to the earlier answer where one did", () => {
    const start = opened();
    const first = colony(following(start).casebook, 1);
    const entryOf = (book: Casebook) =>
      book.cases[start.caseId]?.findings[first]?.crawlers?.candidates.map((each) => each.entry) ?? [];
    const undo = (before: "absent" | null) => (book: Casebook) =>
      undoDrafts({
        state: book.cases[start.caseId] as never,
        key: first,
        finding: "crawlers",
        before,
        entries: entryOf(book),
        on: today,
      });
    const nothing = following(start, see(start.caseId, first, "crawlers", "present"), undo(null));
    expect(cellState(nothing.state, first, "crawlers")).toBeNull();
    const earlier = following(
      start,
      see(start.caseId, first, "crawlers", "absent"),
      see(start.caseId, first, "crawlers", "present"),
      undo("absent"),
    );
    expect(cellState(earlier.state, first, "crawlers")).toBe("absent");
  });

  it("walks a colony past what is asked of the whole apiary, and the apiary past the rest", () => {
    const start = opened();
    const { state, casebook } = following(start);
    const own = walkOf({ state, key: colony(casebook, 1), colonies: 5, words, evidence: publishedEvidence });
    const shared = walkOf({ state, key: wholeApiary, colonies: 5, words, evidence: publishedEvidence });
    expect(own.length + shared.length).toBe(askedFindings.length);
    expect(shared.every((step) => step.place === "apiary")).toBe(true);
    expect(walkOf({ state, key: wholeApiary, colonies: 0, words, evidence: publishedEvidence })).toHaveLength(
      askedFindings.length,
    );
  });
});
