/** Papers over the records: what stands on labels, kit card and report, and what never does. */
import { describe, expect, it } from "vitest";
import { following, opened, today } from "../../../../tests/case-story.ts";
import { demonstrationCasebook } from "../../../../tests/casebook-of.ts";
import { findings, isTestId, tests } from "../../../knowledge/index.ts";
import { differential } from "../../../reasoning/index.ts";
import { paperWordsOf } from "../../words/index.ts";
import {
  caseReport,
  couldView,
  destinations,
  differentialInput,
  kitCard,
  labelSheet,
  labelStocks,
  mostTroubled,
  ownReckoning,
  redFlagDraft,
  reportToRank,
  stepDraft,
  stockOf,
} from "../index.ts";

const words = paperWordsOf("en");
const casebook = demonstrationCasebook();
const withen = "demonstration-case-tv-26-014";
const sedge = "demonstration-case-tv-26-031";
const garth = "demonstration-case-tv-26-022";
const asked = { words, isDemonstration: true };

describe("labels", () => {
  it("every vial of the case, or only those that have not come", () => {
    const wish = { stock: stockOf(null), startAt: 1, onlyWaiting: false };
    expect(labelSheet(casebook, withen, { wish, ...asked }).labels).toHaveLength(8);
    const waiting = labelSheet(casebook, sedge, { wish: { ...wish, onlyWaiting: true }, ...asked });
    expect(waiting.labels).toEqual([
      {
        code: "TV26-0272",
        colony: "SE-04",
        takenOn: "2026-10-24",
        from: "S super, inner cover",
        keptIn: expect.stringMatching(/frozen|ethanol/) as string,
      },
    ]);
  });

  it("starting at label n leaves n − 1 empty, and never more than the sheet", () => {
    const used = (startAt: number) =>
      labelSheet(casebook, withen, { wish: { stock: stockOf("letter-80"), startAt, onlyWaiting: false }, ...asked })
        .used;
    expect([used(1), used(8), used(500), used(-3)]).toEqual([0, 7, 79, 0]);
    expect(stockOf("unknown")).toBe(labelStocks[0]);
  });
});

describe("the kit card", () => {
  it("tells which bees from where, how many, how kept, and what that number would find", () => {
    const card = kitCard(casebook, withen, { destination: null, ...asked });
    expect(card.rows).toHaveLength(8);
    expect(card.promise).toBe("50 bees of one colony find 5 in 100 infested 92 times in 100, if reading is perfect.");
    expect(card.steps.join(" ")).toContain("Find the queen first");
    expect(card.steps.join(" ")).toContain("in pencil on the slip");
  });

  it("follows the laboratory it is sent to: they contradict each other", () => {
    const steps = (destination: (typeof destinations)[number]) =>
      kitCard(casebook, withen, { destination, ...asked }).steps.join(" ");
    expect(steps("ireland-uk-adult-bees")).toContain("never plastic");
    expect(steps("us-federal-adult-bees")).toContain("never dry");
    for (const each of destinations) expect(steps(each)).toContain("ask for those of today");
  });
});

describe("the kit card of what was chosen on question 3", () => {
  const start = opened();
  const choose =
    (step: string, done: "planned" | "done"): Parameters<typeof following>[1] =>
    (book) => [
      stepDraft(
        book.cases[start.caseId] as never,
        { step, kind: isTestId(step) ? "test" : "look", state: done },
        today,
      ),
    ];
  const cardOf = ({ casebook: book }: ReturnType<typeof following>) =>
    kitCard(book, start.caseId, { destination: null, words, isDemonstration: false });

  it("holds the looks with what to look for, and the specimens of other tests", () => {
    const chosen = (["worn_wings", "spore-count", "tracheal-dissection"] as const).map((id) => choose(id, "planned"));
    const card = cardOf(following(start, ...chosen));
    expect(card.looks).toEqual([{ term: findings.worn_wings.term, how: findings.worn_wings.lookFor }]);
    expect(card.tests).toEqual([{ term: tests["spore-count"].term, specimen: tests["spore-count"].specimen }]);
    expect(card.colonies.length).toBeGreaterThan(0);
    const done = cardOf(following(start, ...chosen, choose("worn_wings", "done")));
    expect(done.looks).toEqual([]);
  });

  it("holds none of them beside a stop: nothing is opened there", () => {
    const stopped = following(start, choose("worn_wings", "planned"), (book) => [
      redFlagDraft(book.cases[start.caseId] as never, "brood-ropes-or-smells", "present", today),
    ]);
    expect(cardOf(stopped)).toMatchObject({ looks: [], tests: [] });
    expect(cardOf(stopped).stops).toHaveLength(1);
    expect(cardOf(stopped)).toMatchObject({ steps: [], promise: "" });
  });
});

