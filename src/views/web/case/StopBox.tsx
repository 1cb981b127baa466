/** Stop and report, ahead of everything else a question says; who was told of it, and what was lifted. */
import { Link } from "wouter";
import type { CaseState } from "../../../casebook/index.ts";
import { type StopNotice, stopNotices, stopsLifted } from "../../model/index.ts";
import { useCasebook } from "../store/context.ts";
import { words } from "../words.ts";
import { StopLift } from "./StopLift.tsx";
import { StopReport } from "./StopReport.tsx";

export function StopBox({ state }: { readonly state: CaseState }) {
  const { casebook } = useCasebook();
  const say = words.case.stop;
  const notices = stopNotices(casebook, state, words);
  if (notices.length === 0 && stopsLifted(casebook, state).length === 0) return null;
  const own = notices.filter(({ elsewhere }) => elsewhere === null);
  return (
    <section aria-label={say.head} className="stop-first">
      {notices.map((notice) => (
        <Notice key={`${notice.elsewhere?.caseId ?? ""} ${notice.key}`} notice={notice} />
      ))}
      {own.length > 0 ? (
        <>
          <p className="note">
            {say.stands}{" "}
            <Link className="act" href={`/cases/${state.id}/1`}>
              {say.correct}
            </Link>
          </p>
          <StopReport state={state} />
        </>
      ) : null}
      <StopLift state={state} stops={own} />
    </section>
  );
}

function Notice({ notice }: { readonly notice: StopNotice }) {
  const { elsewhere } = notice;
  return (
    <div className="stop" role="alert">
      <b>{words.case.stop.head}</b>
      <div>
        <p>
          <b>{notice.what}</b> {notice.because ? <span className="q2">{notice.because}</span> : null}
        </p>
        {elsewhere ? (
          <p>
            <Link className="act" href={`/cases/${elsewhere.caseId}`}>
              {words.case.stop.elsewhere({ code: elsewhere.code })}
            </Link>
          </p>
        ) : null}
        <p>{[notice.act, ...notice.doNot].join(" ")}</p>
      </div>
    </div>
  );
}
