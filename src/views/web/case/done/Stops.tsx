/** A sign that the law may want to hear of: stop and report stands in place of any advice. */
import type { CaseState } from "../../../../casebook/index.ts";
import { cautions } from "../../../../knowledge/index.ts";
import type { StopNotice } from "../../../model/index.ts";
import { Answer } from "../../parts/Answer.tsx";
import { words } from "../../words.ts";
import { Onward } from "../Onward.tsx";
import { PaperLinks } from "../PaperLinks.tsx";
import { StopLift } from "../StopLift.tsx";
import { StopReport } from "../StopReport.tsx";
import { Until } from "./Until.tsx";

export function Stops({ state, notices }: { readonly state: CaseState; readonly notices: readonly StopNotice[] }) {
  const say = words.done;
  return (
    <>
      <Answer text={say.stopAnswer} />
      <section aria-label={say.stopHead} className="stops">
        {notices.map((notice) => (
          <div key={`${notice.elsewhere?.caseId ?? ""} ${notice.key}`} className="stop" role="alert">
            <b>{say.stopHead}</b>
            <div>
              <p>
                <b>{notice.what}</b> {notice.because ? <span className="q2">{notice.because}</span> : null}
              </p>
              {notice.elsewhere ? <p>{words.case.stop.elsewhere({ code: notice.elsewhere.code })}</p> : null}
              <p>{notice.act}</p>
              {notice.doNot.length > 0 ? (
                <ul>
                  {notice.doNot.map((each) => (
                    <li key={each}>{each}</li>
                  ))}
                </ul>
              ) : null}
            </div>
          </div>
        ))}
        <p className="q2">{cautions["notifiable-disease"].words}</p>
        <p className="note">{words.case.stop.stands}</p>
        <StopReport state={state} />
        <StopLift state={state} stops={notices.filter(({ elsewhere }) => elsewhere === null)} />
      </section>
      <Until state={state} />
      <Onward caseId={state.id} to={1}>
        <PaperLinks caseId={state.id} papers={["report"]} />
      </Onward>
    </>
  );
}
