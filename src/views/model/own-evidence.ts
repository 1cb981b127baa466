/**
 * What the casebook's programme changed and learnt, as a question to `differential` brings it along.
 *
 * @module views/model
 */
import { type Casebook, evidenceOf, type ReasoningSettings, standingChanges } from "../../casebook/index.ts";
import type { Evidence } from "../../knowledge/index.ts";
import { experience, type OwnEvidence } from "../../reasoning/index.ts";
import type { Problem } from "../../units/index.ts";
import { withTerms } from "./terms.ts";

/**
 * Members of a question under the evidence in use: `evidence`, and the settings where there are any. Two changes of one
 * place are both in, so that the answer says that neither counts.
 */
export function questionUnder(
  casebook: Casebook,
  { settings, experience: learnt }: Pick<experience.InUse, "settings" | "experience">,
) {
  return {
    ...settingsOf(settings),
    evidence: { changes: standingChanges(casebook), use: settings.experience, counts: learnt.counts },
  };
}

/** Thresholds and the prior of "nothing wrong", where the programme has set them. */
const settingsOf = ({ thresholds, nothingWrong }: ReasoningSettings) => ({
  ...(Object.keys(thresholds).length === 0 ? {} : { thresholds }),
  ...(nothingWrong === null ? {} : { nothingWrong }),
});

/** What closed cases taught: how many, and the counts. Reckoned apart, where a page does not wait for it. */
export interface Taught {
  readonly cases: number;
  readonly counts: experience.ExperienceCounts;
}

/** How a page puts its questions: with the programme's evidence and settings, or as published. */
export interface OwnReckoning {
  /** What has names, and what can be asked: the published evidence with the programme's changes. */
  readonly evidence: Evidence;
  /** Settings that go into each question. */
  readonly settings: ReturnType<typeof settingsOf>;
  /** Closed cases are to be counted before anything can be asked. */
  readonly waits: boolean;
  /** What goes along for the reckoner; null where nothing was changed and nothing learnt. */
  readonly own: OwnEvidence | null;
  /** Changes in use, and closed cases that were learnt from; null cases while experience is not used. */
  readonly says: { readonly changes: number; readonly cases: number | null; readonly set: boolean };
  /** Changes that count for nothing, and why. */
  readonly problems: readonly Problem[];
}

/** How this casebook's questions are put, once `taught` is there where experience is used. */
export function ownReckoning(casebook: Casebook, taught: Taught | null): OwnReckoning {
  const { evidence, settings, problems } = evidenceOf(casebook);
  const learns = experience.isUsed(settings.experience);
  const changes = standingChanges(casebook);
  const asked = settingsOf(settings);
  const own = { changes, use: settings.experience, counts: taught?.counts ?? experience.noCounts };
  return {
    evidence,
    settings: asked,
    waits: learns && taught === null,
    own: changes.length === 0 && !learns ? null : (own as OwnEvidence),
    says: {
      changes:
        changes.length -
        problems.filter(({ code, severity }) => code.startsWith("evidence-") && severity !== "noted").length,
      cases: learns ? (taught?.cases ?? 0) : null,
      set: Object.keys(asked).length > 0,
    },
    problems: problems.map((each) => withTerms(each, evidence)),
  };
}
