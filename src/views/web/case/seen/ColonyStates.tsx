/** Alive, dying or dead: one choice a colony. */
import { type CaseState, settled } from "../../../../casebook/index.ts";
import { type ColonyRef, colonyStateDraft } from "../../../model/index.ts";
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
  const { record, today } = useCasebook();
  const on = useSeenOn(state.id, today);
  const say = words.seen;
  return (
    <section className="colony-states" aria-labelledby="h-states">
      <div className="head">
        <h2 id="h-states">{say.state}</h2>
      </div>
      <ul>
        {colonies.map((colony) => (
          <li key={colony.id}>
            <label>
              <span className="c">{colony.code}</span>{" "}
              <select
                value={settled(state.colonyStates[colony.id])?.state ?? ""}
                onChange={(event) => {
                  const chosen = states.find((each) => each === event.target.value);
                  if (chosen) void record([colonyStateDraft(state, colony.id, chosen, on)]);
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
          </li>
        ))}
      </ul>
    </section>
  );
}