describe("the report", () => {
  const heads = [
    { device: "yard-phone", seq: 41, hash: "9c04e7d2".padEnd(64, "0") },
    { device: "3f2a0b11-5d7e-4c1a-9a55-0c6f6d1f2b3c", seq: 7, hash: "00ffee11".padEnd(64, "0") },
  ];
  const own = ownReckoning(casebook, null);
  /** What the page's worker answers. */
  const rankedOf = (caseId: string) => {
    const toRank = reportToRank(casebook, caseId);
    const ranked = toRank.map(({ input }) => {
      const result = differential.differential(input);
      return result.ok ? result.value : null;
    });
    return { toRank, ranked };
  };
  const report =
    caseReport(casebook, withen, { today: "2026-10-27", ...asked, heads, own, ...rankedOf(withen) }) ??
    expect.fail("no report");

  it("says up to which entry of which device it rests on the journal", () => {
    expect(report.heads).toEqual([
      "device 3f2a0b11, entry 7, seal 00ffee11",
      "device yard-phone, entry 41, seal 9c04e7d2",
    ]);
  });

  it("answers in one sentence, with its picture, its rows and the lines drawn through", () => {
    expect(report.answer.heavy).toBe("Mites in 3 of the 4 colonies sampled.");
    expect(report.picture?.colony).toBe("WB-03");
    expect(report.rows).toHaveLength(8);
    expect(report.lines).toEqual([10, 15, 20, 30, 40, 50]);
    expect(report.rows.find((row) => row.code === "TV26-0148")).toMatchObject({ read: "12 / 30", isLimited: true });
  });

  it("names treated and untreated after a treatment, and the steps with the dose that was given", () => {
    // 5 of 50: Clopper–Pearson 3.33 to 21.81; 9 of 50: 8.58 to 31.44 in 100.
    expect(report.answer.rest).toContain(
      "After the treatment: treated WB-07, 10 in 100 (3 to 22); untreated WB-03, 18 in 100 (9 to 31).",
    );
    expect(report.done[0]?.what).toMatch(/^Apply, .*WB-07\. \d+ g in all, \d+ g a colony/);
    expect(report.effect?.groups).toEqual([
      { name: "Treated: WB-07", before: "20 of 50, 4 August 2026", after: "5 of 50, 12 October 2026" },
      { name: "Untreated: WB-03", before: "18 of 50, 4 August 2026", after: "9 of 50, 12 October 2026" },
    ]);
    expect(report.effect?.methods.map(({ value }) => value)).toEqual(["75", "50", "44"]);
  });

  it("tells the signs of each colony and its causes, with the figures and ranges of question 2", () => {
    const state = casebook.cases[withen] ?? expect.fail("no case");
    const [first] = report.causes;
    expect(report.signs.find((row) => row.colony === first?.colony)?.says).toContain("Present: ");
    const key = mostTroubled(casebook, state);
    const { input } = differentialInput(casebook, state, key);
    const page = differential.differential({ ...input, draws: 400 });
    if (!page.ok) return expect.fail("not reckoned");
    const view = couldView({ answer: page.value, input, draws: 400, dots: null, words });
    const [lead] = view.causes;
    expect(first?.rows[0]).toEqual({ term: lead?.term, number: lead?.number, range: lead?.range, word: lead?.word });
  });

  it("says what could have been missed, and none of the words it must not", () => {
    expect(report.missed[0]).toContain("such bees show none 8 times in 100; if 2 in every 100, 36 times");
    expect(JSON.stringify(report)).not.toMatch(/\bnegative\b|free of|\bcleared\b|guaranteed/i);
    expect(report.heed.join(" ")).toContain("The label is the law");
  });

  it("of a case with a ropy thread says stop and report, and no treatment", () => {
    const stop =
      caseReport(casebook, garth, { today: "2026-10-27", ...asked, heads: [], own, ...rankedOf(garth) }) ??
      expect.fail("no report");
    expect(stop.toDo[0]?.what).toContain("Stop and report");
    expect(stop.heed.join(" ")).toContain("By law you may have to tell the authority");
  });
});
