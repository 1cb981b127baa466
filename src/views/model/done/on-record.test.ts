/** A sudden heap in most colonies: a stop, or where a treatment may explain it something to do today. */
import { expect, it } from "vitest";
import { casebookOf } from "../../../../tests/casebook-of.ts";
import type { EntryDraft } from "../../../journal/index.ts";
import { wordsOf } from "../../words/index.ts";
import { stopNotices, untilResult } from "../index.ts";

const words = wordsOf("en");
const at = "2026-09-19";
const seen = (colony: string, ...findings: readonly string[]): readonly EntryDraft[] =>
  findings.map((finding) => ({
    kind: "finding-recorded",
    at,
    about: ["case", colony],
    data: { colony, finding, state: "present", on: at },
  }));
const flagged: EntryDraft = {
  kind: "red-flag-answered",
  at,
  about: ["case", "sudden-mass-death"],
  data: { flag: "sudden-mass-death", state: "present", on: at },
};
const told = (...drafts: readonly EntryDraft[]) => {
  const opened: EntryDraft = {
    kind: "case-opened",
    at,
    about: ["case", "ap"],
    data: { code: "A", openedOn: at, question: "?", colonies: ["c1", "c2"] },
  };
  const casebook = casebookOf([opened, ...drafts]);
  const state = casebook.cases.case ?? expect.fail("no case");
  return {
    stops: stopNotices(casebook, state, words).map(({ key }) => key),
    first: untilResult(casebook, state, { today: at, words })[0]?.says,
    all: untilResult(casebook, state, { today: at, words }).map(({ key }) => key),
  };
};
const heap = seen("c1", "dead_heap", "onset_sudden", "most_colonies");
const poisoning = ["sudden-heap-poisoning"];

it("stops without a treatment, with spraying seen in any colony, or where one colony has no treatment", () => {
  expect(told(...heap).stops).toEqual(poisoning);
  const treated = seen("c1", "recent_hive_treatment");
  expect(told(...heap, ...treated, ...seen("whole-apiary", "recent_spray")).stops).toEqual(poisoning);
  expect(told(...heap, ...treated, ...seen("c2", "recent_spray")).stops).toEqual(poisoning);
  const other = seen("c2", "dead_heap", "onset_sudden", "most_colonies");
  expect(told(...heap, ...treated, ...other).stops).toEqual(poisoning);
});

it("with a treatment alone it stops nothing, its red flag neither, and says first what to look at", () => {
  const { stops, first } = told(...heap, ...seen("whole-apiary", "recent_hive_treatment"), flagged);
  expect(stops).toEqual([]);
  expect(first).toMatch(/^c1: A treatment is in the hives/);
});

it("a treatment that somebody disputes, and a sign of poison, let it stop all the same", () => {
  const treated = seen("c1", "recent_hive_treatment");
  const disputed = { ...(treated[0] as EntryDraft), data: { ...treated[0]?.data, state: "absent" } } as EntryDraft;
  expect(told(...heap, ...treated, disputed).stops).toEqual(poisoning);
  expect(told(...heap, ...treated, ...seen("c2", "tongue_out")).stops).toEqual(poisoning);
});

it("what may be of a treatment does not also ask to call the authority today", () => {
  const { all } = told(...heap, ...seen("whole-apiary", "recent_hive_treatment"));
  expect(all).toContain("sudden-heap-poisoning");
  expect(all).not.toContain("poison-call-today");
  expect(told(...seen("c1", "dead_heap")).all).toContain("poison-call-today");
});

it("a red flag alone stops whatever is in the hives: nobody has looked at the heap yet", () => {
  expect(told(flagged, ...seen("whole-apiary", "recent_hive_treatment")).stops).toEqual(["sudden-mass-death"]);
});
