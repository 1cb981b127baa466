/** The plan: what is wished, the year with its windows, blockers first and then the steps; written down and as a calendar. */
import { useState } from "react";
import { Link } from "wouter";
import { type CaseState, coloniesOf, plansOf, settled } from "../../../../casebook/index.ts";
import { type ControlId, controlIds, controls } from "../../../../knowledge/index.ts";
import { control } from "../../../../reasoning/index.ts";
import { addDays } from "../../../../units/index.ts";
import {
  apiaryOf,
  type CountedColony,
  calendarOf,
  earlierPlan,
  labelRecordsFor,
  nextVersion,
  type PlanWish,
  planBody,
  planDraft,
  planRequest,
  planView,
  readPlanWish,
  siteOf,
  yearView,
} from "../../../model/index.ts";
import { ChoiceField, LongField, sentence, TextField, useForm } from "../../parts/Form.tsx";
import { keepTyping, typedBefore, typingOf, useKeptTyping } from "../../parts/kept-typing.ts";
import { shownDegrees, shownWeight, useUnits } from "../../parts/units.ts";
import { useCasebook } from "../../store/context.ts";
import { newId } from "../../store/new-id.ts";
import { words } from "../../words.ts";
import { ColonyTicks } from "./ColonyTicks.tsx";
import { KeptPlans } from "./KeptPlans.tsx";
import { PlanTable } from "./PlanTable.tsx";
import { YearPicture } from "./YearPicture.tsx";

export function Plan({ state, counted }: { readonly state: CaseState; readonly counted: readonly CountedColony[] }) {
  const { casebook, record, today } = useCasebook();
  const say = words.done;
  const [wish, setWish] = useState<PlanWish | null>(null);
  const place = siteOf(casebook, state);
  const request = wish ? planRequest(casebook, state, { wish, counted, today }) : null;
  const needsLabel = wish !== null && controls[wish.control].needsLabelRecord;
  const result = request && (place || !needsLabel || request.labelRecord === null) ? control.makePlan(request) : null;
  const plan = result?.ok ? result.value : null;
  const colonies = wish?.colonies ?? [];
  const calendar = calendarOf(casebook, state, { today, colonies });
  const year = yearView({
    site: place,
    calendar,
    label: request?.labelRecord ?? null,
    needsLabel,
    plan,
    words,
  });
  const keep = async () => {
    if (plan?.kind !== "plan" || !wish) return;
    const earlier = earlierPlan(casebook, state.id, wish.control);
    const body = planBody({
      plan,
      caseId: state.id,
      label: needsLabel ? wish.label : null,
      version: nextVersion(earlier),
      today,
      words,
    });
    await record([planDraft({ body, earlier, planId: newId(), today })]);
    keepTyping(typingOf.plan(state.id), null);
    setWish(null);
  };
  return (
    <>
      <section aria-labelledby="h-plan">
        <div className="head">
          <h2 id="h-plan">{say.planHead}</h2>
          <span className="note q3">{say.planUnder}</span>
        </div>
        <PlanForm state={state} counted={counted} take={setWish} />
      </section>
      {year && wish ? (
        <YearPicture
          view={year}
          today={today}
          place={apiaryOf(casebook, state)?.name ?? ""}
          control={needsLabel ? say.controlShort[wish.control] : null}
        />
      ) : null}
      {!place && wish && state.apiary ? (
        <p className="heed-line">
          {say.noWeather}{" "}
          <Link className="act" href={`/apiaries/${state.apiary}`}>
            {say.enterWeather}
          </Link>
        </p>
      ) : null}
      {needsLabel && calendar.to < calendar.until && state.apiary ? (
        <p className="heed-line">
          {say.supersToRecord({ from: addDays(calendar.to, 1) })}{" "}
          <Link className="act" href={`/apiaries/${state.apiary}`}>
            {say.recordSupers}
          </Link>
        </p>
      ) : null}
      {result && !result.ok ? (
        <ul className="notes">
          {result.problems.map((problem) => (
            <li key={problem.code}>{sentence(problem)}</li>
          ))}
        </ul>
      ) : null}
      {plan && result ? (
        <PlanTable view={planView(plan, result.problems, words)} caseId={state.id} apiary={state.apiary} keep={keep} />
      ) : null}
      <KeptPlans state={state} plans={plansOf(casebook, state.id)} />
    </>
  );
}

