/** Labels the vials of a plan; where labelled ones have not come yet, says so, leads on, and asks before more. */
import { useState } from "react";
import { Link } from "wouter";
import type { CaseState } from "../../../../casebook/index.ts";
import { type SamplePlanView, samplingDrafts, vialsAwaited, vialsOf } from "../../../model/index.ts";
import { Rich } from "../../parts/Rich.tsx";
import { useCasebook } from "../../store/context.ts";
import { newId } from "../../store/new-id.ts";
import { words } from "../../words.ts";
import { PaperLinks } from "../PaperLinks.tsx";

export function LabelVials({ state, plan }: { readonly state: CaseState; readonly plan: SamplePlanView }) {
  const { casebook, today, record } = useCasebook();
  const [isAsking, ask] = useState(false);
  const say = words.tell.plan;
  const vials = plan.codes.length;
  const awaited = vialsAwaited(vialsOf(casebook, state, words), plan.body.colonies);
  const label = () => {
    ask(false);
    void record(samplingDrafts({ caseId: state.id, plan: plan.body, codes: plan.codes, today, newId }));
  };
  if (awaited.length === 0)
    return (
      <p className="acts">
        <button type="button" className="press" onClick={label}>
          {say.submit({ vials })}
        </button>
      </p>
    );
  return (
    <div className="awaited">
      <p role="status">
        <Rich text={say.awaited({ codes: awaited.map((vial) => vial.code) })} />
      </p>
      <p className="acts">
        <PaperLinks caseId={state.id} papers={["labels", "kit"]} />
        <Link className="act" href="/bench">
          {say.toBench}
        </Link>
        <Link className="act" href={`/cases/${state.id}/4`}>
          {words.case.toQuestion({ question: 4 })}
        </Link>
      </p>
      {isAsking ? (
        <>
          <p>{say.askMore({ vials })}</p>
          <p className="acts">
            <button type="button" className="press" onClick={label}>
              {say.yesMore({ vials })}
            </button>
            <button type="button" className="press quiet" onClick={() => ask(false)}>
              {say.noMore}
            </button>
          </p>
        </>
      ) : (
        <p className="acts">
          <button type="button" className="press quiet" onClick={() => ask(true)}>
            {say.more}
          </button>
        </p>
      )}
    </div>
  );
}
