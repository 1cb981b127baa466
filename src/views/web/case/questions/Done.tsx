/** Question 5: stop and report, or weigh the choices, write the decision down, and make the plan. */
import { lazy, Suspense, useMemo, useState } from "react";
import { Link } from "wouter";
import { type CaseState, coloniesOf, settled } from "../../../../casebook/index.ts";
import {
  type CountedColony,
  choiceView,
  countedColonies,
  fromCase,
  moreBeesAddress,
  readWeighing,
  stopNotices,
  stopSince,
  stopsLifted,
  type Weighing,
} from "../../../model/index.ts";
import { Answer } from "../../parts/Answer.tsx";
import { typedBefore, typingOf } from "../../parts/kept-typing.ts";
import { useCasebook } from "../../store/context.ts";
import { words } from "../../words.ts";
import { DecisionForm } from "../done/DecisionForm.tsx";
import { Plan } from "../done/Plan.tsx";
import { Stops } from "../done/Stops.tsx";
import { Until } from "../done/Until.tsx";
import { Weigh } from "../done/Weigh.tsx";
import { Onward } from "../Onward.tsx";
import { PaperLinks } from "../PaperLinks.tsx";
import type { QuestionProps } from "./registry.ts";
import "../notices-acts.css";
import "../done/done.css";

/** Fetched apart: the page is of use before the season is reckoned. */
const SeasonAhead = lazy(() => import("../done/SeasonAhead.tsx"));

export default function Done({ caseId }: QuestionProps) {
  const { casebook } = useCasebook();
  const state = casebook.cases[caseId];
  return state ? <Decide key={caseId} state={state} /> : null;
}

function Decide({ state }: { readonly state: CaseState }) {
  const { casebook } = useCasebook();
  const say = words.done;
  const counted = useMemo(() => countedColonies(casebook, state.id), [casebook, state.id]);
  const [weighing, setWeighing] = useState<Weighing | null>(() => {
    const typed = readWeighing(typedBefore(typingOf.weighing(state.id)), counted);
    return typed.ok ? typed.value : null;
  });
  const [anyway, setAnyway] = useState(false);
  const stops = stopNotices(casebook, state, words);
  const weighed = useMemo(
    () => (weighing ? choiceView(weighing, { colonies: counted, anyway, words }) : null),
    [weighing, counted, anyway],
  );
  const decided = settled(state.decision);
  const decidedBefore =
    decided && stopsLifted(casebook, state).some((stop) => stopSince(stop) >= decided.on) && decided;
  const colonies = coloniesOf(casebook, state.id);
  const codeOf = (id: string) => colonies.find((colony) => colony.id === id)?.code ?? id;
  if (stops.length > 0) return <Stops state={state} notices={stops} />;
  const about = counted.find((each) => each.id === weighing?.about);
  const answer = decided
    ? say.answerDecided({
        choice: decided.choice,
        colonies: decided.colonies.map(codeOf),
        all: decided.colonies.length === colonies.length,
        on: decided.on,
        review: decided.reviewOn,
      })
    : weighed?.ok && weighing
      ? say.answerWeighed({
          best: weighed.value.best,
          colony: about?.code ?? say.own,
          second: weighed.value.secondBy,
          currency: weighing.currency,
        })
      : counted.length === 0
        ? say.answerNothing
        : say.answerUndecided;
  return (
    <>
      <Answer
        text={answer}
        under={
          decided
            ? say.reasonGiven({ reason: decided.reason, by: state.decision?.candidates[0].author ?? "" })
            : undefined
        }
      />
      {decidedBefore ? <p className="heed">{say.decidedBeforeStop({ on: decidedBefore.on })}</p> : null}
      <Weigh
        state={state}
        counted={counted}
        weighing={weighing}
        weighed={weighed}
        weigh={(next) => {
          setAnyway(false);
          setWeighing(next);
        }}
        weighAnyway={() => setAnyway(true)}
      />
      <Suspense fallback={<div aria-busy="true" />}>
        <SeasonAhead
          caseId={state.id}
          colony={aheadOf(counted, weighing, decided)}
          control={decided?.control ?? null}
        />
      </Suspense>
      <Until state={state} />
      <DecisionForm state={state} weighing={weighing} best={weighed?.ok ? weighed.value.best : null} />
      <Plan state={state} counted={counted} />
      <Onward caseId={state.id} to={6}>
        <PaperLinks caseId={state.id} papers={["report"]} />
        {weighing ? (
          <Link className="act" href={fromCase(moreBeesAddress(weighing), state.id, 5)}>
            {say.reckonMoreBees}
          </Link>
        ) : null}
      </Onward>
    </>
  );
}

/** The colony whose season is told: the one weighed, else one decided about, else the one with most mites. */
function aheadOf(
  counted: readonly CountedColony[],
  weighing: Weighing | null,
  decided: { readonly colonies: readonly string[] } | null | undefined,
): string | null {
  const isCounted = (id: string | undefined) => counted.some((each) => each.id === id);
  const wanted = [weighing?.about, ...(decided?.colonies ?? [])].find(isCounted);
  return wanted ?? counted[0]?.id ?? null;
}
