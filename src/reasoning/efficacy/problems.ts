/** Every trouble the efficacy step can report, with the slots its sentence needs. */
import { type Problem, problem, type Severity } from "../../units/index.ts";

/** Codes of efficacy with their slots; views/words holds one sentence for each. */
export interface EfficacyProblems {
  /** Without untreated colonies there is no efficacy, only before and after. */
  readonly "no-comparator": Readonly<Record<never, never>>;
  readonly "infested-exceed-examined": {
    readonly group: string;
    readonly infested: number;
    readonly examined: number;
  };
  readonly "group-not-examined": { readonly group: string };
  /** A zero where the formula divides: the quantity is undefined. */
  readonly "efficacy-undefined": { readonly group: string };
  /** A zero after treatment: half a count was added everywhere to get limits. */
  readonly "half-added-for-limits": { readonly group: string };
  /** The treated group did worse than the untreated one; reported as it is. */
  readonly "negative-efficacy": { readonly efficacy: number };
  /** Dead mites stay in the tracheae and still count as infested. */
  readonly "dead-mites-still-counted": { readonly daysAfter: number };
  /** Counts of mites vary more than Poisson: without an overdispersion the limits are too narrow. */
  readonly "overdispersion-not-given": { readonly total: number };
  /** Before and after are the same in every pair. */
  readonly "no-pair-differs": { readonly pairs: number };
  /** Changes of equal size: the exact law of the ranks does not hold. */
  readonly "changes-tie": { readonly pairs: number };
  readonly "too-many-pairs-to-list": { readonly pairs: number; readonly most: number };
  /** So many pairs of counts that maximising over the common share would take minutes. */
  readonly "too-many-tables": { readonly tables: number; readonly most: number };
  /** Two equal shares: no number of bees tells them apart. */
  readonly "shares-equal": { readonly share: number };
}

/** All codes of `EfficacyProblems`, for tests of completeness. */
export const efficacyProblemCodes = [
  "no-comparator",
  "infested-exceed-examined",
  "group-not-examined",
  "efficacy-undefined",
  "half-added-for-limits",
  "negative-efficacy",
  "dead-mites-still-counted",
  "overdispersion-not-given",
  "no-pair-differs",
  "changes-tie",
  "too-many-pairs-to-list",
  "too-many-tables",
  "shares-equal",
] as const satisfies readonly (keyof EfficacyProblems)[];

/** A Problem of this step: code and slots must fit each other. */
export const efficacyProblem = <Code extends keyof EfficacyProblems>(
  code: Code,
  severity: Severity,
  field: string | null,
  slots: EfficacyProblems[Code],
): Problem => problem(code, severity, field, { slots: { ...slots } });
