/** The evidence as this programme changed it: every change beside what was published, and the form for another. */
import { Link } from "wouter";
import { type ChangeRow, changeRows, withdrawChangeDraft } from "../../model/index.ts";
import { Answer } from "../parts/Answer.tsx";
import { sentence } from "../parts/Form.tsx";
import { useCasebook } from "../store/context.ts";
import { words } from "../whole-words.ts";
import { ChangeForm } from "./ChangeForm.tsx";
import { Trial, Working } from "./Trial.tsx";
import { useTrial } from "./use-trial.ts";
import "./own.css";

export default function ChangesPage() {
  const { casebook, may } = useCasebook();
  const say = words.own;
  const rows = changeRows(casebook, words);
  const idle = rows.filter((row) => row.trouble !== null && row.trouble.severity !== "noted").length;
  return (
    <main id="page" className="plain own">
      <Answer text={say.changesAnswer({ changes: rows.length, idle })} under={say.changesUnder} />
      <p className="acts">
        <Link className="act" href="/evidence">
          {words.evidence.back}
        </Link>
        <Link className="act" href="/evidence/experience">
          {say.toExperience}
        </Link>
      </p>
      {rows.length > 0 ? (
        <section aria-labelledby="h-changes">
          <h2 id="h-changes">{say.changesHead}</h2>
          <ul className="own-changes">
            {rows.map((row) => (
              <Change key={row.entry} row={row} />
            ))}
          </ul>
        </section>
      ) : null}
      {may("evidence-changed") ? <ChangeForm /> : null}
    </main>
  );
}

/** A change; before it is taken back, what that would change is told. */
function Change({ row }: { readonly row: ChangeRow }) {
  const { programme, record, may, today } = useCasebook();
  // What is taken back has its name in the evidence before.
  const { view, working, hasFailed, ask } = useTrial(({ before }) => before.start);
  const say = words.own;
  return (
    <li data-mark={row.mark}>
      <p>{row.says}</p>
      <p className="note q2">
        {row.citation}; {words.evidence.marks[row.mark]}. {row.reason}
      </p>
      <p className="note q3">
        {say.by({ author: row.author, on: row.on })}{" "}
        {may("evidence-changed") ? (
          <button
            type="button"
            className="act"
            aria-label={say.takeBackOf({ says: row.says })}
            onClick={() => ask({ without: [row.entry] })}
          >
            {say.takeBack}
          </button>
        ) : null}
      </p>
      {row.trouble ? <p className="trouble">{sentence(row.trouble)}</p> : null}
      <Working share={working} />
      {hasFailed ? <p role="alert">{say.failed}</p> : null}
      {view ? (
        <>
          <Trial view={view} />
          <p className="acts">
            <button
              type="button"
              className="press"
              onClick={() => void record([withdrawChangeDraft(programme, row.entry, today)])}
            >
              {say.takeBackNow}
            </button>
          </p>
        </>
      ) : null}
    </li>
  );
}
