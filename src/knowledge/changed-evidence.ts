/** Evidence with a programme's changes: what fits is taken, what does not is told and leaves the rest as it is. */
import type { Problem, Season } from "../units/index.ts";
import { type ChangeNote, type Evidence, evidenceSeasons, type ValueInUse } from "./evidence.ts";
import { type EvidenceChange, isOwnId, type NotedChange, placeOfChange } from "./evidence-change.ts";
import { notesOn } from "./evidence-notes.ts";
import { evidenceProblem } from "./problems.ts";

/** Evidence, and what of the changes could not be taken. */
export interface ChangedEvidence {
  readonly evidence: Evidence;
  readonly problems: readonly Problem[];
}

/** A programme may add this many conditions: draws have no names for more. */
export const mostOwnConditions = 18;
/** A programme may add this many findings. */
export const mostOwnFindings = 400;
/** Nearer to 0 or 1 no rate is told from certainty. */
export const leastRate = 1e-12;
/** Colonies that a source can have looked at; and of them with or without the finding at least, on the mean. */
const colonies = { fewest: 1, most: 1_000_000, leastOfEither: 0.1 } as const;

/** Sources first, then what numbers are about, then numbers: so the order of the changes does not matter. */
const order: readonly EvidenceChange["what"][] = [
  "source",
  "condition",
  "finding",
  "prior",
  "healthy-rate",
  "frequency",
];

/**
 * The evidence with these changes. Each is held against the evidence as the others make it: an id that is not there, a
 * rate that is none, or a citation that names no source is a Problem that names both sides, and only that change is
 * left out. The evidence given stays as it is.
 *
 * Of two changes of one place neither counts: a person has to settle them first. A share for one season that a condition
 * or finding sets as well holds, and that is said, as is a condition without pairs and a pair that bears on nothing.
 *
 * @example
 * changedEvidence(publishedEvidence, []).problems.length  // → 0
 */
export function changedEvidence(evidence: Evidence, changes: readonly NotedChange[]): ChangedEvidence {
  const problems: Problem[] = [];
  let changed = evidence;
  const taken: EvidenceChange[] = [];
  const places = Map.groupBy(changes, ({ change }) => placeOfChange(change));
  for (const what of order) {
    const ofKind = [...places].filter(([, own]) => own[0]?.change.what === what).sort(([a], [b]) => (a < b ? -1 : 1));
    for (const [place, [noted, ...more]] of what === "source" ? citedFirst(ofKind) : ofKind) {
      if (noted === undefined) continue;
      const trouble =
        more.length > 0
          ? evidenceProblem("evidence-in-conflict", place, { changes: 1 + more.length })
          : troubleOf(changed, noted, place);
      if (trouble === null) {
        changed = applied(changed, noted);
        taken.push(noted.change);
      } else problems.push(trouble);
    }
  }
  return { evidence: changed, problems: [...problems, ...notesOn(evidence, changed, taken)] };
}

type Place = readonly [string, readonly NotedChange[]];

/** A source that another source on the list is cited from comes before it. */
function citedFirst(places: readonly Place[]): readonly Place[] {
  const placed = new Set<string>();
  const isReady = ([, [noted]]: Place) => {
    const { change, citation } = noted as NotedChange;
    const isListed = places.some(([place]) => place === `source ${citation.source}`);
    return !isListed || (change.what === "source" && change.source === citation.source);
  };
  const sorted: Place[] = [];
  let rest = places;
  while (rest.length > 0) {
    const next = rest.filter((each) => isReady(each) || placed.has(`source ${each[1][0]?.citation.source}`));
    // A ring of sources that cite each other: none comes first.
    if (next.length === 0) return [...sorted, ...rest];
    for (const each of next) placed.add(each[0]);
    sorted.push(...next);
    rest = rest.filter((each) => !next.includes(each));
  }
  return sorted;
}

function troubleOf(evidence: Evidence, { change, citation }: NotedChange, place: string): Problem | null {
  const { source } = citation;
  const isItself = change.what === "source" && source === change.source;
  if (source !== null && !isItself && !Object.hasOwn(evidence.sources, source))
    return evidenceProblem("evidence-source-missing", place, { source });
  const missing = missingIdOf(evidence, change);
  if (missing !== null) return evidenceProblem("evidence-id-missing", place, { id: missing });
  const rates = ratesOf(change);
  for (const rate of rates)
    if (!(rate >= leastRate && rate <= 1 - leastRate))
      return evidenceProblem("evidence-rate-out-of-range", place, { rate });
  if ("outOf" in change && change.outOf !== undefined && !isCountOf(change.outOf, change.rate))
    return evidenceProblem("evidence-count-out-of-range", place, { outOf: change.outOf });
  const kept = change.what === "finding" ? evidence.findings[change.finding]?.kind : undefined;
  if (kept !== undefined && change.what === "finding" && kept !== change.kind)
    return evidenceProblem("evidence-kind-fixed", place, { kind: kept });
  return isNew(evidence, change) ? newcomerTrouble(evidence, change, place) : null;
}

/** Whole colonies; and enough of them for the rate, since a hundredth of a colony would be no width at all. */
const isCountOf = (outOf: number, rate: number): boolean =>
  Number.isInteger(outOf) &&
  outOf >= colonies.fewest &&
  outOf <= colonies.most &&
  outOf * Math.min(rate, 1 - rate) >= colonies.leastOfEither;

