/** What a change would do to past answers, and the entries that make it so. */
import { describe, expect, it } from "vitest";
import { casebookOf, demonstrationCasebook } from "../../../tests/casebook-of.ts";
import { evidenceOf } from "../../casebook/index.ts";
import type { EntryDraft } from "../../journal/index.ts";
import type { EvidenceChange, NotedChange } from "../../knowledge/index.ts";
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

describe("a trial of other evidence", () => {
  const casebook = demonstrationCasebook();

  it("[DX180] compares every case on record, and changes nothing of what stands", () => {
    const { answers, before, problems } = trialOf(casebook, {});
    expect(answers).toEqual({ compared: pastCases(casebook).length, changed: [], problems: [] });
    expect(problems).toEqual([]);
    expect(before.evidence).toBe(evidenceOf(casebook).evidence);
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
