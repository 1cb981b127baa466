/** Until the result: what to do today, and what not to do meanwhile. */
import type { CaseState } from "../../../../casebook/index.ts";
import { untilResult } from "../../../model/index.ts";
import { useCasebook } from "../../store/context.ts";
import { words } from "../../words.ts";
import "./until.css";

export function Until({ state }: { readonly state: CaseState }) {
  const { casebook, today } = useCasebook();
  const say = words.done;
  const items = untilResult(casebook, state, { today, words });
  return (
    <section className="until" aria-labelledby="h-until">
      <div className="head">
        <h2 id="h-until">{say.untilHead}</h2>
      </div>
      {(["today", "not-yet"] as const).map((when) => {
        const own = items.filter((item) => item.when === when);
        return own.length === 0 ? null : (
          <div key={when}>
            <h3>{say.until[when]}</h3>
            <ul>
              {own.map((item) => (
                <li key={item.key}>{item.says}</li>
              ))}
            </ul>
          </div>
        );
      })}
    </section>
  );
}
