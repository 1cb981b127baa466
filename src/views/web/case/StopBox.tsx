/** Stop and report, ahead of everything else a question says; and the record of who was told. */
import { Link } from "wouter";
import type { CaseState } from "../../../casebook/index.ts";
import { type StopNotice, stopNotices } from "../../model/index.ts";
import { words } from "../words.ts";
import { StopReport } from "./StopReport.tsx";

export function StopBox({ state }: { readonly state: CaseState }) {
  const say = words.case.stop;
  const notices = stopNotices(state);
  if (notices.length === 0) return null;
  return (
    <section aria-label={say.head} className="stop-first">
      {notices.map((notice) => (
        <Notice key={notice.key} notice={notice} />
      ))}
      <p className="note">
        {say.stands}{" "}
        <Link className="act" href={`/cases/${state.id}/1`}>
          {say.correct}
        </Link>
      </p>
      <StopReport state={state} />
    </section>
  );
}

function Notice({ notice }: { readonly notice: StopNotice }) {
  return (
    <div className="stop" role="alert">
      <b>{words.case.stop.head}</b>
      <div>
        <p>
          <b>{notice.what}</b> {notice.because ? <span className="q2">{notice.because}</span> : null}
        </p>
        <p>{[notice.act, ...notice.doNot].join(" ")}</p>
      </div>
    </div>
  );
}
