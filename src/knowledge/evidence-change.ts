/** What a programme may change in the evidence, one thing a change; its place, and the shape of each. */
import type { Season } from "../units/index.ts";
import type { ChangeNote } from "./evidence.ts";
import type { Role, RollUp, Urgency } from "./fact.ts";

/** One number for each season. */
type BySeason = Readonly<Record<Season, number>>;

/** One change. Ids of a programme's own conditions and findings begin with `own_`, so that none meets a published one. */
export type EvidenceChange =
  | {
      readonly what: "source";
      readonly source: string;
      readonly title: string;
      readonly authors?: string | undefined;
      readonly year?: number | undefined;
      readonly where: string;
      /** What of it was read. */
      readonly read: string;
    }
  | {
      readonly what: "condition";
      readonly condition: string;
      readonly term: string;
      readonly role: Role;
      readonly rollUp: RollUp | null;
      readonly urgency: Urgency;
      /** Probability among referred failing colonies; needed for a condition of the programme's own. */
      readonly prior?: BySeason | undefined;
    }
  | {
      readonly what: "finding";
      readonly finding: string;
      readonly term: string;
      readonly kind: "sign" | "circumstance";
      /** Findings of one group measure nearly the same thing: a published group, or one of the programme's own. */
      readonly group: string | null;
      readonly question: string;
      /** The definition, for a stranger to score by. */
      readonly lookFor: string;
      readonly minutes: number;
      /** Probability in a well colony; needed for a finding of the programme's own. */
      readonly healthy?: BySeason | undefined;
    }
  | {
      readonly what: "frequency";
      readonly condition: string;
      readonly finding: string;
      readonly rate: number;
      readonly suppresses: boolean;
      /** Colonies that the source looked at, where it says so. */
      readonly outOf?: number | undefined;
    }
  | {
      readonly what: "prior";
      readonly condition: string;
      readonly season: Season;
      readonly rate: number;
      readonly outOf?: number | undefined;
    }
  | {
      readonly what: "healthy-rate";
      readonly finding: string;
      readonly season: Season;
      readonly rate: number;
      readonly outOf?: number | undefined;
    };

/** A change with who made it, when, and on whose word. */
export interface NotedChange extends ChangeNote {
  readonly change: EvidenceChange;
}

/**
 * The place that a change is about: two changes of one place cannot both hold.
 * @example
 * placeOfChange({ what: "prior", condition: "queenless", season: "spring", rate: 0.2 })  // → prior queenless spring
 */
export function placeOfChange(change: EvidenceChange): string {
  switch (change.what) {
    case "source":
      return `source ${change.source}`;
    case "condition":
      return `condition ${change.condition}`;
    case "finding":
      return `finding ${change.finding}`;
    case "frequency":
      return `frequency ${change.condition} ${change.finding}`;
    case "prior":
      return `prior ${change.condition} ${change.season}`;
    case "healthy-rate":
      return `healthy-rate ${change.finding} ${change.season}`;
  }
}

/**
 * Whether the text may be the id of a programme's own condition or finding.
 * @example
 * isOwnId("own_hive_scale")  // → true
 */
export const isOwnId = (text: string): boolean => /^own_[a-z0-9]+(_[a-z0-9]+)*$/.test(text);
