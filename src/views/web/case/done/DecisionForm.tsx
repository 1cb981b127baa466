/** The decision in writing: what, where, why, and when one looks again. */
import { useState } from "react";
import { type CaseState, coloniesOf, settled } from "../../../../casebook/index.ts";
import { controlIds, controls } from "../../../../knowledge/index.ts";
import type { decision } from "../../../../reasoning/index.ts";
import { addDays } from "../../../../units/index.ts";
import { decisionDraft, readDecision, type Weighing } from "../../../model/index.ts";
import { ChoiceField, LongField, TextField, useForm } from "../../parts/Form.tsx";
import { typingOf, useKeptTyping } from "../../parts/kept-typing.ts";
import { useCasebook } from "../../store/context.ts";
import { words } from "../../words.ts";
import { ColonyTicks } from "./ColonyTicks.tsx";

interface Props {
  readonly state: CaseState;
  readonly weighing: Weighing | null;
  readonly best: decision.Action | null;
}

export function DecisionForm({ state, weighing, best }: Props) {
  const say = words.done;
  const decided = settled(state.decision) !== null;
  const [open, setOpen] = useState(!decided);
  return (
    <section aria-labelledby="h-decide">
      <div className="head">
        <h2 id="h-decide">{say.decideHead}</h2>
        {decided && !open ? (
          <button type="button" className="act" onClick={() => setOpen(true)}>
            {say.changeDecision}
          </button>
        ) : null}
      </div>
      {open ? (
        <Form key={best ?? ""} state={state} weighing={weighing} best={best} close={() => setOpen(false)} />
      ) : null}
    </section>
  );
}

function Form({ state, weighing, best, close }: Props & { readonly close: () => void }) {
  const { casebook, record, today } = useCasebook();
  const say = words.done;
  const kept = useKeptTyping(typingOf.decision(state.id));
  const { problems, onSubmit } = useForm(
    (fields) => readDecision(fields, { today, weighing }),
    async (data) => {
      await record([decisionDraft(state, data, today)]);
      kept.forget();
      close();
    },
  );
  const colonies = coloniesOf(casebook, state.id);
  const living = colonies.filter((colony) => colony.state?.state !== "dead");
  const ticked = weighing && weighing.about !== "own" ? [weighing.about] : living.map((colony) => colony.id);
  return (
    <form ref={kept.form} className="form flush" onInput={kept.onInput} onSubmit={onSubmit} noValidate>
      <fieldset>
        <legend className="vh">{say.decideHead}</legend>
        <ChoiceField
          name="choice"
          label={say.choice}
          problems={problems}
          value={best ?? "test-first"}
          choices={(["wait", "test-first", "act-now"] as const).map((value) => ({ value, says: say.choices[value] }))}
        />
        <ChoiceField
          name="control"
          label={say.control}
          problems={problems}
          choices={[
            { value: "", says: say.noControl },
            ...controlIds.map((id) => ({ value: id, says: controls[id].term })),
          ]}
        />
        <ColonyTicks colonies={colonies} ticked={ticked} />
        <LongField name="reason" label={say.reason} hint={say.reasonHint} needed problems={problems} wide rows={2} />
        <TextField
          name="reviewOn"
          type="date"
          label={say.reviewOn}
          needed
          value={addDays(today, 14)}
          problems={problems}
        />
      </fieldset>
      <p className="acts">
        <button type="submit" className="press">
          {say.decide}
        </button>
      </p>
    </form>
  );
}
