/** The shapes of facts: how each was read, who says so, and what may serve as a default. */
import type { Season } from "../units/index.ts";
import type { ConditionId, FindingId } from "./ids.ts";
import type { SourceKey } from "./sources.ts";

/**
 * How a figure or statement came to us.
 * seen: read in the cited text · memory: recalled, not read again · common-practice: lore of the trade without a
 * study · judgement: an expert's estimate · computed: arithmetic from seen inputs.
 */
export type ReadMark = "seen" | "memory" | "common-practice" | "judgement" | "computed";

/** Who says so, and where in the work. `source` is null where there is no publication behind it. */
export interface Citation<Mark extends ReadMark = ReadMark> {
  readonly source: SourceKey | null;
  /** Section, table or what of the work; for a statement without a source, whose lore or judgement it is. */
  readonly at: string;
  readonly read: Mark;
}

/** At least one citation. */
export type Citations = readonly [Citation, ...Citation[]];

/** A published or unpublished work. */
export interface SourceFact {
  readonly evidenceId: `S${string}` | `U${string}` | null;
  readonly kind: "article" | "book-section" | "leaflet" | "manual" | "standard" | "report" | "instructions" | "page";
  /** Null where the copy read did not show them. Initials are from memory. */
  readonly authors: string | null;
  readonly year: number | null;
  readonly title: string;
  readonly where: string;
  /** What of it was read, and which of the details above are from memory. */
  readonly read: string;
}

/** How often a finding is present, if looked for. Words of the judges, never percentages. */
export type Grade = "never" | "rare" | "occasional" | "common" | "usual" | "typical";

/** How often a finding goes with a condition at its clinical stage. */
export interface Frequency {
  /** The grade itself is judgement, whatever the source. */
  readonly grade: Grade;
  /** True where the condition makes the finding rarer than in a well colony. */
  readonly suppresses?: true;
  /** The work that says this finding belongs to, or argues against, this condition; or judgement alone. */
  readonly source: SourceKey | "judgement";
}

/** cause · secondary: find what came first · syndrome: a name for what is unexplained · normal: no trouble. */
export type Role = "cause" | "secondary" | "syndrome" | "normal";

/** Groups judged before single conditions. */
export type RollUp = "varroa_and_viruses" | "queen_trouble" | "nosema" | "brood_disease" | "normal";

/** Whom it strikes. */
export type Stage = "adult" | "brood" | "colony";

/** What it may be taken for, and what tells the two apart. */
export interface LookAlike {
  readonly what: string;
  readonly conditions: readonly ConditionId[];
  readonly tellApart: string;
}

/** Whether the law wants to hear of it. From memory: ask the competent authority. */
export type Listing =
  | "none"
  | "woah"
  | "woah-and-national"
  | "woah-and-national-in-some"
  | "national"
  | "national-in-some"
  | "pesticide-authority";

/** How soon something must be done. */
export type Urgency = "same-day" | "within-a-week" | "within-a-month" | "next-season";

/** A condition: a candidate explanation in the differential. */
export interface ConditionFact<Id extends string = ConditionId> {
  readonly id: Id;
  /** In plain words. */
  readonly term: string;
  /** The agent's scientific name; null where the cause is no organism. */
  readonly scientificName: string | null;
  readonly role: Role;
  readonly rollUp: RollUp | null;
  /** Judgement: does it strike an apiary rather than a colony, so that its odds are shared by the colonies? */
  readonly apiaryWide: boolean;
  readonly stage: readonly Stage[];
  /** When it is met, temperate climate. */
  readonly season: string;
  /** How fast it comes. */
  readonly onset: string;
  /** Which colonies of an apiary it strikes. */
  readonly apiaryPattern: string;
  readonly lookAlikes: readonly LookAlike[];
  /** What settles it, and from which specimen. */
  readonly confirm: string;
  /** What people do about it. Words, never doses. */
  readonly management: readonly string[];
  readonly listing: Listing;
  /** A danger to people that comes with it; no bee disease is known to infect people (from memory). */
  readonly humanHazard: string | null;
  readonly urgency: Urgency;
  readonly urgencyNote?: string;
  readonly note?: string;
  readonly citations: Citations;
  /** Percent of referred failing colonies, as printed; independent odds that need not sum to 100. Judgement. */
  readonly priorPercent: Readonly<Record<Season, number>>;
  /** A finding that is not listed is as frequent as in a well colony of the season. */
  readonly frequencies: Readonly<Partial<Record<FindingId, Frequency>>>;
}

/** Where one stands to see it. */
export type Place = "entrance" | "ground" | "under-lid" | "combs" | "brood" | "stores" | "apiary" | "history";

/** Findings of one group measure nearly the same thing. */
export type FindingGroup =
  | "onset"
  | "spread"
  | "exposure"
  | "weather"
  | "history"
  | "locomotion"
  | "mortality"
  | "mortality_look"
  | "faeces"
  | "robbing"
  | "adult_skin"
  | "nervous"
  | "mite_adult"
  | "starve"
  | "cluster"
  | "strength"
  | "brood_pattern"
  | "brood_caps"
  | "brood_afb"
  | "brood_open"
  | "brood_sac"
  | "brood_fungus"
  | "brood_pupae"
  | "brood_chill"
  | "brood_odour"
  | "brood_ratio"
  | "brood_feed"
  | "queen"
  | "queen_cells"
  | "queen_state"
  | "stores"
  | "stores_pollen"
  | "damp"
  | "pest"
  | "predator";

/** What can be present, absent or not looked for. */
export interface FindingFact<Id extends string = FindingId> {
  readonly id: Id;
  /** A circumstance multiplies prior odds and is not explained away; a sign is something seen on bees, brood or hive. */
  readonly kind: "sign" | "circumstance";
  readonly place: Place;
  readonly group: FindingGroup;
  /** Short label. */
  readonly term: string;
  /** Short question, to be answered yes, no or not looked. */
  readonly question: string;
  /** The definition, in plain words. */
  readonly lookFor: string;
  /** How to tell it from what looks like it. */
  readonly tellApart?: string;
  /** The finding with which it cannot be scored together. */
  readonly exclusiveWith?: FindingId;
  /** True where it is worked out from the records of the apiary's colonies. */
  readonly derived?: true;
  /** True where it is not asked while neighbouring colonies have no brood. */
  readonly onlyWhenNeighboursHaveBrood?: true;
  /** True for what a colony that is well shows and no condition brings. */
  readonly ofHealth?: true;
  /** Minutes the look takes. Judgement. */
  readonly minutes: number;
}

/** What a region changes in the prior odds of some conditions. */
export interface RegionAdjustment {
  readonly when: string;
  readonly conditions: readonly ConditionId[];
  readonly change:
    | { readonly kind: "factor"; readonly factor: number }
    | { readonly kind: "factor-range"; readonly low: number; readonly high: number; readonly atMostPercent: number }
    | { readonly kind: "winter-percent"; readonly percent: number }
    | { readonly kind: "as-printed" };
  /** True where the other priors are scaled up so that the sum stays what it was. */
  readonly thenRenormalise: boolean;
  readonly citations: Citations;
}
