/** The steps of the plan: each is marked done or not done, with what differed. */
import { useState } from "react";
import { Link } from "wouter";
import type { CaseState } from "../../../../casebook/index.ts";
import { readStepDone, type StepRow, stepDoneDrafts, stepRows } from "../../../model/index.ts";
import { ChoiceField, LongField, TextField, useForm } from "../../parts/Form.tsx";
import { useCasebook } from "../../store/context.ts";
import { words } from "../../words.ts";

export function Steps({ state }: { readonly state: CaseState }) {
  const { casebook, today } = useCasebook();
  const say = words.worked;
  const rows = stepRows(casebook, state, { today, words });
  const [open, setOpen] = useState<string | null>(null);
  const keyOf = (row: StepRow) => `${row.plan.id} ${row.step.step}`;
  return (
    <section aria-labelledby="h-steps">
      <div className="head">
        <h2 id="h-steps">{say.stepsHead}</h2>
        <Link className="act" href={`/cases/${state.id}/5`}>
          {words.case.toQuestion({ question: 5 })}
        </Link>
      </div>
      {rows.length === 0 ? (
        <p className="q2">{say.noPlan}</p>
      ) : (
        <ul className="steps-list">
          {rows.map((row) => (
            <li key={keyOf(row)} data-state={row.state}>
              <time dateTime={row.step.on}>{words.case.day({ day: row.step.on })}</time>
              <span>
                <b>{row.what}</b> <span className="q2">{row.step.note}</span>
                {row.deviation ? <span className="q2"> {row.deviation}</span> : null}
                {row.heed.map((heed) => (
                  <span key={heed} className="note step-heed">
                    {heed}
                  </span>
                ))}
              </span>
              <span className="state">{row.says}</span>
              <button
                type="button"
                className="act"
                aria-expanded={open === keyOf(row)}
                onClick={() => setOpen((now) => (now === keyOf(row) ? null : keyOf(row)))}
              >
                {say.mark}
                <span className="vh">: {row.what}</span>
              </button>
              {open === keyOf(row) ? <MarkForm state={state} row={row} close={() => setOpen(null)} /> : null}
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

function MarkForm({
  state,
  row,
  close,
}: {
  readonly state: CaseState;
  readonly row: StepRow;
  readonly close: () => void;
}) {
  const { casebook, record, today } = useCasebook();
  const say = words.worked;
  const { problems, onSubmit } = useForm(
    (fields) => readStepDone(fields, { row, today, words }),
    async (data) => {
      await record(stepDoneDrafts(casebook, state, { row, data, today }));
      close();
    },
  );
  return (
    <form className="form flush" onSubmit={onSubmit} noValidate>
      <fieldset>
        <legend className="vh">{row.what}</legend>
        <ChoiceField
          name="state"
          label={say.isDone}
          problems={problems}
          choices={(["done", "not-done"] as const).map((value) => ({ value, says: say.states[value] }))}
        />
        <TextField name="on" type="date" label={say.on} value={today} problems={problems} />
        {row.step.gramsInAll === null ? null : (
          <TextField
            name="grams"
            label={say.grams}
            numeric
            unit="g"
            value={String(row.step.gramsInAll)}
            problems={problems}
          />
        )}
        <LongField name="deviation" label={say.deviation} problems={problems} wide rows={2} />
      </fieldset>
      <p className="acts">
        <button type="submit" className="press">
          {say.keep}
        </button>
      </p>
    </form>
  );
}
