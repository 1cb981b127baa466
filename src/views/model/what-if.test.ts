/** What a change would do to past answers, and the entries that make it so. */
import { describe, expect, it } from "vitest";
import { casebookOf, demonstrationCasebook } from "../../../tests/casebook-of.ts";
import { evidenceOf } from "../../casebook/index.ts";
import type { EntryDraft } from "../../journal/index.ts";
import { type EvidenceChange, type NotedChange, publishedEvidence } from "../../knowledge/index.ts";
import { evidenceDraft, pastCases, settingsDraft, trialOf } from "./index.ts";

const today = "2026-04-02";
const citation = { source: null, at: "own numbers, invented", read: "judgement" } as const;
const noted = (change: EvidenceChange): NotedChange => ({
  change,
  citation,
  entry: "trial",
  author: "reader 1",
  on: today,
});
const seasons = ["winter", "spring", "summer", "autumn"] as const;

const priorOf = (season: (typeof seasons)[number]) =>
  ({ what: "prior", condition: "own_x", season, rate: 0.2 }) as const;

describe("a trial of other evidence", () => {
  const casebook = demonstrationCasebook();

  it("[DX180] compares every case on record, and changes nothing of what stands", () => {
    const { answers, before, problems } = trialOf(casebook, {});
    expect(answers).toEqual({ compared: pastCases(casebook).length, changed: [], problems: [] });
    expect(problems).toEqual([]);
    expect(before.evidence).toBe(evidenceOf(casebook).evidence);
  });

  it("[DX180] a change taken back on trial is as if it had never been made", () => {
    const drafts = seasons.map((season) =>
      evidenceDraft(
        casebookOf([]),
        "main",
        { change: { what: "prior", condition: "stonebrood", season, rate: 0.99 }, citation, on: today },
        today,
      ),
    );
    const standing = casebookOf(drafts);
    const entries = Object.values(standing.programmes.main?.changes ?? {}).flatMap(({ candidates }) =>
      candidates.map(({ entry }) => entry),
    );
    expect(entries).toHaveLength(4);
    const { before, after, problems } = trialOf(standing, { without: entries });
    expect(problems).toEqual([]);
    expect(before.evidence.priors.stonebrood?.spring.value).toBe(0.99);
    expect(after.evidence).toEqual(publishedEvidence);
  });

  it("[DX180] tells the answers that a hundredfold prior would turn, and what of the trial does not fit", () => {
    const sure = seasons.map((season) => noted({ what: "prior", condition: "stonebrood", season, rate: 0.99 }));
    const odd = noted({ what: "prior", condition: "own_gone", season: "winter", rate: 0.5 });
    const { answers, after, problems } = trialOf(casebook, { changes: [...sure, odd] });
    expect(problems).toMatchObject([{ code: "evidence-id-missing", slots: { id: "own_gone" } }]);
    expect(after.evidence.priors.stonebrood?.winter.value).toBe(0.99);
    expect(answers.changed.length).toBeGreaterThan(0);
    expect(answers.changed.some((each) => each.after.likeliest === "stonebrood")).toBe(true);
    expect(answers.changed.every((each) => each.before.likeliest !== "stonebrood")).toBe(true);
    expect(evidenceOf(casebook).evidence.priors.stonebrood?.winter.value).not.toBe(0.99);
  });
});

