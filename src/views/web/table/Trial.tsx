/** The trial of a table: what would be added, every problem by row and column with its mend, and the act that adds. */
import { useEffect, useMemo, useState } from "react";
import { Link } from "wouter";
import {
  type FreshDrafts,
  freshDrafts,
  type ImportAnswer,
  type ImportProblem,
  type Mapping,
  newNames,
  type PlannedImport,
} from "../../../transfer/index.ts";
import { Rich } from "../parts/Rich.tsx";
import { saveText } from "../parts/save.ts";
import { useCasebook } from "../store/context.ts";
import { sentence, words } from "../whole-words.ts";
import { askTable } from "./ask-table.ts";

interface Props {
  readonly given: Uint8Array;
  readonly mapping: Mapping;
  readonly change: (mapping: Mapping) => void;
  /** Called when everything is on record. */
  readonly taken: () => void;
}

export function Trial({ given, mapping, change, taken }: Props) {
  const { casebook, today, record } = useCasebook();
  const say = words.table;
  const [answer, setAnswer] = useState<ImportAnswer<PlannedImport> | "trying" | "failed">("trying");
  const [added, setAdded] = useState<number | "adding" | null>(null);
  useEffect(() => {
    let here = true;
    setAnswer("trying");
    askTable<"try">({ kind: "try", given, mapping, today }).then(
      (tried) => here && setAnswer(tried),
      () => here && setAnswer("failed"),
    );
    return () => {
      here = false;
    };
  }, [given, mapping, today]);
  const planned = typeof answer === "object" && answer.ok ? answer.value : null;
  const found = useMemo(() => (planned ? freshDrafts(casebook, planned.drafts) : null), [casebook, planned]);

  const add = async ({ fresh }: FreshDrafts) => {
    setAdded("adding");
    try {
      await record(fresh);
      setAdded(fresh.length);
      taken();
    } catch {
      setAdded(null); // nothing of it is kept, and the line at the top says why
    }
  };
  const agree = async (problem: ImportProblem) => {
    const agreed = await askTable<"agree">({ kind: "agree", given, mapping, problem, reason: say.mendReason });
    if (agreed) change(agreed);
  };
  const problems = typeof answer === "object" ? answer.problems : [];
  return (
    <section aria-labelledby="h-trial">
      <h2 id="h-trial">{say.triedHead}</h2>
      <div role="status">
        {answer === "trying" ? <p>{say.trying}</p> : null}
        {answer === "failed" ? <p>{say.failed}</p> : null}
        {typeof added === "number" ? (
          <p>
            <Rich text={say.added({ added })} /> <Link href="/cases">{say.toCases}</Link>
          </p>
        ) : null}
        {planned && found && typeof added !== "number" ? <Would planned={planned} found={found} /> : null}
      </div>
      {typeof added === "number" ? null : (
        <Problems problems={problems} agree={agree} change={change} mapping={mapping} />
      )}
      <p className="acts">
        {planned && found && found.fresh.length > 0 && typeof added !== "number" ? (
          <button type="button" className="press" disabled={added === "adding"} onClick={() => void add(found)}>
            {added === "adding" ? say.adding : say.add({ added: found.fresh.length })}
          </button>
        ) : null}
        <button
          type="button"
          className="act"
          onClick={() =>
            saveText(`mapping-${mapping.key}.json`, "application/json", `${JSON.stringify(mapping, null, 2)}\n`)
          }
        >
          {say.saveMapping}
        </button>
      </p>
    </section>
  );
}

function Would({ planned: { counts }, found }: { readonly planned: PlannedImport; readonly found: FreshDrafts }) {
  const say = words.table;
  const { fresh, standing, differing } = found;
  const names = newNames(fresh);
  return (
    <>
      <p>
        <Rich text={fresh.length === 0 ? say.nothingNew : say.would({ ...counts, added: fresh.length })} />
      </p>
      {names.apiaries.length + names.colonies.length > 0 ? <p className="q2">{say.newHere(names)}</p> : null}
      {standing + differing.length > 0 ? (
        <p className="q2">{say.standing({ standing, differing: differing.length })}</p>
      ) : null}
    </>
  );
}

/** Problems told at most. */
const mostTold = 60;

interface ProblemsProps {
  readonly problems: readonly ImportProblem[];
  readonly agree: (problem: ImportProblem) => Promise<void>;
  readonly mapping: Mapping;
  readonly change: (mapping: Mapping) => void;
}

function Problems(props: ProblemsProps) {
  const say = words.table;
  const blocked = props.problems.filter(({ severity }) => severity === "blocked");
  const others = props.problems.filter(({ severity }) => severity !== "blocked");
  return (
    <>
      {blocked.length > 0 ? (
        <>
          <p>
            <Rich text={say.blocked({ blocked: blocked.length })} />
          </p>
          <Lines {...props} problems={blocked} />
        </>
      ) : null}
      {others.length > 0 ? (
        <>
          <p className="q2">{say.heed({ heed: others.length })}</p>
          <Lines {...props} problems={others} />
        </>
      ) : null}
    </>
  );
}

function Lines({ problems, agree, mapping, change }: ProblemsProps) {
  const say = words.table;
  return (
    <ul className="notes told">
      {problems.slice(0, mostTold).map((problem) => (
        <li key={`${problem.line} ${problem.column} ${problem.code} ${String(problem.given)}`}>
          <b>{say.at({ line: problem.line, column: problem.column ?? "" })}</b>{" "}
          {problem.given === undefined || problem.given === "" ? null : (
            <span className="c">{say.given({ given: String(problem.given).slice(0, 80) })}</span>
          )}{" "}
          {sentence(problem)}
          <span className="mends">
            {problem.mend ? (
              <button type="button" className="act" onClick={() => void agree(problem)}>
                {mendWords(problem)}
              </button>
            ) : null}
            {problem.code === "date-ambiguous" ? (
              <button type="button" className="act" onClick={() => change({ ...mapping, dates: "month-day-year" })}>
                {say.monthFirst}
              </button>
            ) : null}
            {problem.code === "word-unknown" ? <WordIs problem={problem} mapping={mapping} change={change} /> : null}
          </span>
        </li>
      ))}
      {problems.length > mostTold ? <li>{say.more({ count: problems.length - mostTold })}</li> : null}
    </ul>
  );
}

function mendWords({ mend }: ImportProblem): string {
  if (!mend) return "";
  const { mends } = words.table;
  return mend.kind === "use" || mend.kind === "nothing-recorded"
    ? mends[mend.kind]({ use: mend.use })
    : mends[mend.kind]();
}

/** A word of a finding that is none of the three states yet: a person says which. */
function WordIs({
  problem,
  mapping,
  change,
}: Pick<ProblemsProps, "mapping" | "change"> & { readonly problem: ImportProblem }) {
  const say = words.table;
  const word = String(problem.given);
  const at = mapping.findings.findIndex(({ column }) => column === problem.column);
  const finding = mapping.findings[at];
  if (!finding) return null;
  return (["present", "absent", "notLooked"] as const).map((state) => (
    <button
      key={state}
      type="button"
      className="act"
      onClick={() =>
        change({ ...mapping, findings: mapping.findings.with(at, { ...finding, [state]: [...finding[state], word] }) })
      }
    >
      {say.wordIs({ word, state: say.states3[state] })}
    </button>
  ));
}
