/** When, what, why and what to heed: blockers with what unlocks them, then the steps. */
import { Link } from "wouter";
import type { PlanRow, PlanView } from "../../../model/index.ts";
import { Rich } from "../../parts/Rich.tsx";
import { words } from "../../words.ts";

interface Props {
  readonly view: PlanView;
  readonly caseId: string;
  readonly apiary: string | null;
  readonly keep: () => Promise<void>;
}

export function PlanTable({ view, caseId, apiary, keep }: Props) {
  const say = words.done;
  return (
    <section aria-label={view.control}>
      <table className="plan">
        <thead>
          <tr>
            <th scope="col">{say.columns.when}</th>
            <th scope="col">{say.columns.what}</th>
            <th scope="col">{say.columns.why}</th>
            <th scope="col">
              <span className="vh">{say.columns.act}</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {view.rows.map((row) => (
            <Row key={row.key} row={row} caseId={caseId} apiary={apiary} />
          ))}
        </tbody>
      </table>
      {view.earliest ? (
        <p className="earliest">
          <b>{view.earliest}</b> {view.options}
        </p>
      ) : null}
      <ul className="notes">
        {view.notes.map((note) => (
          <li key={note}>{note}</li>
        ))}
      </ul>
      <h3>{say.heedHead}</h3>
      <ul className="heeds">
        {view.heed.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
      {view.kind === "plan" ? (
        <p className="acts">
          <button type="button" className="press" onClick={() => void keep()}>
            {say.keepPlan}
          </button>
        </p>
      ) : null}
    </section>
  );
}

function Row({ row, caseId, apiary }: { readonly row: PlanRow } & Pick<Props, "caseId" | "apiary">) {
  const to =
    row.unlock?.to === "labels"
      ? `/labels?case=${caseId}`
      : row.unlock?.to === "apiary" && apiary
        ? `/apiaries/${apiary}`
        : null;
  return (
    <tr className={row.tag ? "bar" : undefined}>
      <td className="when">
        {row.tag ? (
          <span className="tag">
            <span>{row.tag}</span>
          </span>
        ) : null}{" "}
        {row.tag ? row.when : <time>{row.when}</time>}
        {row.out ? <span className="note out">{row.out}</span> : null}
      </td>
      <td className="what">
        <Rich text={row.what} />
      </td>
      <td className="note">
        {row.why} <span className="q3">{row.trace}</span>
      </td>
      <td className="do">
        {row.unlock && to ? (
          <Link className="act" href={to}>
            {row.unlock.says}
          </Link>
        ) : (
          (row.unlock?.says ?? "")
        )}
      </td>
    </tr>
  );
}
