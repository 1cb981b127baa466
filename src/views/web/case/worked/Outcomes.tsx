/** What became of each colony, on which day. */
import { type CaseState, coloniesOf } from "../../../../casebook/index.ts";
import { outcomeDraft, outcomeRows, readOutcome } from "../../../model/index.ts";
import { ChoiceField, LongField, TextField, useForm } from "../../parts/Form.tsx";
import { useCasebook } from "../../store/context.ts";
import { words } from "../../words.ts";

export function Outcomes({ state }: { readonly state: CaseState }) {
  const { casebook, record, today } = useCasebook();
  const say = words.worked;
  const rows = outcomeRows(casebook, state, words);
  const { problems, onSubmit } = useForm(
    (fields) => readOutcome(fields, today),
    async (data) => {
      await record([outcomeDraft(state, data)]);
    },
  );
  return (
    <section aria-labelledby="h-outcomes">
      <div className="head">
        <h2 id="h-outcomes">{say.outcomeHead}</h2>
      </div>
      {rows.length === 0 ? (
        <p className="q2">{say.noOutcome}</p>
      ) : (
        <table className="outcomes">
          <thead>
            <tr>
              <th scope="col">{say.outcomeColumns.colony}</th>
              <th scope="col">{say.outcomeColumns.on}</th>
              <th scope="col">{say.outcomeColumns.state}</th>
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr key={row.key}>
                <td className="c">{row.colony}</td>
                <td>
                  <time dateTime={row.on}>{words.case.day({ day: row.on })}</time>
                </td>
                <td>
                  {row.says} {row.note ? <span className="q2">{row.note}</span> : null}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <details className="more-acts">
        <summary className="act">{say.keep}</summary>
        <form className="form flush" onSubmit={onSubmit} noValidate>
          <fieldset>
            <legend className="vh">{say.outcomeHead}</legend>
            <ChoiceField
              name="colony"
              label={say.colony}
              problems={problems}
              choices={coloniesOf(casebook, state.id).map((colony) => ({
                value: colony.id,
                says: colony.code ?? colony.id,
              }))}
            />
            <TextField name="on" type="date" label={say.on} value={today} problems={problems} />
            <ChoiceField
              name="survived"
              label={say.survived}
              problems={problems}
              choices={[
                { value: "yes", says: say.alive },
                { value: "no", says: say.lost },
              ]}
            />
            <LongField name="note" label={say.note} problems={problems} wide rows={2} />
          </fieldset>
          <p className="acts">
            <button type="submit" className="press">
              {say.keep}
            </button>
          </p>
        </form>
      </details>
    </section>
  );
}
