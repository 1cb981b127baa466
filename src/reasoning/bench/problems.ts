/** Every trouble the bench step can report, with the slots its sentence needs. */
import { type Problem, problem, type Severity } from "../../units/index.ts";

/** Codes of the bench with their slots; views/words holds one sentence for each. */
export interface BenchProblems {
  readonly "positives-exceed-examined": { readonly positive: number; readonly examined: number };
  readonly "nothing-examined": Readonly<Record<never, never>>;
  /** The reading stopped because of what was found: the interval is that of a stopped sample. */
  readonly "stopped-early": { readonly positive: number; readonly examined: number };
  /** Sensitivity and specificity sum to 1 or less: the result of such a test says nothing. */
  readonly "test-no-better-than-chance": { readonly sensitivity: number; readonly specificity: number };
  /** Fewer positives than false ones alone would give on average. */
  readonly "fewer-than-false-positives": {
    readonly positive: number;
    readonly examined: number;
    readonly expected: number;
  };
  /** More positives than the test gives when every one is infested. */
  readonly "more-than-sensitivity": {
    readonly positive: number;
    readonly examined: number;
    readonly expected: number;
  };
  /** Both limits lie on the same side of what a share can be: cut there they are one point, and no certainty. */
  readonly "limits-cut-to-a-point": { readonly at: number };
  /** The integral over the errors of the test still changed with `nodes` nodes. */
  readonly "posterior-did-not-settle": { readonly nodes: number };
  /** No likeliest share between 0 and 1, no bias and no standard error. */
  readonly "no-pool-positive": { readonly pools: number };
  /** Every share above some bound fits as well: there is no upper estimate. */
  readonly "all-pools-positive": { readonly pools: number };
  readonly "pool-sizes-differ": { readonly smallest: number; readonly largest: number };
  /** The method has no limit at this end for these counts and this level. */
  readonly "pooled-limit-out-of-reach": { readonly end: string };
  readonly "no-mites-counted": { readonly bees: number };
  /** A mean of fewer than two bees has no interval. */
  readonly "too-few-to-estimate": { readonly bees: number };
  /** Left + right must equal infested + both. */
  readonly "sides-do-not-add-up": {
    readonly left: number;
    readonly right: number;
    readonly both: number;
    readonly infested: number;
  };
  /** More bees with mites on both sides than chance gives: old and young bees mixed, or a reading habit. */
  readonly "both-sides-far-exceed": {
    readonly both: number;
    readonly expected: number;
    readonly examined: number;
    readonly pValue: number;
  };
  /** One side is found infested far more often than the other; mites do not choose a side. */
  readonly "left-and-right-differ": { readonly left: number; readonly right: number; readonly pValue: number };
  /** The interval reaches over more than one band, or over a gap between bands. */
  readonly "interval-spans-bands": { readonly lowPercent: number; readonly highPercent: number };
  /** By some sources the share is over the line, by others under it. */
  readonly "sources-disagree": { readonly over: number; readonly under: number };
  /** The bands are for autumn and winter; the sample is of another season. */
  readonly "bands-out-of-season": { readonly season: string };
  /** Two readings of the same bees lie in different classes, beyond chance. */
  readonly "readers-disagree": { readonly first: number; readonly second: number; readonly pValue: number };
  /** Two readings agree on every bee: nothing to test. */
  readonly "no-bee-read-differently": Readonly<Record<never, never>>;
  /** Rows and columns of a table of two readers must be the same classes, two or more. */
  readonly "table-not-square": { readonly rows: number };
  /** Both readers used one class only: chance alone explains all agreement. */
  readonly "kappa-undefined": { readonly readings: number };
  /** One reader used one class only: kappa is 0 whatever the other did, and there is nothing to test. */
  readonly "one-class-by-a-reader": { readonly readings: number };
  /** The large-sample error of an agreement is 0, so its limits are the estimate itself: no certainty, at any number. */
  readonly "agreement-without-error": { readonly readings: number; readonly estimate: number };
  /** Neither reader used this class. */
  readonly "class-never-used": { readonly class: number };
  /** Variance not above the mean: no aggregation to estimate, mites sit as if at random. */
  readonly "no-more-uneven-than-chance": { readonly mean: number; readonly variance: number };
  /** Fewer bees without mites than chance leaves: no aggregation fits the share. */
  readonly "too-few-without-mites": { readonly without: number; readonly byChance: number };
  /** Columns of a design say the same thing twice: their parts cannot be told apart. */
  readonly "columns-repeat": Readonly<Record<never, never>>;
  /** A group without a single mite: its ratio to the others has no lower end. */
  readonly "group-without-mites": Readonly<Record<never, never>>;
  /** A fit that moved on after its last round: no answer is given. */
  readonly "fit-did-not-settle": { readonly rounds: number };
  readonly "recovery-not-given": { readonly mites: number; readonly bees: number };
  /** Limits of a wash count one vial only; colonies vary far more. */
  readonly "one-wash-one-vial": { readonly bees: number };
  readonly "table-has-empty-margin": {
    readonly a: number;
    readonly b: number;
    readonly c: number;
    readonly d: number;
  };
  /** A cell is 0: half a bee was added to every cell to get limits. */
  readonly "half-added-to-cells": {
    readonly a: number;
    readonly b: number;
    readonly c: number;
    readonly d: number;
  };
  /** Expected counts under 5: trust Fisher's test rather than chi-square. */
  readonly "chi-square-thin": { readonly smallestExpected: number };
  /** One colony, or none, tells nothing of how colonies differ. */
  readonly "too-few-colonies": { readonly colonies: number };
  /** No infested bee in any colony: nothing can be said of how colonies differ. */
  readonly "all-colonies-clear": { readonly examined: number };
  /** Every bee of every colony infested. */
  readonly "all-colonies-full": { readonly examined: number };
  /** The spread between colonies is likeliest at 0: the answer takes the bees as one sample. */
  readonly "colonies-no-more-than-chance": { readonly colonies: number; readonly examined: number };
  /** Each colony is all or none: the spread has no maximum below 1. */
  readonly "colonies-all-or-none": { readonly colonies: number; readonly examined: number };
  /** One bee a colony: what differs between colonies cannot be told from what differs between bees. */
  readonly "one-bee-a-colony": { readonly colonies: number };
  /** The same share in every colony: an interval from the differences between them would have no width. */
  readonly "colonies-all-alike": { readonly colonies: number; readonly share: number };
}

