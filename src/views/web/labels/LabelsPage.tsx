/** Label records: what is on record, and a form that is filled in from the printed label. */
import { useState } from "react";
import { Link, useSearch } from "wouter";
import { settled } from "../../../casebook/index.ts";
import type { BodyOf } from "../../../journal/index.ts";
import { readLabelForm } from "../../model/index.ts";
import { Answer } from "../parts/Answer.tsx";
import { ChoiceField, TextField, useForm } from "../parts/Form.tsx";
import { useKeptTyping } from "../parts/kept-typing.ts";
import { Rich } from "../parts/Rich.tsx";
import { UnitsChoice } from "../parts/UnitsChoice.tsx";
import { shownDegrees, shownWeight, useUnits } from "../parts/units.ts";
import { useCasebook } from "../store/context.ts";
import { newId } from "../store/new-id.ts";
import { words } from "../whole-words.ts";
import "./labels.css";

type LabelRecord = BodyOf<"label-record-loaded">;

export default function LabelsPage() {
  const { casebook } = useCasebook();
  const say = words.labels;
  const forCase = new URLSearchParams(useSearch()).get("case") ?? "";
  const records = Object.values(casebook.labelRecords).flatMap((state) => {
    const record = settled(state.record);
    return record ? [{ id: state.id, record }] : [];
  });
  return (
    <main id="page" className="plain">
      <Answer text={records.length === 0 ? say.none : say.answer({ count: records.length })} under={say.under} />
      <UnitsChoice />
      {records.length > 0 ? (
        <ul className="label-records">
          {records.map(({ id, record }) => (
            <li key={id}>
              <LabelCard record={record} />
            </li>
          ))}
        </ul>
      ) : null}
      <LabelForm forCase={casebook.cases[forCase] ? forCase : null} />
    </main>
  );
}

function LabelCard({ record }: { readonly record: LabelRecord }) {
  const units = useUnits();
  const say = words.labels;
  const [dose, low, high] = [
    shownWeight(record.doseGramsPerColony, units),
    shownDegrees(record.minDailyHighCelsius, units),
    shownDegrees(record.maxDailyHighCelsius, units),
  ];
  const rows: readonly (readonly [string, string | undefined])[] = [
    [
      say.doseRow,
      say.doseSays({
        amount: dose.value,
        unit: dose.unit,
        applications: record.applications,
        between: record.daysBetweenApplications,
      }),
    ],
    [say.limitsRow, say.range({ low: low.value, high: high.value, unit: low.unit })],
    [say.timeRow, say.daysSays({ days: record.durationDays })],
    [say.supersRow, say.supersSays({ allowed: record.supersAllowed, days: record.daysBeforeSupers })],
    [say.placementRow, record.placement],
    [say.protectiveRow, record.protectiveEquipment],
    [say.sourceRow, record.source],
  ];
  return (
    <section>
      <h2>
        <b>{record.activeIngredient}</b> {record.concentration}{" "}
        <span className="q3">{say.row({ jurisdiction: record.jurisdiction, readOn: record.readOn })}</span>
      </h2>
      {record.invented ? <p className="note">{say.invented}</p> : null}
      <dl>
        {rows.map(([name, value]) =>
          value ? (
            <div key={name}>
              <dt>{name}</dt>
              <dd>{value}</dd>
            </div>
          ) : null,
        )}
      </dl>
    </section>
  );
}

function LabelForm({ forCase }: { readonly forCase: string | null }) {
  const { record, today } = useCasebook();
  const units = useUnits();
  const say = words.labels;
  const [kept, setKept] = useState<LabelRecord | null>(null);
  const typing = useKeptTyping("label");
  const { problems, onSubmit } = useForm(
    (fields) => readLabelForm(fields, units, today),
    async (data) => {
      await record([{ kind: "label-record-loaded", at: data.readOn, about: [newId()], data }]);
      typing.forget();
      setKept(data);
    },
  );
  const degrees = units.temperature === "fahrenheit" ? words.apiaries.fahrenheit : words.apiaries.celsius;
  const weight = units.weight === "ounces" ? words.apiaries.ounces : words.apiaries.grams;
  return (
    <form
      ref={typing.form}
      className="form"
      onInput={typing.onInput}
      onSubmit={onSubmit}
      noValidate
      aria-label={say.formHead}
    >
      <fieldset>
        <legend>{say.whatHead}</legend>
        <TextField
          name="jurisdiction"
          label={say.jurisdiction}
          hint={say.jurisdictionHint}
          needed
          problems={problems}
        />
        <TextField
          name="activeIngredient"
          label={say.activeIngredient}
          hint={say.activeIngredientHint}
          needed
          problems={problems}
        />
        <TextField name="concentration" label={say.concentration} hint={say.concentrationHint} problems={problems} />
        <TextField name="registrationNumber" label={say.registrationNumber} problems={problems} />
      </fieldset>
      <fieldset>
        <legend>{say.doseHead}</legend>
        <TextField name="dose" label={say.dose} numeric unit={weight} needed problems={problems} />
        <TextField name="durationDays" label={say.duration} numeric unit={say.daysUnit} needed problems={problems} />
        <TextField name="applications" label={say.applications} numeric needed problems={problems} />
        <TextField
          name="daysBetweenApplications"
          label={say.daysBetween}
          hint={say.daysBetweenHint}
          numeric
          unit={say.daysUnit}
          needed
          problems={problems}
        />
        <TextField name="placement" label={say.placement} needed problems={problems} wide />
      </fieldset>
      <fieldset>
        <legend>{say.limitsHead}</legend>
        <TextField name="minDailyHigh" label={say.lowest} numeric unit={degrees} needed problems={problems} />
        <TextField name="maxDailyHigh" label={say.highest} numeric unit={degrees} needed problems={problems} />
        <ChoiceField
          name="supersAllowed"
          label={say.supersAllowed}
          problems={problems}
          choices={[
            { value: "no", says: say.no },
            { value: "yes", says: say.yes },
          ]}
        />
        <TextField
          name="daysBeforeSupers"
          label={say.daysBeforeSupers}
          numeric
          unit={say.daysUnit}
          needed
          problems={problems}
        />
        <TextField name="protectiveEquipment" label={say.protective} problems={problems} wide />
      </fieldset>
      <fieldset>
        <legend>{say.sourceHead}</legend>
        <TextField name="source" label={say.source} hint={say.sourceHint} needed problems={problems} />
        <TextField name="readOn" type="date" label={say.readOn} hint={say.readOnHint} problems={problems} />
      </fieldset>
      <p className="acts">
        <button type="submit" className="press">
          {say.keep}
        </button>
        {forCase ? (
          <Link className="act" href={`/cases/${forCase}/5`}>
            {words.case.toQuestion({ question: 5 })}
          </Link>
        ) : null}
      </p>
      <p role="status" className="label-kept">
        {kept ? <Rich text={say.kept({ ingredient: kept.activeIngredient, jurisdiction: kept.jurisdiction })} /> : null}
      </p>
    </form>
  );
}
