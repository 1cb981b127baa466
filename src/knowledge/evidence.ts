/** The evidence in use: what the differential reckons with, as one plain value that says where each number comes from. */
import type { Day, Season } from "../units/index.ts";
import { conditions } from "./conditions/index.ts";
import type { Grade, ReadMark, Role, RollUp, Urgency } from "./fact.ts";
import { findings } from "./findings/index.ts";
import { gradeProbability } from "./grade-probability.ts";
import { healthyRates } from "./healthy-rates.ts";
import { conditionIds, findingIds } from "./ids.ts";
import { priors } from "./priors.ts";
import { sources } from "./sources.ts";
import { knowledgeVersion } from "./version.ts";

/** On whose word something was changed: a source of the knowledge or of the programme, or none; where in it; how read. */
export interface OwnCitation {
  readonly source: string | null;
  readonly at: string;
  readonly read: ReadMark;
}

/** Who changed it, and when. */
export interface ChangeNote {
  /** Id of the entry that says so. */
  readonly entry: string;
  readonly author: string;
  readonly on: Day;
  readonly citation: OwnCitation;
}

/** How often something was seen, of how often it was looked for. */
export interface Seen {
  readonly present: number;
  readonly looked: number;
}

/** A probability in use, and all that it comes from. */
export interface ValueInUse {
  /** Probability now. */
  readonly value: number;
  /** The published start; null where nothing is published. */
  readonly published: number | null;
  /** Whose start that is; null where nothing is published. */
  readonly source: string | null;
  /** What a programme put in its place, and colonies that its source looked at, where it says so. */
  readonly change: (ChangeNote & { readonly value: number; readonly outOf: number | null }) | null;
  /** What the programme's own closed cases showed; null while experience is not used. */
  readonly seen: Seen | null;
  /** The start as counts, to which `seen` was added; null while experience is not used. */
  readonly start: Seen | null;
  /** Standard deviation of the draws, of log odds; null: that of a judged number. */
  readonly spread: number | null;
}

/** How often a finding goes with a condition. */
export interface FrequencyInUse extends ValueInUse {
  readonly grade: Grade | null;
  readonly suppresses: boolean;
}

/** A condition as the differential needs it. */
export interface ConditionInUse {
  readonly id: string;
  readonly term: string;
  readonly role: Role;
  readonly rollUp: RollUp | null;
  readonly urgency: Urgency;
  readonly change: ChangeNote | null;
}

/** A finding as the differential needs it. */
export interface FindingInUse {
  readonly id: string;
  readonly term: string;
  readonly kind: "sign" | "circumstance";
  readonly group: string | null;
  readonly question: string;
  readonly lookFor: string;
  readonly exclusiveWith: string | null;
  readonly derived: boolean;
  /** A colony that is well shows it and no condition brings it: it can only be taken away. */
  readonly ofHealth: boolean;
  readonly minutes: number;
  readonly change: ChangeNote | null;
}

/** A work that is cited. */
export interface SourceInUse {
  readonly key: string;
  readonly authors: string | null;
  readonly year: number | null;
  readonly title: string;
  readonly where: string;
  /** What of it was read. */
  readonly read: string;
  readonly change: ChangeNote | null;
}

/** Everything the differential takes from the knowledge. Published ids come first and keep their places. */
export interface Evidence {
  readonly version: string;
  readonly conditionIds: readonly string[];
  readonly findingIds: readonly string[];
  readonly conditions: Readonly<Record<string, ConditionInUse>>;
  readonly findings: Readonly<Record<string, FindingInUse>>;
  readonly sources: Readonly<Record<string, SourceInUse>>;
  /** By condition, then by finding; a pair that is not listed is as frequent as in a well colony. */
  readonly frequencies: Readonly<Record<string, Readonly<Record<string, FrequencyInUse>>>>;
  /** By condition, then by season. */
  readonly priors: Readonly<Record<string, Readonly<Record<Season, ValueInUse>>>>;
  /** By season, then by finding. */
  readonly healthy: Readonly<Record<Season, Readonly<Record<string, ValueInUse>>>>;
}

/** The four seasons, in the order of the knowledge. */
export const evidenceSeasons: readonly Season[] = ["winter", "spring", "summer", "autumn"];

/** A value as published. */
const asPublished = (value: number, source: string): ValueInUse => ({
  value,
  published: value,
  source,
  change: null,
  seen: null,
  start: null,
  spread: null,
});

/** A record with a member for each key. */
const each = <K extends string, T>(keys: readonly K[], make: (key: K) => T): Readonly<Record<K, T>> =>
  Object.fromEntries(keys.map((key) => [key, make(key)])) as Record<K, T>;

/** The evidence as published: what every programme starts from. Never changed; changes make another value. */
export const publishedEvidence: Evidence = {
  version: knowledgeVersion,
  conditionIds,
  findingIds,
  conditions: each(conditionIds, (id) => {
    const { term, role, rollUp, urgency } = conditions[id];
    return { id, term, role, rollUp, urgency, change: null };
  }),
  findings: each(findingIds, (id) => {
    const { term, kind, group, question, lookFor, exclusiveWith = null, minutes } = findings[id];
    const { derived = false, ofHealth = false } = findings[id];
    return { id, term, kind, group, question, lookFor, exclusiveWith, derived, ofHealth, minutes, change: null };
  }),
  sources: each(Object.keys(sources) as (keyof typeof sources)[], (key) => {
    const { authors, year, title, where, read } = sources[key];
    return { key, authors, year, title, where, read, change: null };
  }),
  frequencies: each(conditionIds, (id) =>
    Object.fromEntries(
      Object.entries(conditions[id].frequencies).map(([finding, { grade, suppresses = false, source }]) => [
        finding,
        { ...asPublished(gradeProbability[grade], source), grade, suppresses },
      ]),
    ),
  ),
  priors: each(conditionIds, (id) => each(evidenceSeasons, (season) => asPublished(priors[id][season], "judgement"))),
  healthy: each(evidenceSeasons, (season) =>
    each(findingIds, (id) => asPublished(gradeProbability[healthyRates[season][id]], "judgement")),
  ),
};
