/** Question 5 over the records: what stops advice, what prices weigh, what blocks a plan, what is written down. */
import { describe, expect, it } from "vitest";
import { casebookOf, demonstrationCasebook } from "../../../../tests/casebook-of.ts";
import type { EntryDraft } from "../../../journal/index.ts";
import { controlIds } from "../../../knowledge/index.ts";
import { control } from "../../../reasoning/index.ts";
import { refusalReasons, wordsOf } from "../../words/index.ts";
import {
  calendarOf,
  choiceView,
  countedColonies,
  earlierPlan,
  nextVersion,
  planBody,
  planDraft,
  planRequest,
  planView,
  readDecision,
  readWeighing,
  siteOf,
  stopNotices,
  untilResult,
  yearView,
} from "../index.ts";

const words = wordsOf("en");
const withen = "demonstration-case-tv-26-014";
const demonstration = demonstrationCasebook();
const state = demonstration.cases[withen] ?? expect.fail("no case");
const counted = countedColonies(demonstration, withen);
const prices = {
  about: counted[0]?.id ?? "",
  currency: "invented money",
  colonyValue: "240",
  actCost: "26",
  testCost: "3",
  residual: "15",
  bees: "50",
  finds: "90",
};
const wish = (over = {}) => ({
  control: "menthol" as const,
  colonies: ["demonstration-wb-03"],
  label: "demonstration-label-record-menthol",
  isValidHere: true,
  startOn: null,
  untestedReason: "",
  beetle: "unknown" as const,
  ...over,
});
const planned = (over = {}, today = "2026-03-09") =>
  control.makePlan(planRequest(demonstration, state, { wish: wish(over), counted, today }));

describe("stop and report", () => {
  it("a ropy thread stands in place of advice, with what not to do", () => {
    const garth = demonstration.cases["demonstration-case-tv-26-022"] ?? expect.fail("no case");
    const [notice] = stopNotices(demonstration, garth, words);
    expect(notice).toMatchObject({ key: "rope-american-foulbrood" });
    expect(notice?.doNot.join(" ")).toContain("Do not move, burn or medicate");
  });

  it("an ordinary case has none", () => {
    expect(stopNotices(demonstration, state, words)).toEqual([]);
  });
});

describe("a plan in a calendar", () => {
  it("a step carries the dose for one colony and in all; a step without a dose none", () => {
    const colonies = ["WB-03", "WB-07", "WB-11"];
    expect(words.done.title({ what: "Apply, menthol", grams: 50, inAll: 150, colonies })).toBe(
      "Apply, menthol, 50 g a colony (150 g in all): WB-03, WB-07 and WB-11",
    );
    expect(words.done.title({ what: "Check, menthol", grams: null, inAll: null, colonies: ["WB-03"] })).toBe(
      "Check, menthol: WB-03",
    );
  });
});

