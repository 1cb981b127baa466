/** How far a season can be trusted: what the model does not know, published figures beside its own, how often ranges hold. */
import { useState } from "react";
import type { dynamics } from "../../../reasoning/index.ts";
import { type TrustTable, trustView } from "../../model/index.ts";
import { seasonTrustWords, seasonWords } from "../../words/index.ts";
import { Rich } from "../parts/Rich.tsx";

export function Trust({ learnt }: { readonly learnt: dynamics.Learnt | null }) {
  const say = seasonTrustWords;
  const [view] = useState(() => trustView());
  return (
    <>
      <section aria-labelledby="h-unknown">
        <h2 id="h-unknown">{seasonWords.unknownHead}</h2>
        <ul className="plain-list">
          {seasonWords.unknown.map((each) => (
            <li key={each}>{each}</li>
          ))}
          <li>{say.apart}</li>
          {learnt ? <li>{say.learnt(learnt)}</li> : null}
        </ul>
      </section>
      <section aria-labelledby="h-trust">
        <h2 id="h-trust">{say.head}</h2>
        <p>
          <Rich text={say.sentence} />
        </p>
        <Table table={view.checks} name={say.head} />
        <h3>{say.rangesHead}</h3>
        <p className="note">{view.rangesUnder}</p>
        <Table table={view.ranges} name={say.rangesHead} />
        <p className="note">{say.rangesNote}</p>
      </section>
    </>
  );
}

function Table({ table: { columns, rows }, name }: { readonly table: TrustTable; readonly name: string }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a wide table is read by moving sideways, by keys too
    <section className="wide-table" tabIndex={0} aria-label={seasonWords.tableOf({ head: name })}>
      <table>
        <thead>
          <tr>
            {columns.map((column) => (
              <th key={column} scope="col">
                {column}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.join("|")}>
              {row.map((cell, place) => (
                <td key={columns[place]}>{cell}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
