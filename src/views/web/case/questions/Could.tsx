/** Question 2: the verdict as the answer, what must not be missed, the ranked causes with their ranges. */
import { useState } from "react";
import { Link } from "wouter";
import { settled, wholeApiary } from "../../../../casebook/index.ts";
import {
  answeredFindings,
  changesView,
  colonyChoices,
  comparisonView,
  couldView,
  countRedFlags,
  differentialInput,
  isHeeded,
  mostTroubled,
  type OwnReckoning,
  redFlags,
  stopNotices,
  stopsLifted,
  withTerms,
} from "../../../model/index.ts";
import { Answer } from "../../parts/Answer.tsx";
import { sentence } from "../../parts/Form.tsx";
import { Rich } from "../../parts/Rich.tsx";
import { useDifferential } from "../../reckon/use-differential.ts";
import { useOwn } from "../../reckon/use-own.ts";
import { useCasebook } from "../../store/context.ts";
import { words } from "../../words.ts";
import { Causes } from "../could/Causes.tsx";
import { ColonyChoice } from "../could/ColonyChoice.tsx";
import { Compare } from "../could/Compare.tsx";
import { MustNotMiss } from "../could/MustNotMiss.tsx";
import { Onward } from "../Onward.tsx";
import type { QuestionProps } from "./registry.ts";
import "../could/could.css";

export default function Could({ caseId }: QuestionProps) {
  const { casebook } = useCasebook();
  const state = casebook.cases[caseId];
  const colonies = state ? colonyChoices(casebook, state) : [];
  const [chosen, choose] = useState<string | null>(null);
  const key = chosen ?? (state ? mostTroubled(casebook, state) : wholeApiary);
  const flags = state ? redFlags(state) : [];
  const count = countRedFlags(flags);
  const isReady = state !== undefined && count.complete && answeredFindings(state) > 0;
  const own = useOwn();
  const asked = isReady ? differentialInput(casebook, state, key, own.evidence) : null;
  const [pair, setPair] = useState<readonly [string, string] | null>(null);
  const { reply, isFresh } = useDifferential(
    asked && !own.waits ? { ...asked.input, ...own.settings } : null,
    own.own,
    pair,
  );
  const say = words.could;
  if (!state) return null;
  if (!asked)
    return (
      <>
        <Answer text={say.nothingYet} />
        <MustNotMiss caseId={caseId} flags={flags} count={count} notices={[]} />
        <Onward caseId={caseId} to={1} />
      </>
    );
  const problems = [
    ...asked.notes,
    ...own.problems,
    ...(reply?.result.problems ?? []).map((each) => withTerms(each, own.evidence)),
  ];
  if (!reply) return <p className="answer busy">{say.reckoning}</p>;
  if (!reply.result.ok)
    return (
      <>
        <Answer text={say.refused} />
        <Notes problems={problems.map(sentence)} />
      </>
    );
  const stops = stopNotices(casebook, state, words);
  const stopped = stops.flatMap((notice) => notice.conditions);
  const view = couldView({
    isStopped: stops.length > 0,
    answer: reply.result.value,
    input: asked.input,
    evidence: own.evidence,
    draws: reply.draws,
    dots: reply.dots,
    words,
  });
  const lifted = stopsLifted(casebook, state).flatMap((stop) => stop.conditions);
  const notices = view.notices.filter(
    (notice) => !(notice.report && [...stopped, ...lifted].includes(notice.condition)),
  );
  const heeded = problems.filter(isHeeded);
  const code = colonies.find((colony) => colony.key === key)?.code ?? "apiary";
  const died = settled(state.colonyStates[key]);
  return (
    <div className={isFresh && reply.isFinal ? undefined : "stale"} aria-busy={!(isFresh && reply.isFinal)}>
      <Answer text={view.answer} under={say.underAnswer({ because: view.because })} />
      <p className="q2 season">
        {died?.state === "dead" ? <Rich text={say.isDead({ colony: code, on: died.diedOn ?? null })} /> : null}{" "}
        <Rich text={say.season(asked.season)} />{" "}
        <Link className="act" href={`/cases/${caseId}/1`}>
          {say.changeDay}
        </Link>{" "}
        <Rich text={say.region({ region: asked.region })} />{" "}
        {state.apiary === null ? null : (
          <Link className="act" href={`/apiaries/${state.apiary}#region`}>
            {asked.region ? say.changeRegion : say.tellRegion}
          </Link>
        )}
      </p>
      <OwnUsed own={own} />
      <ColonyChoice colonies={colonies} chosen={key} choose={choose} />
      {heeded.map(sentence).map((says) => (
        <p key={says} className="heed">
          {says}
        </p>
      ))}
      <MustNotMiss caseId={caseId} flags={flags} count={count} notices={notices} />
      <Causes view={view} name={code} />
      {stopped.length > 0 ? null : (
        <Changes says={reply.steps ? changesView(reply.steps.changes, words, own.evidence) : null} />
      )}
      {reply.comparison && stopped.length === 0 ? (
        <Compare view={comparisonView(reply.comparison, words, own.evidence)} causes={view.causes} choose={setPair} />
      ) : null}
      <Notes problems={problems.filter((each) => !heeded.includes(each)).map(sentence)} />
      <Onward caseId={caseId} to={3} />
    </div>
  );
}

/** That the programme reckons with evidence or settings of its own; nothing where it does not. */
function OwnUsed({ own }: { readonly own: OwnReckoning }) {
  const says = words.could.ownUsed(own.says);
  if (says === "") return null;
  return (
    <p className="q2 season">
      {says}{" "}
      <Link className="act" href="/evidence/changes">
        {words.could.seeOwn}
      </Link>
    </p>
  );
}

/** What would put another cause first; nothing until it is reckoned. */
function Changes({ says }: { readonly says: readonly string[] | null }) {
  const say = words.could;
  if (says === null) return null;
  return (
    <section aria-labelledby="h-changes">
      <div className="head">
        <h2 id="h-changes">{say.changesHead}</h2>
        <span className="note q3">{say.changesUnder}</span>
      </div>
      {says.length === 0 ? <p className="q2">{say.noChanges}</p> : null}
      <ul className="changes">
        {says.map((each) => (
          <li key={each}>
            <Rich text={each} />
          </li>
        ))}
      </ul>
    </section>
  );
}

function Notes({ problems }: { readonly problems: readonly string[] }) {
  if (problems.length === 0) return null;
  return (
    <section aria-label={words.could.notesHead}>
      <ul className="notes">
        {problems.map((problem) => (
          <li key={problem}>{problem}</li>
        ))}
      </ul>
    </section>
  );
}
