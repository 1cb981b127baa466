/** The bench: what is being read, what waits, what has not come; a vial is found by the code on it. */
import { useState } from "react";
import { Link, useLocation } from "wouter";
import { answered, blocked, type Result } from "../../../units/index.ts";
import { benchList, type Fields, readCode, readForm, type VialRow } from "../../model/index.ts";
import { Answer } from "../parts/Answer.tsx";
import { TextField, useForm } from "../parts/Form.tsx";
import { useCasebook } from "../store/context.ts";
import { words } from "../words.ts";
import "./bench.css";

export default function BenchPage() {
  const { casebook } = useCasebook();
  const view = benchList(casebook, words);
  const say = words.bench;
  return (
    <main id="page" className="bench-page">
      <Answer text={view.answer} />
      {view.isEmpty ? null : <FindVial rows={view.groups.flatMap((group) => group.rows)} />}
      {view.isEmpty ? null : (
        <table className="vials">
          <thead>
            <tr>
              <th scope="col">{say.columns.code}</th>
              <th scope="col">{say.columns.place}</th>
              <th scope="col">{say.columns.from}</th>
              <th scope="col">{say.columns.kept}</th>
              <th scope="col">{say.columns.state}</th>
              <th scope="col">
                <span className="vh">{say.columns.act}</span>
              </th>
            </tr>
          </thead>
          {view.groups.map((group) => (
            <tbody key={group.key}>
              <tr>
                <th colSpan={6} scope="rowgroup">
                  {group.title}
                </th>
              </tr>
              {group.rows.map((row) => (
                <Vial key={row.id} row={row} />
              ))}
            </tbody>
          ))}
        </table>
      )}
    </main>
  );
}

function Vial({ row }: { readonly row: VialRow }) {
  const say = words.bench;
  const act = {
    reading: say.openReading,
    waits: say.startReading,
    held: say.see,
    "to-arrive": say.receive,
    read: say.see,
    rejected: say.see,
  }[row.state];
  return (
    <tr>
      <td className="c code">{row.code}</td>
      <td>{[row.place, row.colony].filter((each) => each !== "").join(", ")}</td>
      <td className="from">{row.from}</td>
      <td className="kept">{row.keptIn}</td>
      <td className="says">{row.says}</td>
      <td className="do">
        <Link className="key-act" href={`/bench/${row.id}`} aria-label={`${act}, ${row.code}`}>
          {act}
        </Link>
      </td>
    </tr>
  );
}

/** The code as typed: with its check letter where the codes here have one, else as it stands. */
function readTyped(fields: Fields, rows: readonly VialRow[]): Result<string> {
  const form = readForm(fields);
  const typed = form.text("code");
  const empty = form.result(typed);
  if (!empty.ok) return empty;
  const plain = typed.trim().toUpperCase();
  if (rows.some((row) => row.code === plain)) return answered(plain);
  const code = readCode(typed);
  return code.ok ? answered(code.value) : blocked(...code.problems);
}

function FindVial({ rows }: { readonly rows: readonly VialRow[] }) {
  const [, go] = useLocation();
  const [orphan, setOrphan] = useState<string | null>(null);
  const say = words.bench;
  const { problems, onSubmit } = useForm(
    (fields) => readTyped(fields, rows),
    (code) => {
      const found = rows.find((row) => row.code === code);
      setOrphan(found ? null : code);
      if (found) go(`/bench/${found.id}`);
    },
  );
  return (
    <form className="find-vial" onSubmit={onSubmit} noValidate>
      <TextField name="code" label={say.find} hint={say.findHint} problems={problems} />
      <button type="submit" className="press quiet">
        {say.findGo}
      </button>
      {orphan ? (
        <p role="status" className="orphan">
          {say.orphan({ code: orphan })}
        </p>
      ) : null}
    </form>
  );
}
