/** What a test is: what it needs, what it can miss, what it costs. */
import type { Citations } from "../fact.ts";
import type { Figure, Span } from "../figure.ts";
import type { ConditionId } from "../ids.ts";

/** What the result of a test looks like. */
export type ResultKind =
  | "positive-of-examined"
  | "mites-per-bees"
  | "mites-per-day"
  | "mites-per-brood-cells"
  | "spores-per-bee"
  | "found-or-not"
  | "titre-class"
  | "residues"
  | "queen-cells-or-not"
  | "mass"
  | "live-of-mites";

/** 1: in the field, nearly free … 4: a specialised laboratory. */
export type CostClass = 1 | 2 | 3 | 4;

/** How bees are kept until they are read. */
export type Keeping = "ethanol-70" | "frozen" | "fresh" | "dry";

/** Where in the hive a specimen was taken: S super or inner cover, E honey and pollen edge, B brood, F entrance, D found dead. */
export type TakenFrom = "S" | "E" | "B" | "F" | "D";

/** Where a specimen can come from; one from elsewhere cannot answer the test. */
export interface Places {
  readonly from: readonly TakenFrom[];
  readonly why: string;
  readonly citations: Citations;
}

/** A test that can be made on a colony or its bees. */
export interface TestFact<Id extends string = string> {
  readonly id: Id;
  readonly term: string;
  /** The question it answers, in plain words. */
  readonly answers: string;
  readonly conditions: readonly ConditionId[];
  /** What is taken, how many, in which state. */
  readonly specimen: string;
  /** Units taken; null where the whole colony is looked at. */
  readonly sample: Span | Figure | null;
  /** Bees kept so cannot answer it, and the source for that; left out where none is known. */
  readonly unfit?: { readonly kept: readonly Keeping[]; readonly why: string; readonly citations: Citations };
  /** Where its specimen can come from; left out where every place may hold one. */
  readonly places?: Places;
  /** Its result can say which of the conditions it found. */
  readonly namesWhatItFound?: true;
  readonly result: ResultKind;
  /** Probability to find it where it is, per unit examined as `sensitivityIs` says; null where no figure is known. */
  readonly sensitivity: Span | Figure | null;
  readonly sensitivityIs: string;
  /** Probability to find nothing where nothing is; null where no figure is known. */
  readonly specificity: Span | Figure | null;
  readonly specificityIs: string;
  readonly costClass: { readonly low: CostClass; readonly high: CostClass };
  /** Days to the result, post not counted. Common practice unless the record says otherwise. */
  readonly days: { readonly low: number; readonly high: number };
  /** Working minutes of the person who makes it, in the yard or at the bench. Judgement: nobody has timed it. */
  readonly minutes: Figure<"judgement">;
  /** What the season does to the answer; null where it does nothing known. */
  readonly seasonCaveat: string | null;
  /** How the result misleads. */
  readonly traps: readonly string[];
  readonly citations: Citations;
}
