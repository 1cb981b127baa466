/** A programme's own evidence on its pages: what is typed, what stands, what closed cases showed, and how cases are put. */
import { describe, expect, it } from "vitest";
import { following, opened, today } from "../../../../tests/case-story.ts";
import { casebookOf, demonstrationCasebook } from "../../../../tests/casebook-of.ts";
import { changed, programmeDrafts, set } from "../../../../tests/journals/programme-kinds.ts";
import { evidenceOf, wholeApiary } from "../../../casebook/index.ts";
import type { EntryDraft } from "../../../journal/index.ts";
import { publishedEvidence } from "../../../knowledge/index.ts";
import { differential, evidenceFrom } from "../../../reasoning/index.ts";
import { sentenceOf, wholeWordsOf } from "../../words/index.ts";
import {
  changeRows,
  couldView,
  differentialInput,
  experienceTold,
  experienceView,
  findingDrafts,
  findingGroups,
  ownIdOf,
  ownReckoning,
  readChange,
  readSettings,
  settingsFrom,
  taughtBy,
  trialOf,
  trialView,
} from "../index.ts";
import { withTerms } from "../terms.ts";

const words = wholeWordsOf("en");
const cited = { source: "none", at: "own numbers, invented", read: "judgement" };
const read = (fields: Record<string, string>) => readChange({ ...cited, ...fields }, publishedEvidence, today);

describe("a change as it is typed", () => {
  it("[DX191] a figure typed of 100 becomes a share of the pair it is about, with its citation", () => {
    const change = read({ what: "frequency", condition: "queenless", finding: "crawlers", rate: "12,5", outOf: "40" });
    expect(change).toMatchObject({
      ok: true,
      value: {
        change: {
          what: "frequency",
          condition: "queenless",
          finding: "crawlers",
          rate: 0.125,
          suppresses: false,
          outOf: 40,
        },
        citation: { source: null, at: "own numbers, invented", read: "judgement" },
        on: today,
      },
    });
  });

  it("[DX191] refuses a share of 0, of 100 or none, a place without words, and what was read without a source", () => {
    const trouble = (fields: Record<string, string>) => {
      const change = read({ what: "frequency", condition: "queenless", finding: "crawlers", rate: "12", ...fields });
      return change.ok ? [] : change.problems.map(({ code, field }) => `${code} ${field}`);
    };
    expect(trouble({})).toEqual([]);
    expect(trouble({ rate: "0" })).toEqual(["field-out-of-range rate"]);
    expect(trouble({ rate: "100" })).toEqual(["field-out-of-range rate"]);
    expect(trouble({ rate: "" })).toEqual(["field-empty rate"]);
    expect(trouble({ rate: "often" })).toEqual(["field-not-number rate"]);
    expect(trouble({ at: " " })).toEqual(["field-empty at"]);
    expect(trouble({ read: "seen" })).toEqual(["citation-names-no-source source"]);
    expect(trouble({ source: "new" })).toEqual(["field-not-chosen source"]);
    expect(trouble({ finding: "own_gone" })).toEqual(["field-not-chosen finding"]);
  });

  it("[DX191] a thing of one's own gets an id of its own from its name, and a share for each season", () => {
    expect(ownIdOf("Überschwemmter Stand!", [])).toBe("own_u_berschwemmter_stand");
    expect(ownIdOf("—", ["own_unnamed"])).toBe("own_unnamed_2");
    const seasons = { "prior-winter": "1", "prior-spring": "2", "prior-summer": "0.5", "prior-autumn": "1" };
    const fields = { what: "condition", condition: "new", term: "Flooded stand", role: "cause", rollUp: "none" };
    expect(read({ ...fields, urgency: "same-day", ...seasons })).toMatchObject({
      ok: true,
      value: { change: { condition: "own_flooded_stand", rollUp: null, prior: { winter: 0.01, summer: 0.005 } } },
    });
    const without = read({ ...fields, urgency: "same-day", ...seasons, "prior-summer": "" });
    expect(without.problems).toMatchObject([{ code: "field-empty", field: "prior-summer" }]);
  });

  it("[DX191] a name that is taken is refused, and so is a bar that lets a cause be named while another is open", () => {
    const seasons = { "prior-winter": "1", "prior-spring": "2", "prior-summer": "0.5", "prior-autumn": "1" };
    const fields = { what: "condition", condition: "new", term: "no QUEEN", role: "cause", rollUp: "none", ...seasons };
    expect(read({ ...fields, urgency: "same-day" }).problems).toMatchObject([{ code: "name-taken", field: "term" }]);
    const crossed = readSettings({ leading: "30", open: "60" }, today);
    expect(crossed.problems).toMatchObject([{ code: "open-above-leading", field: "open" }]);
    expect(readSettings({ leading: "30" }, today).ok).toBe(true);
  });

  it("[DX191] settings left empty stay as the program has them", () => {
    const settings = readSettings({ leading: "60", strength: "2", frequencies: "on" }, today);
    if (!settings.ok) throw new Error("the settings are refused");
    expect(settingsFrom(settings.value)).toEqual({
      thresholds: { leading: 0.6 },
      nothingWrong: null,
      experience: { frequencies: true, healthyRates: false, priors: false, strength: 2 },
    });
    const wrong = readSettings({ leading: "100", strength: "20" }, today);
    expect(wrong.problems.map(({ field }) => field)).toEqual(["leading", "strength"]);
  });
});

