/** An apiary: colonies, weather of the year, nectar flows, honey supers, what was put into the hives, its cases. */
import { Link } from "wouter";
import {
  type ApiaryView,
  apiaryList,
  apiaryStops,
  apiaryView,
  colonyCodes,
  readApiaryForm,
  readForm,
  registerColonyDrafts,
} from "../../model/index.ts";
import { StopList } from "../case/StopBox.tsx";
import { Answer } from "../parts/Answer.tsx";
import { TextField, useForm } from "../parts/Form.tsx";
import { Missing } from "../parts/Missing.tsx";
import { UnitsChoice } from "../parts/UnitsChoice.tsx";
import type { PageProps } from "../routes.ts";
import { useCasebook } from "../store/context.ts";
import { newId } from "../store/new-id.ts";
import { words } from "../words.ts";
import { ApiaryFields } from "./ApiaryFields.tsx";
import { Region } from "./Region.tsx";
import { Flows, Supers, Treatments } from "./Spans.tsx";
import { WeatherYear } from "./WeatherYear.tsx";
import "./apiaries.css";

export default function ApiaryPage({ params }: PageProps) {
  const { casebook } = useCasebook();
  const say = words.apiaries;
  const view = apiaryView(casebook, params.apiary ?? "");
  if (!view) return <Missing text={say.missing} to={{ href: "/apiaries", says: say.toApiaries }} />;
  const name = view.record?.name ?? say.inConflict;
  return (
    <main id="page" className="plain apiary">
      <Answer text={say.page({ name, colonies: view.colonies.length, cases: view.cases.length })} />
      <div className="stop-first">
        <StopList notices={apiaryStops(casebook, view.id, words)} />
      </div>
      <div className="apiary-head">
        <ApiaryLabel view={view} />
        <Link className="press" href={`/cases/open?apiary=${view.id}`}>
          {say.openCase}
        </Link>
      </div>
      <ChangeRecord view={view} />
      <UnitsChoice />
      <Colonies view={view} />
      <Region view={view} />
      <WeatherYear view={view} />
      <Flows view={view} />
      <Supers view={view} />
      <Treatments view={view} />
      <section aria-labelledby="h-cases">
        <h2 id="h-cases">{say.casesHead}</h2>
        {view.cases.length === 0 ? <p className="q2">{say.noCases}</p> : null}
        <ul className="rows">
          {view.cases.map((each) => (
            <li key={each.id}>
              <Link className="act" href={`/cases/${each.id}`}>
                {each.code}
              </Link>{" "}
              {each.question} <time dateTime={each.openedOn}>{words.case.day({ day: each.openedOn })}</time>
            </li>
          ))}
        </ul>
      </section>
    </main>
  );
}

function ApiaryLabel({ view }: { readonly view: ApiaryView }) {
  const say = words.apiaries;
  const { record } = view;
  if (!record) return null;
  return (
    <section className="label" aria-label={say.label}>
      <span className="code">{record.code}</span>
      <span className="mark n">
        {record.elevationMetres === undefined ? "" : say.metres({ metres: record.elevationMetres })}
      </span>
      <span className="place">{record.place}</span>
      <span className="row">
        <span>{words.case.colonies({ count: view.colonies.length })}</span>
        <span>{record.latitude === undefined ? say.noLatitude : say.north({ degrees: record.latitude })}</span>
      </span>
      {record.registration ? <span className="foot">{record.registration}</span> : null}
    </section>
  );
}

function ChangeRecord({ view }: { readonly view: ApiaryView }) {
  const { casebook, record, today } = useCasebook();
  const say = words.apiaries;
  const taken = apiaryList(casebook).flatMap((other) => (other.id === view.id ? [] : (other.record?.code ?? [])));
  const { problems, onSubmit } = useForm(
    (fields) => readApiaryForm(fields, taken),
    async (data) => {
      // What this form does not show stays as it was.
      const kept = { ...view.record, ...data };
      await record([
        { kind: "apiary-registered", at: today, about: [view.id], replaces: view.recordEntries, data: kept },
      ]);
    },
  );
  return (
    <details className="change">
      <summary className="act">{say.changeRecord}</summary>
      <form key={JSON.stringify(view.record)} className="form" onSubmit={onSubmit} noValidate>
        <fieldset>
          <legend>{say.registerHead}</legend>
          <ApiaryFields record={view.record} problems={problems} />
        </fieldset>
        <p className="acts">
          <button type="submit" className="press quiet">
            {say.keepRecord}
          </button>
        </p>
      </form>
    </details>
  );
}

function Colonies({ view }: { readonly view: ApiaryView }) {
  const { record, today } = useCasebook();
  const say = words.apiaries;
  const { problems, onSubmit } = useForm(
    (fields) => {
      const form = readForm(fields);
      return form.result(form.number("colonies", { min: 1, max: 200, whole: true }));
    },
    async (count) => {
      const taken = view.colonies.map((colony) => colony.code);
      const codes = colonyCodes(view.record?.code ?? "", taken, count);
      await record(
        registerColonyDrafts(
          view.id,
          codes.map((code) => ({ id: newId(), code })),
          today,
        ),
      );
    },
  );
  return (
    <section aria-labelledby="h-colonies">
      <h2 id="h-colonies">{say.coloniesHead}</h2>
      {view.colonies.length === 0 ? (
        <p className="q2">{say.noColonies}</p>
      ) : (
        <ul className="codes">
          {view.colonies.map((colony) => (
            <li key={colony.id} className="c">
              {colony.code}
            </li>
          ))}
        </ul>
      )}
      <form className="line-form" onSubmit={onSubmit} noValidate>
        <TextField name="colonies" label={say.addColonies} numeric problems={problems} />
        <button type="submit" className="press quiet">
          {say.add}
        </button>
      </form>
    </section>
  );
}
