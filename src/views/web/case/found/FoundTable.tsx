/** One row a specimen: the count, the share, its interval against the bands, what it reads as. */
import { Fragment } from "react";
import type { FoundRow, FoundView } from "../../../model/index.ts";
import { IntervalBar, IntervalHead, type Scale } from "../../pictures/IntervalBar.tsx";
import { words } from "../../words.ts";

interface Props {
  readonly view: FoundView;
  readonly chosen: string | null;
  readonly choose: (id: string) => void;
}

export function FoundTable({ view, chosen, choose }: Props) {
  const say = words.found.columns;
  const scale: Scale = { width: 420, end: view.scaleEnd, bands: view.bands };
  return (
    <table className="found">
      <thead>
        <tr>
          <th scope="col">{say.colony}</th>
          <th scope="col" className="from">
            {say.from}
          </th>
          <th scope="col" className="num-r">
            {say.withMites}
          </th>
          <th scope="col" className="num-r">
            {say.inHundred}
          </th>
          <th scope="col" className="num-r">
            {say.range}
          </th>
          <th scope="col" className="plot">
            <span className="vh">{words.found.plotHead}</span>
            <IntervalHead scale={scale} />
          </th>
          <th scope="col" className="cls">
            {say.reading}
          </th>
        </tr>
      </thead>
      {view.groups.map((group) => (
        <tbody key={group.title}>
          {view.groups.length > 1 ? (
            <tr className="day">
              <th colSpan={7} scope="rowgroup">
                {group.title}
              </th>
            </tr>
          ) : null}
          {group.rows.map((row) => (
            <Fragment key={row.id}>
              <Row row={row} scale={scale} isChosen={row.id === chosen} choose={() => choose(row.id)} />
            </Fragment>
          ))}
        </tbody>
      ))}
    </table>
  );
}

interface RowProps {
  readonly row: FoundRow;
  readonly scale: Scale;
  readonly isChosen: boolean;
  readonly choose: () => void;
}

function Row({ row, scale, isChosen, choose }: RowProps) {
  return (
    <tr data-chosen={isChosen || undefined}>
      <td className="colony">
        <button type="button" className="row-act" aria-pressed={isChosen} onClick={choose}>
          <b>{row.colony}</b> <span className="c q3">{row.code}</span>
        </button>
      </td>
      <td className="note q2 from">{row.from}</td>
      <td className="num-r nw">{row.withMites}</td>
      <td className="num-r big">{row.inHundred}</td>
      <td className="num-r nw c range">{row.range}</td>
      <td className="plot">
        <IntervalBar scale={scale} estimate={row.estimate} isInfested={row.isInfested} isLimited={row.isLimited} />
      </td>
      <td className="cls">
        <b>{row.reading}</b>
        <span>{row.note}</span>
      </td>
    </tr>
  );
}
