/** Why a plan is as it is: codes with slots, each with its rule and its source. */
import type { Citation } from "../../knowledge/index.ts";

/** Codes of the reasons of a sample plan with their slots; views/words holds one sentence for each. */
export interface PlanReasons {
  readonly "size-for-detection": {
    readonly bees: number;
    readonly designPrevalence: number;
    readonly confidence: number;
    readonly sensitivity: number;
  };
  readonly "size-of-handbook": { readonly bees: number; readonly forDetection: number };
  readonly "size-for-margin": {
    readonly bees: number;
    readonly margin: number;
    readonly level: number;
    readonly expectedPrevalence: number;
  };
  readonly "old-bees-from-super": Readonly<Record<never, never>>;
  readonly "old-bees-under-inner-cover": Readonly<Record<never, never>>;
  readonly "freshest-of-the-dead": Readonly<Record<never, never>>;
  readonly "mixed-ages-from-comb-edge": Readonly<Record<never, never>>;
  readonly "same-place-as-before": { readonly from: string };
  readonly "find-queen-first": Readonly<Record<never, never>>;
  readonly "drones-if-any": Readonly<Record<never, never>>;
  readonly "season-favours-detection": { readonly season: string };
  readonly "summer-dilutes": { readonly season: string };
  /** One source prefers winter and early spring, another autumn. */
  readonly "season-views-differ": { readonly season: string };
  readonly "spare-bees": { readonly spareBees: number; readonly spareShare: number };
  readonly "keep-in-ethanol": Readonly<Record<never, never>>;
  readonly "fresh-opens-better": { readonly preservative: string };
  readonly "dry-bees-rot": { readonly preservative: string };
}

/** All codes of `PlanReasons`, for tests of completeness. */
export const planReasonCodes = [
  "size-for-detection",
  "size-of-handbook",
  "size-for-margin",
  "old-bees-from-super",
  "old-bees-under-inner-cover",
  "freshest-of-the-dead",
  "mixed-ages-from-comb-edge",
  "same-place-as-before",
  "find-queen-first",
  "drones-if-any",
  "season-favours-detection",
  "summer-dilutes",
  "season-views-differ",
  "spare-bees",
  "keep-in-ethanol",
  "fresh-opens-better",
  "dry-bees-rot",
] as const satisfies readonly (keyof PlanReasons)[];

/** One reason of a plan. */
export interface PlanReason {
  readonly rule: string;
  readonly code: keyof PlanReasons;
  readonly slots: Readonly<Record<string, string | number>>;
  readonly source: Citation;
}

/** A reason: code and slots must fit each other. */
export const planReason = <Code extends keyof PlanReasons>(
  rule: string,
  code: Code,
  slots: PlanReasons[Code],
  source: Citation,
): PlanReason => ({ rule, code, slots: { ...slots }, source });