describe("weighing", () => {
  it("the newest count of each colony stands, the highest first", () => {
    expect(counted.map((each) => [each.code, each.positive, each.examined])).toEqual([
      ["WB-03", 9, 50],
      ["WB-05", 2, 12],
      ["WB-07", 5, 50],
      ["WB-11", 0, 50],
    ]);
  });

  it("no price has a default: each empty one is named", () => {
    const empty = readWeighing({ ...prices, colonyValue: "", actCost: "", testCost: "", residual: "" }, counted);
    expect(empty.problems.map((each) => each.field)).toEqual(["colonyValue", "actCost", "testCost", "residual"]);
  });

  it("names the best, its losses and what would change it; the strip runs from 0 without a gap", () => {
    const weighing = readWeighing(prices, counted);
    if (!weighing.ok) return expect.fail("not read");
    const weighed = choiceView(weighing.value, { colonies: counted, anyway: false, words });
    if (!weighed.ok) return expect.fail("not weighed");
    const { parts, losses, flips, here } = weighed.value;
    expect(losses.filter((each) => each.isBest)).toHaveLength(1);
    expect(parts[0]?.from).toBe(0);
    for (const [index, part] of parts.slice(1).entries()) expect(part.from).toBe(parts[index]?.to);
    // 9 of 50 as in question 4: 18 in 100, Clopper–Pearson 8.58 to 31.44; the belief's middle is 9.5 of 51.
    expect([here.value, here.low, here.high].map((share) => (100 * share).toFixed(1))).toEqual(["18.0", "8.6", "31.4"]);
    expect(here.how).toContain("50 bees allow, each by how well it fits the count (middle 18.6 in 100)");
    expect(flips.length).toBeGreaterThan(0);
    expect(weighed.value.notes.join(" ")).toContain("judgement");
  });

  it("a sample with limits names no choice, unless it is asked for all the same", () => {
    const weighing = readWeighing({ ...prices, about: "demonstration-wb-05" }, counted);
    if (!weighing.ok) return expect.fail("not read");
    expect(choiceView(weighing.value, { colonies: counted, anyway: false, words }).problems[0]?.code).toBe(
      "decision-withheld",
    );
    expect(choiceView(weighing.value, { colonies: counted, anyway: true, words }).ok).toBe(true);
  });

  it("a decision carries what it was reckoned from, and needs a reason and a day to look again", () => {
    const weighing = readWeighing(prices, counted);
    const asked = { today: "2026-03-09", weighing: weighing.ok ? weighing.value : null };
    expect(
      readDecision({ choice: "wait", reason: "", reviewOn: "" }, asked).problems.map((each) => each.field),
    ).toEqual(["reviewOn", "reason"]);
    expect(
      readDecision({ choice: "wait", reason: "low", reviewOn: "2026-04-04", "colony:c1": "on" }, asked),
    ).toMatchObject({
      ok: true,
      value: { colonies: ["c1"], reckonedFrom: { colonyValue: 240, residualShare: 0.15, currency: "invented money" } },
    });
  });
});

describe("the plan", () => {
  it("without a label record: refused, no dose, and the way to load one", () => {
    const plan = planned({ label: null });
    if (!plan.ok) return expect.fail("blocked");
    const view = planView(plan.value, plan.problems, words);
    expect(view.kind).toBe("refused");
    expect(view.rows[0]).toMatchObject({ tag: "refused", unlock: { to: "labels" } });
    expect(view.rows[0]?.why).toContain("No label record is loaded");
    expect(JSON.stringify(view)).not.toMatch(/\d+ g\b/);
  });

  it("supers until 6 August and the label's temperatures leave starts in August; grams stand in both units", () => {
    const plan = planned();
    if (!plan.ok || plan.value.kind !== "plan") return expect.fail("refused");
    expect(plan.value.steps[0]).toMatchObject({ on: "2026-08-06", gramsPerColony: 50 });
    const view = planView(plan.value, plan.problems, words);
    expect(view.rows[0]?.what).toContain("50 g** (1.8 oz weight) a colony, in WB-03");
    expect(view.heed.join(" ")).toContain("The label is the law");
  });

  it("a wish while supers are on is blocked with the reason and the first lawful start", () => {
    const plan = planned({ startOn: "2026-07-05" });
    if (!plan.ok) return expect.fail("blocked");
    const view = planView(plan.value, plan.problems, words);
    expect(view.rows.map((row) => row.why).join(" ")).toContain("Honey supers are on until 6 August 2026.");
    expect(view.earliest).toBe("First lawful start: 6 August 2026.");
  });

  it("a year for which nobody wrote supers down is not taken as one without", () => {
    const later = calendarOf(demonstration, state, { today: "2027-03-01", colonies: [] });
    expect(later.supers).toBeUndefined();
    expect(calendarOf(demonstration, state, { today: "2026-03-09", colonies: [] }).to).toBe("2026-12-31");
  });

  it("colonies that were not tested need a reason", () => {
    const plan = planned({ colonies: ["demonstration-wb-01", "demonstration-wb-03"] });
    if (!plan.ok) return expect.fail("blocked");
    expect(planView(plan.value, plan.problems, words).rows.some((row) => row.unlock?.to === "reason")).toBe(true);
  });

  it("written down again it is the next version of the same plan and replaces it", () => {
    const plan = planned();
    if (!plan.ok || plan.value.kind !== "plan") return expect.fail("refused");
    const earlier = earlierPlan(demonstration, withen, "menthol");
    expect(nextVersion(earlier)).toBe(2);
    const body = planBody({ plan: plan.value, caseId: withen, label: null, version: 2, today: "2026-03-09", words });
    const draft = planDraft({ body, earlier, planId: "new", today: "2026-03-09" });
    expect(draft.about[0]).toBe(earlier?.id);
    expect(draft.replaces).toHaveLength(1);
    expect(body.steps.every((step) => step.note.length > 0)).toBe(true);
  });

  it("every control can be asked for and every reason that comes back has a sentence", () => {
    for (const id of controlIds) {
      const plan = planned({ control: id, label: null });
      if (!plan.ok) return expect.fail(id);
      if (plan.value.kind === "refused")
        for (const refusal of plan.value.refused) expect(refusalReasons[refusal.reason], refusal.reason).toBeDefined();
      for (const each of plan.problems) expect(words.problems[each.code], each.code).toBeDefined();
    }
  });
});

