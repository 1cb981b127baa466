/** What other evidence or settings would do to past answers, before anyone accepts them. */
import type { TrialView } from "../../model/index.ts";
import { sentence } from "../parts/Form.tsx";
import { Rich } from "../parts/Rich.tsx";
import { words } from "../whole-words.ts";

export function Trial({ view }: { readonly view: TrialView }) {
  const say = words.own;
  return (
    <div className="trial" role="status">
      <p>
        <Rich text={view.says} />
      </p>
      {view.rows.length > 0 ? (
        <table className="by-row">
          <thead>
            <tr>
              <th scope="col">{say.trialColumns.case}</th>
              <th scope="col">{say.trialColumns.before}</th>
              <th scope="col">{say.trialColumns.after}</th>
            </tr>
          </thead>
          <tbody>
            {view.rows.map((row) => (
              <tr key={`${row.case} ${row.colony}`}>
                <th scope="row" className="c">
                  {row.case} {row.colony ?? say.wholeApiary}
                </th>
                <td>{row.before}</td>
                <td>{row.after}</td>
              </tr>
            ))}
          </tbody>
        </table>
      ) : null}
      <Troubles problems={view.problems.map(sentence)} />
    </div>
  );
}

/** How far the asking is; nothing while nothing is asked. */
export function Working({ share }: { readonly share: number | null }) {
  if (share === null) return null;
  return (
    <p className="working">
      <span role="status">{words.own.trying}</span> <progress value={share} max={1} aria-label={words.own.trying} />
    </p>
  );
}

/** Sentences about what was left out or assumed; nothing where there is none. */
export function Troubles({ problems }: { readonly problems: readonly string[] }) {
  if (problems.length === 0) return null;
  return (
    <ul className="notes">
      {problems.map((each) => (
        <li key={each}>{each}</li>
      ))}
    </ul>
  );
}
