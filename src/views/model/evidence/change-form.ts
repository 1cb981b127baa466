/**
 * Reads a change of the evidence as a person types it: shares of 100, a name instead of an id, a citation.
 *
 * @module views/model
 */
import type { BodyOf } from "../../../journal/index.ts";
import { type Evidence, type EvidenceChange, evidenceSeasons, type ReadMark } from "../../../knowledge/index.ts";
import { type Day, problem, type Result } from "../../../units/index.ts";
import { type Fields, type FormReader, present, readForm } from "../form.ts";

export const changeKinds = ["frequency", "prior", "healthy-rate", "condition", "finding", "source"] as const;
export type ChangeKind = (typeof changeKinds)[number];

export const readMarks: readonly ReadMark[] = ["seen", "memory", "common-practice", "judgement", "computed"];
export const roles = ["cause", "secondary", "syndrome", "normal"] as const;
export const rollUps = ["varroa_and_viruses", "queen_trouble", "nosema", "brood_disease", "normal"] as const;
export const urgencies = ["same-day", "within-a-week", "within-a-month", "next-season"] as const;
/** What stands for "none" and "one of our own" in a list of choices. */
export const [noneChosen, newOne] = ["none", "new"] as const;

/** A probability is never certain: what is typed of 100 lies between these. */
const [leastOf100, mostOf100] = [0.01, 99.99];
const mostColonies = 1_000_000;

/** Body of `evidence-changed` from the fields of the form, or a problem for each that is not right. */
export function readChange(fields: Fields, evidence: Evidence, today: Day): Result<BodyOf<"evidence-changed">> {
  const form = readForm(fields);
  const kind = form.oneOf("what", changeKinds);
  const change = readers[kind](form, evidence);
  const source = form.oneOf("source", [noneChosen, newOne, ...Object.keys(evidence.sources)]);
  const read = form.oneOf("read", readMarks);
  const at = form.text("at");
  if (source === noneChosen && (read === "seen" || read === "memory"))
    form.complain(problem("citation-names-no-source", "blocked", "source"));
  const itself = change.what === "source" ? change.source : null;
  if (source === newOne && itself === null) form.complain(problem("field-not-chosen", "blocked", "source"));
  return form.result(
    present({
      change,
      citation: { source: source === noneChosen ? null : source === newOne ? itself : source, at, read },
      on: today,
      reason: form.maybeText("reason"),
    }),
  );
}

type Reader = (form: FormReader, evidence: Evidence) => EvidenceChange;

const share = (form: FormReader, name: string): number => form.number(name, { min: leastOf100, max: mostOf100 }) / 100;

const bySeason = (form: FormReader, name: string) => ({
  winter: share(form, `${name}-winter`),
  spring: share(form, `${name}-spring`),
  summer: share(form, `${name}-summer`),
  autumn: share(form, `${name}-autumn`),
});

/** A name that none of these has. */
function newTerm(form: FormReader, taken: readonly { readonly term: string }[]): string {
  const term = form.text("term");
  const same = taken.find((each) => each.term.toLowerCase() === term.toLowerCase());
  if (same) form.complain(problem("name-taken", "blocked", "term", { given: term, slots: { given: same.term } }));
  return term;
}

/** What has a name that this one may not take: everything but itself. */
const termsBeside = <Named extends { readonly term: string }>(
  all: Readonly<Record<string, Named | undefined>>,
  own: string,
): readonly Named[] => Object.entries(all).flatMap(([id, each]) => (id === own || each === undefined ? [] : [each]));

const outOf = (form: FormReader) => form.maybeNumber("outOf", { min: 1, max: mostColonies, whole: true });

const readers: Readonly<Record<ChangeKind, Reader>> = {
  frequency: (form, evidence) =>
    present({
      what: "frequency" as const,
      condition: form.oneOf("condition", evidence.conditionIds),
      finding: form.oneOf("finding", evidence.findingIds),
      rate: share(form, "rate"),
      suppresses: form.maybeText("suppresses") !== undefined,
      outOf: outOf(form),
    }),
  prior: (form, evidence) =>
    present({
      what: "prior" as const,
      condition: form.oneOf("condition", evidence.conditionIds),
      season: form.oneOf("season", evidenceSeasons),
      rate: share(form, "rate"),
      outOf: outOf(form),
    }),
  "healthy-rate": (form, evidence) =>
    present({
      what: "healthy-rate" as const,
      finding: form.oneOf("finding", evidence.findingIds),
      season: form.oneOf("season", evidenceSeasons),
      rate: share(form, "rate"),
      outOf: outOf(form),
    }),
  condition: (form, evidence) => {
    const which = form.oneOf("condition", [newOne, ...evidence.conditionIds]);
    const rollUp = form.oneOf("rollUp", [noneChosen, ...rollUps]);
    const term = newTerm(form, termsBeside(evidence.conditions, which));
    return present({
      what: "condition" as const,
      condition: which === newOne ? ownIdOf(term, evidence.conditionIds) : which,
      term,
      role: form.oneOf("role", roles),
      rollUp: rollUp === noneChosen ? null : rollUp,
      urgency: form.oneOf("urgency", urgencies),
      prior: which === newOne ? bySeason(form, "prior") : undefined,
    });
  },
  finding: (form, evidence) => {
    const which = form.oneOf("finding", [newOne, ...evidence.findingIds]);
    const term = newTerm(form, termsBeside(evidence.findings, which));
    return present({
      what: "finding" as const,
      finding: which === newOne ? ownIdOf(term, evidence.findingIds) : which,
      term,
      kind: form.oneOf("kind", ["sign", "circumstance"]),
      group: evidence.findings[which]?.group ?? null,
      question: form.text("question"),
      lookFor: form.text("lookFor"),
      minutes: form.number("minutes", { min: 0, max: 600 }),
      healthy: which === newOne ? bySeason(form, "healthy") : undefined,
    });
  },
  source: (form, evidence) => {
    const title = form.text("title");
    return present({
      what: "source" as const,
      source: ownIdOf(title, Object.keys(evidence.sources)),
      title,
      authors: form.maybeText("authors"),
      year: form.maybeNumber("year", { min: 1500, max: 2200, whole: true }),
      where: form.text("where"),
      read: form.text("readOfIt"),
    });
  },
};

/** Longest part of an id that is taken from a name. */
const longestSlug = 40;

/**
 * An id of the programme's own for a name, unlike those that are taken.
 * @example
 * ownIdOf("Flooded stand", [])  // → own_flooded_stand
 * ownIdOf("Flooded stand", ["own_flooded_stand"])  // → own_flooded_stand_2
 */
export function ownIdOf(name: string, taken: readonly string[]): string {
  const slug = name
    .normalize("NFKD")
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "_")
    .slice(0, longestSlug)
    .replace(/^_+|_+$/g, "");
  const base = `own_${slug || "unnamed"}`;
  let id = base;
  for (let number = 2; taken.includes(id); number += 1) id = `${base}_${number}`;
  return id;
}
