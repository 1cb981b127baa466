/**
 * The changes of the evidence that a programme made, each as a sentence beside what was published, and what a trial of
 * another would do to past answers.
 *
 * @module views/model
 */
import { type Casebook, evidenceOf } from "../../../casebook/index.ts";
import type { EntryDraft } from "../../../journal/index.ts";
import {
  type Evidence,
  type EvidenceChange,
  type OwnCitation,
  placeOfChange,
  publishedEvidence,
  type ReadMark,
} from "../../../knowledge/index.ts";
import type { experience } from "../../../reasoning/index.ts";
import type { Day, Problem } from "../../../units/index.ts";
import type { WholeWords } from "../../words/index.ts";
import { conditionTerm, stepTerm, withTerms } from "../terms.ts";
import { withCode } from "./experience-told.ts";

export interface ChangeRow {
  /** Id of the entry. */
  readonly entry: string;
  readonly what: EvidenceChange["what"];
  readonly says: string;
  readonly citation: string;
  readonly mark: ReadMark;
  readonly author: string;
  readonly on: Day;
  readonly reason: string | null;
  /** Why it counts for nothing, or what to bear in mind (`noted`); null where there is nothing to say. */
  readonly trouble: Problem | null;
}

/** Every standing change of the casebook's programme, sources first, then what numbers are about, then numbers. */
export function changeRows(casebook: Casebook, words: WholeWords): readonly ChangeRow[] {
  const { evidence, problems } = evidenceOf(casebook);
  const troubleAt = (place: string) => {
    const found = problems.find((each) => each.slots.place === place);
    return found === undefined ? null : withTerms(found, evidence);
  };
  return Object.values(casebook.programmes)
    .flatMap((state) =>
      Object.entries(state.changes).flatMap(([place, { candidates }]) =>
        candidates.map(({ value, entry, author }) => ({
          entry,
          what: value.change.what,
          says: changeSays(value.change, evidence, words),
          citation: citationSays(value.citation, evidence, words),
          mark: value.citation.read,
          author,
          on: value.on,
          reason: value.reason ?? null,
          trouble: troubleAt(place),
        })),
      ),
    )
    .sort((one, other) => order.indexOf(one.what) - order.indexOf(other.what) || one.says.localeCompare(other.says));
}

const order: readonly EvidenceChange["what"][] = [
  "source",
  "condition",
  "finding",
  "frequency",
  "prior",
  "healthy-rate",
];

/** What a change says, as a sentence beside what was published. */
export function changeSays(change: EvidenceChange, evidence: Evidence, words: WholeWords): string {
  const say = words.own.change;
  const published = publishedEvidence;
  switch (change.what) {
    case "source":
      return say.source({ title: change.title, year: change.year ?? null });
    case "condition":
      return say.condition({ term: change.term, before: published.conditions[change.condition]?.term ?? null });
    case "finding":
      return say.finding({ term: change.term, before: published.findings[change.finding]?.term ?? null });
    case "frequency":
      return say.frequency({
        condition: conditionTerm(evidence, change.condition),
        finding: stepTerm(evidence, change.finding),
        rate: change.rate,
        published: published.frequencies[change.condition]?.[change.finding]?.value ?? null,
        outOf: change.outOf ?? null,
      });
    case "prior":
      return say.prior({
        condition: conditionTerm(evidence, change.condition),
        season: change.season,
        rate: change.rate,
        published: published.priors[change.condition]?.[change.season].value ?? null,
        outOf: change.outOf ?? null,
      });
    case "healthy-rate":
      return say.healthyRate({
        finding: stepTerm(evidence, change.finding),
        season: change.season,
        rate: change.rate,
        published: published.healthy[change.season][change.finding]?.value ?? null,
        outOf: change.outOf ?? null,
      });
  }
}

function citationSays({ source, at }: OwnCitation, { sources }: Evidence, words: WholeWords): string {
  const cited = source === null ? undefined : sources[source];
  return words.own.cited({ title: cited?.title ?? source, year: cited?.year ?? null, at });
}

/** Takes a change back: the evidence is then as if it had never been made. */
export const withdrawChangeDraft = (programme: string, entry: string, today: Day): EntryDraft => ({
  kind: "entry-withdrawn",
  at: today,
  about: [programme],
  replaces: [entry],
  data: { reason: "taken back" },
});

/** Entries of the settings that stand: what is replaced, or taken back, when settings change. */
export const settingsEntries = (casebook: Casebook, programme: string): readonly string[] =>
  casebook.programmes[programme]?.settings?.candidates.map(({ entry }) => entry) ?? [];

/** The changes that speak of a condition or finding, as sentences. */
export const changesOfRecord = (casebook: Casebook, id: string, words: WholeWords): readonly string[] => {
  const { evidence } = evidenceOf(casebook);
  return Object.values(casebook.programmes).flatMap((state) =>
    Object.entries(state.changes)
      .filter(([place]) => place.split(" ").includes(id))
      .flatMap(([, { candidates }]) => candidates.map(({ value }) => changeSays(value.change, evidence, words))),
  );
};

export interface TrialView {
  readonly says: string;
  readonly rows: readonly {
    readonly case: string;
    readonly colony: string | null;
    readonly before: string;
    readonly after: string;
  }[];
  readonly problems: readonly Problem[];
}

/** What a trial would do, in words; `names` holds what the trial may have added. */
export function trialView(
  answers: experience.ChangedAnswers,
  asked: {
    readonly problems: readonly Problem[];
    readonly names: Evidence;
    readonly codes: Readonly<Record<string, string>>;
    readonly words: WholeWords;
  },
): TrialView {
  const { problems, names, codes, words } = asked;
  const short = (each: experience.AnswerInShort) =>
    words.own.answerInShort({
      names: each.verdict.condition
        ? conditionTerm(names, each.verdict.condition)
        : each.verdict.group
          ? words.could.groups[each.verdict.group]
          : null,
      likeliest: conditionTerm(names, each.likeliest),
      share: each.posterior,
    });
  return {
    says: words.own.trial({ compared: answers.compared, changed: answers.changed.length }),
    rows: answers.changed.map((each) => ({
      case: codes[each.case] ?? each.case,
      colony: each.colony,
      before: short(each.before),
      after: short(each.after),
    })),
    problems: [...problems, ...answers.problems.map((each) => withCode(each, codes))].map((each) =>
      withTerms(each, names),
    ),
  };
}

/** The figure that stands now at the place of a change, of 100; null where a well colony's holds. */
export function figureNow(
  evidence: Evidence,
  place: { readonly what: string; readonly condition: string; readonly finding: string; readonly season: string },
): number | null {
  const { what, condition, finding, season } = place;
  const at = season as keyof Evidence["healthy"];
  if (what === "frequency") return evidence.frequencies[condition]?.[finding]?.value ?? null;
  if (what === "prior") return evidence.priors[condition]?.[at]?.value ?? null;
  return evidence.healthy[at]?.[finding]?.value ?? null;
}

/** Where the change stands already: it would be replaced. */
export const standsAlready = (casebook: Casebook, programme: string, change: EvidenceChange): boolean =>
  (casebook.programmes[programme]?.changes[placeOfChange(change)]?.candidates.length ?? 0) > 0;
