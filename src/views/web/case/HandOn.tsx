/** Whom the case waits on and until when, and the form that hands it on. */
import { useRef } from "react";
import { handOnDraft, readHandOn, type SpineView } from "../../model/index.ts";
import { TextField, useForm } from "../parts/Form.tsx";
import { useCasebook } from "../store/context.ts";
import { words } from "../words.ts";

export function HandOn({ view }: { readonly view: SpineView }) {
  const { casebook, record, today } = useCasebook();
  const details = useRef<HTMLDetailsElement>(null);
  const say = words.case;
  const { problems, onSubmit } = useForm(readHandOn, async (data) => {
    const state = casebook.cases[view.caseId];
    if (!state) return;
    await record([handOnDraft(state, data, today)]);
    if (details.current) details.current.open = false;
  });
  return (
    <details ref={details} className="hand-on note">
      <summary>
        {view.waits.says} <span className="act">{say.handOn}</span>
      </summary>
      <form key={view.waits.says} onSubmit={onSubmit} noValidate>
        <TextField name="waitsOn" label={words.cases.form.waitsOn} problems={problems} value={view.waits.who} />
        <TextField name="due" type="date" label={words.cases.form.due} problems={problems} value={view.waits.due} />
        <button type="submit" className="press quiet">
          {say.handOn}
        </button>
      </form>
    </details>
  );
}
