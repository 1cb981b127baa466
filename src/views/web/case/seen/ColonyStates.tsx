/** Alive, dying or dead: one choice a colony; of a dead one the day of its death, as far as it is known. */
import { useState } from "react";
import { type CaseState, settled } from "../../../../casebook/index.ts";
import type { Day, Problem } from "../../../../units/index.ts";
import { type ColonyRef, colonyStateDraft, readDiedOn } from "../../../model/index.ts";
import { sentence } from "../../parts/Form.tsx";
import { useCasebook } from "../../store/context.ts";
import { words } from "../../words.ts";
import { useSeenOn } from "./seen-on.ts";

const states = ["alive", "dying", "dead"] as const;

export function ColonyStates({
  state,
  colonies,
}: {
  readonly state: CaseState;
  readonly colonies: readonly ColonyRef[];
}) {
  const { today } = useCasebook();
  const on = useSeenOn(state.id, today);
  const say = words.seen;
  return (
    <section className="colony-states" aria-labelledby="h-states">
      <div className="head">
        <h2 id="h-states">{say.state}</h2>
      </div>
      <ul>
        {colonies.map((colony) => (
          <ColonyLine key={colony.id} state={state} colony={colony} on={on} />
        ))}
      </ul>
    </section>
  );
}

interface LineProps {
  readonly state: CaseState;
  readonly colony: ColonyRef;
  readonly on: Day;
}

function ColonyLine({ state, colony, on }: LineProps) {
  const { record, today } = useCasebook();
  const [problem, setProblem] = useState<Problem | null>(null);
  const say = words.seen;
  const kept = settled(state.colonyStates[colony.id]);
  const keepDeath = (typed: string) => {
    if (kept === null || typed === (kept.diedOn ?? "")) return;
    const read = readDiedOn(typed, { today, seenDeadOn: kept.on });
    setProblem(read.problems[0] ?? null);
    if (read.ok) void record([colonyStateDraft(state, colony.id, { state: "dead", on: kept.on, ...read.value })]);
  };
  return (
    <li>
      <label>
        <span className="c">{colony.code}</span>{" "}
        <select
          value={kept?.state ?? ""}
          onChange={(event) => {
            const chosen = states.find((each) => each === event.target.value);
            if (chosen) void record([colonyStateDraft(state, colony.id, { state: chosen, on })]);
          }}
        >
          <option value="">{say.stateNone}</option>
          {states.map((each) => (
            <option key={each} value={each}>
              {say.colonyStates[each]}
            </option>
          ))}
        </select>
      </label>
      {kept?.state === "dead" ? (
        <label>
          <span className="note">{say.diedOn}</span>{" "}
          <input
            type="date"
            aria-label={say.diedOnOf({ colony: colony.code })}
            aria-invalid={problem !== null}
            defaultValue={kept.diedOn ?? ""}
            max={kept.on}
            onBlur={(event) => keepDeath(event.target.value)}
          />
          {problem ? <span className="trouble">{sentence(problem)}</span> : null}
        </label>
      ) : null}
    </li>
  );
}
