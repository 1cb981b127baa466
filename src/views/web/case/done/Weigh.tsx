/** The three choices weighed: the reader's prices, the strip with "you are here", the losses, what would change it. */
import { useState } from "react";
import type { CaseState } from "../../../../casebook/index.ts";
import { settled } from "../../../../casebook/index.ts";
import type { Result } from "../../../../units/index.ts";
import { type ChoiceView, type CountedColony, readWeighing, type Weighing } from "../../../model/index.ts";
import { ChoiceField, sentence, TextField, useForm } from "../../parts/Form.tsx";
import { typedBefore, typingOf, useKeptTyping } from "../../parts/kept-typing.ts";
import { words } from "../../words.ts";
import { ChoiceStrip } from "./ChoiceStrip.tsx";

interface Props {
  readonly state: CaseState;
  readonly counted: readonly CountedColony[];
  readonly weighing: Weighing | null;
  readonly weighed: Result<ChoiceView> | null;
  readonly weigh: (weighing: Weighing) => void;
  readonly weighAnyway: () => void;
}

export function Weigh({ state, counted, weighing, weighed, weigh, weighAnyway }: Props) {
  const say = words.done;
  const [typing, setTyping] = useState(true);
  const limited = counted.find((each) => each.id === weighing?.about);
  return (
    <section aria-labelledby="h-weigh" className="weigh">
      {weighed?.ok ? (
        <>
          <ChoiceStrip view={weighed.value} counted={counted} about={weighing?.about ?? null} />
          <Losses view={weighed.value} />
        </>
      ) : null}
      {weighed && !weighed.ok ? (
        <div className="heed" role="status">
          <b>{words.found.cannotSay}</b>
          <div>
            {weighed.problems.map((problem) => (
              <p key={problem.code}>
                {problem.code === "decision-withheld"
                  ? say.withheld({ colony: limited?.code ?? say.own })
                  : sentence(problem)}
              </p>
            ))}
            <button type="button" className="act" onClick={weighAnyway}>
              {say.weighAnyway}
            </button>
          </div>
        </div>
      ) : null}
      <div className="head">
        <h2 id="h-weigh">{say.weighHead}</h2>
        <span className="note q3">{say.weighUnder}</span>
      </div>
      {typing || !weighed ? (
        <WeighForm
          state={state}
          counted={counted}
          weigh={(next) => {
            weigh(next);
            setTyping(false);
          }}
        />
      ) : (
        <p>
          <button type="button" className="act" onClick={() => setTyping(true)}>
            {say.other}
          </button>
        </p>
      )}
    </section>
  );
}

function Losses({ view }: { readonly view: ChoiceView }) {
  const say = words.done;
  return (
    <div className="loss">
      {view.losses.map((loss) => (
        <div key={loss.action} className={loss.isBest ? "best" : undefined}>
          <b>{loss.name}</b>
          <span className="v">{loss.value}</span>
          <span className="note">
            {loss.note}; {say.lossUnder({ currency: view.currency })}
          </span>
        </div>
      ))}
      <div className="flips">
        <h3>{say.flipsHead}</h3>
        <ul>
          {view.flips.length === 0 ? <li>{say.noFlips}</li> : null}
          {view.flips.map((flip) => (
            <li key={flip}>{flip}</li>
          ))}
          <li>{view.readings}</li>
          <li>{view.actFrom}</li>
        </ul>
      </div>
      <p className="trace">
        {view.here.how} {view.notes.join(" ")} {say.trace}
      </p>
    </div>
  );
}

function WeighForm({
  state,
  counted,
  weigh,
}: {
  readonly state: CaseState;
  readonly counted: readonly CountedColony[];
  readonly weigh: (weighing: Weighing) => void;
}) {
  const say = words.done;
  const before = settled(state.decision)?.reckonedFrom;
  const kept = useKeptTyping(typingOf.weighing(state.id));
  const typed = typedBefore(typingOf.weighing(state.id));
  const [about, setAbout] = useState(typed.about ?? counted[0]?.id ?? "own");
  // The values stay in the fields after they were weighed, so that one can be changed alone.
  const { problems, onSubmit } = useForm(
    (fields) => {
      kept.keepAll(fields);
      return readWeighing(fields, counted);
    },
    (value) => {
      weigh(value);
      return "stays";
    },
  );
  const text = (value: number | undefined) => (value === undefined ? "" : String(value));
  return (
    <form ref={kept.form} className="form flush weigh-form" onInput={kept.onInput} onSubmit={onSubmit} noValidate>
      <fieldset>
        <legend className="vh">{say.weighHead}</legend>
        <ChoiceField
          name="about"
          label={say.about}
          problems={problems}
          value={about}
          onChoose={setAbout}
          choices={[
            ...counted.map((colony) => ({
              value: colony.id,
              says: `${colony.code}, ${words.found.of({ positive: colony.positive, read: colony.examined })}`,
            })),
            { value: "own", says: say.own },
          ]}
        />
        <TextField
          name="currency"
          label={say.currency}
          hint={say.currencyHint}
          needed
          value={before?.currency}
          problems={problems}
        />
        {about === "own" ? (
          <>
            <TextField name="believed" label={say.believed} numeric needed problems={problems} />
            <TextField name="sure" label={say.sure} numeric needed problems={problems} />
          </>
        ) : null}
        <TextField
          name="colonyValue"
          label={say.colonyValue}
          numeric
          needed
          value={text(before?.colonyValue)}
          problems={problems}
        />
        <TextField
          name="actCost"
          label={say.actCost}
          hint={say.actCostHint}
          numeric
          needed
          value={text(before?.actCost)}
          problems={problems}
        />
        <TextField
          name="testCost"
          label={say.testCost}
          numeric
          needed
          value={text(before?.testCost)}
          problems={problems}
        />
        <TextField
          name="residual"
          label={say.residual}
          hint={say.residualHint}
          numeric
          needed
          value={before?.residualShare === undefined ? "" : String(Number((100 * before.residualShare).toFixed(4)))}
          problems={problems}
        />
        <TextField name="bees" label={say.bees} numeric needed value="50" problems={problems} />
        <TextField name="finds" label={say.finds} hint={say.findsHint} numeric needed value="90" problems={problems} />
      </fieldset>
      <p className="acts">
        <button type="submit" className="press">
          {say.weigh}
        </button>
      </p>
    </form>
  );
}
