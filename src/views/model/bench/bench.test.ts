/** The bench over the records: where vials stand, what a reading amounts to, what acts become. */
import { describe, expect, it } from "vitest";
import { casebookOf } from "../../../../tests/casebook-of.ts";
import { emptyCasebook } from "../../../casebook/index.ts";
import type { EntryDraft } from "../../../journal/index.ts";
import { wordsOf } from "../../words/index.ts";
import {
  type BenchView,
  beeDraft,
  benchList,
  benchView,
  correctionDraft,
  proposedStop,
  readCorrection,
  readReception,
  receptionDraft,
  startDraft,
  undoDraft,
} from "../index.ts";

const words = wordsOf("en");
const today = "2026-03-04";

const places: readonly EntryDraft[] = [
  { kind: "apiary-registered", at: today, about: ["ap"], data: { code: "WB", name: "Withen Bank", place: "Tarrow" } },
  { kind: "colony-registered", at: today, about: ["ap", "c7"], data: { code: "WB-07" } },
  {
    kind: "case-opened",
    at: today,
    about: ["case", "ap"],
    data: { code: "TV-26-014", openedOn: today, question: "Mites?", colonies: ["c7"] },
  },
];
const vial = (id: string, code: string): EntryDraft => ({
  kind: "specimen-labelled",
  at: today,
  about: [id, "case", "c7"],
  data: {
    code,
    case: "case",
    colony: "c7",
    takenOn: "2026-03-03",
    from: "E",
    preservative: "frozen",
    purpose: "estimate",
  },
});
const arrived = (id: string, bees: number): EntryDraft => ({
  kind: "specimen-received",
  at: today,
  about: [id],
  data: {
    on: today,
    takenOn: "2026-03-03",
    condition: 0,
    beesReceived: bees,
    aliveWhenTaken: true,
    acceptance: "accepted",
  },
});
const groupOf = (drafts: readonly EntryDraft[], id: string) =>
  benchList(casebookOf(drafts), words).groups.find((group) => group.rows.some((row) => row.id === id))?.key;
const view = (drafts: readonly EntryDraft[], id = "s1"): BenchView =>
  benchView(casebookOf(drafts), id, words) ?? expect.fail("no vial");

describe("the list of vials", () => {
  it("says in words that there are none", () => {
    expect(benchList(emptyCasebook, words)).toMatchObject({ isEmpty: true, answer: words.bench.none });
  });

  it("two vials with one code are held, and the others go on", () => {
    const drafts = [...places, vial("s1", "BV-014"), vial("s2", "BV-014"), vial("s3", "BV-015"), arrived("s3", 50)];
    expect(groupOf(drafts, "s1")).toBe("held");
    expect(groupOf(drafts, "s2")).toBe("held");
    expect(groupOf(drafts, "s3")).toBe("waits");
  });

  it("a vial goes from not here to waiting, being read, locked", () => {
    const labelled = [...places, vial("s1", "TV26-0147")];
    expect(groupOf(labelled, "s1")).toBe("to-arrive");
    const here = [...labelled, arrived("s1", 50)];
    expect(groupOf(here, "s1")).toBe("waits");
    const begun = [
      ...here,
      startDraft({
        view: view(here),
        start: { reader: "reader 1", target: 50, isBlind: false },
        readingId: "r1",
        method: "m",
        today,
      }),
    ];
    expect(groupOf(begun, "s1")).toBe("reading");
  });
});

describe("receiving a vial", () => {
  const fields = {
    on: today,
    takenOn: "2026-03-03",
    condition: "3",
    beesReceived: "30",
    aliveWhenTaken: "no",
    acceptance: "accepted-with-limits",
    reason: "18 mouldy",
  };

  it("a reason is needed unless it is accepted without limits", () => {
    expect(readReception({ ...fields, reason: "" }, today)).toMatchObject({
      ok: false,
      problems: [{ field: "reason" }],
    });
    expect(readReception({ ...fields, acceptance: "accepted", reason: "" }, today).ok).toBe(true);
  });

  it("bees cannot be taken after they came", () => {
    const code = (days: { readonly on?: string; readonly takenOn?: string }) => {
      const read = readReception({ ...fields, ...days }, today);
      return read.ok ? null : read.problems.map((each) => each.code);
    };
    expect(code({ on: "2026-03-01", takenOn: "2026-03-02" })).toEqual(["taken-after-received"]);
    expect(code({ takenOn: "2026-03-05" })).toEqual(["day-to-come"]);
    expect(code({ on: "2027-01-01" })).toEqual(["day-to-come"]);
    expect(code({ takenOn: "1987-03-03" })).toEqual(["day-long-ago"]);
    expect(code({})).toBeNull();
  });

  it("a second receipt replaces the first", () => {
    const here = [...places, vial("s1", "TV26-0147"), arrived("s1", 50)];
    const body = readReception(fields, today);
    if (!body.ok) return expect.fail("not read");
    const draft = receptionDraft(view(here), body.value, today);
    expect(draft.replaces).toHaveLength(1);
    expect(view([...here, draft]).received).toMatchObject({ condition: 3, beesReceived: 30 });
  });
});

