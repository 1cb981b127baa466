/** What to look at on one visit, in the order in which it tells most. */
import type { VisitView } from "../../../model/index.ts";
import { Rich } from "../../parts/Rich.tsx";
import { words } from "../../words.ts";

export function Visit({ view }: { readonly view: VisitView }) {
  const say = words.tell;
  if (view.steps.length === 0) return null;
  return (
    <section className="visit" aria-labelledby="h-visit">
      <div className="head">
        <h2 id="h-visit">{say.visitHead}</h2>
        <span className="note q3">{say.visitUnder}</span>
      </div>
      <p>
        <Rich text={view.says} />
      </p>
      <ol>
        {view.steps.map((step) => (
          <li key={step.id}>
            <b>{step.term}</b> <span className="note">{step.detail}</span>
          </li>
        ))}
      </ol>
    </section>
  );
}
