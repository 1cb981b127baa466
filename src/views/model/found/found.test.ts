/** Question 4 over the records: sentences of the acceptance cases, what stays outside, what weakens a zero. */
import { describe, expect, it } from "vitest";
import { casebookOf, demonstrationCasebook } from "../../../../tests/casebook-of.ts";
import type { BodyOf, EntryDraft, Trunk } from "../../../journal/index.ts";
import { wordsOf } from "../../words/index.ts";
import { foundView, missedView, otherTests, qualityNotes, readTestResult, resultSays } from "../index.ts";

const words = wordsOf("en");
const day = "2026-07-10";

interface Vial {
  readonly id: string;
  readonly bees: readonly (readonly [Trunk, Trunk])[];
  readonly received?: Partial<BodyOf<"specimen-received">>;
  readonly takenOn?: string;
}

const place: readonly EntryDraft[] = [
  {
    kind: "apiary-registered",
    at: day,
    about: ["ap"],
    data: { code: "QH", name: "Quillhaven", place: "Quill", latitude: 45 },
  },
  { kind: "colony-registered", at: day, about: ["ap", "c1"], data: { code: "QH-01" } },
  { kind: "colony-registered", at: day, about: ["ap", "c2"], data: { code: "QH-02" } },
  {
    kind: "case-opened",
    at: day,
    about: ["case", "ap"],
    data: { code: "QU-26-001", openedOn: day, question: "Mites?", colonies: ["c1", "c2"] },
  },
];

const vial = ({ id, bees, received = {}, takenOn = day }: Vial): readonly EntryDraft[] => [
  {
    kind: "specimen-labelled",
    at: day,
    about: [id, "case", "c1"],
    data: { code: id, case: "case", colony: "c1", takenOn, from: "E", preservative: "frozen", purpose: "estimate" },
  },
  {
    kind: "specimen-received",
    at: day,
    about: [id],
    data: {
      on: takenOn,
      takenOn,
      condition: 0,
      beesReceived: bees.length,
      aliveWhenTaken: true,
      acceptance: "accepted",
      ...received,
    },
  },
  {
    kind: "reading-started",
    at: day,
    about: [id, `${id}-r`],
    data: { reading: `${id}-r`, reader: "reader 1", on: takenOn, method: "m", target: 50 },
  },
  ...bees.map(
    ([left, right], index): EntryDraft => ({
      kind: "bee-read",
      at: day,
      about: [id, `${id}-r`],
      data: { reading: `${id}-r`, bee: index + 1, lost: false, left, right },
    }),
  ),
  {
    kind: "reading-finished",
    at: day,
    about: [id, `${id}-r`],
    data: { reading: `${id}-r`, on: takenOn, stop: "no-more-bees" },
  },
];
const times = (count: number, bee: readonly [Trunk, Trunk]) => Array.from({ length: count }, () => bee);
const row = (drafts: readonly EntryDraft[]) =>
  foundView(casebookOf([...place, ...drafts]), "case", words).groups[0]?.rows[0] ?? expect.fail("no row");
const notes = (drafts: readonly EntryDraft[]) => {
  const [specimen] = foundView(casebookOf([...place, ...drafts]), "case", words).specimens;
  return qualityNotes(specimen ?? expect.fail("no specimen"), words).map((note) => note.says);
};

describe("what was found", () => {
  it("17 of 50 reads 34 in 100, 21 to 49", () => {
    const found = row(vial({ id: "v", bees: [...times(17, ["mites", "clear"]), ...times(33, ["clear", "clear"])] }));
    expect(found).toMatchObject({ withMites: "17 of 50", inHundred: "34", range: "21 to 49" });
  });

  it("a poor vial of 30: 12 read, 2 positive; cannot say, 2 to 48, and a new sample is asked for", () => {
    const drafts = vial({
      id: "v",
      bees: [
        ...times(18, ["unreadable", "unreadable"]),
        ...times(2, ["mites", "clear"]),
        ...times(10, ["clear", "clear"]),
      ],
      received: { acceptance: "accepted-with-limits", condition: 3, reason: "mouldy" },
    });
    expect(row(drafts)).toMatchObject({
      withMites: "2 of 12",
      range: "2 to 48",
      isLimited: true,
      reading: "cannot say",
      note: "12 of 30 bees readable",
    });
    expect(notes(drafts).join(" ")).toContain("18 unreadable. They stay outside the count.");
    expect(foundView(casebookOf([...place, ...drafts]), "case", words).answer).toContain("only 12 bees could be read");
  });

  it("an honest zero: none in 30 in July under patties is weak, and says what it misses", () => {
    const drafts: readonly EntryDraft[] = [
      {
        kind: "treatment-recorded",
        at: day,
        about: ["ap", "t"],
        data: { activeIngredient: "fat and sugar patty", on: "2026-06-05", off: null, colonies: [] },
      },
      ...vial({ id: "v", bees: times(30, ["clear", "clear"]) }),
    ];
    expect(row(drafts)).toMatchObject({ withMites: "none in 30", inHundred: "0", range: "0 to 12", isInfested: false });
    const said = notes(drafts).join(" ");
    expect(said).toContain("In summer young bees thin the mites out: none found is then a weak answer");
    expect(said).toContain("A treatment was on when the bees were taken: none found is then a weak answer");
    expect(said).toContain("30 bees would miss them 21 times in 100");
    expect(`${said} ${JSON.stringify(row(drafts))}`).not.toMatch(/negative|free of|cleared/i);
  });

  it("partly read bees are outside, and a dark trunk without a mite is no infested bee", () => {
    const drafts = vial({
      id: "v",
      bees: [...times(3, ["clear", "unreadable"]), ...times(4, ["dark-no-mite", "clear"]), ["mites", "unreadable"]],
    });
    expect(row(drafts)).toMatchObject({ withMites: "1 of 5" });
    expect(notes(drafts).join(" ")).toContain("3 partly read");
  });

  it("the demonstration: mites in 3 of 4 colonies, 8 not sampled", () => {
    const { answer, groups } = foundView(demonstrationCasebook(), "demonstration-case-tv-26-014", words);
    expect(answer).toContain("**Mites in 3 of the 4 colonies sampled.**");
    expect(answer).toContain("8 colonies were not sampled");
    expect(groups.map((group) => group.takenOn)).toEqual(["2026-10-12", "2026-08-04", "2026-03-03"]);
  });
});

