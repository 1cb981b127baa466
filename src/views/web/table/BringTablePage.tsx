/** Brings a table of others in: a file, what its columns are, a trial with every problem and its mend, and only then the entries. */
import { type ChangeEvent, useId, useState } from "react";
import { type Casebook, casesAt, settled, stateOf } from "../../../casebook/index.ts";
import { type ImportAnswer, type Mapping, mappingOf, mostMegabytes, readMapping } from "../../../transfer/index.ts";
import type { Problem } from "../../../units/index.ts";
import { Answer } from "../parts/Answer.tsx";
import { fieldsOf } from "../parts/Form.tsx";
import { Rich } from "../parts/Rich.tsx";
import { useCasebook } from "../store/context.ts";
import { sentence, words } from "../whole-words.ts";
import { askTable } from "./ask-table.ts";
import { ChooseColumns, type Chosen, type KnownApiary, type KnownCase } from "./ChooseColumns.tsx";
import { keepMapping, mappingFor } from "./kept-mappings.ts";
import type { OpenedTable } from "./messages.ts";
import { Trial } from "./Trial.tsx";
import "./table.css";

/** A file that was given, and what is in it. */
interface Given {
  /** Which file it is of those given on this page; one may be given again by the same name. */
  readonly turn: number;
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly opened: ImportAnswer<OpenedTable>;
  readonly reading: Chosen["reading"];
}

/** The table in the file; where one column seems to be several, they are parted as they seem to be. */
async function opening(given: Uint8Array): Promise<Pick<Given, "opened" | "reading">> {
  const plain: Chosen["reading"] = { delimiter: ",", decimal: "." };
  const opened = await askTable<"open">({ kind: "open", given, reading: plain });
  const mend = opened.ok ? null : opened.problems.find(({ code }) => code === "other-delimiter")?.mend;
  if (mend?.kind !== "delimiter") return { opened, reading: plain };
  // Where semicolons part the columns, commas part the decimals.
  const delimiter = mend.use as Mapping["delimiter"];
  const reading: Chosen["reading"] = { delimiter, decimal: delimiter === ";" ? "," : "." };
  return { opened: await askTable<"open">({ kind: "open", given, reading }), reading };
}

export default function BringTablePage() {
  const { today, casebook } = useCasebook();
  const say = words.table;
  const [state, setState] = useState<"nothing" | "reading" | "failed">("nothing");
  const [file, setFile] = useState<Given | null>(null);
  const [mapping, setMapping] = useState<Mapping | null>(null);
  const [isRemembered, setRemembered] = useState(false);
  const [problems, setProblems] = useState<readonly Problem[]>([]);

  const open = async (given: File) => {
    setState("reading");
    setMapping(null);
    setProblems([]);
    try {
      // One that is too large is not read at all.
      const bytes = new Uint8Array(await given.slice(0, mostMegabytes * 1024 * 1024 + 1).arrayBuffer());
      const { opened, reading } = await opening(bytes);
      const before = opened.ok ? mappingFor(opened.value.header) : null;
      const known = before && goesToOpenCases(before, casebook) ? before : null;
      setFile((last) => ({ turn: (last?.turn ?? 0) + 1, name: given.name, bytes, opened, reading }));
      setMapping(known);
      setRemembered(known !== null);
      setState("nothing");
    } catch {
      setState("failed");
    }
  };
  const openMapping = async (given: File) => {
    const read = await given.text().then(
      (text) => readMapping(JSON.parse(text)),
      () => null,
    );
    setProblems(read && !read.ok ? read.problems : []);
    setRemembered(false);
    if (read?.ok) setMapping(read.value);
  };
  const choose = (chosen: Chosen, form: HTMLFormElement) => {
    const read = readMapping(
      mappingOf({ ...chosen, ...placesOf(chosen.places, fieldsOf(form), casebook), words: chosen.words }),
    );
    setProblems(read.ok ? [] : read.problems);
    if (read.ok) setMapping({ ...read.value, ...chosen.reading });
  };
  const table = file?.opened.ok ? file.opened.value : null;
  return (
    <main id="page" className="plain table-page">
      <Answer text={`**${say.title}.**`} under={say.under} />
      <section aria-labelledby="h-file">
        <h2 id="h-file">{say.fileHead}</h2>
        <div className="files">
          <FileField
            label={say.file}
            hint={say.fileHint}
            accept=".xlsx,.csv,.tsv,.txt,.json"
            take={(given) => void open(given)}
          />
          {table ? (
            <FileField
              label={say.mapping}
              hint={say.mappingHint}
              accept=".json"
              take={(given) => void openMapping(given)}
            />
          ) : null}
        </div>
        <div role="status">
          {state === "reading" ? <p>{say.reading}</p> : null}
          {state === "failed" ? <p>{say.failed}</p> : null}
          {table && file ? (
            <p>
              <Rich text={say.rows({ file: file.name, rows: table.rows, columns: table.header.length })} />
            </p>
          ) : null}
          {file && !file.opened.ok ? <Lines problems={file.opened.problems} /> : null}
          <Lines problems={problems} />
        </div>
      </section>
      {table && file ? (
        // Hidden while the table is tried: who chooses the columns anew finds what was chosen.
        <div hidden={mapping !== null}>
          <ChooseColumns
            key={file.turn}
            table={table}
            fileName={file.name}
            reading={file.reading}
            today={today}
            known={knownIn(casebook)}
            choose={choose}
          />
        </div>
      ) : null}
      {table && file && mapping ? (
        <>
          {isRemembered ? <p className="q2">{say.remembered}</p> : null}
          <p className="acts">
            <button type="button" className="act" onClick={() => setMapping(null)}>
              {say.anew}
            </button>
          </p>
          <Trial
            given={file.bytes}
            mapping={mapping}
            change={setMapping}
            taken={() => keepMapping(table.header, mapping)}
          />
        </>
      ) : null}
    </main>
  );
}

