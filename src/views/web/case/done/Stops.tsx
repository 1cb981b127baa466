/** A sign that the law may want to hear of: stop and report stands in place of any advice. */
import { Link } from "wouter";
import type { CaseState } from "../../../../casebook/index.ts";
import { cautions } from "../../../../knowledge/index.ts";
import type { StopNotice } from "../../../model/index.ts";
import { Answer } from "../../parts/Answer.tsx";
import { words } from "../../words.ts";
import { Until } from "./Until.tsx";

export function Stops({ state, notices }: { readonly state: CaseState; readonly notices: readonly StopNotice[] }) {
  const say = words.done;
  return (
    <>
      <Answer text={say.stopAnswer} />
      <section aria-label={say.stopHead} className="stops">
        {notices.map((notice) => (
          <div key={notice.key} className="stop" role="alert">
            <b>{say.stopHead}</b>
            <div>
              <p>
                <b>{notice.what}</b> <span className="q2">{notice.because}</span>
              </p>
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
        <p className="acts">
          <Link className="act" href={`/cases/${state.id}/1`}>
            {words.case.questions[1]}
          </Link>
        </p>
      </section>
      <Until state={state} />
    </>
  );
}
