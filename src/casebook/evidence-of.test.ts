/** How a programme reasons, from its entries. */
import { describe, expect, it } from "vitest";
import { changed, programmeDrafts, programmeStory, set } from "../../tests/journals/programme-kinds.ts";
import { writer } from "../../tests/journals/writer.ts";
import { publishedEvidence } from "../knowledge/index.ts";
import { conflictsOf, emptyCasebook, evidenceOf, experienceUnused, fold } from "./index.ts";

const office = () => writer({ device: "office-1" });

describe("how a programme reasons", () => {
  it("[CB40] is the published evidence and nothing set, before anything was changed", () => {
    expect(evidenceOf(emptyCasebook)).toEqual({
      evidence: publishedEvidence,
      settings: { thresholds: {}, nothingWrong: null, experience: experienceUnused },
      problems: [],
    });
  });

  it("[CB40] takes the changes with their citations, and a withdrawn one as if it had never been", () => {
    const { evidence, problems } = evidenceOf(fold(programmeStory()));
    expect(problems).toEqual([]);
    expect(evidence.frequencies.queenless?.roar_agitated).toMatchObject({
      value: 0.55,
      change: { author: "Office", on: "2026-04-02", outOf: 40, citation: { source: "own-survey-2025", read: "seen" } },
    });
    expect(evidence.priors.robbing?.autumn.value).toBe(0.09);
    expect(evidence.healthy.spring.crawlers?.value).toBe(0.08);
    expect(evidence.conditionIds).toHaveLength(46);
    expect(evidence.findings.own_water_line?.term).toBe("Water line on the boxes");
    expect(evidence.priors.starvation).toEqual(publishedEvidence.priors.starvation);
    const alone = evidenceOf(fold(programmeStory().slice(0, programmeDrafts.length)));
    expect(evidence).toEqual(alone.evidence);
  });

  it("[CB40] any order of arrival gives the same evidence", () => {
    const story = programmeStory();
    expect(evidenceOf(fold(story.toReversed()))).toEqual(evidenceOf(fold(story)));
  });

  it("[CB41] two changes of one place count for nothing, are told, and are a conflict of the programme", () => {
    const prior = (rate: number) => changed({ what: "prior", condition: "robbing", season: "autumn", rate });
    const casebook = fold(office().write(prior(0.1), prior(0.2)));
    const { evidence, problems } = evidenceOf(casebook);
    expect(evidence).toEqual(publishedEvidence);
    expect(problems).toMatchObject([{ code: "evidence-in-conflict", slots: { place: "prior robbing autumn" } }]);
    expect(conflictsOf(casebook, "main").map(({ slot }) => slot)).toEqual([["changes", "prior robbing autumn"]]);
  });

  it("[CB41] a later change that replaces the earlier one counts", () => {
    const device = office();
    const first = device.write(changed({ what: "prior", condition: "robbing", season: "autumn", rate: 0.1 }));
    const next = device.write({
      ...changed({ what: "prior", condition: "robbing", season: "autumn", rate: 0.2 }),
      replaces: first.map(({ header }) => header.id),
    });
    expect(evidenceOf(fold([...first, ...next])).evidence.priors.robbing?.autumn.value).toBe(0.2);
  });

  it("[CB41] two settings side by side count for nothing and are told", () => {
    const { settings, problems } = evidenceOf(
      fold(office().write(set({ thresholds: { leading: 0.6 } }), set({ thresholds: { leading: 0.7 } }))),
    );
    expect(settings.thresholds).toEqual({});
    expect(problems).toMatchObject([{ code: "settings-in-conflict" }]);
  });

  it("[CB42] what was not set stays as the program has it, and experience waits to be asked for", () => {
    const { settings } = evidenceOf(fold(office().write(set({ thresholds: { open: 0.2 }, nothingWrong: 0.3 }))));
    expect(settings).toEqual({ thresholds: { open: 0.2 }, nothingWrong: 0.3, experience: experienceUnused });
    expect(evidenceOf(fold(programmeStory())).settings.experience).toMatchObject({ frequencies: true, priors: false });
  });
});
