/** A stop, whether by a finding or by a red flag, and the record of who was told of it. */
import { describe, expect, it } from "vitest";
import { colony, following, opened, today } from "../../../tests/case-story.ts";
import type { EntryDraft } from "../../journal/index.ts";
import { sentenceOf, wordsOf } from "../words/index.ts";
import {
  casesView,
  closingDraft,
  differentialInput,
  findingDrafts,
  handOnDraft,
  liftedDraft,
  liftTakenBackDraft,
  ownStops,
  readClosing,
  readLifted,
  readTold,
  redFlagDraft,
  reportsTold,
  spineView,
  stopNotices,
  stopsLifted,
  toldDrafts,
  untoldStops,
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
const stopsOf = ({ casebook, state }: ReturnType<typeof following>) => stopNotices(casebook, state, words);
const tell =
  (fields: Record<string, string> = {}): Parameters<typeof following>[1] =>
  (book) => {
    const state = book.cases[start.caseId] as never;
    const read = readTold(
      { toldWhom: "competent authority", toldOn: "2026-03-02", answerBy: "2026-03-05", reference: "B-12", ...fields },
      { stops: ownStops(book, state), today },
    );
    if (!read.ok) throw new Error(read.problems[0]?.code);
    return toldDrafts(state, read.value);
  };

describe("what stops", () => {
  it("a red flag alone stops, and says its question once", () => {
    const [notice, ...others] = stopsOf(following(start, flag("brood-ropes-or-smells")));
    expect(others).toEqual([]);
    expect(notice).toMatchObject({
      key: "brood-ropes-or-smells",
      because: "",
      conditions: ["american_foulbrood"],
    });
    expect(stopsOf(following(start, flag("brood-ropes-or-smells", "absent")))).toEqual([]);
  });

  it("a finding covers its own flag and no other", () => {
    const told = following(start, ropes, flag("brood-ropes-or-smells"), flag("exotic-signs"));
    expect(stopsOf(told).map((notice) => notice.key)).toEqual(["rope-american-foulbrood", "exotic-signs"]);
  });

  it("names the colony it was seen in", () => {
    expect(stopsOf(following(start, ropes)).map(({ because }) => because)).toEqual([
      "Ropy thread from a dead larva: WB-01",
    ]);
  });

  it("the list of cases says stop for a finding as for a flag", () => {
    const { casebook } = following(start, ropes);
    expect(casesView({ casebook, today, who: null, words }).stops[0]?.act).toContain("Tell the competent authority");
  });
});

const found =
  (test: string, which?: string[]): Parameters<typeof following>[1] =>
  () => [
    {
      kind: "test-result-recorded",
      at: today,
      about: [start.caseId],
      data: { test, colony: null, on: today, result: "found", ...(which ? { which } : {}) },
    },
  ];

const lift =
  (fields: Record<string, string> = {}): Parameters<typeof following>[1] =>
  (book) => {
    const state = book.cases[start.caseId] as never;
    const stops = stopNotices(book, state, words);
    const read = readLifted(
      {
        ...{ stop: "rope-american-foulbrood", role: "reference-laboratory", liftedBy: "laboratory 1" },
        ...{ laboratoryReference: "L-26-7", liftedOn: today, ...fields },
      },
      { stops, today },
    );
    if (!read.ok) throw new Error(read.problems.map(({ field }) => field).join());
    return [liftedDraft(state, read.value)];
  };

describe("a stop that was lifted", () => {
  const first = colony(following(start).casebook, 1);
  const noted = (...acts: Parameters<typeof following>[1][]) => {
    const { casebook, state } = following(start, ropes, ...acts);
    return differentialInput(casebook, state, first).notes.map(({ code }) => code);
  };
  const noneFound: Parameters<typeof following>[1] = () => [
    {
      kind: "test-result-recorded",
      at: today,
      about: [start.caseId, first],
      data: { test: "culture-pcr", colony: first, on: today, result: "none-found" },
    },
  ];

  it("says that the ranking does not know the laboratory's result, until it is on record", () => {
    expect(noted()).not.toContain("lift-not-weighed");
    expect(noted(lift())).toContain("lift-not-weighed");
    expect(noted(lift(), noneFound)).not.toContain("lift-not-weighed");
    // What the stop followed from, and what was known before it, is not what the laboratory found on it.
    const known =
      (on: string, result: "found" | "none-found"): Parameters<typeof following>[1] =>
      () => [
        {
          kind: "test-result-recorded",
          at: on,
          about: [start.caseId, first],
          data: { test: "rope-test", colony: first, on, result },
        },
      ];
    expect(noted(known(today, "found"), lift())).toContain("lift-not-weighed");
    expect(noted(known("2026-02-01", "none-found"), lift())).toContain("lift-not-weighed");
  });
});

describe("results that stop", () => {
  it.each([
    ["culture-pcr", undefined, ["spores-american-foulbrood"]],
    ["rope-test", undefined, ["rope-american-foulbrood"]],
    ["uncap-brood", ["tropilaelaps"], ["fast-mites-tropilaelaps"]],
    ["uncap-brood", ["varroa_pms"], []],
    ["varroa-wash", undefined, []],
  ] as const)("%s, which found %s, stops with %s", (test, which, keys) => {
    const told = following(start, found(test, which ? [...which] : undefined));
    expect(stopsOf(told).map(({ key }) => key)).toEqual(keys);
    expect(stopsOf(told).every(({ because }) => because !== "")).toBe(true);
  });

  it("stops each case of the apiary, and no case of another one", () => {
    const told = following(start, ropes);
    const other = (apiary: string): EntryDraft => ({
      kind: "case-opened",
      at: today,
      about: ["case-two", apiary],
      data: {
        ...{ code: "TV-26-020", openedOn: today, question: "And these?", waitsOn: "inspector 2", due: today },
        ...{ colonies: [] },
      },
    });
    const beside = following(start, ropes, () => [other(told.state.apiary ?? "")]);
    expect(stopNotices(beside.casebook, beside.casebook.cases["case-two"] as never, words)).toMatchObject([
      { key: "rope-american-foulbrood", elsewhere: { caseId: start.caseId, code: "TV-26-014" } },
    ]);
    const away = following(start, ropes, () => [other("apiary-two")]);
    expect(stopNotices(away.casebook, away.casebook.cases["case-two"] as never, words)).toEqual([]);
    expect(casesView({ casebook: beside.casebook, today, who: null, words }).stops).toHaveLength(1);
  });
});

describe("a lifted stop", () => {
  it("stands no more, and is told with its role and laboratory reference", () => {
    const { casebook, state } = following(start, ropes, lift());
    expect(stopNotices(casebook, state, words)).toEqual([]);
    expect(stopsLifted(casebook, state)).toMatchObject([
      { key: "rope-american-foulbrood", lifted: { role: "reference-laboratory", laboratoryReference: "L-26-7" } },
    ]);
  });

  it("stops anew at a sign or result that was not known when it was lifted", () => {
    const again: Parameters<typeof following>[1] = (book) =>
      findingDrafts({
        ...{ state: book.cases[start.caseId] as never, key: colony(book, 2), finding: "ropy_thread" },
        ...{ exclusiveWith: null, answer: "present", on: today },
      });
    expect(stopsOf(following(start, ropes, lift(), again)).map(({ key }) => key)).toEqual(["rope-american-foulbrood"]);
    expect(stopsOf(following(start, ropes, lift(), found("rope-test")))).toHaveLength(1);
    expect(stopsOf(following(start, ropes, lift(), again, lift()))).toEqual([]);
  });

  it.each([
    ["role", { role: "" }],
    ["laboratoryReference", { laboratoryReference: " " }],
    ["liftedBy", { liftedBy: "" }],
    ["stop", { stop: "fast-mites-tropilaelaps" }],
    ["liftedOn", { liftedOn: "2026-03-03" }],
  ])("is refused without %s", (field, fields) => {
    expect(() => following(start, ropes, lift(fields))).toThrow(field);
  });
});

describe("closing under a stop", () => {
  const closing = ({ casebook, state }: ReturnType<typeof following>) =>
    readClosing({ outcome: "without-answer" }, { today, causes: [], untold: untoldStops(casebook, state) });

  it("is refused while nobody is recorded as told of it", () => {
    const open = following(start, ropes);
    expect(closing(open).problems.map((each) => sentenceOf(each, words))).toEqual([
      "Stop and report stands and nobody is recorded as told of it: American foulbrood. Write down who was told, or that it was lifted, first.",
    ]);
    expect(closing(following(start, ropes, tell())).ok).toBe(true);
    expect(closing(following(start)).ok).toBe(true);
  });

  it("is refused for what was seen after the report", () => {
    const later = following(start, ropes, tell(), found("uncap-brood", ["tropilaelaps"]));
    expect(closing(later).problems.map(({ slots }) => slots)).toEqual([{ what: "Tropilaelaps mites" }]);
    expect(closing(following(start, ropes, found("uncap-brood", ["tropilaelaps"]), tell())).ok).toBe(true);
  });

  it("is refused where a note beside whom the case waits on is all there is", () => {
    const noted: Parameters<typeof following>[1] = (book) => [
      handOnDraft(
        book.cases[start.caseId] as never,
        { waitsOn: "competent authority", due: "2026-03-20", note: "Told by telephone." },
        today,
      ),
    ];
    expect(closing(following(start, ropes, noted)).ok).toBe(false);
    expect(closing(following(start, ropes, noted, tell())).ok).toBe(true);
  });
});

describe("what is on record of a stop", () => {
  it("a red flag that follows a lifted notice stops anew, and one that stood beside it does not", () => {
    const after = following(start, ropes, lift(), flag("brood-ropes-or-smells"));
    expect(stopsOf(after).map(({ key }) => key)).toEqual(["rope-american-foulbrood"]);
    expect(stopsOf(following(start, ropes, flag("brood-ropes-or-smells"), lift()))).toEqual([]);
  });

  it("a lift is not of a day before the sign, and can be taken back", () => {
    expect(() => following(start, ropes, lift({ liftedOn: "2026-03-01" }))).toThrow("liftedOn");
    const takenBack: Parameters<typeof following>[1] = (book) =>
      stopsLifted(book, book.cases[start.caseId] as never).map((stop) =>
        liftTakenBackDraft(book.cases[start.caseId] as never, stop, today),
      );
    expect(stopsOf(following(start, ropes, lift(), takenBack))).toHaveLength(1);
  });

  it("stands where two people differ on the sign", () => {
    const twice = following(start, ropes, (book) => [
      {
        kind: "finding-recorded",
        at: today,
        about: [start.caseId, colony(book, 1)],
        data: { colony: colony(book, 1), finding: "ropy_thread", state: "absent", on: today },
      },
    ]);
    expect(stopsOf(twice).map(({ key }) => key)).toEqual(["rope-american-foulbrood"]);
  });

  it("counts what was seen in most colonies, as the ranking does", () => {
    const seen =
      (number: number, finding: string): Parameters<typeof following>[1] =>
      (book) =>
        findingDrafts({
          ...{ state: book.cases[start.caseId] as never, key: colony(book, number), finding },
          ...{ exclusiveWith: null, answer: "present", on: today },
        });
    const all = (numbers: readonly number[]) =>
      numbers.flatMap((number) => [seen(number, "onset_sudden"), seen(number, "dead_heap")]);
    expect(stopsOf(following(start, ...all([1, 2, 3, 4, 5]))).map(({ key }) => key)).toEqual(["sudden-heap-poisoning"]);
    expect(stopsOf(following(start, ...all([1])))).toEqual([]);
  });

  it("holds for mites where the region is said to be without them", () => {
    const region: Parameters<typeof following>[1] = (book) => [
      {
        kind: "region-recorded",
        at: today,
        about: [book.cases[start.caseId]?.apiary ?? ""],
        data: {
          ...{ varroa: "absent", acarapisWoodi: "unknown", smallHiveBeetle: "absent", tropilaelaps: "absent" },
          ...{ vespa: "absent", source: "an island without varroa, invented" },
        },
      },
    ];
    const washed: Parameters<typeof following>[1] = () => [
      {
        kind: "test-result-recorded",
        at: today,
        about: [start.caseId],
        data: { test: "varroa-wash", colony: null, on: today, mites: 2, bees: 300 },
      },
    ];
    expect(stopsOf(following(start, region, washed)).map(({ key, because }) => [key, because])).toEqual([
      ["free-region-varroa_pms", "mite wash"],
    ]);
    expect(stopsOf(following(start, washed))).toEqual([]);
  });

  it("is shown once in the list for an apiary that stops by a closed case alone", () => {
    const more = (id: string): EntryDraft => ({
      kind: "case-opened",
      at: today,
      about: [id, following(start).state.apiary ?? ""],
      data: { code: id, openedOn: today, question: "And these?", waitsOn: "inspector 2", due: today, colonies: [] },
    });
    const closed: Parameters<typeof following>[1] = (book) => [
      closingDraft(
        book.cases[start.caseId] as never,
        { on: today, outcome: "without-answer", confirmedCauses: [] },
        today,
      ),
    ];
    const { casebook } = following(start, ropes, tell(), closed, () => [more("case-two"), more("case-three")]);
    const { stops } = casesView({ casebook, today, who: null, words });
    expect(stops).toHaveLength(1);
    expect(stops[0]?.act).toContain("Told on 2 March 2026");
  });
});

describe("who was told", () => {
  it("moves the case to whom was told, keeps day and reference, and the stop stands", () => {
    const { casebook, state } = following(start, flag("brood-ropes-or-smells"), tell());
    expect(reportsTold(casebook, state, words)).toEqual({
      reports: ["Told on 2 March 2026: competent authority, reference B-12."],
      missing: null,
    });
    expect(spineView(casebook, start.caseId, words)?.waits).toMatchObject({
      who: "competent authority",
      due: "2026-03-05",
    });
    expect(stopsOf({ casebook, state })).toHaveLength(1);
    expect(casesView({ casebook, today, who: null, words }).stops[0]?.act).toContain("Told on 2 March 2026");
  });

  it("a further report is added, and handing the case on loses neither", () => {
    const { casebook, state } = following(
      start,
      flag("brood-ropes-or-smells"),
      tell(),
      tell({ toldWhom: "laboratory", reference: "" }),
      (book) => [handOnDraft(book.cases[start.caseId] as never, { waitsOn: "keeper", due: "2026-03-20" }, today)],
    );
    expect(reportsTold(casebook, state, words).reports).toEqual([
      "Told on 2 March 2026: competent authority, reference B-12.",
      "Told on 2 March 2026: laboratory.",
    ]);
    expect(state.handedOn?.candidates.map((each) => each.value.waitsOn)).toEqual(["keeper"]);
  });

  it("a note beside whom the case waits on tells nobody of a stop, and a report nobody of a later sign", () => {
    const handed: Parameters<typeof following>[1] = (book) => [
      handOnDraft(
        book.cases[start.caseId] as never,
        { waitsOn: "inspector 1", due: "2026-03-20", note: "Outcome after winter." },
        today,
      ),
    ];
    const noted = following(start, flag("brood-ropes-or-smells"), handed);
    expect(reportsTold(noted.casebook, noted.state, words)).toEqual({
      reports: [],
      missing: "Nobody is recorded as told yet.",
    });
    expect(spineView(noted.casebook, start.caseId, words)?.waits.says).toBe(
      "Waits on inspector 1, due 20 March: Outcome after winter.",
    );
    const later = following(start, flag("brood-ropes-or-smells"), tell(), ropes);
    expect(reportsTold(later.casebook, later.state, words)).toMatchObject({
      reports: ["Told on 2 March 2026: competent authority, reference B-12."],
      missing: "Nobody is recorded as told of the newest sign yet.",
    });
    const view = casesView({ casebook: later.casebook, today, who: null, words });
    expect(view.stops[0]?.act).toContain("told of the newest sign yet.");
  });

  it("refuses a day to come, an answer due before it was asked, and nobody", () => {
    const codes = (fields: Record<string, string>) =>
      readTold(
        { toldWhom: "authority", toldOn: "2026-03-02", answerBy: "2026-03-05", ...fields },
        { stops: [{ answers: [{ entry: "e", at: "2026-03-01" }] }], today },
      ).problems.map((trouble) => [trouble.code, trouble.field]);
    expect(codes({})).toEqual([]);
    expect(codes({ toldOn: "2026-03-03" })).toEqual([["day-to-come", "toldOn"]]);
    expect(codes({ answerBy: "2026-03-01" })).toEqual([["due-before-told", "answerBy"]]);
    expect(codes({ toldWhom: " " })).toEqual([["field-empty", "toldWhom"]]);
  });
});
