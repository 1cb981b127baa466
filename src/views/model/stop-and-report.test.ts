/** A stop, whether by a finding or by a red flag, and the record of who was told of it. */
import { describe, expect, it } from "vitest";
import { colony, following, opened, today } from "../../../tests/case-story.ts";
import { wordsOf } from "../words/index.ts";
import {
  casesView,
  findingDrafts,
  handOnDraft,
  readTold,
  redFlagDraft,
  reportsTold,
  spineView,
  stopNotices,
  toldDraft,
} from "./index.ts";

const words = wordsOf("en");
const start = opened();
const flag = (id: "brood-ropes-or-smells" | "exotic-signs", answer: "present" | "absent" = "present") =>
  ((book) => [redFlagDraft(book.cases[start.caseId] as never, id, answer, today)]) satisfies Parameters<
    typeof following
  >[1];
const ropes: Parameters<typeof following>[1] = (book) =>
  findingDrafts({
    state: book.cases[start.caseId] as never,
    key: colony(book, 1),
    finding: "ropy_thread",
    exclusiveWith: null,
    answer: "present",
    on: today,
  });
const told = (fields: Record<string, string> = {}) => {
  const read = readTold(
    { toldWhom: "competent authority", toldOn: "2026-03-01", answerBy: "2026-03-05", reference: "B-12", ...fields },
    today,
  );
  if (!read.ok) throw new Error(read.problems[0]?.code);
  return read.value;
};

describe("what stops", () => {
  it("a red flag alone stops, and says its question once", () => {
    const [notice, ...others] = stopNotices(following(start, flag("brood-ropes-or-smells")).state);
    expect(others).toEqual([]);
    expect(notice).toMatchObject({
      key: "brood-ropes-or-smells",
      because: "",
      conditions: ["american_foulbrood"],
    });
    expect(stopNotices(following(start, flag("brood-ropes-or-smells", "absent")).state)).toEqual([]);
  });

  it("a finding covers its own flag and no other", () => {
    const { state } = following(start, ropes, flag("brood-ropes-or-smells"), flag("exotic-signs"));
    expect(stopNotices(state).map((notice) => notice.key)).toEqual(["rope-american-foulbrood", "exotic-signs"]);
  });

  it("the list of cases says stop for a finding as for a flag", () => {
    const { casebook } = following(start, ropes);
    expect(casesView({ casebook, today, who: null, words }).stops[0]?.act).toContain("tell the competent authority");
  });
});

describe("who was told", () => {
  it("moves the case to whom was told, keeps day and reference, and the stop stands", () => {
    const { casebook, state } = following(start, flag("brood-ropes-or-smells"), (book) => [
      toldDraft(book.cases[start.caseId] as never, told(), words),
    ]);
    expect(reportsTold(state)).toEqual(["Told on 1 March 2026: competent authority, reference B-12."]);
    expect(spineView(casebook, start.caseId, words)?.waits).toMatchObject({
      who: "competent authority",
      due: "2026-03-05",
    });
    expect(stopNotices(state)).toHaveLength(1);
    expect(casesView({ casebook, today, who: null, words }).stops[0]?.act).toContain("Told on 1 March 2026");
  });

  it("a further report is added, and handing the case on loses neither", () => {
    const { state } = following(
      start,
      (book) => [toldDraft(book.cases[start.caseId] as never, told(), words)],
      (book) => [toldDraft(book.cases[start.caseId] as never, told({ toldWhom: "laboratory", reference: "" }), words)],
      (book) => [handOnDraft(book.cases[start.caseId] as never, { waitsOn: "keeper", due: "2026-03-20" }, today)],
    );
    expect(reportsTold(state)).toEqual([
      "Told on 1 March 2026: competent authority, reference B-12.",
      "Told on 1 March 2026: laboratory.",
    ]);
    expect(state.handedOn?.candidates.map((each) => each.value.waitsOn)).toEqual(["keeper"]);
  });

  it("refuses a day to come, an answer due before it was asked, and nobody", () => {
    const codes = (fields: Record<string, string>) =>
      readTold({ toldWhom: "authority", toldOn: "2026-03-02", answerBy: "2026-03-05", ...fields }, today).problems.map(
        (trouble) => [trouble.code, trouble.field],
      );
    expect(codes({})).toEqual([]);
    expect(codes({ toldOn: "2026-03-03" })).toEqual([["day-to-come", "toldOn"]]);
    expect(codes({ answerBy: "2026-03-01" })).toEqual([["due-before-told", "answerBy"]]);
    expect(codes({ toldWhom: " " })).toEqual([["field-empty", "toldWhom"]]);
  });
});
