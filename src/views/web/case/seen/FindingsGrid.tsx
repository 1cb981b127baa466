/** All findings by colonies on one sheet: a mark a cell, P, A and N on the keyboard, a pen for the pointer. */
import { type KeyboardEvent, useRef, useState } from "react";
import { type CaseState, wholeApiary } from "../../../../casebook/index.ts";
import type { FindingState } from "../../../../journal/index.ts";
import type { Day } from "../../../../units/index.ts";
import {
  type ColonyRef,
  type FindingCell,
  type FindingGroupView,
  type FindingRow,
  findingDrafts,
  stopNotices,
} from "../../../model/index.ts";
import { fileWords } from "../../../words/index.ts";
import { AddFile } from "../../files/AddFile.tsx";
import { Drawn } from "../../parts/Drawn.tsx";
import { Mark } from "../../parts/Mark.tsx";
import { threeStates } from "../../parts/ThreeStates.tsx";
import { useCasebook } from "../../store/context.ts";
import { words } from "../../words.ts";
import { ColonyHead } from "./ColonyHead.tsx";
import { move } from "./move.ts";
import { useSeenOn } from "./seen-on.ts";
import { usePastEdge } from "./use-past-edge.ts";

interface Props {
  readonly state: CaseState;
  readonly groups: readonly FindingGroupView[];
  readonly colonies: readonly ColonyRef[];
}

interface Place {
  readonly row: number;
  readonly column: number;
}

const letters: Readonly<Record<string, FindingState>> = { p: "present", a: "absent", n: "not-looked" };

export function FindingsGrid({ state, groups, colonies }: Props) {
  const { casebook, record, today } = useCasebook();
  const on = useSeenOn(state.id, today);
  const stops = stopNotices(casebook, state, words);
  const [pen, setPen] = useState<FindingState>("present");
  const [at, setAt] = useState<Place>({ row: 0, column: 0 });
  /** What the last press set back, in words; empty when nothing. */
  const [setBackSays, setBack] = useState("");
  const grid = useRef<HTMLTableElement>(null);
  const scroll = useRef<HTMLDivElement>(null);
  const past = colonies.slice(Math.max(0, colonies.length - usePastEdge(scroll)));
  const say = words.seen;
  const rows = groups.flatMap((group) => group.rows);
  const here = rows[at.row];

  const answer = (row: FindingRow, key: string, value: FindingState) => {
    const drafts = findingDrafts({ state, key, finding: row.id, exclusiveWith: row.exclusiveWith, answer: value, on });
    const other = rows.find(({ id }) => id === row.exclusiveWith)?.term;
    const colony = colonies.find(({ id }) => id === key)?.code ?? say.apiaryWide;
    setBack(drafts.length > 1 && other ? say.setBack({ finding: row.term, other, colony }) : "");
    void record(drafts);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const letter = letters[event.key.toLowerCase()];
    const cell = here?.cells[Math.min(at.column, here.cells.length - 1)];
    if (letter && here && cell && !event.ctrlKey && !event.metaKey && !event.altKey) {
      event.preventDefault();
      if (!event.repeat) answer(here, cell.key, letter);
      return;
    }
    const next = move(
      event.key,
      at,
      rows.map((row) => row.cells.length),
    );
    if (!next) return;
    event.preventDefault();
    setAt(next);
    const column = Math.min(next.column, (rows[next.row]?.cells.length ?? 1) - 1);
    grid.current?.querySelector<HTMLElement>(`[data-at="${next.row} ${column}"]`)?.focus();
  };
  return (
    <section className="sheet" aria-labelledby="h-sheet">
      <div className="head">
        <h2 id="h-sheet">{say.findings}</h2>
        <Pen pen={pen} choose={setPen} />
        <span className="note q3 keys-hint">{say.keys}</span>
      </div>
      <p className="q2">
        {say.goTo}{" "}
        {groups.map((group, index) => (
          <span key={group.place}>
            {index > 0 ? " · " : ""}
            <a className="act" href={`#at-${group.place}`}>
              {group.title}
            </a>
          </span>
        ))}
      </p>
      {past.length > 0 ? <p className="past-edge">{say.pastEdge({ codes: past.map(({ code }) => code) })}</p> : null}
      <div className="sheet-two">
        <div className="sheet-scroll" ref={scroll}>
          {/* biome-ignore lint/a11y/noNoninteractiveElementToInteractiveRole: the pattern of a grid is a table whose cells take keys */}
          <table ref={grid} role="grid" aria-labelledby="h-sheet" onKeyDown={onKeyDown}>
            <thead>
              <tr>
                <th scope="col">{say.colony}</th>
                {colonies.map((colony) => (
                  <th key={colony.id} scope="col">
                    <ColonyHead code={colony.code} all={colonies} />
                  </th>
                ))}
              </tr>
            </thead>
            {groups.map((group) => (
              <Group
                key={group.place}
                group={group}
                from={rows.indexOf(group.rows[0] as FindingRow)}
                colonies={colonies}
                at={at}
                focus={setAt}
                press={(row, key) => answer(row, key, pen)}
              />
            ))}
          </table>
        </div>
        {here ? (
          <LookFor row={here} colony={hereAt(here, at.column, colonies)} caseId={state.id} on={on}>
            {stops.map(({ key, what }) => (
              <p key={key} className="clash" role="alert">
                {words.case.stop.head}: {what}. <a href="#page">{say.seeStop}</a>
              </p>
            ))}
            <p className="clash" role="status" hidden={setBackSays === ""}>
              {setBackSays}
            </p>
          </LookFor>
        ) : null}
      </div>
    </section>
  );
}

