/** Who was told of a stop, when, under which reference; and the small form that writes it down. */
import { useRef } from "react";
import { type CaseState, settled } from "../../../casebook/index.ts";
import { readTold, reportsTold, type StopNotice, toldDrafts } from "../../model/index.ts";
import { TextField, useForm } from "../parts/Form.tsx";
import { useCasebook } from "../store/context.ts";
import { words } from "../words.ts";

interface Props {
  readonly state: CaseState;
  /** The case's own stops that stand. */
  readonly stops: readonly StopNotice[];
}

export function StopReport({ state, stops }: Props) {
  const { casebook, record, today } = useCasebook();
  const details = useRef<HTMLDetailsElement>(null);
  const say = words.case.stop;
  const { reports, missing } = reportsTold(casebook, state, words);
  const waits = settled(state.handedOn);
  const { problems, onSubmit } = useForm(
    (fields) => readTold(fields, { stops, today }),
    async (told) => {
      await record(toldDrafts(state, told));
      if (details.current) details.current.open = false;
    },
  );
  return (
    <div className="stop-report">
      {reports.map((report) => (
        <p key={report}>
          <b>{report}</b>
        </p>
      ))}
      {missing === null ? null : <p>{missing}</p>}
      {reports.length > 0 && waits ? <p>{say.waits({ who: waits.waitsOn, due: waits.due })}</p> : null}
      <details ref={details}>
        <summary className="act">{missing === null ? say.tellAgain : say.tell}</summary>
        <form className="line-form" onSubmit={onSubmit} noValidate>
          <TextField name="toldWhom" label={say.whom} hint={say.whomHint} needed problems={problems} />
          <TextField name="toldOn" type="date" label={say.on} value={today} problems={problems} />
          <TextField name="reference" label={say.reference} hint={say.referenceHint} problems={problems} />
          <TextField name="answerBy" type="date" label={say.due} needed problems={problems} />
          <button type="submit" className="press quiet">
            {say.keep}
          </button>
        </form>
      </details>
    </div>
  );
}
