/**
 * How an invented programme reasons, told in entries: a source of its own, figures that cite it, a slip that is
 * withdrawn, a condition and a finding of its own, settings. All figures are invented: own numbers.
 */
import type { Entry, EntryDraft } from "../../src/journal/index.ts";
import { writer } from "./writer.ts";

const on = "2026-04-02";
type Change = Extract<EntryDraft, { readonly kind: "evidence-changed" }>["data"]["change"];

/** A change of the programme's evidence; without a source it is its own judgement. */
export const changed = (change: Change, source: string | null = null, programme = "main"): EntryDraft => ({
  kind: "evidence-changed",
  at: on,
  about: [programme],
  data: {
    change,
    citation: {
      source,
      at: source === null ? "own numbers, invented" : "table 2",
      read: source === null ? "judgement" : "seen",
    },
    on,
  },
});

/** Settings of the reasoning. */
export const set = (
  data: Omit<Extract<EntryDraft, { readonly kind: "reasoning-set" }>["data"], "on">,
  programme = "main",
): EntryDraft => ({ kind: "reasoning-set", at: on, about: [programme], data: { ...data, on } });

/** A source, a condition and a finding of the programme's own, and numbers. */
export const programmeDrafts: readonly EntryDraft[] = [
  changed(
    {
      ...{ what: "source", source: "own-survey-2025", title: "Invented survey of forty colonies", year: 2025 },
      ...{ where: "kept by the programme", read: "read in full" },
    },
    "own-survey-2025",
  ),
  changed(
    { what: "frequency", condition: "queenless", finding: "roar_agitated", rate: 0.55, suppresses: false, outOf: 40 },
    "own-survey-2025",
  ),
  changed({ what: "prior", condition: "robbing", season: "autumn", rate: 0.09 }),
  changed({ what: "healthy-rate", finding: "crawlers", season: "spring", rate: 0.08 }),
  changed({
    ...{ what: "condition", condition: "own_flooded_stand", term: "Flooded stand", role: "cause", rollUp: null },
    ...{ urgency: "same-day", prior: { winter: 0.01, spring: 0.02, summer: 0.005, autumn: 0.01 } },
  }),
  changed({
    ...{ what: "finding", finding: "own_water_line", term: "Water line on the boxes", kind: "sign", group: null },
    ...{ question: "Is there a line of silt on the boxes?", lookFor: "A level line of silt around the lowest box." },
    ...{ minutes: 1, healthy: { winter: 0.01, spring: 0.01, summer: 0.01, autumn: 0.01 } },
  }),
  changed({
    ...{ what: "frequency", condition: "own_flooded_stand", finding: "own_water_line", rate: 0.9, suppresses: false },
  }),
  set({
    thresholds: { leading: 0.6 },
    experience: { frequencies: true, healthyRates: false, priors: false, strength: 1 },
    reason: "The laboratory names a cause more rarely.",
  }),
];

/** The whole story: the drafts, and a prior typed with a slip and withdrawn. */
export function programmeStory(programme = "main"): readonly Entry[] {
  const office = writer({ device: "office-1", programme, author: "Office", from: "2026-04-02T08:00:00.000Z" });
  const told = office.write(...programmeDrafts);
  const slip = office.write(changed({ what: "prior", condition: "starvation", season: "winter", rate: 0.9 }));
  const undone = office.write({
    kind: "entry-withdrawn",
    at: on,
    about: [programme],
    replaces: slip.map((entry) => entry.header.id),
    data: { reason: "a nought was missing" },
  });
  return [...told, ...slip, ...undone];
}
