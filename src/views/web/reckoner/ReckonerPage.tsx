/** The reckoner: any calculation without a case, each with its method, rule, source and table. */
import { useState } from "react";
import type { Result } from "../../../units/index.ts";
import { type Fields, missedView, reckonEstimate, reckonSize, type SizeView } from "../../model/index.ts";
import { Answer } from "../parts/Answer.tsx";
import { TextField, useForm } from "../parts/Form.tsx";
import { Rich } from "../parts/Rich.tsx";
import { MissedCurve } from "../pictures/MissedCurve.tsx";
import { Picture } from "../pictures/Picture.tsx";
import { words } from "../words.ts";
import { RangeChart } from "./RangeChart.tsx";
import "./reckoner.css";

/** What stands in the fields at first. */
const first = {
  size: { prevalence: "5", confidence: "95", sensitivity: "100", population: "" },
  estimate: { positive: "6", examined: "50", level: "95", line: "" },
} as const satisfies Record<string, Fields>;

export default function ReckonerPage() {
  return (
    <main id="page" className="reckoner">
      <Answer text={words.reckoner.answer} />
      <Size />
      <FromCount />
    </main>
  );
}

/** A form whose fields keep what was typed; the answer stands until the next one. */
function useReckoning<View>(reckon: (fields: Fields) => Result<View>, start: Fields) {
  const [view, setView] = useState<View | null>(() => {
    const result = reckon(start);
    return result.ok ? result.value : null;
  });
  const form = useForm(reckon, (value) => {
    setView(value);
    return new Promise<void>(() => {});
  });
  return { view, ...form };
}

function Size() {
  const say = words.reckoner;
  const { view, problems, onSubmit } = useReckoning((fields) => reckonSize(fields, words), first.size);
  return (
    <section aria-labelledby="h-size">
      <div className="head">
        <h2 id="h-size">{say.sizeHead}</h2>
        <span className="note q3">{say.sizeUnder}</span>
      </div>
      <div className="reckoning">
        <form onSubmit={onSubmit} noValidate className="reckon-form">
          <TextField
            name="prevalence"
            label={say.prevalence}
            hint={say.prevalenceHint}
            numeric
            value={first.size.prevalence}
            problems={problems}
          />
          <TextField
            name="confidence"
            label={say.confidence}
            numeric
            value={first.size.confidence}
            problems={problems}
          />
          <TextField
            name="sensitivity"
            label={say.sensitivity}
            hint={say.sensitivityHint}
            numeric
            value={first.size.sensitivity}
            problems={problems}
          />
          <TextField name="population" label={say.population} hint={say.populationHint} numeric problems={problems} />
          <button type="submit" className="press">
            {say.reckon}
          </button>
        </form>
        {view ? (
          <div className="result">
            <p className="says" role="status">
              <Rich text={view.says} />
            </p>
            <p className="trace">{view.trace}</p>
            {view.isFinite ? (
              <FewerTable view={view} />
            ) : (
              <>
                <MissedCurve view={missedView(view.design, words)} name={`missed-${view.bees}`} />
                <FewerTable view={view} />
              </>
            )}
          </div>
        ) : null}
      </div>
    </section>
  );
}

function FewerTable({ view }: { readonly view: SizeView }) {
  const say = words.reckoner;
  const two = (value: number) => String(Number(value.toFixed(2)));
  return (
    <table className="fewer">
      <caption>{say.fewerHead}</caption>
      <thead>
        <tr>
          {view.columns.map((column) => (
            <th key={column} scope="col" className="num-r">
              {column}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {view.rows.map(([examined, found, missed]) => (
          <tr key={examined} data-chosen={examined === view.bees || undefined}>
            <td className="num-r">{examined}</td>
            <td className="num-r">{two(found)}</td>
            <td className="num-r">{two(missed)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function FromCount() {
  const say = words.reckoner;
  const { view, problems, onSubmit } = useReckoning((fields) => reckonEstimate(fields, words), first.estimate);
  return (
    <section aria-labelledby="h-estimate">
      <div className="head">
        <h2 id="h-estimate">{say.estimateHead}</h2>
        <span className="note q3">{say.estimateUnder}</span>
      </div>
      <div className="reckoning">
        <form onSubmit={onSubmit} noValidate className="reckon-form">
          <TextField name="positive" label={say.positive} numeric value={first.estimate.positive} problems={problems} />
          <TextField name="examined" label={say.examined} numeric value={first.estimate.examined} problems={problems} />
          <TextField name="level" label={say.level} numeric value={first.estimate.level} problems={problems} />
          <TextField name="line" label={say.line} hint={say.lineHint} numeric problems={problems} />
          <button type="submit" className="press">
            {say.reckon}
          </button>
        </form>
        {view ? (
          <div className="result">
            <p className="says" role="status">
              <Rich text={view.says} /> {view.against}
            </p>
            {view.oneSided ? <p className="note">{view.oneSided}</p> : null}
            <Picture title={say.chart} table={{ name: "range", columns: view.table.columns, rows: view.table.rows }}>
              <RangeChart view={view} />
            </Picture>
            {view.rows.map((row) => (
              <p key={row.method} className="trace">
                <b>{row.name}</b>: {row.trace}
              </p>
            ))}
            <MissedCurve view={missedView({ bees: view.examined }, words)} name={`missed-${view.examined}`} />
          </div>
        ) : null}
      </div>
    </section>
  );
}