describe("changes that stand", () => {
  it("[DX192] each stands beside what was published, with its citation, and one that cannot count says why", () => {
    const rows = changeRows(
      casebookOf([...programmeDrafts, changed({ what: "prior", condition: "own_gone", season: "winter", rate: 0.5 })]),
      words,
    );
    expect(rows).toHaveLength(8);
    const says = rows.map((row) => row.says);
    expect(says).toContain("Robbing, in autumn: 9 of 100 instead of 6.92 of 100");
    expect(says).toContain(
      "Water line on the boxes, with flooded stand: 90 of 100 where nothing of its own was published",
    );
    expect(rows.find((row) => row.says.startsWith("Roaring"))?.citation).toBe(
      "Invented survey of forty colonies (2025), table 2",
    );
    expect(rows.filter((row) => row.trouble !== null).map((row) => row.trouble?.code)).toEqual(["evidence-id-missing"]);
  });

  it("[DX192] a trial tells each past answer that would turn, by the code of its case", () => {
    const casebook = demonstrationCasebook();
    const changes = (["winter", "spring", "summer", "autumn"] as const).map((season) => ({
      change: { what: "prior", condition: "stonebrood", season, rate: 0.99 } as const,
      citation: { source: null, at: "own numbers, invented", read: "judgement" } as const,
      ...{ entry: "", author: "reader 1", on: today },
    }));
    const heard: number[] = [];
    const outcome = trialOf(casebook, { changes }, (share) => heard.push(share));
    const codes = Object.fromEntries(Object.keys(casebook.cases).map((id) => [id, `code of ${id}`]));
    const view = trialView(outcome.answers, { problems: [], names: outcome.after.start, codes, words });
    expect(view.rows.length).toBe(outcome.answers.changed.length);
    expect(view.rows[0]?.case).toMatch(/^code of demonstration-case/);
    expect(view.rows.some((row) => row.after.includes("stonebrood"))).toBe(true);
    expect(heard[0]).toBe(0);
    expect(Math.max(...heard)).toBeLessThan(1);
  });

  it("[DX192] a change that takes pairs out says of which conditions, by their names", () => {
    const louder = changed({ what: "healthy-rate", finding: "roar_agitated", season: "spring", rate: 0.7 });
    const { evidence, problems } = evidenceOf(casebookOf([louder]));
    const notes = problems.filter(({ code }) => code === "evidence-without-effect");
    const { findings, conditions } = evidence;
    expect(notes.map((each) => sentenceOf(withTerms(each, evidence), words))).toEqual([
      expect.stringContaining(
        `${findings.roar_agitated?.term} no longer tells anything of ${conditions.queenless?.term}`,
      ),
    ]);
  });
});

