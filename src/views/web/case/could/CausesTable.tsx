/** The table twin of the ranked causes. */
import type { CauseView, ReasonView } from "../../../model/index.ts";
import { words } from "../../words.ts";

const names = (reasons: readonly ReasonView[]) =>
  reasons.map(({ term, elsewhere }) => (elsewhere ? `${term} (${words.could.elsewhere})` : term)).join(", ");

export function CausesTable({ causes }: { readonly causes: readonly CauseView[] }) {
  const say = words.could;
  return (
    <table className="causes-table">
      <caption className="vh">{say.chartName}</caption>
      <thead>
        <tr>
          <th scope="col">{say.columns.condition}</th>
          <th scope="col" className="num-r">
            {say.columns.share}
          </th>
          <th scope="col" className="num-r">
            {say.columns.low}
          </th>
          <th scope="col" className="num-r">
            {say.columns.high}
          </th>
          <th scope="col">{say.columns.word}</th>
          <th scope="col">{say.columns.for}</th>
          <th scope="col">{say.columns.against}</th>
        </tr>
      </thead>
      <tbody>
        {causes.map((cause) => (
          <tr key={cause.id}>
            <th scope="row">{cause.term}</th>
            <td className="num-r">{say.inHundred({ share: cause.posterior })}</td>
            <td className="num-r">{say.inHundred({ share: cause.low })}</td>
            <td className="num-r">{say.inHundred({ share: cause.high })}</td>
            <td>{cause.word}</td>
            <td className="note">{names(cause.for)}</td>
            <td className="note">{names(cause.against)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
