/** The page Season: where a colony's infestation goes, with and without what could be done, and what it rests on. */

import { lazy, Suspense, useCallback, useEffect, useMemo, useRef, useState } from "react";
import { useSearch } from "wouter";
import type { dynamics } from "../../../reasoning/index.ts";
import type { Problem } from "../../../units/index.ts";
import {
  type ColonySeason,
  choiceNames,
  choicesAsked,
  choicesText,
  colonySeason,
  countedSeasons,
  donorsOf,
  type Fields,
  keptChoices,
  movedTo,
  newAction,
  noteHere,
  readSeason,
  type SeasonAsk,
  seasonFields,
  seasonView,
  seasonYear,
  stopActs,
  warmthNote,
  wholeChoices,
} from "../../model/index.ts";
import { seasonWords } from "../../words/index.ts";
import { Answer } from "../parts/Answer.tsx";
import { Saying } from "../parts/Form.tsx";
import { keepTyping, typedBefore, typingOf } from "../parts/kept-typing.ts";
import { Missing } from "../parts/Missing.tsx";
import { Rich } from "../parts/Rich.tsx";
import { useSeason } from "../reckon/use-season.ts";
import { useCasebook } from "../store/context.ts";
import { sentence } from "../whole-words.ts";
import { Choices, Tells } from "./Choices.tsx";
import { From, Head } from "./Facts.tsx";
import { Flags } from "./Flags.tsx";
import { SeasonForm } from "./SeasonForm.tsx";
import { type FlagMoved, SeasonPicture } from "./SeasonPicture.tsx";
import { Trust } from "./Trust.tsx";
import { Working } from "./Working.tsx";
import "./season.css";

type ChoiceActions = readonly dynamics.Action[];
const nothing: ChoiceActions = [];
const none: readonly ChoiceActions[] = [];

export default function SeasonPage() {
  const { casebook, today } = useCasebook();
  const given = new URLSearchParams(useSearch());
  const caseId = given.get("case");
  const wanted = given.get("colony") ?? (caseId === null ? null : (countedSeasons(casebook, caseId)[0]?.id ?? null));
  const colony = useMemo(
    () => (caseId === null || wanted === null ? null : colonySeason(casebook, { caseId, colony: wanted, today })),
    [casebook, caseId, wanted, today],
  );
  if (caseId !== null && colony === null)
    return <Missing text={seasonWords.noColony} to={{ href: "/season", says: seasonWords.title }} />;
  return <Season key={`${caseId} ${wanted}`} colony={colony} />;
}

const SeasonStop = lazy(() => import("./SeasonStop.tsx"));

