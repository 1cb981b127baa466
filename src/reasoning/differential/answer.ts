/** What the differential answers. */
import type { ConditionId, FindingId, Role, RollUp, TestId } from "../../knowledge/index.ts";

/** A finding or test, and how it moves a condition. */
export interface Reason<F extends string = FindingId> {
  /** Id of the finding or test. */
  readonly finding: F | TestId;
  /** log2 of the condition's odds with it, less the same without it; positive for, negative against. */
  readonly bits: number;
}

/** Where an agent can be there without being the cause; the three sum to one. */
export interface AgentLevel {
  readonly none: number;
  readonly background: number;
  readonly clinical: number;
}

/** A condition in the ranking. */
export interface RankedCondition<C extends string = ConditionId, F extends string = FindingId> {
  readonly id: C;
  readonly role: Role;
  /** Probability of the clinical level, or that the cause is present, at the stated grades. */
  readonly posterior: number;
  /** 5 and 95 % points of the draws. */
  readonly low: number;
  readonly high: number;
  /** Of agents that are counted. */
  readonly level?: AgentLevel;
  readonly for: readonly Reason<F>[];
  readonly against: readonly Reason<F>[];
}

/** A roll-up group: any of its members. */
export interface RankedGroup {
  readonly id: RollUp;
  readonly posterior: number;
  readonly low: number;
  readonly high: number;
}

/** Why the verdict is what it is. */
export type Because =
  | "leads"
  | "group-leads"
  | "no-sign-or-test"
  | "nothing-likely"
  | "range-too-wide"
  | "primary-open"
  | "needs-wash-and-spore-count"
  | "tracheae-not-opened"
  | "spotty-brood-alone"
  | "one-common-sign"
  | "needs-test-frame"
  | "circumstances-only"
  | "report-first";

/** A name, or that none can be given yet. `condition` is absent when only the group can be named. */
export interface Verdict<C extends string = ConditionId> {
  readonly kind: "cannot-tell" | "leading";
  readonly condition?: C;
  readonly group?: RollUp;
  readonly because: Because;
}

/** What is shown whatever the rank. */
export interface Notice {
  readonly condition: ConditionId;
  /** What fired it: the finding or test; the first, where several must meet. */
  readonly finding: FindingId | TestId;
  readonly findings: readonly (FindingId | TestId)[];
  readonly act: string;
  readonly doNot: readonly string[];
  readonly report: boolean;
}

/** The differential of one colony. */
export interface DifferentialAnswer<C extends string = ConditionId, F extends string = FindingId> {
  /** Every condition, likeliest first. */
  readonly conditions: readonly RankedCondition<C, F>[];
  readonly groups: readonly RankedGroup[];
  /** Posterior of the empty set. */
  readonly nothingWrong: number;
  readonly verdict: Verdict<C>;
  readonly mustNotMiss: readonly Notice[];
  /** Bound on the posterior mass that was left out; 0 when all sets are in. */
  readonly neglectedMass: number;
  readonly knowledge: {
    readonly version: string;
    /** Share of the pairs used whose grade and belonging are judgement alone; 1 when nothing was looked for. */
    readonly judgedShare: number;
  };
}

/** The answer under evidence that may hold conditions and findings of a programme's own. */
export type AnyAnswer = DifferentialAnswer<string, string>;
