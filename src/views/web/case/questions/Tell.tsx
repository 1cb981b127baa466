/** Question 3: the next looks before the next tests, each chosen by one press; then the plan of a sample. */
import { useState } from "react";
import { Link } from "wouter";
import { wholeApiary } from "../../../../casebook/index.ts";
import {
  answeredFindings,
  colonyChoices,
  countRedFlags,
  differentialInput,
  hasVials,
  mostTroubled,
  redFlags,
  stopNotices,
  tellView,
  visitView,
} from "../../../model/index.ts";
import { Answer } from "../../parts/Answer.tsx";
import { useDifferential } from "../../reckon/use-differential.ts";
import { useOwn } from "../../reckon/use-own.ts";
import { useCasebook } from "../../store/context.ts";
import { words } from "../../words.ts";
import { ColonyChoice } from "../could/ColonyChoice.tsx";
import { Until } from "../done/Until.tsx";
import { Onward } from "../Onward.tsx";
import { PaperLinks } from "../PaperLinks.tsx";
import { SamplePlan } from "../tell/SamplePlan.tsx";
import { Steps } from "../tell/Steps.tsx";
import { Vials } from "../tell/Vials.tsx";
import { Visit } from "../tell/Visit.tsx";
import type { QuestionProps } from "./registry.ts";
import "../could/could.css";
import "../tell/tell.css";

type StepOrder = keyof typeof words.tell.orders;

/** What the lists go by. */
function OrderChoice({ by, choose }: { readonly by: StepOrder; readonly choose: (by: StepOrder) => void }) {
  return (
    <fieldset className="colony-choice">
      <legend>{words.tell.orderBy}</legend>
      {(Object.keys(words.tell.orders) as StepOrder[]).map((each) => (
        <label key={each}>
          <input type="radio" name="order" checked={each === by} onChange={() => choose(each)} />
          <span>{words.tell.orders[each]}</span>
        </label>
      ))}
    </fieldset>
  );
}

export default function Tell({ caseId }: QuestionProps) {
  const { casebook } = useCasebook();
  const state = casebook.cases[caseId];
  const isReady = state !== undefined && countRedFlags(redFlags(state)).complete && answeredFindings(state) > 0;
  const [chosen, choose] = useState<string | null>(null);
  const key = chosen ?? (state ? mostTroubled(casebook, state) : wholeApiary);
  const [by, orderBy] = useState<StepOrder>("tells");
  const own = useOwn();
  const asked = isReady ? differentialInput(casebook, state, key, own.evidence) : null;
  const isStopped = state !== undefined && stopNotices(casebook, state, words).length > 0;
  const { reply } = useDifferential(asked && !own.waits ? { ...asked.input, ...own.settings } : null, own.own);
  const say = words.tell;
  if (!state) return null;
  if (isStopped)
    return (
      <>
        <Answer text={say.stopped} />
        {hasVials(casebook, state) ? <Vials state={state} /> : null}
        <Until state={state} />
        <Onward caseId={caseId} to={1}>
          <PaperLinks caseId={caseId} papers={["report"]} />
        </Onward>
      </>
    );
  const colonies = colonyChoices(casebook, state);
  const colony = colonies.find((each) => each.key === key);
  const view = reply?.steps ? tellView(reply.steps.next, state, words, { evidence: own.evidence, by }) : null;
  const visit = reply?.steps ? visitView(reply.steps.visit, words, own.evidence) : null;
  return (
    <>
      {view ? (
        <Answer text={view.answer} under={`${say.ofColony({ colony: colony?.code ?? null })} ${say.under}`} />
      ) : (
        <Answer text={!isReady ? say.nothingYet : reply?.result.ok === false ? say.refused : say.reckoning} />
      )}
      {isReady && reply?.result.ok !== false ? null : <Onward caseId={caseId} to={isReady ? 2 : 1} />}
      {view ? <ColonyChoice colonies={colonies} chosen={key} choose={choose} /> : null}
      {view ? <OrderChoice by={by} choose={orderBy} /> : null}
      {view ? (
        <div className="tell-two">
          <Steps state={state} head={say.looksHead} steps={view.looks} />
          <Steps state={state} head={say.testsHead} steps={view.tests} />
        </div>
      ) : null}
      {visit ? <Visit view={visit} /> : null}
      <SamplePlan state={state} />
      <Vials state={state} />
      <Until state={state} />
      <Onward caseId={caseId} to={4}>
        <PaperLinks caseId={caseId} papers={["labels", "kit"]} />
        <Link className="act" href="/bench">
          {say.plan.toBench}
        </Link>
      </Onward>
    </>
  );
}
