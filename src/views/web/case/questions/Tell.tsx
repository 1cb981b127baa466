/** Question 3: the next looks before the next tests, each chosen by one press; then the plan of a sample. */
import {
  answeredFindings,
  countRedFlags,
  differentialInput,
  mostTroubled,
  redFlags,
  tellView,
} from "../../../model/index.ts";
import { Answer } from "../../parts/Answer.tsx";
import { useDifferential } from "../../reckon/use-differential.ts";
import { useCasebook } from "../../store/context.ts";
import { words } from "../../words.ts";
import { Onward } from "../Onward.tsx";
import { PaperLinks } from "../PaperLinks.tsx";
import { SamplePlan } from "../tell/SamplePlan.tsx";
import { Steps } from "../tell/Steps.tsx";
import { Vials } from "../tell/Vials.tsx";
import type { QuestionProps } from "./registry.ts";
import "../tell/tell.css";

export default function Tell({ caseId }: QuestionProps) {
  const { casebook } = useCasebook();
  const state = casebook.cases[caseId];
  const isReady = state !== undefined && countRedFlags(redFlags(state)).complete && answeredFindings(state) > 0;
  const asked = isReady ? differentialInput(casebook, state, mostTroubled(casebook, state)) : null;
  const { reply } = useDifferential(asked?.input ?? null);
  const say = words.tell;
  if (!state) return null;
  const view = reply?.next ? tellView(reply.next, state, words) : null;
  return (
    <>
      {view ? (
        <Answer text={view.answer} under={say.under} />
      ) : (
        <Answer text={isReady ? say.reckoning : say.nothingYet} />
      )}
      {isReady ? null : <Onward caseId={caseId} to={1} />}
      {view ? (
        <div className="tell-two">
          <Steps state={state} head={say.looksHead} steps={view.looks} />
          <Steps state={state} head={say.testsHead} steps={view.tests} />
        </div>
      ) : null}
      <SamplePlan state={state} />
      <Vials state={state} />
      <Onward caseId={caseId} to={4}>
        <PaperLinks caseId={caseId} papers={["labels", "kit"]} />
      </Onward>
    </>
  );
}
