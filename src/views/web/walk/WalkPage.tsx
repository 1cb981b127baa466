/** One finding a screen, for one colony, in the field: four large buttons under the thumb, each press saved at once. */
import { useState } from "react";
import { Link, useLocation } from "wouter";
import { coloniesOf, settled, wholeApiary } from "../../../casebook/index.ts";
import type { FindingState } from "../../../journal/index.ts";
import { findingDrafts, seasonTurn, stopNotices, undoDrafts, type WalkStep, walkOf } from "../../model/index.ts";
import { fileWords } from "../../words/index.ts";
import { StopList } from "../case/StopBox.tsx";
import { useHand } from "../case/seen/hand.ts";
import { chooseSeenOn, useSeenOn } from "../case/seen/seen-on.ts";
import { AddFile } from "../files/AddFile.tsx";
import { Drawn } from "../parts/Drawn.tsx";
import { Missing } from "../parts/Missing.tsx";
import { Rich } from "../parts/Rich.tsx";
import { useEvidence } from "../reckon/use-own.ts";
import type { PageProps } from "../routes.ts";
import { useCasebook } from "../store/context.ts";
import { localTime } from "../store/today.ts";
import { words } from "../words.ts";
import "./walk.css";

/** What the last presses wrote, newest last, so that each can be taken back. */
interface Pressed {
  readonly step: WalkStep;
  readonly answer: FindingState;
  readonly before: FindingState | null;
  readonly entries: readonly string[];
}

export default function WalkPage({ params }: PageProps) {
  const { casebook, isDemonstration, today, record, keeping } = useCasebook();
  const evidence = useEvidence();
  const hand = useHand();
  const [, go] = useLocation();
  const [pressed, setPressed] = useState<readonly Pressed[]>([]);
  const [chosen, setChosen] = useState<number | null>(null);
  const [busy, setBusy] = useState(false);
  const [heeded, setHeeded] = useState<ReadonlySet<string>>(new Set());
  const [isDaySure, setDaySure] = useState(false);
  const caseId = params.case ?? "";
  const key = params.key ?? wholeApiary;
  const on = useSeenOn(caseId, today);
  const state = casebook.cases[caseId];
  if (!state) return <Missing text={words.case.missing} />;
  const say = words.seen;
  const colonies = coloniesOf(casebook, caseId).map((colony) => ({ id: colony.id, code: colony.code ?? colony.id }));
  const number = colonies.findIndex((colony) => colony.id === key);
  const code = colonies[number]?.code ?? say.apiaryWide;
  const unheeded = stopNotices(casebook, state, words).filter(({ key: stop }) => !heeded.has(stop));
  const steps = walkOf({ state, key, colonies: colonies.length, words, evidence });
  const waiting = steps.findIndex((step) => step.state === null);
  const index = chosen ?? waiting;
  const step = steps[index];
  const last = pressed.at(-1);
  const turn = isDaySure || unheeded.length > 0 || !step ? null : seasonTurn(casebook, state, on);
  const place = settled(state.apiary === null ? null : casebook.apiaries[state.apiary]?.record);

  const press = async (answer: FindingState) => {
    if (!step || busy) return;
    setBusy(true);
    const before = step.state === "conflict" ? null : step.state;
    const { finding, exclusiveWith } = step;
    try {
      const entries = await record(findingDrafts({ state, key, finding, exclusiveWith, answer, on }));
      setPressed([...pressed, { step, answer, before, entries: entries.map((entry) => entry.header.id) }]);
      // The step just answered no longer waits; the next that does comes up by itself.
      setChosen(null);
    } finally {
      setBusy(false); // what is not kept can be pressed again
    }
  };
  const undo = async () => {
    if (!last || busy) return;
    setBusy(true);
    try {
      await record(
        undoDrafts({ state, key, finding: last.step.finding, before: last.before, entries: last.entries, on }),
      );
      setPressed(pressed.slice(0, -1));
      setChosen(steps.findIndex((each) => each.finding === last.step.finding));
    } finally {
      setBusy(false);
    }
  };
  const next = [...colonies.slice(number + 1), ...colonies.slice(0, Math.max(0, number))].find((colony) =>
    walkOf({ state, key: colony.id, colonies: colonies.length, words, evidence }).some((each) => each.state === null),
  );
  return (
    <main id="page" className="walk-page" data-hand={hand}>
      <header>
        <Link className="label" href={`/cases/${caseId}/1`}>
          <span className="code">{code}</span>
          <span className="mark">{number >= 0 ? say.colonyOf({ now: number + 1, all: colonies.length }) : ""}</span>
          <span className="row">
            <span>{isDemonstration ? say.invented({ place: place?.name ?? "" }) : place?.name}</span>
            <span className="leave">{say.leave}</span>
          </span>
        </Link>
        {step ? <Progress step={step} steps={steps} /> : null}
      </header>
      {unheeded.length > 0 ? (
        <div className="find">
          <StopList notices={unheeded} />
        </div>
      ) : turn ? (
        <div className="find">
          <h1>{say.whichDay}</h1>
          <p>{say.seasonTurns(turn)}</p>
        </div>
      ) : step ? (
        <div className="find">
          <h1>{step.question}</h1>
          <LookFor key={step.finding} step={step} />
        </div>
      ) : (
        <div className="find">
          <h1 className="done">
            <Rich text={say.roundDone({ colony: code })} />
          </h1>
        </div>
      )}
      <div className="keys">
        {unheeded.length > 0 ? (
          <button
            type="button"
            className="tall present wide"
            onClick={() => setHeeded(new Set([...heeded, ...unheeded.map(({ key: stop }) => stop)]))}
          >
            {say.stopRead}
          </button>
        ) : turn ? (
          <>
            <button type="button" className="tall" onClick={() => chooseSeenOn(caseId, turn.last, today)}>
              {say.onLastDay({ on: turn.last })}
            </button>
            <button type="button" className="tall present" onClick={() => setDaySure(true)}>
              {say.onLastDay({ on })}
            </button>
          </>
        ) : step ? (
          <>
            <button type="button" className="tall absent" onClick={() => void press("absent")}>
              {say.states.absent}
            </button>
            <button type="button" className="tall present" onClick={() => void press("present")}>
              {say.states.present}
            </button>
          </>
        ) : (
          <button
            type="button"
            className="tall present wide"
            onClick={() => {
              setPressed([]);
              setChosen(null);
              go(next ? `/walk/${caseId}/${next.id}` : `/cases/${caseId}/1`);
            }}
          >
            {next ? say.nextColony({ colony: next.code }) : say.leave}
          </button>
        )}
        <button type="button" className="undo" onClick={() => void undo()} disabled={!last}>
          <b>{say.undo}</b>
          {last ? say.undoWhat({ finding: last.step.term, state: say.states[last.answer] }) : say.nothingToUndo}
        </button>
        {step && !turn && unheeded.length === 0 ? (
          <button type="button" className="unlooked" onClick={() => void press("not-looked")}>
            {say.states["not-looked"]}
          </button>
        ) : null}
      </div>
      <p className="saved" role="status">
        <span>
          {say.savedOnPhone} {keeping.savedAt ? <b className="c">{localTime(keeping.savedAt)}</b> : null}
        </span>
        <span>
          {on === today ? say.seenToday({ on }) : say.seenOnDay({ on })}{" "}
          <Link className="act" href={`/cases/${caseId}/1`}>
            {say.anotherDay}
          </Link>
        </span>
        {last && last.entries.length > 1 ? <span>{setBackOf(last.step, steps, code)}</span> : null}
        <span>{say.toSend({ entries: keeping.unsent, reached: keeping.reached })}</span>
      </p>
      {/* Below the keys, so that these stay where the thumb is. */}
      {step && unheeded.length === 0 ? (
        <AddFile
          caseId={caseId}
          of={{ colony: key === wholeApiary ? null : key, finding: step.finding }}
          says={fileWords.ofFinding({ colony: code, finding: step.term })}
          on={on}
        />
      ) : null}
    </main>
  );
}

