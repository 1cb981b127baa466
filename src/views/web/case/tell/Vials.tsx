/** The vials of a case as their labels: code, colony, place, from where, how kept. */
import type { CaseState } from "../../../../casebook/index.ts";
import { takeBackVialDraft, vialsOf } from "../../../model/index.ts";
import { useCasebook } from "../../store/context.ts";
import { words } from "../../words.ts";

export function Vials({ state }: { readonly state: CaseState }) {
  const { casebook, record, today } = useCasebook();
  const say = words.tell.plan;
  const vials = vialsOf(casebook, state, words);
  return (
    <section aria-labelledby="h-vials">
      <div className="head">
        <h2 id="h-vials">{say.labelled}</h2>
      </div>
      {vials.length === 0 ? <p className="q2">{say.noVials}</p> : null}
      <ul className="vial-labels">
        {vials.map((vial) => (
          <li key={vial.id}>
            <div className="label">
              <span className="code">{vial.code}</span>
              <span className="mark n">{vial.colony}</span>
              <span className="place">{vial.place}</span>
              <span className="row">
                <span>{vial.from}</span>
                {vial.takenOn ? <time dateTime={vial.takenOn}>{vial.takenOn}</time> : null}
              </span>
              <span className="foot">{vial.preservative}</span>
            </div>
            <p className="note">
              {vial.says}{" "}
              {vial.takeBack.length > 0 ? (
                <button type="button" className="act" onClick={() => void record([takeBackVialDraft(vial, today)])}>
                  {say.takeBack}
                  <span className="vh">: {vial.code}</span>
                </button>
              ) : null}
            </p>
          </li>
        ))}
      </ul>
      {vials.some((vial) => vial.takeBack.length > 0) ? <p className="note q3">{say.takeBackNote}</p> : null}
    </section>
  );
}