function Pen({ pen, choose }: { readonly pen: FindingState; readonly choose: (pen: FindingState) => void }) {
  return (
    <fieldset className="pen">
      <legend>{words.seen.pen}</legend>
      {threeStates.map((each) => (
        <label key={each} className="tick">
          <input type="radio" name="pen" checked={pen === each} onChange={() => choose(each)} />
          <Mark state={each} />
          {words.seen.states[each].toLowerCase()}
        </label>
      ))}
    </fieldset>
  );
}

interface GroupProps {
  readonly group: FindingGroupView;
  readonly from: number;
  readonly colonies: readonly ColonyRef[];
  readonly at: Place;
  readonly focus: (at: Place) => void;
  readonly press: (row: FindingRow, key: string) => void;
}

function Group({ group, from, colonies, at, focus, press }: GroupProps) {
  // The sheet is longer than a screen: over each place it says again which column is which colony.
  const again = group.rows.some((row) => row.wholeApiary) ? [] : colonies;
  return (
    <tbody>
      <tr>
        <th id={`at-${group.place}`} colSpan={again.length > 0 ? 1 : colonies.length + 1} scope="rowgroup">
          {group.title}
        </th>
        {again.map((colony) => (
          <td key={colony.id} className="again" aria-hidden="true">
            <ColonyHead code={colony.code} all={colonies} />
          </td>
        ))}
      </tr>
      {group.rows.map((row, index) => (
        <tr key={row.id} className={from + index === at.row ? "here" : undefined}>
          <th scope="row">{row.term}</th>
          {row.cells.map((cell, column) => (
            <td
              key={cell.key}
              className={row.wholeApiary ? "whole" : undefined}
              colSpan={row.wholeApiary ? Math.max(1, colonies.length) : undefined}
            >
              <Cell
                row={row}
                cell={cell}
                code={codeOf(cell, colonies)}
                place={{ row: from + index, column }}
                isHere={from + index === at.row && Math.min(at.column, row.cells.length - 1) === column}
                focus={focus}
                press={press}
              />
            </td>
          ))}
        </tr>
      ))}
    </tbody>
  );
}

const codeOf = (cell: FindingCell, colonies: readonly ColonyRef[]): string =>
  cell.key === wholeApiary
    ? words.seen.apiaryWide
    : (colonies.find((colony) => colony.id === cell.key)?.code ?? cell.key);

interface CellProps {
  readonly row: FindingRow;
  readonly cell: FindingCell;
  readonly code: string;
  readonly place: Place;
  readonly isHere: boolean;
  readonly focus: (at: Place) => void;
  readonly press: (row: FindingRow, key: string) => void;
}

function Cell({ row, cell, code, place, isHere, focus, press }: CellProps) {
  const say = words.seen;
  const says =
    cell.state === null
      ? say.stateNone
      : cell.state === "conflict"
        ? say.stateConflict
        : say.states[cell.state].toLowerCase();
  return (
    <button
      type="button"
      data-at={`${place.row} ${place.column}`}
      tabIndex={isHere ? 0 : -1}
      aria-label={say.cell({ finding: row.term, colony: code, state: says })}
      onFocus={() => isHere || focus(place)}
      onClick={() => press(row, cell.key)}
    >
      <Mark state={cell.state} />
      {row.wholeApiary ? <span className="note">{says}</span> : null}
    </button>
  );
}

interface Here {
  readonly key: string;
  readonly code: string;
  readonly isClash: boolean;
}

/** Whose cell is under the pointer or the keys, and whether two people's answers stand in it. */
function hereAt(row: FindingRow, column: number, colonies: readonly ColonyRef[]): Here | null {
  const cell = row.cells[Math.min(column, row.cells.length - 1)];
  return cell ? { key: cell.key, code: codeOf(cell, colonies), isClash: cell.state === "conflict" } : null;
}

/** What to look for, of the finding under the pointer or the keys, and in which colony. */
function LookFor({
  row,
  colony,
  caseId,
  on,
  children,
}: {
  readonly caseId: string;
  readonly on: Day;
  readonly row: FindingRow;
  readonly colony: Here | null;
  /** What was said of the last press, ahead of it. */
  readonly children: React.ReactNode;
}) {
  const [isOpen, setOpen] = useState(false);
  const say = words.seen;
  return (
    <aside className="look-for" aria-label={say.lookFor} data-open={isOpen || undefined}>
      {children}
      {colony?.isClash ? <p className="clash">{say.clash({ finding: row.term, colony: colony.code })}</p> : null}
      <h3>
        {row.question} <span className="c q3">{colony?.code}</span>
      </h3>
      <button type="button" className="act more" aria-expanded={isOpen} onClick={() => setOpen(!isOpen)}>
        {isOpen ? say.hideLookFor : say.lookFor}
      </button>
      <p>{row.lookFor}</p>
      {row.tellApart ? <p className="q2">{row.tellApart}</p> : null}
      <Drawn finding={row.id} />
      {colony ? (
        <AddFile
          caseId={caseId}
          of={{ colony: colony.key === wholeApiary ? null : colony.key, finding: row.id }}
          says={fileWords.ofFinding({ colony: colony.code, finding: row.term })}
          on={on}
        />
      ) : null}
    </aside>
  );
}