/** Apiaries on record whose record nobody disputes. */
const knownIn = (casebook: Casebook): readonly KnownApiary[] =>
  Object.values(casebook.apiaries).flatMap(({ id, record }) => {
    const known = settled(record);
    if (!known) return [];
    return [{ id, code: known.code, name: known.name, place: known.place, cases: openCasesAt(casebook, id) }];
  });

const openCasesAt = (casebook: Casebook, apiary: string): readonly KnownCase[] =>
  casesAt(casebook, apiary).flatMap(({ id, record, closed }) => {
    const opened = settled(record);
    return opened === null || settled(closed) !== null
      ? []
      : [{ id, code: opened.code, question: opened.question, colonies: opened.colonies }];
  });

/** Whether every case that a mapping was made for is still open: else it is chosen anew. */
const goesToOpenCases = ({ apiary }: Mapping, casebook: Casebook): boolean =>
  Object.values(apiary.places).every(
    ({ onRecord = "", caseOnRecord }) =>
      caseOnRecord === undefined || openCasesAt(casebook, onRecord).some(({ id }) => id === caseOnRecord.id),
  );

/** Each place as it stands on record, with its colonies, or as its code and name were typed. */
function placesOf(names: readonly string[], fields: Readonly<Record<string, string | undefined>>, casebook: Casebook) {
  const place = fields.district ?? "";
  return {
    places: Object.fromEntries(
      names.map((name, index) => {
        const { id, cases, ...known } = knownIn(casebook).find((each) => each.id === fields[`apiary-${index}`]) ?? {
          id: "",
          cases: [],
        };
        const chosen = cases.find((each) => each.id === fields[`case-${index}`]);
        const typed = { code: fields[`code-${index}`] ?? "", name: fields[`name-${index}`] ?? "", place };
        const colonies = Object.values(stateOf(casebook.apiaries, id)?.colonies ?? {});
        const byCode = colonies.flatMap((colony) => {
          const record = settled(colony.record);
          return record ? [[record.code, colony.id] as const] : [];
        });
        if (id === "") return [name, typed];
        const onRecord = { ...typed, ...known, onRecord: id, colonies: Object.fromEntries(byCode) };
        return [name, chosen ? { ...onRecord, caseOnRecord: { id: chosen.id, colonies: chosen.colonies } } : onRecord];
      }),
    ),
    key: fields.key ?? "",
    source: fields.source ?? "",
    asOf: fields.asOf ?? "",
    question: fields.question ?? "",
  };
}

function Lines({ problems }: { readonly problems: readonly Problem[] }) {
  if (problems.length === 0) return null;
  const lines = [
    ...new Set(problems.map((each) => `${each.field === null ? "" : `${each.field}: `}${sentence(each)}`)),
  ];
  return (
    <ul className="notes">
      {lines.slice(0, 50).map((each) => (
        <li key={each}>{each}</li>
      ))}
    </ul>
  );
}

function FileField({
  label,
  hint,
  accept,
  take,
}: {
  readonly label: string;
  readonly hint: string;
  readonly accept: string;
  readonly take: (file: File) => void;
}) {
  const id = useId();
  const given = (event: ChangeEvent<HTMLInputElement>) => {
    const file = event.target.files?.[0];
    event.target.value = "";
    if (file) take(file);
  };
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <p className="hint" id={`${id}-hint`}>
        {hint}
      </p>
      <input id={id} type="file" accept={accept} aria-describedby={`${id}-hint`} onChange={given} />
    </div>
  );
}
