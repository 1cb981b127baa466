/** Two causes side by side: how they stand, what was seen that parts them, and what would. */
import type { ComparisonView } from "../../../model/index.ts";
import { Rich } from "../../parts/Rich.tsx";
import { words } from "../../words.ts";

interface Props {
  readonly view: ComparisonView;
  /** All causes, likeliest first. */
  readonly causes: readonly { readonly id: string; readonly term: string }[];
  readonly choose: (pair: readonly [string, string]) => void;
}

export function Compare({ view, causes, choose }: Props) {
  const say = words.could;
  const { first, second, terms } = view;
  return (
    <section className="compare" aria-labelledby="h-compare">
      <div className="head">
        <h2 id="h-compare">{say.compareHead}</h2>
        <span className="note q3">{say.compareUnder}</span>
      </div>
      <div className="line-form">
        <Cause
          label={say.compareWith}
          value={first}
          not={second}
          causes={causes}
          choose={(id) => choose([id, second])}
        />
        <Cause label={say.compareAnd} value={second} not={first} causes={causes} choose={(id) => choose([first, id])} />
      </div>
      <p role="status">
        <Rich text={view.says} />
      </p>
      <div className="compare-two">
        <div>
          <h3>{say.compareSeen}</h3>
          {view.seen.length === 0 ? <p className="q2">{say.compareNothing}</p> : null}
          <ul>
            {view.seen.map((each) => (
              <li key={each.id}>
                <span>{each.term}</span> <span className="note">{`${terms[each.towards]}, ${each.bits}`}</span>
              </li>
            ))}
          </ul>
        </div>
        <div>
          <h3>{say.compareUnseen}</h3>
          <table>
            <thead>
              <tr>
                <th scope="col">{say.compareColumns.what}</th>
                <th scope="col">{say.compareColumns.found}</th>
                <th scope="col">{say.compareColumns.not}</th>
                <th scope="col">{say.compareColumns.minutes}</th>
              </tr>
            </thead>
            <tbody>
              {view.unseen.map((each) => (
                <tr key={each.id}>
                  <th scope="row">{each.term}</th>
                  <td>{each.ifFound}</td>
                  <td>{each.ifNot}</td>
                  <td>{each.minutes}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      </div>
    </section>
  );
}

function Cause({
  label,
  value,
  not,
  causes,
  choose,
}: {
  readonly label: string;
  readonly value: string;
  readonly not: string;
  readonly causes: Props["causes"];
  readonly choose: (id: string) => void;
}) {
  return (
    <label className="field">
      {label}
      <select value={value} onChange={(event) => choose(event.target.value)}>
        {causes
          .filter(({ id }) => id !== not)
          .map(({ id, term }) => (
            <option key={id} value={id}>
              {term}
            </option>
          ))}
      </select>
    </label>
  );
}
