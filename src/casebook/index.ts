/** What the journal amounts to: a pure fold, its states and selectors. */
export * from "./case-list.ts";
export { saysTheSame } from "./copies.ts";
export * from "./evidence-of.ts";
export * from "./fold.ts";
export {
  type Decision,
  decisionOn,
  type KeptApart,
  type Settlement,
  type Settling,
  settlingDrafts,
  takingInTrouble,
} from "./kept-apart.ts";
export * from "./lookups.ts";
export * from "./order.ts";
export { openQuestion, type Question, type QuestionState, questionsOf } from "./questions.ts";
export * from "./state.ts";
export { type Asked, plansOf, specimensOf } from "./whole.ts";
