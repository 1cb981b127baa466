/** The next step: which look or test is worth most, and why. */
export type { Change } from "./changes.ts";
export { expectedLoss, lossLeftAlone, lossTable } from "./loss-table.ts";
export {
  type AnyWholeAnswer,
  differentialWithNext,
  type NextSteps,
  nextSteps,
  visitMinutes,
  type WholeAnswer,
} from "./next-steps.ts";
export { inOrder, type NextStep, type StepOrder, type StepReason, stepOrders } from "./order.ts";
export { type Visit, type VisitStep, visitOf } from "./visit.ts";
