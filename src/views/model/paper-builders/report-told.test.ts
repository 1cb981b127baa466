/** The report of a case that rests on what was told: no specimen was read here. */
import { describe, expect, it } from "vitest";
import { answerFlags, colony, following, opened, see, today } from "../../../../tests/case-story.ts";
import { differential } from "../../../reasoning/index.ts";
import { paperWordsOf } from "../../words/index.ts";
import { caseReport, colonyStateDraft, findingDrafts, ownReckoning, reportToRank, testResultDraft } from "../index.ts";

type Act = Parameters<typeof following>[1];

const words = paperWordsOf("en");
const start = opened();
const { casebook: empty } = following(start);
const [first, second] = [colony(empty, 1), colony(empty, 2)];
const result =
  (data: Omit<Parameters<typeof testResultDraft>[1], "on">): Act =>
  (casebook) => [testResultDraft(casebook.cases[start.caseId] as never, { ...data, on: "2026-02-26" }, today)];
const dissected = (positive: number): Act =>
  result({ test: "tracheal-dissection", colony: first, positive, examined: 30, laboratory: "State laboratory" });

function report(...acts: readonly Act[]) {
  const { casebook } = following(start, ...acts);
  const own = ownReckoning(casebook, null);
  const toRank = reportToRank(casebook, start.caseId);
  const ranked = toRank.map(({ input }) => {
    const reply = differential.differential({ ...input, draws: 50 });
    return reply.ok ? reply.value : null;
  });
  const asked = { today, words, isDemonstration: false, heads: [], own, toRank, ranked };
  return caseReport(casebook, start.caseId, asked) ?? expect.fail("no report");
}

const crawling = [answerFlags(start.caseId), see(start.caseId, second, "crawlers", "present")];

describe("a report of what was told", () => {
  it("tells a result with its day and laboratory, once, and names no day of sampling", () => {
    const { answer, below, sampledOn } = report(...crawling, dissected(0));
    expect(answer.heavy).toBe("1 result told, no bee read here.");
    // None of 30: Clopper–Pearson up to 11.6 in 100.
    expect(answer.rest).toBe(
      "WB-01, opening the breathing tubes, bee by bee, 26 February 2026, State laboratory: none found in 30 bees: 0 in 100 (0 to 12).",
    );
    expect(below).toEqual([]);
    expect(sampledOn).toBeNull();
  });

  it("says what a zero told could have missed, and what no count can say", () => {
    // 0.95 ^ 30 = 0.215 and 0.98 ^ 30 = 0.545.
    expect(report(...crawling, dissected(0)).missed).toEqual([
      "WB-01, opened elsewhere: none found in 30 bees. If 5 in every 100 bees had mites, such bees show none 21 times in 100; if 2 in every 100, 55 times.",
    ]);
    const dead = result({
      ...{ test: "tracheal-dissection", colony: first, positive: 0, examined: 50, aliveWhenTaken: false },
    });
    expect(report(...crawling, dead).missed[0]).toContain("Not alive when taken");
    expect(report(...crawling, result({ test: "spore-count", colony: first, sporesMillionsPerBee: 2 })).missed).toEqual(
      ["No bee was read here: what the results told could have missed, their laboratory can say."],
    );
    const { answer, missed } = report(...crawling);
    expect(answer.heavy).toBe("No bee was opened.");
    expect(missed.join()).toContain("only in bees that are opened");
  });

  it("ranks with the day and season of each colony, and tells a neighbour's find beside it without an errand", () => {
    const [cause] = report(...crawling, dissected(4)).causes.filter((each) => each.colony === "WB-02");
    expect(cause?.season).toBe("Looked at until 2 March 2026, in spring.");
    expect(cause?.notes).toEqual([
      "Tracheal mites were found in WB-01 of this apiary on 26 February 2026, so they count as found around the other colonies.",
    ]);
  });

  it("beside a stop says to report, and not that it cannot tell", () => {
    const rope: Act = (casebook) =>
      findingDrafts({
        state: casebook.cases[start.caseId] as never,
        ...{ key: first, finding: "ropy_thread", exclusiveWith: null, answer: "present", on: today },
      });
    const { causes, toDo } = report(...crawling, rope);
    expect(causes.map(({ colony: code }) => code)).toEqual(["WB-01", "WB-02"]);
    for (const { verdict } of causes) expect(verdict).toMatch(/^Report first/);
    expect(toDo[0]?.what).toContain("Stop and report");
  });

  it("says what cannot wait, with or without a stop", () => {
    const hungry = see(start.caseId, second, "stores_exhausted", "present");
    expect(report(...crawling, hungry).toDo[0]?.what).toMatch(/^WB-02: Feed today/);
    const rope: Act = (casebook) =>
      findingDrafts({
        state: casebook.cases[start.caseId] as never,
        ...{ key: first, finding: "ropy_thread", exclusiveWith: null, answer: "present", on: today },
      });
    const whats = report(...crawling, hungry, rope).toDo.map(({ what }) => what);
    expect(whats[0]).toContain("Stop and report");
    expect(whats.at(-1)).toMatch(/^WB-02: Feed today/);
  });

  it("keeps apart what was answered for a day after the colony had died", () => {
    const dead: Act = (casebook) => [
      colonyStateDraft(casebook.cases[start.caseId] as never, second, {
        state: "dead",
        on: today,
        diedOn: "2026-02-20",
      }),
    ];
    const { signs } = report(...crawling, see(start.caseId, second, "stores_ample", "present"), dead);
    expect(signs[0]).toEqual({
      colony: "WB-02",
      says: "Dead since 20 February 2026. Present: plenty of food. Answered for a day after it had died, and left out: crawling bees.",
    });
  });
});
