/** The list of next steps: what each is, and the orders it can stand in. */
import type { FindingId, TestId } from "../../knowledge/index.ts";

/**
 * Why a step stands where it does: it checks a reported sign by its own definition; the verdict waits for it, since
 * nothing else can lift a bar; or it is worth its effort. They come in this order.
 */
export type StepReason = "checks-what-was-reported" | "the-verdict-waits-for-it" | "worth-the-effort";
const reasonsInOrder: readonly StepReason[] = [
  "checks-what-was-reported",
  "the-verdict-waits-for-it",
  "worth-the-effort",
];

/** A look or test in the list. */
export interface NextStep<F extends string = FindingId> {
  /** Id of the finding or test. */
  readonly step: F | TestId;
  readonly kind: "look" | "test";
  /** Expected information on which conditions are present, in bits. */
  readonly bits: number;
  /** Expected loss it spares, in shares of one colony's value, by the default loss table. */
  readonly decisionGain: number;
  /** Working minutes; judgement. */
  readonly minutes: number;
  /** Cost class, 1 (in the field, nearly free) to 4 (a specialised laboratory). */
  readonly cost: 1 | 2 | 3 | 4;
  /** Days until the result is in; 0 for a look. Told, and not weighed: no price of a day is known. */
  readonly days: { readonly low: number; readonly high: number };
  /** Why it stands where it does. */
  readonly because: StepReason;
}

/** Minutes that come on top of any look or test: going there, opening, writing down. Judgement. */
const minutesBeside = 10;
/** Minutes of work that a cost class is weighed like. Judgement, no price is known here. */
const minutesOfCost = { 1: 0, 2: 60, 3: 180, 4: 480 } as const;

/** What a list goes by: what a step tells for its effort, what loss it spares for its effort, or how soon its result is in. */
export const stepOrders = ["tells", "spares", "soonest"] as const;
export type StepOrder = (typeof stepOrders)[number];

const effort = ({ minutes, cost }: NextStep<string>): number => minutes + minutesBeside + minutesOfCost[cost];

/**
 * The steps in an order. What checks a reported sign, and what the verdict waits for, stands first in each; what is alike
 * goes by what it tells for its effort.
 */
export function inOrder<F extends string>(steps: readonly NextStep<F>[], by: StepOrder): readonly NextStep<F>[] {
  const tells = (step: NextStep<string>) => step.bits / effort(step);
  const worth = {
    tells,
    spares: (step: NextStep<string>) => step.decisionGain / effort(step),
    soonest: ({ days }: NextStep<string>) => -days.high,
  }[by];
  return steps.toSorted(
    (a, b) =>
      reasonsInOrder.indexOf(a.because) - reasonsInOrder.indexOf(b.because) ||
      worth(b) - worth(a) ||
      tells(b) - tells(a) ||
      (a.step < b.step ? -1 : 1),
  );
}
