/** Every line of the handbooks about this share, and on which side of it the range lies. They do not agree. */
import { sources } from "../../../../knowledge/index.ts";
import type { bench } from "../../../../reasoning/index.ts";
import { evidenceWords } from "../../../words/index.ts";
import { words } from "../../words.ts";

const sourceName = (citation: bench.Statement["citations"][number]): string => {
  const source = citation.source === null ? null : sources[citation.source];
  return source === null ? citation.at : `${source.authors ?? source.title}${source.year ? ` ${source.year}` : ""}`;
};

export function SourceLines({ meaning, colony }: { readonly meaning: bench.Reading; readonly colony: string }) {
  const say = words.found;
  return (
    <details className="source-lines">
      <summary>
        {say.linesHead} <span className="c">{colony}</span>
      </summary>
      <p className="note q2">{say.linesUnder}</p>
      <div className="twin-table">
        <table>
          <thead>
            <tr>
              <th scope="col" className="num-r">
                {say.lineColumns.line}
              </th>
              <th scope="col">{say.lineColumns.says}</th>
              <th scope="col">{say.lineColumns.where}</th>
              <th scope="col">{say.lineColumns.here}</th>
            </tr>
          </thead>
          <tbody>
            {meaning.statements.map((statement) => (
              <tr key={statement.id}>
                <td className="num-r nw c">{say.line({ from: statement.fromPercent, to: statement.toPercent })}</td>
                <td>
                  {statement.words}
                  {statement.but ? <span className="q3"> {statement.but}</span> : null}
                  <span className="note q3 cited">
                    {[...new Set(statement.citations.map(sourceName))].join("; ")}
                    {statement.citations.some((each) => each.read === "memory")
                      ? `, ${evidenceWords.marks.memory}`
                      : ""}
                  </span>
                </td>
                <td className="note q2">{[statement.season, statement.region].filter(Boolean).join(", ")}</td>
                <td className="note">{say.positions[statement.position]}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </details>
  );
}
