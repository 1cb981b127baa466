/** Results that were counted elsewhere or otherwise: the list, and a form that fits the test. */
import { useState } from "react";
import { type CaseState, coloniesOf } from "../../../../casebook/index.ts";
import { conditions, tests } from "../../../../knowledge/index.ts";
import {
  keepings,
  moreOf,
  otherTests,
  readTestResult,
  resultShape,
  testResultDraft,
  testsInForm,
  tickOf,
  withdrawTestDraft,
} from "../../../model/index.ts";
import { ChoiceField, LongField, sentence, TextField, useForm } from "../../parts/Form.tsx";
import { useCasebook } from "../../store/context.ts";
import { words } from "../../words.ts";

export function OtherTests({ state }: { readonly state: CaseState }) {
  const { casebook, record, today } = useCasebook();
  const say = words.found;
  const results = otherTests(casebook, state, words);
  return (
    <section className="other-tests" aria-labelledby="h-other">
      <h2 id="h-other">{say.otherHead}</h2>
      {results.length === 0 ? <p className="q2">{say.noOther}</p> : null}
      <ul>
        {results.map((result) => (
          <li key={result.entry}>
            <span className="what">
              <b>{result.test}</b>, {result.colony}: {result.says}
              {result.note ? <span className="q2"> {result.note}</span> : null}
              {result.lines.length > 0 ? (
                <span className="note q3 cited">
                  {say.linesOf}: {result.lines.join(" ")}
                </span>
              ) : null}
            </span>
            <time dateTime={result.on}>{words.case.day({ day: result.on })}</time>
            <button
              type="button"
              className="act"
              onClick={() => void record([withdrawTestDraft(state, result.entry, { reason: say.takenBack, today })])}
            >
              {say.takeBack}
            </button>
          </li>
        ))}
      </ul>
      <details>
        <summary className="act">{say.addHead}</summary>
        <TestForm state={state} />
      </details>
    </section>
  );
}

function TestForm({ state }: { readonly state: CaseState }) {
  const { casebook, record, today } = useCasebook();
  const say = words.found;
  const [test, setTest] = useState<string>(testsInForm[0] ?? "");
  const colonies = coloniesOf(casebook, state.id);
  // The next result is mostly of the same colony.
  const [colony, setColony] = useState(colonies[0]?.id ?? "");
  const shape = resultShape(test);
  const { problems, onSubmit } = useForm(
    (fields) => readTestResult(fields, today),
    async (data) => {
      await record([testResultDraft(state, data, today)]);
    },
  );
  return (
    <form className="form" onSubmit={onSubmit} noValidate>
      <fieldset>
        <legend className="vh">{say.addHead}</legend>
        <ChoiceField
          name="test"
          label={say.test}
          problems={problems}
          value={test}
          onChoose={setTest}
          wide
          choices={testsInForm.map((id) => ({ value: id, says: tests[id].term }))}
        />
        <ChoiceField
          name="colony"
          label={say.colony}
          problems={problems}
          value={colony}
          onChoose={setColony}
          choices={[
            ...colonies.map((colony) => ({ value: colony.id, says: colony.code ?? colony.id })),
            { value: "", says: say.wholeApiary },
          ]}
        />
        <TextField name="on" type="date" label={say.on} value={today} problems={problems} />
        {shape === "mites" ? (
          <>
            <TextField name="mites" label={say.mites} numeric needed problems={problems} />
            <TextField name="bees" label={say.bees} numeric needed problems={problems} />
          </>
        ) : null}
        {shape === "share" ? (
          <>
            <TextField name="positive" label={say.positive} numeric needed problems={problems} />
            <TextField name="examined" label={say.examined} numeric needed problems={problems} />
          </>
        ) : null}
        {shape === "spores" ? <TextField name="spores" label={say.spores} numeric needed problems={problems} /> : null}
        {shape === "found-or-not" ? (
          <ChoiceField
            name="result"
            label={say.result}
            problems={problems}
            choices={[
              { value: "", says: say.chooseResult },
              ...(["found", "none-found", "unclear"] as const).map((value) => ({ value, says: say.results[value] })),
            ]}
          />
        ) : null}
        <MoreFields test={test} problems={problems} />
        <ChoiceField
          name="takenFrom"
          label={say.takenFrom}
          problems={problems}
          choices={[
            { value: "", says: say.notSaid },
            ...(["S", "E", "B", "F", "D"] as const).map((value) => ({ value, says: words.bench.from[value] })),
          ]}
        />
        <ChoiceField
          name="aliveWhenTaken"
          label={say.alive}
          problems={problems}
          choices={[
            { value: "", says: say.notSaid },
            { value: "yes", says: words.bench.yes },
            { value: "no", says: words.bench.no },
          ]}
        />
        <ChoiceField
          name="kept"
          label={say.kept}
          problems={problems}
          choices={[{ value: "", says: say.notSaid }, ...keepings.map((value) => ({ value, says: say.keptAs[value] }))]}
        />
        <TextField name="laboratory" label={say.laboratory} problems={problems} />
        <LongField name="note" label={say.note} problems={problems} wide rows={2} />
      </fieldset>
      <p className="acts">
        <button type="submit" className="press">
          {say.keep}
        </button>
      </p>
    </form>
  );
}

/** What only some tests can say: which was found, whether the product was sequenced, the dose. */
function MoreFields({
  test,
  problems,
}: {
  readonly test: string;
  readonly problems: ReturnType<typeof useForm>["problems"];
}) {
  const say = words.found;
  const { which, asksSequenced, asksDose } = moreOf(test);
  const whichTrouble = problems.filter(({ field }) => field === "which");
  const yesOrNo = [
    { value: "", says: say.notSaid },
    { value: "yes", says: words.bench.yes },
    { value: "no", says: words.bench.no },
  ];
  return (
    <>
      {which.length > 0 ? (
        <fieldset className="ticks wide" data-trouble={whichTrouble.length > 0 || undefined}>
          <legend>{say.which}</legend>
          <p className="hint">{say.whichHint}</p>
          {which.map((id) => (
            <label key={id} className="tick">
              <input type="checkbox" name={tickOf(id)} />
              {conditions[id].term}
            </label>
          ))}
          {whichTrouble.map((trouble) => (
            <p key={trouble.code} className="trouble">
              {sentence(trouble)}
            </p>
          ))}
        </fieldset>
      ) : null}
      {asksSequenced ? (
        <ChoiceField
          name="sequenced"
          label={say.sequenced}
          hint={say.sequencedHint}
          problems={problems}
          choices={yesOrNo}
        />
      ) : null}
      {asksDose ? (
        <>
          <ChoiceField
            name="harmfulDose"
            label={say.harmfulDose}
            hint={say.harmfulDoseHint}
            problems={problems}
            choices={yesOrNo}
          />
          <TextField name="daysUntilFrozen" label={say.daysUntilFrozen} numeric problems={problems} />
        </>
      ) : null}
    </>
  );
}
