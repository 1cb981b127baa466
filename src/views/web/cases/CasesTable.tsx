/** The cases as rows under their days: due, place, colonies, the open question on its scale, state, whom it waits on. */
import { Link } from "wouter";
import type { CaseRowView, CasesView } from "../../model/index.ts";
import { QuestionTicks } from "../parts/QuestionTicks.tsx";
import { words } from "../words.ts";

export function CasesTable({ view }: { readonly view: CasesView }) {
  const say = words.cases.columns;
  return (
    <table className="cases-table">
      <thead>
        <tr>
          <th scope="col">{say.due}</th>
          <th scope="col">{say.place}</th>
          <th scope="col" className="num-r">
            {say.colonies}
          </th>
          <th scope="col" colSpan={2}>
            {say.question}
          </th>
          <th scope="col">{say.state}</th>
          <th scope="col">{say.waitsOn}</th>
        </tr>
      </thead>
      {view.groups.map((group) => (
        <tbody key={group.key}>
          <tr>
            <th colSpan={7} scope="rowgroup">
              {group.title}
            </th>
          </tr>
          {group.rows.map((row) => (
            <Row key={row.id} row={row} />
          ))}
        </tbody>
      ))}
    </table>
  );
}

function Row({ row }: { readonly row: CaseRowView }) {
  const say = words.cases.columns;
  return (
    <tr className={row.isOverdue ? "over" : undefined}>
      <td className="due">
        {row.due ? <time dateTime={row.due}>{row.dueSays}</time> : <span className="q3">{row.dueSays}</span>}
        {row.late ? <b className="late">{row.late}</b> : null}
      </td>
      <td className="cse">
        <Link href={`/cases/${row.id}`}>
          <b>{row.place}</b>
          <span className="c q3">{row.code}</span>
        </Link>
      </td>
      <td className="num-r n-colonies" data-name={say.colonies}>
        {row.colonies}
      </td>
      <td className="sc">
        <QuestionTicks open={row.question} />
      </td>
      <td className="asks">
        <span className="q3 c">{row.question}</span> {row.asks}
      </td>
      <td className="q2 now">{row.state}</td>
      <td className="waits" data-name={say.waitsOn}>
        {row.waitsOn}
      </td>
    </tr>
  );
}