/** All codes of `BenchProblems`, for tests of completeness. */
export const benchProblemCodes = [
  "positives-exceed-examined",
  "nothing-examined",
  "stopped-early",
  "test-no-better-than-chance",
  "fewer-than-false-positives",
  "more-than-sensitivity",
  "limits-cut-to-a-point",
  "posterior-did-not-settle",
  "no-pool-positive",
  "all-pools-positive",
  "pool-sizes-differ",
  "pooled-limit-out-of-reach",
  "no-mites-counted",
  "too-few-to-estimate",
  "sides-do-not-add-up",
  "both-sides-far-exceed",
  "left-and-right-differ",
  "interval-spans-bands",
  "sources-disagree",
  "bands-out-of-season",
  "readers-disagree",
  "no-bee-read-differently",
  "table-not-square",
  "kappa-undefined",
  "one-class-by-a-reader",
  "agreement-without-error",
  "class-never-used",
  "no-more-uneven-than-chance",
  "too-few-without-mites",
  "columns-repeat",
  "group-without-mites",
  "fit-did-not-settle",
  "recovery-not-given",
  "one-wash-one-vial",
  "table-has-empty-margin",
  "half-added-to-cells",
  "chi-square-thin",
  "too-few-colonies",
  "all-colonies-clear",
  "all-colonies-full",
  "colonies-no-more-than-chance",
  "colonies-all-or-none",
  "one-bee-a-colony",
  "colonies-all-alike",
] as const satisfies readonly (keyof BenchProblems)[];

/** A Problem of this step: code and slots must fit each other. */
export const benchProblem = <Code extends keyof BenchProblems>(
  code: Code,
  severity: Severity,
  field: string | null,
  slots: BenchProblems[Code],
): Problem => problem(code, severity, field, { slots: { ...slots } });
