/** Looks, then tests: what each is expected to tell, what it takes, and one press that chooses it. */
import { useState } from "react";
import type { CaseState } from "../../../../casebook/index.ts";
import { type StepView, stepDraft } from "../../../model/index.ts";
import { useCasebook } from "../../store/context.ts";
import { words } from "../../words.ts";

interface Props {
  readonly state: CaseState;
  readonly head: string;
  readonly steps: readonly StepView[];
}

/** Steps shown at first. */
const few = 6;

export function Steps({ state, head, steps }: Props) {
  const [all, setAll] = useState(false);
  const say = words.tell;
  const id = `h-${steps[0]?.kind ?? head}`;
  const shown = all ? steps : steps.filter((step, index) => index < few || step.chosen !== null);
  return (
    <section className="next" aria-labelledby={id}>
      <div className="head">
        <h2 id={id}>{head}</h2>
        <span className="note q3 unit">{say.bits}</span>
      </div>
      {steps.length === 0 ? <p className="q2">{say.none}</p> : null}
      <ol>
        {shown.map((step) => (
          <Step key={step.id} state={state} step={step} />
        ))}
      </ol>
      {steps.length > few ? (
        <p className="trace">
          <button type="button" className="act" onClick={() => setAll(!all)}>
            {all ? say.fewer : say.more({ count: steps.length - shown.length })}
          </button>
        </p>
      ) : null}
    </section>
  );
}

function Step({ state, step }: { readonly state: CaseState; readonly step: StepView }) {
  const { record, today } = useCasebook();
  const say = words.tell;
  const choose = (chosen: "planned" | "done" | "dropped") =>
    void record([stepDraft(state, { step: step.id, kind: step.kind, state: chosen }, today)]);
  return (
    <li className={step.chosen ? "chosen" : undefined}>
      <b>{step.term}</b>
      <span className="gain">
        <i className="w" style={{ "--w": Math.min(step.ticks, 20) } as React.CSSProperties} aria-hidden="true" />
        {step.bits}
        <span className="vh"> {say.bits}</span>
      </span>
      <span className="note">{step.detail}</span>
      <span className="choice">
        {step.chosen === null ? (
          <button type="button" className="act" onClick={() => choose("planned")}>
            {step.kind === "look" ? say.toYard : say.toKit}
            <span className="vh">: {step.term}</span>
          </button>
        ) : step.chosen === "done" ? (
          <span className="q3">{say.done}</span>
        ) : (
          <>
            <span className="q3">{step.kind === "look" ? say.onYard : say.inKit}</span>{" "}
            <button type="button" className="act" onClick={() => choose("done")}>
              {say.markDone}
              <span className="vh">: {step.term}</span>
            </button>{" "}
            <button type="button" className="act" onClick={() => choose("dropped")}>
              {say.dropIt}
              <span className="vh">: {step.term}</span>
            </button>
          </>
        )}
      </span>
      <details className="note">
        <summary>{step.kind === "look" ? words.seen.lookFor : say.needs}</summary>
        {step.how}
      </details>
    </li>
  );
}
