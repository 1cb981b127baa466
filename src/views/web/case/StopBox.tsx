/** Stop and report, ahead of everything else a question says; who was told of it, and what was lifted. */
import { Link } from "wouter";
import type { CaseState } from "../../../casebook/index.ts";
import { type StopNotice, stopNotices, stopsLifted } from "../../model/index.ts";
import { useCasebook } from "../store/context.ts";
import { words } from "../words.ts";
import { StopLift } from "./StopLift.tsx";
import { StopReport } from "./StopReport.tsx";

/** `isAdvice`: the question says itself what stops, in place of its advice; what was lifted stands there as elsewhere. */
export function StopBox({ state, isAdvice }: { readonly state: CaseState; readonly isAdvice: boolean }) {
  const { casebook } = useCasebook();
  const notices = stopNotices(casebook, state, words);
  if (notices.length > 0 ? isAdvice : stopsLifted(casebook, state).length === 0) return null;
  return (
    <section aria-label={words.case.stop.head} className="stop-first">
      <StopList notices={notices} />
      <StopRecord state={state} notices={notices} />
    </section>
  );
}

/** What stops, each with what to do and what not; with a way to the case that it is on record in. */
export function StopList({ notices }: { readonly notices: readonly StopNotice[] }) {
  const say = words.case.stop;
  return notices.map(({ key, elsewhere, what, because, act, doNot }) => (
    <div key={`${elsewhere?.caseId ?? ""} ${key}`} className="stop" role="alert">
      <b>{say.head}</b>
      <div>
        <p>
          <b>{what}</b> {because ? <span className="q2">{because}</span> : null}
        </p>
        {elsewhere ? (
          <p>
            <Link className="act" href={`/cases/${elsewhere.caseId}`}>
              {say.elsewhere({ code: elsewhere.code })}
            </Link>
          </p>
        ) : null}
        <p>{[act, ...doNot].join(" ")}</p>
      </div>
    </div>
  ));
}

/** Who was told, what was lifted, and the forms for both; the forms only where the case itself has a stop. */
export function StopRecord({ state, notices }: { readonly state: CaseState; readonly notices: readonly StopNotice[] }) {
  const say = words.case.stop;
  const own = notices.filter(({ elsewhere }) => elsewhere === null);
  return (
    <>
      {own.length > 0 ? (
        <>
          <p className="note">
            {say.stands}{" "}
            <Link className="act" href={`/cases/${state.id}/1`}>
              {say.correct}
            </Link>
          </p>
          <StopReport state={state} stops={own} />
        </>
      ) : null}
      <StopLift state={state} stops={own} />
    </>
  );
}
