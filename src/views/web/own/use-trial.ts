/** A trial on past cases: asked in a worker, told in words by the codes of the cases. */
import type { Evidence } from "../../../knowledge/index.ts";
import type { Problem } from "../../../units/index.ts";
import { codesOf, type Trial, type TrialOutcome, type TrialView, trialView } from "../../model/index.ts";
import { useProgramme } from "../reckon/use-programme.ts";
import { useCasebook } from "../store/context.ts";
import { words } from "../whole-words.ts";

export interface TrialAsked {
  /** Null before the answer, and once it no longer fits. */
  readonly view: TrialView | null;
  /** What the trial itself would bring: changes left out, and notes. */
  readonly problems: readonly Problem[];
  readonly working: number | null;
  readonly hasFailed: boolean;
  readonly ask: (trial: Trial) => void;
  readonly forget: () => void;
}

/** `namesIn`: the evidence that has a name for all that is told. */
export function useTrial(namesIn: (outcome: TrialOutcome) => Evidence): TrialAsked {
  const { casebook } = useCasebook();
  const { answer, working, hasFailed, ask, forget } = useProgramme<"trial">();
  const outcome = answer?.outcome ?? null;
  return {
    view:
      outcome === null
        ? null
        : trialView(outcome.answers, {
            problems: outcome.problems,
            names: namesIn(outcome),
            codes: codesOf(casebook),
            words,
          }),
    problems: outcome?.problems ?? [],
    working,
    hasFailed,
    ask: (trial) => ask({ kind: "trial", casebook, trial }),
    forget,
  };
}
