/** Closing the case: with confirmed causes, or without an answer. */
import { useState } from "react";
import { type CaseState, settled } from "../../../../casebook/index.ts";
import { closingDraft, confirmable, readClosing, untoldStops } from "../../../model/index.ts";
import { ChoiceField, LongField, TextField, useForm } from "../../parts/Form.tsx";
import { useCasebook } from "../../store/context.ts";
import { words } from "../../words.ts";

export function Closing({ state }: { readonly state: CaseState }) {
  const say = words.worked;
  const isClosed = settled(state.closed) !== null;
  const [open, setOpen] = useState(false);
  return (
    <section aria-labelledby="h-close">
      <div className="head">
        <h2 id="h-close">{say.closeHead}</h2>
        <span className="note q3">{say.closeUnder}</span>
      </div>
      {open ? (
        <CloseForm state={state} close={() => setOpen(false)} />
      ) : (
        <p className="acts">
          <button type="button" className="press quiet" onClick={() => setOpen(true)}>
            {isClosed ? say.closeAgain : say.close}
          </button>
        </p>
      )}
    </section>
  );
}

function CloseForm({ state, close }: { readonly state: CaseState; readonly close: () => void }) {
  const { casebook, record, today } = useCasebook();
  const say = words.worked;
  const known = confirmable(casebook);
  const { problems, onSubmit } = useForm(
    (fields) => readClosing(fields, { today, causes: known, untold: untoldStops(casebook, state) }),
    async (data) => {
      await record([closingDraft(state, data, today)]);
      close();
    },
  );
  const causes = [{ value: "", says: say.noCause }, ...known.map(({ id, term }) => ({ value: id, says: term }))];
  return (
    <form className="form flush" onSubmit={onSubmit} noValidate>
      <fieldset>
        <legend className="vh">{say.closeHead}</legend>
        <ChoiceField
          name="outcome"
          label={say.outcome}
          problems={problems}
          choices={(["answered", "without-answer"] as const).map((value) => ({ value, says: say.outcomes[value] }))}
        />
        <ChoiceField name="cause1" label={say.cause({ number: 1 })} problems={problems} choices={causes} />
        <ChoiceField name="cause2" label={say.cause({ number: 2 })} problems={problems} choices={causes} />
        <ChoiceField name="cause3" label={say.cause({ number: 3 })} problems={problems} choices={causes} />
        <TextField name="confirmedBy" label={say.by} hint={say.byHint} problems={problems} wide />
        <LongField name="learnt" label={say.learntLabel} problems={problems} wide rows={2} />
      </fieldset>
      <p className="acts">
        <button type="submit" className="press">
          {say.close}
        </button>
      </p>
    </form>
  );
}