describe("the year and the meantime", () => {
  it("draws the days it was asked about, with windows under the label and a table twin", () => {
    const request = planRequest(demonstration, state, { wish: wish(), counted, today: "2026-03-09" });
    const view = yearView({
      site: siteOf(demonstration, state),
      calendar: calendarOf(demonstration, state, { today: "2026-03-09", colonies: ["demonstration-wb-03"] }),
      label: request.labelRecord,
      needsLabel: true,
      plan: null,
      words,
    });
    expect(view?.windows[0]?.says).toMatch(/^28 days can start 6 August to/);
    expect(view?.table.rows.some((row) => row[0] === "barred")).toBe(true);
  });

  it("a dead hive is closed today", () => {
    const drafts: readonly EntryDraft[] = [
      {
        kind: "case-opened",
        at: "2026-01-19",
        about: ["case", "ap"],
        data: { code: "A", openedOn: "2026-01-19", question: "?", colonies: ["c1"] },
      },
      {
        kind: "colony-state-recorded",
        at: "2026-01-19",
        about: ["case", "c1"],
        data: { colony: "c1", state: "dead", on: "2026-01-19" },
      },
    ];
    const casebook = casebookOf(drafts);
    const dead = casebook.cases.case ?? expect.fail("no case");
    expect(untilResult(casebook, dead, { today: "2026-01-20", words })[0]?.says).toContain(
      "Close a dead hive bee-tight",
    );
  });

  it("what to do today stands before what not to do; the poison only where signs ask for it", () => {
    const drafts = (findings: readonly string[]): readonly EntryDraft[] => [
      {
        kind: "case-opened",
        at: "2026-06-19",
        about: ["case", "ap"],
        data: { code: "A", openedOn: "2026-06-19", question: "?", colonies: ["c1"] },
      },
      ...findings.map(
        (finding): EntryDraft => ({
          kind: "finding-recorded",
          at: "2026-06-19",
          about: ["case", "c1"],
          data: { colony: "c1", finding, state: "present", on: "2026-06-19" },
        }),
      ),
    ];
    const itemsOf = (findings: readonly string[]) => {
      const casebook = casebookOf(drafts(findings));
      return untilResult(casebook, casebook.cases.case ?? expect.fail("no case"), { today: "2026-06-20", words });
    };
    const keys = (findings: readonly string[]) => itemsOf(findings).map(({ key }) => key);
    // Unite, move, extract, reuse comb; whom to tell; feed without foreign honey.
    const always = [
      "ask-if-notifiable",
      "stay-in-place",
      "no-combs-reused",
      "check-brood-first",
      "no-foreign-honey",
      "test-frame-before-queen",
      "keep-queen-cells",
    ];
    expect(keys([])).toEqual(always);
    const poisoned = itemsOf(["dead_heap"]);
    expect(poisoned.filter(({ when }) => when === "today").map(({ key }) => key)).toEqual([
      "poison-call-today",
      "poisoned-bees-gloves",
      "ask-if-notifiable",
    ]);
    expect(itemsOf(["stores_exhausted"])[0]).toMatchObject({ key: "no-food-starvation", when: "today" });
    expect(itemsOf(["stores_exhausted"])[0]?.says).toMatch(/^c1: Feed today/);
  });

  const opened = (colonies: string[]): EntryDraft => ({
    kind: "case-opened",
    at: "2026-06-19",
    about: ["case", "ap"],
    data: { code: "A", openedOn: "2026-06-19", question: "?", colonies },
  });
  const seen = (colony: string, finding: string, on = "2026-06-19"): EntryDraft => ({
    kind: "finding-recorded",
    at: on,
    about: ["case", colony],
    data: { colony, finding, state: "present", on },
  });
  const stateOf = (colony: string, state: "alive" | "dead"): EntryDraft => ({
    kind: "colony-state-recorded",
    at: "2026-06-19",
    about: ["case", colony],
    data: { colony, state, on: "2026-06-19" },
  });
  const items = (drafts: readonly EntryDraft[], today = "2026-06-20") => {
    const casebook = casebookOf(drafts);
    return untilResult(casebook, casebook.cases.case ?? expect.fail("no case"), { today, words });
  };
  const sayOf = (key: string, ...given: Parameters<typeof items>) =>
    items(...given).find((item) => item.key === key)?.says;

  it("no new queen before a test comb, in every colony in which none is known to lay", () => {
    const queen = (...drafts: readonly EntryDraft[]) =>
      sayOf("test-frame-before-queen", [opened(["c1", "c2"]), ...drafts]);
    const [eggs1, eggs2] = [seen("c1", "normal_eggs_and_queen"), seen("c2", "normal_eggs_and_queen")];
    expect(queen()).toMatch(/^Do not requeen/);
    expect(queen(eggs1)).toMatch(/^c2: Do not requeen/);
    expect(queen(eggs1, eggs2)).toBeUndefined();
    // Said of the whole apiary it is seen in no colony.
    expect(queen(seen("whole-apiary", "normal_eggs_and_queen"))).toMatch(/^Do not requeen/);
    expect(queen(eggs1, eggs2, seen("c1", "roar_agitated"))).toMatch(/^c1: /);
    expect(queen(eggs1, eggs2, seen("c1", "roar_agitated", "2026-06-10"))).toBeUndefined();
    expect(queen(stateOf("c1", "dead"), eggs2)).toBeUndefined();
    // Two who saw the same later say no less than one; nor does what was said of all.
    const later = seen("c1", "multiple_eggs_per_cell", "2026-06-20");
    expect(queen(eggs1, eggs2, later, later)).toMatch(/^c1: /);
    expect(queen(eggs1, eggs2, seen("whole-apiary", "roar_agitated", "2026-06-20"))).toMatch(/^Do not requeen/);
  });

  it("crawling bees are not judged while a treatment is in, nor for 42 days after, then in the past tense", () => {
    const treated: EntryDraft = {
      kind: "treatment-recorded",
      at: "2026-05-01",
      about: ["ap", "t1"],
      data: { colonies: ["c1"], activeIngredient: "formic acid", on: "2026-05-01", off: "2026-05-10" },
    };
    const on = (today: string) =>
      items([opened(["c1"]), treated], today).filter(({ key }) =>
        ["wait-a-label-period", "crawlers-after-treatment"].includes(key),
      );
    expect(on("2026-05-10").map(({ key }) => key)).toEqual(["wait-a-label-period"]);
    expect(on("2026-05-11").map(({ key }) => key)).toEqual(["crawlers-after-treatment"]);
    const twice = items([opened(["c1"]), treated, treated], "2026-05-11").map(({ key }) => key);
    expect(twice).toContain("crawlers-after-treatment");
    expect(on("2026-06-21")[0]?.says).toBe(
      "A treatment was in the hives until lately and may have hurt bees: do not judge crawling ones before one label period has passed since it ended.",
    );
    expect(on("2026-06-22")).toEqual([]);
  });

  it("under a stop nothing is said of giving or moving comb, and nobody has to ask whom to tell", () => {
    const stopped = items([opened(["c1"]), seen("c1", "ropy_thread")]).map(({ key }) => key);
    expect(stopped).toEqual(["stay-in-place", "no-combs-reused", "no-foreign-honey", "keep-queen-cells"]);
  });
});