function PlanForm({
  state,
  counted,
  take,
}: {
  readonly state: CaseState;
  readonly counted: readonly CountedColony[];
  readonly take: (wish: PlanWish) => void;
}) {
  const { casebook } = useCasebook();
  const say = words.done;
  const decided = settled(state.decision);
  const units = useUnits();
  const kept = useKeptTyping(typingOf.plan(state.id));
  const typed = typedBefore(typingOf.plan(state.id));
  const all = coloniesOf(casebook, state.id);
  const [chosen, setChosen] = useState<ControlId>(
    controlIds.find((id) => id === (typed.control ?? decided?.control)) ?? "menthol",
  );
  const [ticked, setTicked] = useState<readonly string[]>(() => {
    const living = all.filter((colony) => colony.state?.state !== "dead").map((colony) => colony.id);
    const first = decided && decided.colonies.length > 0 ? decided.colonies : living;
    const isTicked = (id: string) => (typed[`colony:${id}`] ?? (first.includes(id) ? "on" : "")) !== "";
    return all.map((colony) => colony.id).filter(isTicked);
  });
  const { problems, onSubmit } = useForm(readPlanWish, (wish) => {
    take(wish);
    return "stays";
  });
  const labels = labelRecordsFor(casebook, chosen);
  const needsLabel = controls[chosen].needsLabelRecord;
  const tested = counted.filter((each) => ticked.includes(each.id)).length;
  return (
    <form ref={kept.form} className="form flush" onInput={kept.onInput} onSubmit={onSubmit} noValidate>
      <fieldset>
        <legend className="vh">{say.planHead}</legend>
        <ChoiceField
          name="control"
          label={say.control}
          problems={problems}
          value={chosen}
          onChoose={(value) => setChosen(controlIds.find((id) => id === value) ?? "menthol")}
          choices={controlIds.map((id) => ({ value: id, says: controls[id].term }))}
        />
        {needsLabel ? (
          <ChoiceField
            key={chosen}
            name="label"
            label={say.label}
            problems={problems}
            value={labels.find((each) => each.fits)?.id ?? ""}
            choices={[
              ...labels.map(({ id, record }) => ({
                value: id,
                says: say.labelChoice({
                  ...record,
                  ingredient: record.activeIngredient,
                  dose: shownWeight(record.doseGramsPerColony, units),
                  low: shownDegrees(record.minDailyHighCelsius, units).value,
                  high: shownDegrees(record.maxDailyHighCelsius, units),
                }),
              })),
              { value: "", says: say.noLabel },
            ]}
          />
        ) : chosen === "oil-patty" ? (
          <ChoiceField
            name="beetle"
            label={say.beetle}
            problems={problems}
            choices={(["unknown", "absent", "present", "endemic"] as const).map((value) => ({
              value,
              says: say.beetles[value],
            }))}
          />
        ) : null}
        <ColonyTicks colonies={all} ticked={ticked} onChange={setTicked} />
        <TextField name="startOn" type="date" label={say.startOn} hint={say.startOnHint} problems={problems} />
        {needsLabel ? (
          <label className="tick">
            <input type="checkbox" name="isValidHere" /> {say.validHere}
          </label>
        ) : null}
        {needsLabel ? (
          <p className="wide">
            {labels.some((each) => each.fits) ? null : <>{say.noLabelFits} </>}
            <Link className="act" href={`/labels?case=${state.id}`}>
              {say.typeLabel}
            </Link>
          </p>
        ) : null}
        {tested < ticked.length ? (
          <LongField
            name="untestedReason"
            label={say.untestedReason}
            hint={say.tested({ colonies: ticked.length, tested })}
            problems={problems}
            wide
            rows={2}
          />
        ) : null}
      </fieldset>
      {problems
        .filter((problem) => problem.field === "colonies")
        .map((problem) => (
          <p key={problem.code} className="form-trouble" role="alert">
            {sentence(problem)}
          </p>
        ))}
      <p className="acts">
        <button type="submit" className="press">
          {say.planHead}
        </button>
      </p>
    </form>
  );
}