function Season({ colony }: { readonly colony: ColonySeason | null }) {
  const { casebook, today } = useCasebook();
  const say = seasonWords;
  const slot = typingOf.season(colony?.caseId ?? "", colony?.colony ?? "");
  const [fields, setFields] = useState<Fields>(() => ({ ...seasonFields(colony, today), ...typedBefore(slot) }));
  const [ask, setAsk] = useState<SeasonAsk | null>(() => {
    const read = readSeason(fields, colony);
    return (colony !== null || fields.choices !== undefined) && read.ok ? read.value : null;
  });
  const [choices, setChoices] = useState<readonly ChoiceActions[]>(
    () => keptChoices(fields.choices) ?? (colony && colony.planned.length > 0 ? [colony.planned] : []),
  );
  const [shownLast, setShown] = useState<number | null>(choices.length > 0 ? 0 : null);
  const reckoning = useSeason<SeasonAsk>();
  const { ask: send, seen, unfit, working } = reckoning;

  const state = colony ? casebook.cases[colony.caseId] : undefined;
  const isStopped = state !== undefined && stopActs(casebook, state).length > 0;
  const offered = useMemo(
    () => (colony === null ? [] : donorsOf(casebook, { caseId: colony.caseId, colony: colony.colony, today })),
    [casebook, colony, today],
  );
  // What a plan intends, and what was put together before, waits as it is while something is to be reported.
  const weighed = isStopped ? none : choices;
  const shown = isStopped ? null : shownLast;
  const whole = useMemo(() => wholeChoices(weighed, shown), [weighed, shown]);
  const text = choicesText(whole.asked);

  // biome-ignore lint/correctness/useExhaustiveDependencies: the choices to ask for are their text
  const reckon = useCallback(() => {
    if (ask) send({ ...ask, isStopped, choices: choicesAsked(whole.asked) }, ask);
  }, [ask, text, isStopped, send]);
  useEffect(reckon, [reckon]);
  // Going away and coming back loses nothing, once something was asked otherwise than the page did by itself.
  const isTouched = useRef(false);
  useEffect(() => {
    if (isTouched.current) keepTyping(slot, { ...fields, choices: choicesText(choices) });
  }, [slot, fields, choices]);

  const own = shown === null ? nothing : (choices[shown] ?? nothing);
  const view = useMemo(
    () =>
      seen
        ? seasonView(
            seen.asked,
            seen,
            whole.shown === null ? null : { place: whole.shown, kinds: own.map(({ kind }) => kind) },
          )
        : null,
    [seen, whole.shown, own],
  );
  const year = useMemo(() => (seen ? seasonYear(seen.asked) : null), [seen]);
  const isOld = working !== null || unfit.length > 0;

  const setAll = (next: readonly ChoiceActions[]) => {
    isTouched.current = true;
    setChoices(next);
  };
  const change = (place: number, actions: ChoiceActions) => {
    if (actions.length === 0) remove(place);
    else setAll(choices.map((each, at) => (at === place ? actions : each)));
  };
  const remove = (place: number) => {
    setAll(choices.filter((_, at) => at !== place));
    setShown(choices.length > 1 ? 0 : null);
  };
  const move = ({ action, isLast, date }: FlagMoved) => {
    if (shown === null) return;
    change(
      shown,
      own.map((each, place) => {
        if (place !== action) return each;
        return isLast && "to" in each ? { ...each, to: date } : movedTo(each, date);
      }),
    );
  };
  const inForm = unfit.flatMap((each) => {
    const field = formField(each.field);
    return field === null ? [] : [{ ...each, field }];
  });
  const elsewhere = unfit.filter(({ field }) => formField(field) === null);
  // What stands beside a flag is not told again below.
  const besideFlags = new Set(own.flatMap((action) => warmthNote(action, year, sentence) ?? []));
  return (
    <main id="page" className="season-page" aria-busy={working !== null || undefined} data-old={isOld || undefined}>
      <Head colony={colony} />
      {isStopped ? (
        <Suspense fallback={null}>
          <SeasonStop state={state} />
        </Suspense>
      ) : null}
      {view ? (
        <Answer text={view.says} />
      ) : (
        <Answer text={unfit.length > 0 ? say.answerTrouble : ask ? say.answerBusy : say.answerEmpty} />
      )}
      {elsewhere.map((each) => (
        <p key={`${each.code} ${each.field}`} className="trouble" role="alert">
          {sentence(each)}
        </p>
      ))}
      <Working reckoning={reckoning} all={whole.asked.length + 1} again={reckon} />
      {view && seen ? (
        <>
          <SeasonPicture
            view={view}
            ask={seen.asked}
            year={year}
            supers={colony?.supers ?? []}
            actions={own}
            move={move}
          />
          <p className="alive note">
            <Rich text={view.survival} />
          </p>
        </>
      ) : null}
      {ask ? (
        <>
          {shown === null ? null : (
            <section aria-labelledby="h-flags">
              <h2 id="h-flags">{say.flagsHead}</h2>
              <Flags
                actions={own}
                decideOn={ask.decideOn}
                year={year}
                offered={offered}
                move={move}
                change={(actions) => change(shown, actions)}
              />
            </section>
          )}
          <Choices
            view={view}
            names={choiceNames(weighed)}
            shown={shown}
            row={whole.shown}
            isStopped={isStopped}
            show={setShown}
            add={(kind) => {
              setAll([...choices, [newAction(kind, ask.decideOn, choices)]]);
              setShown(choices.length);
            }}
            remove={remove}
          />
        </>
      ) : null}
      {view && seen?.isWhole && !isStopped ? <Tells view={view} /> : null}
      <From
        colony={colony}
        problems={(seen?.problems ?? []).map(noteOf).filter((each) => !besideFlags.has(each))}
        ask={ask}
      />
      <Saying.Provider value={sentence}>
        <SeasonForm
          colony={colony}
          fields={fields}
          unfit={inForm}
          take={(next, typed) => {
            isTouched.current = true;
            setFields(typed);
            setAsk(next);
          }}
        />
      </Saying.Provider>
      <Trust learnt={seen && seen.asked.counts.length > 0 ? seen.learnt : null} />
    </main>
  );
}

const noteOf = (each: Problem): string => noteHere(each) ?? sentence(each);

/** Fields of the form by the field of the question. */
const fieldNames: Readonly<Record<string, string | undefined>> = {
  "start.date": "start",
  "start.bees": "bees",
  "start.infestedShare": "share",
  until: "until",
  decideOn: "decideOn",
  counts: "counts",
  sizes: "sizes",
  stockSusceptibility: "stock",
  line: "line",
  moreBees: "moreBees",
  "site.latitude": "latitude",
  "site.monthlyMeanCelsius": "means",
  monthlyMeanCelsius: "means",
  latitude: "latitude",
};

/** The field of the form that a problem is told at; null for none. */
function formField(field: string | null): string | null {
  const parts = (field ?? "").split(/[.[]/);
  return fieldNames[parts.slice(0, 2).join(".")] ?? fieldNames[parts[0] ?? ""] ?? null;
}
