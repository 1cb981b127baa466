/** The evidence: every fact by kind and by words, with who says so and how it was read; one record at its own address. */
import { useMemo, useState } from "react";
import { Link } from "wouter";
import { knowledgeVersion, sources } from "../../../knowledge/index.ts";
import { type EvidenceKind, type EvidenceRecord, evidenceRecords, searchRecords } from "../../model/index.ts";
import { Answer } from "../parts/Answer.tsx";
import type { PageProps } from "../routes.ts";
import { words } from "../whole-words.ts";
import { RecordView } from "./RecordView.tsx";
import "./evidence.css";

const kinds = Object.keys(words.evidence.kinds) as readonly EvidenceKind[];
const atOnce = 40;

export default function EvidencePage({ params }: PageProps) {
  const records = useMemo(() => evidenceRecords(words), []);
  const say = words.evidence;
  if (params.kind) {
    const record = records.find((each) => each.kind === params.kind && each.id === params.id);
    return (
      <main id="page" className="evidence">
        <p className="note">
          <Link className="act" href="/evidence">
            {say.back}
          </Link>
        </p>
        {record ? <RecordView record={record} records={records} /> : <Answer text={say.missing} />}
      </main>
    );
  }
  return <Browse records={records} />;
}

function Browse({ records }: { readonly records: readonly EvidenceRecord[] }) {
  const say = words.evidence;
  const [text, setText] = useState("");
  const [kind, setKind] = useState<EvidenceKind | null>(null);
  const [most, setMost] = useState(atOnce);
  const found = searchRecords(records, { text, kind });
  return (
    <main id="page" className="evidence">
      <Answer
        text={say.answer({
          records: records.length,
          sources: Object.keys(sources).length,
          version: knowledgeVersion,
        })}
        under={say.under}
      />
      <p className="acts">
        <Link className="act" href="/evidence/changes">
          {words.own.toChanges}
        </Link>
        <Link className="act" href="/evidence/experience">
          {words.own.toExperience}
        </Link>
      </p>
      {/* biome-ignore lint/a11y/useSemanticElements: the search element is not known to every browser we serve */}
      <form role="search" className="search" onSubmit={(event) => event.preventDefault()}>
        <label className="field">
          {say.search} <span className="hint">{say.searchHint}</span>
          <input
            type="search"
            value={text}
            onChange={(event) => {
              setText(event.target.value);
              setMost(atOnce);
            }}
          />
        </label>
        <label className="field">
          {say.kind}
          <select
            value={kind ?? ""}
            onChange={(event) => {
              setKind(kinds.find((each) => each === event.target.value) ?? null);
              setMost(atOnce);
            }}
          >
            <option value="">{say.all}</option>
            {kinds.map((each) => (
              <option key={each} value={each}>
                {say.kinds[each]}
              </option>
            ))}
          </select>
        </label>
      </form>
      <p className="note q3" role="status">
        {found.length === 0 ? say.noneFound : say.found({ shown: found.length, all: records.length })}
      </p>
      <ul className="records">
        {found.slice(0, most).map((record) => (
          <li key={`${record.kind} ${record.id}`}>
            <span className="note q3 kind">{say.one[record.kind]}</span>
            <span>
              <Link className="act" href={`/evidence/${record.kind}/${record.id}`}>
                {record.title}
              </Link>
              {record.says === record.title ? null : <span className="q2"> {record.says}</span>}
            </span>
            <span className="note q3">{[...new Set(marksOf(record))].map((mark) => say.marks[mark]).join("; ")}</span>
          </li>
        ))}
      </ul>
      {found.length > most ? (
        <p className="acts">
          <button type="button" className="press quiet" onClick={() => setMost((now) => now + 200)}>
            {say.more}
          </button>
        </p>
      ) : null}
    </main>
  );
}

const marksOf = (record: EvidenceRecord) => record.citations.map((citation) => citation.mark);
