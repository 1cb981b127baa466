/** What stops were lifted, by whom and on which laboratory's result; and the small form that writes a lift down. */
import { useRef } from "react";
import type { CaseState } from "../../../casebook/index.ts";
import {
  liftedDraft,
  liftingRoles,
  liftTakenBackDraft,
  readLifted,
  type StopNotice,
  stopName,
  stopsLifted,
} from "../../model/index.ts";
import { ChoiceField, TextField, useForm } from "../parts/Form.tsx";
import { useCasebook } from "../store/context.ts";
import { words } from "../words.ts";

interface Props {
  readonly state: CaseState;
  /** The case's own stops that stand. */
  readonly stops: readonly StopNotice[];
}

export function StopLift({ state, stops }: Props) {
  const { casebook, record, today } = useCasebook();
  const say = words.case.stop;
  const lifted = stopsLifted(casebook, state);
  if (lifted.length + stops.length === 0) return null;
  return (
    <div className="stop-report">
      {lifted.map((stop) => (
        <p key={stop.key}>
          {say.lifted({ ...stop.lifted, what: stopName(stop) })}{" "}
          <button type="button" className="act" onClick={() => void record([liftTakenBackDraft(state, stop, today)])}>
            {say.takeBack}
          </button>
        </p>
      ))}
      {stops.length > 0 ? <LiftForm state={state} stops={stops} /> : null}
    </div>
  );
}

function LiftForm({ state, stops }: Props) {
  const { record, today } = useCasebook();
  const details = useRef<HTMLDetailsElement>(null);
  const say = words.case.stop;
  const { problems, onSubmit } = useForm(
    (fields) => readLifted(fields, { stops, today }),
    async (data) => {
      await record([liftedDraft(state, data)]);
      if (details.current) details.current.open = false;
    },
  );
  return (
    <details ref={details}>
      <summary className="act">{say.lift}</summary>
      <p className="note">{say.liftUnder}</p>
      <form className="line-form" onSubmit={onSubmit} noValidate>
        <ChoiceField
          name="stop"
          label={say.whichStop}
          problems={problems}
          choices={stops.map(({ key, what }) => ({ value: key, says: what }))}
        />
        <ChoiceField
          name="role"
          label={say.role}
          problems={problems}
          choices={[
            { value: "", says: say.roleNone },
            ...liftingRoles.map((value) => ({ value, says: say.roles[value] })),
          ]}
        />
        <TextField name="liftedBy" label={say.liftedBy} needed problems={problems} />
        <TextField name="laboratoryReference" label={say.laboratoryReference} needed problems={problems} />
        <TextField name="liftedOn" type="date" label={say.liftedOn} value={today} problems={problems} />
        <button type="submit" className="press quiet">
          {say.keep}
        </button>
      </form>
    </details>
  );
}