describe("a case under its programme's evidence", () => {
  const start = opened();
  const colony = (casebook: ReturnType<typeof casebookOf>) =>
    Object.keys(Object.values(casebook.apiaries)[0]?.colonies ?? {})[0] ?? "";
  const told = following(
    start,
    () => programmeDrafts,
    (casebook) =>
      findingDrafts({
        state: casebook.cases[start.caseId] as never,
        ...{ key: colony(casebook), finding: "own_water_line", exclusiveWith: null, answer: "present", on: today },
      }),
  );

  it("[DX190] own findings are asked, own conditions ranked by name, and the page counts with the same evidence as the command line", () => {
    expect(ownReckoning(told.casebook, null).waits).toBe(true);
    const own = ownReckoning(told.casebook, taughtBy(told.casebook));
    expect(own.waits).toBe(false);
    expect(own.says).toEqual({ changes: 7, cases: 0, set: true });
    const groups = findingGroups(told.state, [], words, own.evidence);
    expect(groups.find(({ place }) => place === "own")?.rows.map(({ term }) => term)).toEqual([
      "Water line on the boxes",
    ]);
    expect(findingGroups(told.state, [], words, publishedEvidence).some(({ place }) => place === "own")).toBe(false);
    const asked = differentialInput(told.casebook, told.state, colony(told.casebook), own.evidence).input;
    const { evidence } = evidenceFrom(own.own ?? undefined);
    const answer = differential.differential({ ...asked, ...own.settings, draws: 60 }, evidence);
    if (!answer.ok) throw new Error("no answer");
    const view = couldView({
      answer: answer.value,
      input: asked,
      evidence: own.evidence,
      draws: 60,
      dots: null,
      words,
    });
    expect(view.causes[0]).toMatchObject({ id: "own_flooded_stand", term: "Flooded stand", latin: null });
    expect(view.causes[0]?.for.map(({ term }) => term)).toContain("water line on the boxes");
    expect(evidence).toEqual(evidenceOf(told.casebook).evidence);
  });

  it("[DX190] a programme that changed nothing sends nothing along, and settings alone are sent alone", () => {
    const none = ownReckoning(demonstrationCasebook(), null);
    expect([none.own, none.settings, none.says]).toEqual([null, {}, { changes: 0, cases: null, set: false }]);
    const unused = { frequencies: false, healthyRates: false, priors: false, strength: 1 };
    const only = ownReckoning(casebookOf([set({ thresholds: { open: 0.2 }, experience: unused })]), null);
    expect([only.own, only.settings]).toEqual([null, { thresholds: { open: 0.2 } }]);
  });
});

describe("results as they are put to a case", () => {
  const start = opened();
  const result = (on: string, mites: number): EntryDraft => ({
    kind: "test-result-recorded",
    at: today,
    about: [start.caseId],
    data: { colony: null, test: "varroa-wash", on, mites, bees: 300 },
  });
  const asked = (...drafts: readonly EntryDraft[]) => {
    const { casebook, state } = following(start, () => drafts);
    const { input, notes } = differentialInput(casebook, state, wholeApiary);
    return { tests: input.tests?.length, codes: notes.map(({ code }) => code) };
  };

  it("[DX194] one that cannot be is left out and told, and takes no other with it; one of long ago is told, one of half a year left out", () => {
    expect(asked(result(today, 9))).toEqual({ tests: 1, codes: [] });
    expect(asked(result(today, 9), result(today, 4000))).toEqual({ tests: 1, codes: ["test-cannot-be"] });
    expect(asked(result("2025-11-01", 9))).toEqual({ tests: 1, codes: ["test-long-before"] });
    expect(asked(result("2025-08-30", 9))).toEqual({ tests: 0, codes: ["test-too-old"] });
  });
});

describe("what closed cases showed", () => {
  it("[DX193] names each refused case by its code, withholds scores below ten cases, and shows each figure beside its start", () => {
    const told = experienceTold(demonstrationCasebook());
    const view = experienceView(told, words);
    expect(view.answer).toMatch(/^\*\*\d+ of \d+ closed cases? teach(es)?\.\*\*/);
    expect(view.reliability).toBeNull();
    expect(view.notes[0]?.code).toBe("too-few-scored");
    expect(view.values.length).toBe(told.values.length);
    for (const each of view.refused) expect(each.slots.case).toMatch(/^TV-26-/);
  });
});
