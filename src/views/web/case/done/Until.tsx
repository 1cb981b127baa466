/** Until the result: what not to do meanwhile. */
import type { CaseState } from "../../../../casebook/index.ts";
import { untilResult } from "../../../model/index.ts";
import { useCasebook } from "../../store/context.ts";
import { words } from "../../words.ts";

export function Until({ state }: { readonly state: CaseState }) {
  const { casebook, today } = useCasebook();
  const say = words.done;
  const items = untilResult(casebook, state, { today, words });
  return (
    <section className="until" aria-labelledby="h-until">
      <div className="head">
        <h2 id="h-until">{say.untilHead}</h2>
        <span className="note q3">{say.untilUnder}</span>
      </div>
      <ul>
        {items.map((item) => (
          <li key={item.key}>{item.says}</li>
        ))}
      </ul>
    </section>
  );
}
