/** A picture with its sentence above and its twins at the right: a table, an SVG file, a CSV file. */
import { type ReactNode, useId, useRef, useState } from "react";
import type { ExportTable } from "../../../transfer/index.ts";
import { saveCsv, saveSvg } from "./save.ts";
import { Twins } from "./Twins.tsx";
import "./pictures.css";

interface Props {
  readonly title: string;
  readonly aside?: string | undefined;
  readonly under?: string | undefined;
  readonly table: ExportTable;
  readonly className?: string;
  /** How the figures of a column are written; as they are when left out. */
  readonly show?: (value: string | number | boolean | null, column: number) => string;
  /** One SVG with role img and its figures in the label. */
  readonly children: ReactNode;
  readonly after?: ReactNode;
}

const plain = (value: string | number | boolean | null): string =>
  value === null ? "" : typeof value === "number" ? String(Number(value.toFixed(2))) : String(value);

export function Picture({ title, aside, under, table, className, show = plain, children, after }: Props) {
  const id = useId();
  const picture = useRef<HTMLDivElement>(null);
  const [asTable, setAsTable] = useState(false);
  const save = () => {
    const svg = picture.current?.querySelector("svg");
    if (svg) saveSvg(svg, table.name);
  };
  return (
    <figure className={`pic ${className ?? ""}`} aria-labelledby={id}>
      <figcaption>
        <b id={id}>{title}</b>
        {aside ? <span className="note q3">{aside}</span> : null}
        <Twins
          picture={title}
          isTable={asTable}
          turn={() => setAsTable((shown) => !shown)}
          saveSvg={save}
          saveCsv={() => void saveCsv(table)}
        />
      </figcaption>
      {under ? <p className="pic-under">{under}</p> : null}
      <div ref={picture} className="pic-body" hidden={asTable}>
        {children}
      </div>
      {asTable ? <TwinTable title={title} table={table} show={show} /> : null}
      {after}
    </figure>
  );
}

function TwinTable({
  title,
  table,
  show,
}: {
  readonly title: string;
  readonly table: ExportTable;
  readonly show: NonNullable<Props["show"]>;
}) {
  const isNumber = (column: number) => table.rows.some((row) => typeof row[column] === "number");
  return (
    <div className="twin-table">
      <table>
        <caption className="vh">{title}</caption>
        <thead>
          <tr>
            {table.columns.map((column, index) => (
              <th key={column} scope="col" className={isNumber(index) ? "num-r" : undefined}>
                {column}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {table.rows.map((row) => (
            <tr key={row.join("|")}>
              {row.map((cell, index) => (
                <td key={table.columns[index]} className={typeof cell === "number" ? "num-r" : undefined}>
                  {show(cell, index)}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
