/** "Seen on": the day that every answer given from now on carries, and so the season it counts for. */
import { useState } from "react";
import { type CaseState, settled } from "../../../../casebook/index.ts";
import { readSeenOn, seasonTurn } from "../../../model/index.ts";
import { TextField } from "../../parts/Form.tsx";
import { useCasebook } from "../../store/context.ts";
import { words } from "../../words.ts";
import { chooseSeenOn, useSeenOn } from "./seen-on.ts";

export function SeenOn({ state }: { readonly state: CaseState }) {
  const { casebook, today } = useCasebook();
  const on = useSeenOn(state.id, today);
  const [typed, setTyped] = useState<string>(on);
  const say = words.seen;
  const read = readSeenOn(typed, today);
  const call = settled(state.record)?.openedOn;
  const turn = seasonTurn(casebook, state, on);
  const choose = (day: string) => {
    setTyped(day);
    const next = readSeenOn(day, today);
    if (next.ok) chooseSeenOn(state.id, next.value, today);
  };
  return (
    <div className="line-form seen-on">
      <TextField
        name="seenOn"
        type="date"
        label={say.seenOn}
        hint={say.seenOnHint}
        problems={read.problems}
        value={typed}
        onType={choose}
      />
      {call !== undefined && call < on ? (
        <button type="button" className="act" onClick={() => choose(call)}>
          {say.onDayOfCall({ on: call })}
        </button>
      ) : null}
      {turn ? (
        <p className="heed">
          {say.seasonTurns(turn)}{" "}
          <button type="button" className="act" onClick={() => choose(turn.last)}>
            {say.onLastDay({ on: turn.last })}
          </button>
        </p>
      ) : null}
      {read.ok ? null : <p className="note">{say.stillDated({ on })}</p>}
    </div>
  );
}
