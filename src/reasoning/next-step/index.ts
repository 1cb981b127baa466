/** The next step: which look or test is worth most, and why. */
export { expectedLoss, lossLeftAlone, lossTable } from "./loss-table.ts";
export {
  type AnyWholeAnswer,
  differentialWithNext,
  type NextStep,
  type NextSteps,
  nextSteps,
  type StepReason,
  type WholeAnswer,
} from "./next-steps.ts";