/** What a change speaks of and the evidence does not have. */
function missingIdOf(evidence: Evidence, change: EvidenceChange): string | null {
  const isKnown = { condition: evidence.conditions, finding: evidence.findings } as const;
  for (const field of ["condition", "finding"] as const) {
    if (change.what === field || !(field in change)) continue;
    const id = (change as Readonly<Record<string, unknown>>)[field] as string;
    if (!Object.hasOwn(isKnown[field], id)) return id;
  }
  return null;
}

function ratesOf(change: EvidenceChange): readonly number[] {
  if ("rate" in change) return [change.rate];
  const bySeason = change.what === "condition" ? change.prior : change.what === "finding" ? change.healthy : undefined;
  return bySeason === undefined ? [] : evidenceSeasons.map((season) => bySeason[season]);
}

const isNew = (evidence: Evidence, change: EvidenceChange): boolean =>
  (change.what === "condition" && !Object.hasOwn(evidence.conditions, change.condition)) ||
  (change.what === "finding" && !Object.hasOwn(evidence.findings, change.finding));

/** A newcomer has an id of its own, a rate for each season, and room. */
function newcomerTrouble(evidence: Evidence, change: EvidenceChange, place: string): Problem | null {
  const isCondition = change.what === "condition";
  const id = isCondition ? change.condition : change.what === "finding" ? change.finding : "";
  if (!isOwnId(id)) return evidenceProblem("evidence-id-missing", place, { id });
  if (ratesOf(change).length === 0) return evidenceProblem("evidence-rates-missing", place, { id });
  const own = (isCondition ? evidence.conditionIds : evidence.findingIds).filter(isOwnId).length;
  const most = isCondition ? mostOwnConditions : mostOwnFindings;
  return own >= most ? evidenceProblem("evidence-too-many-own", place, { most }) : null;
}

function applied(evidence: Evidence, { change, entry, author, on, citation }: NotedChange): Evidence {
  const note: ChangeNote = { entry, author, on, citation };
  const numbers = (season: Season, rates: Readonly<Record<Season, number>>, before?: ValueInUse) =>
    changedValue(before, { note, rate: rates[season], outOf: null });
  switch (change.what) {
    case "source": {
      const { source: key, title, authors = null, year = null, where, read } = change;
      return {
        ...evidence,
        sources: { ...evidence.sources, [key]: { key, title, authors, year, where, read, change: note } },
      };
    }
    case "condition": {
      const { condition: id, term, role, rollUp, urgency, prior } = change;
      return {
        ...evidence,
        conditionIds: withId(evidence.conditionIds, id),
        conditions: { ...evidence.conditions, [id]: { id, term, role, rollUp, urgency, change: note } },
        frequencies: { ...evidence.frequencies, [id]: evidence.frequencies[id] ?? {} },
        priors:
          prior === undefined
            ? evidence.priors
            : {
                ...evidence.priors,
                [id]: bySeason((season) => numbers(season, prior, evidence.priors[id]?.[season])),
              },
      };
    }
    case "finding": {
      const { finding: id, term, kind, group, question, lookFor, minutes, healthy } = change;
      const { exclusiveWith = null, derived = false, ofHealth = false } = evidence.findings[id] ?? {};
      const kept = { exclusiveWith, derived, ofHealth };
      const made = { id, term, kind, group, question, lookFor, minutes, ...kept, change: note };
      return {
        ...evidence,
        findingIds: withId(evidence.findingIds, id),
        findings: { ...evidence.findings, [id]: made },
        healthy:
          healthy === undefined
            ? evidence.healthy
            : bySeason((season) => ({
                ...evidence.healthy[season],
                [id]: numbers(season, healthy, evidence.healthy[season][id]),
              })),
      };
    }
    case "frequency": {
      const { condition, finding, rate, suppresses, outOf = null } = change;
      const before = evidence.frequencies[condition]?.[finding];
      const made = {
        ...changedValue(before, { note, rate, outOf }),
        grade: before?.grade ?? null,
        suppresses,
      };
      return {
        ...evidence,
        frequencies: { ...evidence.frequencies, [condition]: { ...evidence.frequencies[condition], [finding]: made } },
      };
    }
    case "prior": {
      const { condition, season, rate, outOf = null } = change;
      const before = evidence.priors[condition] as Readonly<Record<Season, ValueInUse>>;
      const made = changedValue(before[season], { note, rate, outOf });
      return { ...evidence, priors: { ...evidence.priors, [condition]: { ...before, [season]: made } } };
    }
    case "healthy-rate": {
      const { finding, season, rate, outOf = null } = change;
      const before = evidence.healthy[season];
      const made = changedValue(before[finding], { note, rate, outOf });
      return { ...evidence, healthy: { ...evidence.healthy, [season]: { ...before, [finding]: made } } };
    }
  }
}

const withId = (ids: readonly string[], id: string): readonly string[] => (ids.includes(id) ? ids : [...ids, id]);

const bySeason = <T>(make: (season: Season) => T): Readonly<Record<Season, T>> =>
  Object.fromEntries(evidenceSeasons.map((season) => [season, make(season)])) as Record<Season, T>;

interface NewValue {
  readonly note: ChangeNote;
  readonly rate: number;
  readonly outOf: number | null;
}

/** The published start stays beside the new value. */
const changedValue = (before: ValueInUse | undefined, { note, rate, outOf }: NewValue): ValueInUse => ({
  value: rate,
  published: before?.published ?? null,
  source: before?.source ?? null,
  change: { ...note, value: rate, outOf },
  seen: null,
  start: null,
  spread: null,
});