/** That the other half of an exclusive pair went back to "not looked". */
const setBackOf = (step: WalkStep, steps: readonly WalkStep[], colony: string): string => {
  const other = steps.find(({ finding }) => finding === step.exclusiveWith)?.term ?? "";
  return words.seen.setBack({ finding: step.term, other, colony });
};

/** What to look for; how to tell it apart comes up when asked for, so that the buttons stay where the thumb is. */
function LookFor({ step: { finding, lookFor, tellApart } }: { readonly step: WalkStep }) {
  const [isOpen, setOpen] = useState(false);
  const say = words.seen;
  if (!tellApart) return <p>{lookFor}</p>;
  return (
    <>
      <p>
        {lookFor}{" "}
        <button type="button" className="act" aria-expanded={isOpen} onClick={() => setOpen(!isOpen)}>
          {isOpen ? say.hideLookFor : say.tellApart}
        </button>
      </p>
      {isOpen ? (
        <>
          <p>{tellApart}</p>
          <Drawn finding={finding} />
        </>
      ) : null}
    </>
  );
}

/** Where one stands, and a tick for each finding of that place. */
function Progress({ step, steps }: { readonly step: WalkStep; readonly steps: readonly WalkStep[] }) {
  const here = steps.filter((each) => each.place === step.place);
  const now = here.indexOf(step) + 1;
  const slots = { now, all: here.length };
  return (
    <>
      <p className="prog">
        <span>{step.placeTitle}</span>
        <span className="c" aria-hidden="true">
          {words.seen.progress(slots)}
        </span>
        <span className="vh">{words.seen.progressLong(slots)}</span>
      </p>
      <div className="scale" aria-hidden="true">
        {here.map((each) => (
          <i key={each.finding} className={each === step ? "now" : each.state === null ? undefined : "has"} />
        ))}
      </div>
    </>
  );
}
