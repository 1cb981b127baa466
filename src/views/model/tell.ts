/**
 * Question 3: the looks and tests that would tell most, and which of them were chosen.
 *
 * @module views/model
 */
import { type CaseState, settled } from "../../casebook/index.ts";
import { type Evidence, isTestId, publishedEvidence, tests } from "../../knowledge/index.ts";
import { nextStep } from "../../reasoning/index.ts";
import type { Words } from "../words/index.ts";
import { stepTerm } from "./terms.ts";

export interface StepView {
  readonly id: string;
  readonly kind: "look" | "test";
  readonly term: string;
  readonly bits: string;
  /** It tells enough to be named first. */
  readonly isWorthNaming: boolean;
  /** Ticks to draw, ten to a bit, at least one. */
  readonly ticks: number;
  readonly detail: string;
  /** What to look for, or which specimen it needs. */
  readonly how: string;
  readonly chosen: "planned" | "done" | null;
}

export interface TellView {
  readonly answer: string;
  readonly looks: readonly StepView[];
  readonly tests: readonly StepView[];
}

/** Below this a step is not worth listing: it tells nearly nothing. */
const fewestBits = 0.005;
const ticksInBit = 10;
/** Below this nobody is sent for it: it is in the list, and not in the answer. Judgement. */
const namedBits = 0.05;

/** The steps in the order of their worth, looks apart from tests. */
export function tellView(
  next: readonly nextStep.NextStep<string>[],
  state: CaseState,
  words: Words,
  {
    evidence = publishedEvidence,
    by = "tells",
  }: { readonly evidence?: Evidence; readonly by?: nextStep.StepOrder } = {},
): TellView {
  const views = nextStep
    .inOrder(next, by)
    .filter((step) => step.bits >= fewestBits || chosenOf(state, step.step))
    .map((step) => stepView(step, { state, words, evidence }));
  const looks = views.filter((view) => view.kind === "look");
  const open = (view: StepView) => view.chosen !== "done" && view.isWorthNaming;
  const allTests = views.filter((view) => view.kind === "test");
  return {
    answer: words.tell.answer({ look: looks.find(open)?.term ?? null, test: allTests.find(open)?.term ?? null }),
    looks,
    tests: allTests,
  };
}

function chosenOf(state: CaseState, step: string): StepView["chosen"] {
  const chosen = settled(state.steps[step])?.state;
  return chosen === "planned" || chosen === "done" ? chosen : null;
}

function stepView(
  step: nextStep.NextStep<string>,
  { state, words, evidence }: { readonly state: CaseState; readonly words: Words; readonly evidence: Evidence },
): StepView {
  const say = words.tell;
  const minutes = say.minutes({ minutes: step.minutes });
  const test = isTestId(step.step) ? tests[step.step] : null;
  const parts = test ? [minutes, say.cost[step.cost], say.days(test.days)] : [minutes];
  return {
    id: step.step,
    kind: step.kind,
    term: stepTerm(evidence, step.step),
    bits: say.amount({ bits: step.bits }),
    isWorthNaming: step.bits >= namedBits || step.because !== "worth-the-effort",
    ticks: Math.max(1, Math.round(step.bits * ticksInBit)),
    detail: say.detail({ parts: step.because === "checks-what-was-reported" ? [...parts, say.checks] : parts }),
    how: evidence.findings[step.step]?.lookFor ?? test?.specimen ?? "",
    chosen: chosenOf(state, step.step),
  };
}

export interface VisitView {
  readonly says: string;
  readonly steps: readonly { readonly id: string; readonly term: string; readonly detail: string }[];
}

/** One visit: its looks in order, and what they tell together. */
export function visitView(
  { steps, bits, minutes }: nextStep.Visit<string>,
  words: Words,
  evidence: Evidence = publishedEvidence,
): VisitView {
  const say = words.tell;
  return {
    says: say.visit({ steps: steps.length, minutes, bits }),
    steps: steps.map((step) => ({
      id: step.step,
      term: stepTerm(evidence, step.step),
      detail: say.visitStep({ minutes: step.minutes, bits: step.bitsTogether }),
    })),
  };
}
