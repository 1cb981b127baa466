/** A sign that the law may want to hear of: stop and report stands in place of any advice. */
import type { CaseState } from "../../../../casebook/index.ts";
import { cautions } from "../../../../knowledge/index.ts";
import type { StopNotice } from "../../../model/index.ts";
import { Answer } from "../../parts/Answer.tsx";
import { words } from "../../words.ts";
import { Onward } from "../Onward.tsx";
import { PaperLinks } from "../PaperLinks.tsx";
import { StopList, StopRecord } from "../StopBox.tsx";
import { Until } from "./Until.tsx";

export function Stops({ state, notices }: { readonly state: CaseState; readonly notices: readonly StopNotice[] }) {
  const say = words.done;
  return (
    <>
      <Answer text={say.stopAnswer} />
      <section aria-label={say.stopHead} className="stops">
        <StopList notices={notices} />
        <p className="q2">{cautions["notifiable-disease"].words}</p>
        <StopRecord state={state} notices={notices} />
      </section>
      <Until state={state} />
      <Onward caseId={state.id} to={1}>
        <PaperLinks caseId={state.id} papers={["report"]} />
      </Onward>
    </>
  );
}
