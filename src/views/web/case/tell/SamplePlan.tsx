/** The plan of a sample: its question, its number, what it could miss, why; then the vials get their labels. */
import { useState } from "react";
import { type CaseState, coloniesOf } from "../../../../casebook/index.ts";
import { coloniesToSample, parseNumber, present, type SampleForm, samplePlanView } from "../../../model/index.ts";
import { sentence } from "../../parts/Form.tsx";
import { Rich } from "../../parts/Rich.tsx";
import { MissedCurve } from "../../pictures/MissedCurve.tsx";
import { useCasebook } from "../../store/context.ts";
import { words } from "../../words.ts";
import { LabelVials } from "./LabelVials.tsx";
import { PlanFields, type Typed } from "./PlanFields.tsx";

/** A share typed in 100, within (0, 100], or null. */
const share = (typed: string): number | null => {
  const number = parseNumber(typed);
  return number !== null && number > 0 && number <= 100 ? number / 100 : null;
};

export function SamplePlan({ state }: { readonly state: CaseState }) {
  const { casebook, today } = useCasebook();
  const colonies = coloniesOf(casebook, state.id).map((colony) => ({ id: colony.id, code: colony.code ?? colony.id }));
  const [typed, setTyped] = useState<Typed>({
    purpose: "detect",
    colonies: coloniesToSample(casebook, state),
    design: "5",
    confidence: "95",
    sensitivity: "100",
    from: "",
    preservative: "frozen",
    laboratory: "",
  });
  const say = words.tell.plan;
  const [design, confidence, sensitivity] = [share(typed.design), share(typed.confidence), share(typed.sensitivity)];
  const form: SampleForm | null =
    design !== null && confidence !== null && confidence < 1 && sensitivity !== null
      ? present({ ...typed, from: typed.from || undefined, designPrevalence: design, confidence, sensitivity })
      : null;
  const { plan, problems } = form
    ? samplePlanView({ casebook, state, form, today, words })
    : { plan: null, problems: [] };
  return (
    <section className="sample-plan" aria-labelledby="h-plan">
      <div className="head">
        <h2 id="h-plan">{say.head}</h2>
        <span className="note q3">{say.hint}</span>
      </div>
      <div className="plan-two">
        <PlanFields
          typed={typed}
          change={setTyped}
          colonies={colonies}
          advised={plan?.advised ?? null}
          isShare={(text) => share(text) !== null}
        />
        <div className="plan-answer" aria-live="polite">
          {problems.map((trouble) => (
            <p key={trouble.code} className="trouble">
              {sentence(trouble)}
            </p>
          ))}
          {plan ? (
            <>
              <p className="lead">
                <Rich text={plan.takes} />
              </p>
              {plan.elsewhere.length > 0 ? (
                <ul className="notes">
                  {plan.elsewhere.map((note) => (
                    <li key={note}>{note}</li>
                  ))}
                </ul>
              ) : null}
              <p className="could-miss q2">{plan.couldMiss}</p>
              <MissedCurve view={plan.missed} name={`missed-${plan.missed.bees}`} />
              <details>
                <summary className="act">{say.why}</summary>
                <ul className="notes">
                  {plan.reasons.map((reason) => (
                    <li key={reason.rule + reason.says}>
                      {reason.says} <span className="q3">{say.rule({ rule: reason.rule, source: reason.source })}</span>
                    </li>
                  ))}
                </ul>
              </details>
              <ul className="notes">
                {plan.problems.map((trouble) => (
                  <li key={sentence(trouble)}>{sentence(trouble)}</li>
                ))}
                {plan.cautions.map((caution) => (
                  <li key={caution}>{caution}</li>
                ))}
              </ul>
              <LabelVials state={state} plan={plan} />
            </>
          ) : null}
        </div>
      </div>
    </section>
  );
}
