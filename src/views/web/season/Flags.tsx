/** What the choice shown does, flag by flag: its days by − and +, by a date field; added and taken out. */
import type { dynamics } from "../../../reasoning/index.ts";
import { addDays, type Day, isDay } from "../../../units/index.ts";
import {
  type DonorOffered,
  flagsOf,
  mostActions,
  newAction,
  type SeasonActionKind,
  type SeasonYear,
  seasonActionKinds,
  warmthNote,
} from "../../model/index.ts";
import { seasonWords } from "../../words/index.ts";
import { sentence } from "../whole-words.ts";
import { DonorFields } from "./DonorFields.tsx";
import type { FlagMoved } from "./SeasonPicture.tsx";

interface Props {
  readonly actions: readonly dynamics.Action[];
  readonly decideOn: Day;
  readonly year: SeasonYear | null;
  /** Counted colonies of the case that could be united with this one. */
  readonly offered: readonly DonorOffered[];
  readonly move: (moved: FlagMoved) => void;
  readonly change: (actions: readonly dynamics.Action[]) => void;
}

export function Flags({ actions, decideOn, year, offered, move, change }: Props) {
  const say = seasonWords;
  const put = (place: number, action: dynamics.Action) =>
    change(actions.map((each, at) => (at === place ? action : each)));
  return (
    <>
      <ol className="flags-list">
        {actions.map((action, place) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: actions of one choice are told apart by their place alone
          <li key={place}>
            <span className="k" aria-hidden="true">
              {say.letters[action.kind]}
            </span>
            <div>
              <b>{say.actionName(action)}</b>
              {flagsOf(action).map((flag) => (
                <DayField
                  key={String(flag.isLast)}
                  label={say.flag(flag)}
                  date={flag.date}
                  move={(date) => move({ action: place, isLast: flag.isLast, date })}
                />
              ))}
              {action.kind === "requeen" ? (
                <label className="stock">
                  {say.stock}{" "}
                  <select
                    value={String(action.susceptibility)}
                    onChange={(event) => put(place, { ...action, susceptibility: Number(event.target.value) })}
                  >
                    {Object.entries(say.stocks).map(([value, says]) => (
                      <option key={value} value={value}>
                        {says}
                      </option>
                    ))}
                  </select>
                </label>
              ) : null}
              {action.kind === "unite" ? (
                <DonorFields action={action} offered={offered} change={(next) => put(place, next)} />
              ) : null}
              <WarmthNote action={action} year={year} />
            </div>
            <button
              type="button"
              className="act"
              aria-label={`${say.takeOut}: ${say.actionName(action)}`}
              onClick={() => change(actions.filter((_, at) => at !== place))}
            >
              {say.takeOut}
            </button>
          </li>
        ))}
      </ol>
      {actions.length < mostActions ? (
        <AddAction says={say.addAction} add={(kind) => change([...actions, newAction(kind, decideOn)])} />
      ) : null}
    </>
  );
}

/** One press for each kind of action the model knows. */
export function AddAction({ says, add }: { readonly says: string; readonly add: (kind: SeasonActionKind) => void }) {
  return (
    <fieldset className="add-action">
      <legend>{says}</legend>
      {seasonActionKinds.map((kind) => (
        <button key={kind} type="button" className="press quiet" onClick={() => add(kind)}>
          {seasonWords.newWith[kind]}
        </button>
      ))}
    </fieldset>
  );
}

function DayField({
  label,
  date,
  move,
}: {
  readonly label: string;
  readonly date: Day;
  readonly move: (date: Day) => void;
}) {
  const say = seasonWords;
  return (
    <span className="day-field">
      <input
        type="date"
        aria-label={label}
        value={date}
        onChange={({ target: { value } }) => {
          if (isDay(value)) move(value);
        }}
      />
      <button type="button" aria-label={`${say.earlier}: ${label}`} onClick={() => move(addDays(date, -1))}>
        −
      </button>
      <button type="button" aria-label={`${say.later}: ${label}`} onClick={() => move(addDays(date, 1))}>
        +
      </button>
    </span>
  );
}

function WarmthNote({ action, year }: { readonly action: dynamics.Action; readonly year: SeasonYear | null }) {
  const note = warmthNote(action, year, sentence);
  return note === null ? null : <p className="note">{note}</p>;
}
