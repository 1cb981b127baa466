/** The form of a change: what, which figure, on whose word; tried on past cases before it can be accepted. */
import { type FormEvent, useState } from "react";
import { useSearchParams } from "wouter";
import { evidenceOf } from "../../../casebook/index.ts";
import type { Problem } from "../../../units/index.ts";
import { type ChangeKind, changeKinds, evidenceDraft, readChange } from "../../model/index.ts";
import { ChoiceField, fieldsOf } from "../parts/Form.tsx";
import { useCasebook } from "../store/context.ts";
import { words } from "../whole-words.ts";
import { ChangeFields } from "./ChangeFields.tsx";
import { CitationFields } from "./CitationFields.tsx";
import { Trial, Working } from "./Trial.tsx";
import { useTrial } from "./use-trial.ts";

type Body = Extract<ReturnType<typeof readChange>, { readonly ok: true }>["value"];

export function ChangeForm() {
  const { casebook, programme, author, record, today } = useCasebook();
  const [asked] = useSearchParams();
  const [kind, setKind] = useState<ChangeKind>(
    () => changeKinds.find((each) => each === asked.get("what")) ?? changeKinds[0],
  );
  const { view, problems: troubles, working, hasFailed, ask, forget } = useTrial(({ after }) => after.start);
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const [tried, setTried] = useState<Body | null>(null);
  const [round, setRound] = useState(0);
  const say = words.own;
  const { evidence } = evidenceOf(casebook);
  const tryIt = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = event.currentTarget;
    const read = readChange(fieldsOf(form), evidence, today);
    setProblems(read.ok ? [] : read.problems);
    if (!read.ok) {
      const first = read.problems.map(({ field }) => field && form.elements.namedItem(field)).find(Boolean);
      if (first instanceof HTMLElement) first.focus();
      return;
    }
    setTried(read.value);
    const { change, citation, on } = read.value;
    ask({ changes: [{ change, citation, on, entry: "", author }] });
  };
  const accept = async () => {
    if (!tried) return;
    await record([evidenceDraft(casebook, programme, tried, today)]);
    forget();
    setTried(null);
    setRound(round + 1);
  };
  return (
    <section aria-labelledby="h-form">
      <h2 id="h-form">{say.formHead}</h2>
      <form key={round} className="form flush" onSubmit={tryIt} onChange={forget} noValidate>
        <fieldset>
          <legend className="vh">{say.formHead}</legend>
          <ChoiceField
            name="what"
            label={say.what}
            problems={problems}
            wide
            value={kind}
            onChoose={(value) => {
              setKind(changeKinds.find((each) => each === value) ?? kind);
              setProblems([]);
            }}
            choices={changeKinds.map((value) => ({ value, says: say.whats[value] }))}
          />
          <ChangeFields
            key={kind}
            kind={kind}
            evidence={evidence}
            problems={problems}
            start={{ condition: asked.get("condition"), finding: asked.get("finding") }}
          />
        </fieldset>
        <CitationFields evidence={evidence} isSource={kind === "source"} problems={problems} />
        <p className="acts">
          <button type="submit" className="press quiet">
            {say.tryIt}
          </button>{" "}
          <span className="note q3">{view ? null : say.tryFirst}</span>
        </p>
      </form>
      <Working share={working} />
      {hasFailed ? <p role="alert">{say.failed}</p> : null}
      {view && tried ? (
        <>
          <Trial view={view} />
          {troubles.some(({ severity }) => severity !== "noted") ? null : (
            <p className="acts">
              <button type="button" className="press" onClick={() => void accept()}>
                {say.acceptChange}
              </button>
            </p>
          )}
        </>
      ) : null}
    </section>
  );
}
