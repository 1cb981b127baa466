/** What the programme's closed cases showed: how well past answers did, each figure beside its start, signs over years. */
import { useEffect, useState } from "react";
import { Link } from "wouter";
import { type ExperienceView, experienceView } from "../../model/index.ts";
import { Answer } from "../parts/Answer.tsx";
import { sentence } from "../parts/Form.tsx";
import { PictureOf } from "../pictures/PictureOf.tsx";
import { useProgramme } from "../reckon/use-programme.ts";
import { useCasebook } from "../store/context.ts";
import { words } from "../whole-words.ts";
import { Settings } from "./Settings.tsx";
import { Troubles } from "./Trial.tsx";
import "./own.css";

export default function ExperiencePage() {
  const { casebook, may } = useCasebook();
  const { answer, hasFailed, ask } = useProgramme<"experience">();
  useEffect(() => ask({ kind: "experience", casebook }), [ask, casebook]);
  const say = words.own;
  const view = answer ? experienceView(answer.told, words) : null;
  return (
    <main id="page" className="plain own">
      {view ? (
        <Answer text={view.answer} under={view.under} />
      ) : (
        <p className="answer busy" role="status">
          {hasFailed ? say.failed : say.reckoning}
        </p>
      )}
      <p className="acts">
        <Link className="act" href="/evidence">
          {words.evidence.back}
        </Link>
        <Link className="act" href="/evidence/changes">
          {say.toChanges}
        </Link>
      </p>
      {view ? <Troubles problems={view.problems.map(sentence)} /> : null}
      {view ? <Scores view={view} /> : null}
      {view ? <Values view={view} /> : null}
      {may("reasoning-set") ? <Settings /> : null}
      {view ? <Drift view={view} /> : null}
      {view && view.refused.length > 0 ? (
        <section aria-labelledby="h-refused">
          <h2 id="h-refused">{say.refusedHead}</h2>
          <Troubles problems={view.refused.map(sentence)} />
        </section>
      ) : null}
    </main>
  );
}

function Scores({ view }: { readonly view: ExperienceView }) {
  const say = words.own;
  const { name, value, range, means } = say.scoreColumns;
  return (
    <section aria-labelledby="h-scores">
      <h2 id="h-scores">{say.scoresHead}</h2>
      <p>{view.scoredSays}</p>
      {view.scores.length > 0 ? (
        <table className="by-row">
          <thead>
            <tr>
              <th scope="col">{name}</th>
              <th scope="col" className="num-r">
                {value}
              </th>
              <th scope="col" className="num-r">
                {range}
              </th>
              <th scope="col">{means}</th>
            </tr>
          </thead>
          <tbody>
            {view.scores.map((row) => (
              <tr key={row.name}>
                <th scope="row">{row.name}</th>
                <td className="num-r">{row.value}</td>
                <td className="num-r">{row.range}</td>
                <td className="note">{row.means}</td>
              </tr>
            ))}
          </tbody>
        </table>
      ) : null}
      {view.reliability ? <PictureOf picture={view.reliability} /> : null}
      {view.cases.length > 0 ? (
        <details>
          <summary className="act">{say.casesHead}</summary>
          <ul className="rows">
            {view.cases.map((each) => (
              <li key={each.case}>
                <span className="c">{each.case}</span> {each.says}
              </li>
            ))}
          </ul>
        </details>
      ) : null}
      <Troubles problems={view.notes.map(sentence)} />
    </section>
  );
}

/** Rows of a kind shown before "show more". */
const shownAtFirst = 8;
const kindsInOrder = ["frequency", "healthy-rate", "prior"] as const;

function Values({ view }: { readonly view: ExperienceView }) {
  const say = words.own;
  const kinds = kindsInOrder.map((kind) => [kind, view.values.filter((value) => value.kind === kind)] as const);
  return (
    <section aria-labelledby="h-values">
      <h2 id="h-values">{say.valuesHead}</h2>
      <p className="q2">{view.values.length === 0 ? say.noValues : say.valuesUnder}</p>
      {kinds.map(([kind, rows]) => (rows.length > 0 ? <ValuesOfKind key={kind} kind={kind} rows={rows} /> : null))}
    </section>
  );
}

function ValuesOfKind({
  kind,
  rows,
}: {
  readonly kind: (typeof kindsInOrder)[number];
  readonly rows: ExperienceView["values"];
}) {
  const say = words.own;
  const [all, setAll] = useState(false);
  return (
    <>
      <table className="by-row">
        <caption>{say.valueKinds[kind]}</caption>
        <thead>
          <tr>
            <th scope="col">{say.valueColumns.says}</th>
            <th scope="col" className="num-r">
              {say.valueColumns.published}
            </th>
            <th scope="col" className="num-r">
              {say.valueColumns.start}
            </th>
            <th scope="col" className="num-r">
              {say.valueColumns.seen}
            </th>
            <th scope="col" className="num-r">
              {say.valueColumns.inUse}
            </th>
          </tr>
        </thead>
        <tbody>
          {(all ? rows : rows.slice(0, shownAtFirst)).map((row) => (
            <tr key={row.says}>
              <th scope="row">{row.says}</th>
              <td className="num-r">{row.published}</td>
              <td className="num-r">{row.start}</td>
              <td className="num-r">{row.seen}</td>
              <td className="num-r">{row.inUse}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {all || rows.length <= shownAtFirst ? null : (
        <p className="acts">
          <button type="button" className="act" onClick={() => setAll(true)}>
            {say.more({ count: rows.length - shownAtFirst })}
          </button>
        </p>
      )}
    </>
  );
}

function Drift({ view }: { readonly view: ExperienceView }) {
  const say = words.own;
  return (
    <section aria-labelledby="h-drift">
      <h2 id="h-drift">{say.driftHead}</h2>
      <p>{view.driftSays}</p>
      {view.drift.length > 0 ? (
        <>
          <p className="q2">{say.driftUnder}</p>
          <table className="by-row">
            <thead>
              <tr>
                <th scope="col">{say.driftColumns.finding}</th>
                <th scope="col">{say.driftColumns.years}</th>
                <th scope="col">{say.driftColumns.says}</th>
              </tr>
            </thead>
            <tbody>
              {view.drift.map((row) => (
                <tr key={row.finding}>
                  <th scope="row">{row.finding}</th>
                  <td>{row.years}</td>
                  <td>{row.says}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </>
      ) : null}
    </section>
  );
}
