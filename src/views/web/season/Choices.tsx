/** The choices beside each other, which one is shown, and what would tell them apart. */
import { mostChoices, type SeasonActionKind, type SeasonView } from "../../model/index.ts";
import { seasonWords } from "../../words/index.ts";
import { Rich } from "../parts/Rich.tsx";
import { AddAction } from "./Flags.tsx";

interface Props {
  readonly view: SeasonView | null;
  /** Names as they stand now, without doing nothing. */
  readonly names: readonly string[];
  readonly shown: number | null;
  /** Its place among those that are reckoned. */
  readonly row: number | null;
  /** Something is to be reported: no action is weighed until the stop is lifted. */
  readonly isStopped: boolean;
  readonly show: (place: number) => void;
  readonly add: (kind: SeasonActionKind) => void;
  readonly remove: (place: number) => void;
}

export function Choices({ view, names, shown, row: own, isStopped, show, add, remove }: Props) {
  const say = seasonWords;
  const columns = say.choiceColumns;
  return (
    <section aria-labelledby="h-choices">
      <h2 id="h-choices">{say.choicesHead}</h2>
      <p className="note">{say.choicesUnder}</p>
      {view ? (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a wide table is read by moving sideways, by keys too
        <section className="wide-table" tabIndex={0} aria-label={say.tableOf({ head: say.choicesHead })}>
          <table className="by-row">
            <thead>
              <tr>
                <th scope="col">{columns.choice}</th>
                <th scope="col">{columns.infested({ on: view.to })}</th>
                <th scope="col">{columns.difference}</th>
                <th scope="col">{columns.better}</th>
                <th scope="col">{columns.bees}</th>
                <th scope="col">{columns.alive}</th>
              </tr>
            </thead>
            <tbody>
              {view.rows.map((row, place) => (
                <tr key={row.name} aria-current={place > 0 && place - 1 === own ? "true" : undefined}>
                  <th scope="row">{row.name}</th>
                  <td>{row.infested}</td>
                  <td>{row.difference}</td>
                  <td>{row.better}</td>
                  <td>{row.bees}</td>
                  <td>{row.alive}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      ) : null}
      {names.length > 0 ? (
        <ul className="choice-acts">
          {names.map((name, place) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: two choices may bear one name until one is moved
            <li key={place}>
              <label className="tick">
                <input type="radio" name="shown" checked={place === shown} onChange={() => show(place)} />
                {name}
              </label>
              <button
                type="button"
                className="act"
                aria-label={`${say.removeChoice}: ${name}`}
                onClick={() => remove(place)}
              >
                {say.removeChoice}
              </button>
            </li>
          ))}
        </ul>
      ) : null}
      {isStopped ? (
        <p className="note">{say.noActions}</p>
      ) : names.length < mostChoices ? (
        <AddAction says={names.length === 0 ? say.addChoice : say.newChoice} add={add} />
      ) : null}
    </section>
  );
}

/** What would settle the choice, and what more bees would narrow. */
export function Tells({ view }: { readonly view: SeasonView }) {
  const say = seasonWords;
  return (
    <section aria-labelledby="h-tells">
      <h2 id="h-tells">{say.tellHead}</h2>
      {view.tells.map((each) => (
        <p key={each}>
          <Rich text={each} />
        </p>
      ))}
      {view.best.length > 1 ? (
        <table className="best">
          <thead>
            <tr>
              <th scope="col">{say.bestColumns.choice}</th>
              <th scope="col" className="num-r">
                {say.bestColumns.chance}
              </th>
            </tr>
          </thead>
          <tbody>
            {view.best.map(({ name, chance }) => (
              <tr key={name}>
                <td>{name}</td>
                <td className="num-r">{Math.round(100 * chance)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      ) : null}
    </section>
  );
}