describe("how many bees", () => {
  it("the number of the newest plan for the colony stands; none without a plan", () => {
    const planned = (id: string, bees: number, on: string): EntryDraft => ({
      kind: "sampling-planned",
      at: on,
      about: ["case", id],
      data: {
        purpose: "estimate",
        colonies: ["c7"],
        beesPerColony: bees,
        from: "E",
        preservative: "frozen",
        designPrevalence: 0.05,
        confidence: 0.95,
        sensitivity: 1,
        on,
      },
    });
    const here = [...places, vial("s1", "TV26-0147"), arrived("s1", 80)];
    expect(view(here).plannedBees).toBeNull();
    const two = [...here, planned("p1", 50, "2026-03-01"), planned("p2", 59, "2026-03-02")];
    expect(view(two).plannedBees).toBe(59);
  });
});

describe("a reading", () => {
  const here = [...places, vial("s1", "TV26-0147"), arrived("s1", 3)];
  const start = (target: number, isBlind = false) =>
    startDraft({
      view: view(here),
      start: { reader: "reader 1", target, isBlind },
      readingId: "r1",
      method: "m",
      today,
    });
  const bee = (
    drafts: readonly EntryDraft[],
    left: "clear" | "mites" | "unreadable",
    right: "clear" | "unreadable",
  ) => {
    const open = view(drafts).open ?? expect.fail("no reading");
    return [
      ...drafts,
      beeDraft("s1", open, { bee: open.next, read: { lost: false, left, right, flagged: false }, today }),
    ];
  };

  it("resumes at the exact bee and remembers the last one", () => {
    const two = bee(bee([...here, start(50)], "clear", "clear"), "mites", "clear");
    expect(view(two).open).toMatchObject({ next: 3, last: { bee: 2, what: "left mites, tube clear; right clear" } });
  });

  it("an undone bee no longer counts and its number is read again; its entry stays in the journal", () => {
    const two = bee(bee([...here, start(50)], "clear", "clear"), "mites", "clear");
    const open = view(two).open ?? expect.fail("no reading");
    const undo = undoDraft("s1", open, { bee: open.last ?? expect.fail("no bee"), today });
    expect(undo.kind).toBe("entry-withdrawn");
    expect(view([...two, undo]).open).toMatchObject({ next: 2, tally: { read: 1, positive: 0 } });
  });

  it("a bee read wrongly is read anew under its number; the others and the order stay", () => {
    const two = bee(bee([...here, start(50)], "mites", "clear"), "clear", "clear");
    const open = view(two).open ?? expect.fail("no reading");
    const first = open.bees[0] ?? expect.fail("no bee");
    const read = readCorrection({ left: "clear", right: "clear" }, first.read);
    if (!read.ok) return expect.fail("not read");
    const anew = correctionDraft("s1", open, { bee: first, read: read.value, today });
    expect(view([...two, anew]).open).toMatchObject({ next: 3, tally: { read: 2, positive: 0 } });
    expect(readCorrection({ left: "", right: "clear" }, first.read).ok).toBe(false);
    expect(readCorrection({ lost: "on" }, first.read)).toMatchObject({ ok: true, value: { lost: true, left: null } });
  });

  it("an unreadable bee does not count towards the target; the vial can be empty before", () => {
    const three = bee(bee(bee([...here, start(3)], "clear", "clear"), "unreadable", "unreadable"), "mites", "clear");
    const open = view(three).open ?? expect.fail("no reading");
    expect(open).toMatchObject({ isTargetReached: false, isVialEmpty: true, tally: { read: 2, unreadable: 1 } });
    expect(proposedStop(open)).toBe("no-more-bees");
  });

  it("a blind reading has a number of its own", () => {
    expect(view([...here, start(3, true)]).open).toMatchObject({ isBlind: true, started: { blindNumber: "R-1" } });
  });
});