describe("a trial and its acceptance", () => {
  const own = (rate: number): EvidenceChange => ({
    ...{ what: "condition", condition: "own_x", term: "t", role: "cause", rollUp: null, urgency: "next-season" },
    prior: { winter: rate, spring: rate, summer: rate, autumn: rate },
  });
  const pair: EvidenceChange = {
    ...{ what: "frequency", condition: "own_x", finding: "crawlers", rate: 0.9, suppresses: false },
  };
  const sign: EvidenceChange = {
    ...{ what: "finding", finding: "own_water_line", term: "t", kind: "sign", group: null, question: "q" },
    ...{ lookFor: "l", minutes: 1, healthy: { winter: 0.01, spring: 0.01, summer: 0.01, autumn: 0.01 } },
  };
  const entered = (drafts: readonly EntryDraft[], change: EvidenceChange) => [
    ...drafts,
    evidenceDraft(casebookOf(drafts), "main", { change, citation, on: today }, today),
  ];
  const all = (changes: readonly EvidenceChange[]) => changes.reduce(entered, [] as readonly EntryDraft[]);
  const plain = (value: unknown) =>
    JSON.parse(JSON.stringify(value, (key, each) => (key === "entry" || key === "author" ? null : each)));

  it.each([
    ["another prior beside one of the season", [own(0.1), { ...priorOf("spring"), rate: 0.2 }], own(0.3)],
    ["a condition that a pair waits for", [pair], own(0.3)],
    ["a finding of a condition on record", [own(0.3)], pair],
    ["a second opinion", [own(0.3), pair], own(0.2)],
  ] as const)("[DX182] the evidence tried is the evidence accepted: %s", (_, standing, tried) => {
    const before = all(standing);
    const { after } = trialOf(casebookOf(before), { changes: [noted(tried)] });
    expect(plain(after.evidence)).toEqual(plain(evidenceOf(casebookOf(entered(before, tried))).evidence));
  });

  it("[DX182] a finding of its own that is on record already is in the answers of the trial", () => {
    const casebook = casebookOf([
      {
        kind: "apiary-registered",
        ...{ at: today, about: ["apiary-1"] },
        data: { code: "HO", name: "Hollow Meadow", place: "Invented County", latitude: 45.2, longitude: -93.1 },
      },
      {
        kind: "colony-registered",
        ...{ at: today, about: ["apiary-1", "colony-1"] },
        data: { code: "1", hiveType: "ten-frame" },
      },
      {
        kind: "case-opened",
        ...{ at: today, about: ["case-1", "apiary-1"] },
        data: { code: "2026-014", openedOn: today, question: "Why?", colonies: ["colony-1"] },
      },
      {
        kind: "finding-recorded",
        ...{ at: today, about: ["case-1", "colony-1"] },
        data: { colony: "colony-1", finding: "own_water_line", state: "present", on: today },
      },
    ]);
    const waterLine = { ...pair, finding: "own_water_line" };
    const { answers, problems } = trialOf(casebook, { changes: [own(0.3), sign, waterLine].map(noted) });
    expect(problems).toEqual([]);
    expect(answers.changed).toMatchObject([{ case: "case-1", after: { likeliest: "own_x" } }]);
  });

  it("[DX182] what was told before the trial is not told again", () => {
    const casebook = casebookOf(all([pair]));
    expect(evidenceOf(casebook).problems).toMatchObject([{ code: "evidence-id-missing" }]);
    expect(trialOf(casebook, { changes: [noted(priorOf("spring"))] }).problems).toMatchObject([
      { code: "evidence-id-missing", slots: { place: "prior own_x spring" } },
    ]);
  });
});

describe("the entries of a change", () => {
  const change = (rate: number) => ({
    change: { what: "prior" as const, condition: "robbing", season: "autumn" as const, rate },
    citation,
    on: today,
  });
  const standing = (drafts: readonly EntryDraft[]) => evidenceOf(casebookOf(drafts));

  it("[CB41] a second change of one place replaces the first: no conflict, the new one counts", () => {
    const first = evidenceDraft(casebookOf([]), "main", change(0.1), today);
    const second = evidenceDraft(casebookOf([first]), "main", change(0.2), today);
    expect(second.replaces).toHaveLength(1);
    const { evidence, problems } = standing([first, second]);
    expect(problems).toEqual([]);
    expect(evidence.priors.robbing?.autumn.value).toBe(0.2);
  });

  it("[CB41] new settings replace the old", () => {
    const first = settingsDraft(casebookOf([]), "main", { on: today, thresholds: { leading: 0.6 } }, today);
    const second = settingsDraft(casebookOf([first]), "main", { on: today, thresholds: { leading: 0.7 } }, today);
    expect(standing([first, second])).toMatchObject({ settings: { thresholds: { leading: 0.7 } }, problems: [] });
  });
});
