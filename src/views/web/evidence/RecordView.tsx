/** One record: what it says, its figures with their marks, who says so; of a source, the records that rest on it. */
import { Link } from "wouter";
import { changesOfRecord, type EvidenceRecord } from "../../model/index.ts";
import { Answer } from "../parts/Answer.tsx";
import { Drawn } from "../parts/Drawn.tsx";
import { useCasebook } from "../store/context.ts";
import { words } from "../whole-words.ts";

interface Props {
  readonly record: EvidenceRecord;
  readonly records: readonly EvidenceRecord[];
}

/** What this programme has changed of it, and the way to change more. */
function OwnHere({ kind, id }: { readonly kind: "condition" | "finding"; readonly id: string }) {
  const { casebook } = useCasebook();
  const say = words.own;
  const changes = changesOfRecord(casebook, id, words);
  return (
    <section aria-label={say.ofRecord}>
      {changes.length > 0 ? (
        <ul className="citations">
          {changes.map((each) => (
            <li key={each}>{each}</li>
          ))}
        </ul>
      ) : null}
      <p className="note">
        <Link className="act" href={`/evidence/changes?what=frequency&${kind}=${id}`}>
          {say.changeThis}
        </Link>
      </p>
    </section>
  );
}

export function RecordView({ record, records }: Props) {
  const say = words.evidence;
  const resting =
    record.kind === "source"
      ? records.filter((each) => each.citations.some((citation) => citation.source === record.id))
      : [];
  return (
    <article>
      <p className="note q3">{say.one[record.kind]}</p>
      <Answer text={`**${record.title}**`} under={record.says === record.title ? undefined : record.says} />
      {record.kind === "finding" ? <Drawn finding={record.id} /> : null}
      {record.kind === "condition" || record.kind === "finding" ? <OwnHere kind={record.kind} id={record.id} /> : null}
      {record.parts.length > 0 ? (
        <dl className="parts">
          {record.parts.map((part) => (
            <div key={part.name}>
              <dt>{part.name}</dt>
              <dd>
                {part.says.length === 1 ? (
                  part.says[0]
                ) : (
                  <ul>
                    {part.says.map((line) => (
                      <li key={line}>{line}</li>
                    ))}
                  </ul>
                )}
              </dd>
            </div>
          ))}
        </dl>
      ) : null}
      {record.figures.length > 0 ? (
        <section aria-label={say.figures}>
          <h2>{say.figures}</h2>
          <table>
            <thead>
              <tr>
                <th scope="col">{say.figure}</th>
                <th scope="col">{say.how}</th>
              </tr>
            </thead>
            <tbody>
              {record.figures.map((figure, index) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: two figures of a record may read alike
                <tr key={index} data-mark={figure.mark}>
                  <td>{figure.says}</td>
                  <td>{say.marks[figure.mark]}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      ) : null}
      {record.citations.length > 0 ? (
        <section aria-label={say.whoSays}>
          <h2>{say.whoSays}</h2>
          <ul className="citations">
            {record.citations.map((citation) => (
              <li key={`${citation.source} ${citation.at} ${citation.mark}`} data-mark={citation.mark}>
                <span>
                  {citation.source ? (
                    <Link className="act" href={`/evidence/source/${citation.source}`}>
                      {citation.name}
                    </Link>
                  ) : null}{" "}
                  {citation.at}
                </span>
                <span className="note mark">{say.marks[citation.mark]}</span>
              </li>
            ))}
          </ul>
        </section>
      ) : null}
      {resting.length > 0 ? (
        <section aria-label={say.usedBy}>
          <h2>{say.usedBy}</h2>
          <ul className="citations">
            {resting.map((each) => (
              <li key={`${each.kind} ${each.id}`}>
                <Link className="act" href={`/evidence/${each.kind}/${each.id}`}>
                  {each.title}
                </Link>
                <span className="note q3">{say.one[each.kind]}</span>
              </li>
            ))}
          </ul>
        </section>
      ) : null}
    </article>
  );
}