describe("what so many bees could have missed", () => {
  it("50 bees miss 5 in 100 8 times in 100, 2 in 100 36 times; the table twin says the same", () => {
    const view = missedView({ bees: 50 }, words);
    expect(view.main.times).toBe("missed 8 times in 100");
    expect(view.points.map((point) => point.says)).toEqual(["2 in 100: 36", "1 in 100: 61"]);
    expect(view.table.rows.find((each) => each[0] === 5)?.[1]).toBeCloseTo(7.69, 2);
  });
});

describe("other tests", () => {
  it("a wash of 3 mites on 300 bees reads 1 in 100, 0.2 to 2.9", () => {
    const casebook = demonstrationCasebook();
    const state = casebook.cases["demonstration-case-tv-26-014"] ?? expect.fail("no case");
    expect(otherTests(casebook, state, words)[0]?.says).toBe("3 mites on 300 bees: 1 in 100 (0.2 to 2.9)");
  });

  it("the form asks for the counts of its test and refuses more positives than bees", () => {
    expect(readTestResult({ test: "varroa-wash", mites: "9", bees: "300", on: "2031-01-01" }, day)).toMatchObject({
      ok: false,
      problems: [{ code: "day-to-come", field: "on" }],
    });
    expect(readTestResult({ test: "varroa-wash", mites: "9" }, day)).toMatchObject({
      ok: false,
      problems: [{ field: "bees" }],
    });
    expect(readTestResult({ test: "tracheal-dissection", positive: "9", examined: "5" }, day)).toMatchObject({
      ok: false,
      problems: [{ code: "positives-exceed-examined", field: "positive" }],
    });
    expect(readTestResult({ test: "varroa-wash", mites: "9", bees: "300", colony: "" }, day)).toMatchObject({
      ok: true,
      value: { colony: null, mites: 9, bees: 300 },
    });
  });

  it("[DX194] more mites than bees can carry is refused at its field, and so is a result that nobody chose", () => {
    const wash = { test: "varroa-wash", mites: "4000", bees: "300" };
    expect(readTestResult(wash, day).problems).toMatchObject([{ code: "field-unfit", field: "mites" }]);
    expect(readTestResult({ ...wash, mites: "40" }, day).ok).toBe(true);
    const panel = { test: "virus-panel", result: "" };
    expect(readTestResult(panel, day).problems).toMatchObject([{ code: "field-not-chosen", field: "result" }]);
  });

  it("a result says what was found, how the bees were kept, and whether the dose harms, where its test can", () => {
    const virus = {
      test: "virus-panel",
      result: "found",
      "which dwv_overt": "on",
      "which chronic_paralysis": "on",
      kept: "frozen",
    };
    const panel = readTestResult(virus, day);
    if (!panel.ok) throw new Error("the panel should be read");
    expect(panel.value).toMatchObject({ which: ["chronic_paralysis", "dwv_overt"], kept: "frozen" });
    expect(resultSays(panel.value, words)).toBe("found: Chronic bee paralysis and Deformed wing virus");
    const none = readTestResult({ ...virus, result: "none-found" }, day);
    expect(none.problems).toMatchObject([{ code: "which-without-find", field: "which" }]);
    const opened = { test: "uncap-brood", result: "found" };
    expect(readTestResult(opened, day).problems).toMatchObject([{ code: "find-without-which", field: "which" }]);
    expect(readTestResult({ ...opened, "which varroa_pms": "on" }, day).ok).toBe(true);
    expect(readTestResult({ ...opened, test: "virus-panel" }, day).ok).toBe(true);
    const screen = readTestResult(
      { test: "residue-screen", result: "found", harmfulDose: "no", daysUntilFrozen: "2" },
      day,
    );
    if (!screen.ok) throw new Error("the screen should be read");
    expect(screen.value).toMatchObject({ harmfulDose: false, daysUntilFrozen: 2 });
    expect(resultSays(screen.value, words)).toBe("found; below a dose that harms bees");
    const pcr = readTestResult(
      { test: "pooled-pcr", result: "found", sequenced: "yes", "which starvation": "on" },
      day,
    );
    expect(pcr).toMatchObject({ ok: true, value: { sequenced: true } });
    expect(pcr.ok && "which" in pcr.value).toBe(false);
  });
});
