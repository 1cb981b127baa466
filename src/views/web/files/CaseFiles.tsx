/** The photos and voice notes of a case: add one of a colony or of the whole apiary, see them all. */
import { useCallback, useId, useState } from "react";
import { type CaseState, wholeApiary } from "../../../casebook/index.ts";
import { type ColonyRef, filesOf } from "../../model/index.ts";
import { fileWords } from "../../words/index.ts";
import { useSeenOn } from "../case/seen/seen-on.ts";
import { useCasebook } from "../store/context.ts";
import { words } from "../words.ts";
import { AddFile } from "./AddFile.tsx";
import { FileCard } from "./FileCard.tsx";

interface Props {
  readonly state: CaseState;
  readonly colonies: readonly ColonyRef[];
  /** The name of a finding. */
  readonly findingTerm: (finding: string) => string;
}

export function CaseFiles({ state, colonies, findingTerm }: Props) {
  const { today, keeping, may } = useCasebook();
  const on = useSeenOn(state.id, today);
  const [key, setKey] = useState(wholeApiary);
  const [fetched, setFetched] = useState(0);
  const onFetched = useCallback(() => setFetched((before) => before + 1), []);
  const id = useId();
  const say = fileWords;
  const files = filesOf(state);
  const named = (colony: string | null) =>
    colonies.find((each) => each.id === colony)?.code ?? colony ?? words.seen.apiaryWide;
  const colony = key === wholeApiary ? null : key;
  return (
    <section className="case-files" aria-labelledby="h-files">
      <div className="head">
        <h2 id="h-files">{say.head}</h2>
        {keeping.unsentFiles > 0 ? <span className="note q3">{say.unsent({ files: keeping.unsentFiles })}</span> : null}
      </div>
      {may("file-attached") ? (
        <div className="add-line">
          {colonies.length > 0 ? (
            <span className="of-what">
              <label htmlFor={id}>{say.of}</label>{" "}
              <select id={id} value={key} onChange={(event) => setKey(event.target.value)}>
                <option value={wholeApiary}>{words.seen.apiaryWide}</option>
                {colonies.map(({ id: colonyId, code }) => (
                  <option key={colonyId} value={colonyId}>
                    {code}
                  </option>
                ))}
              </select>
            </span>
          ) : null}
          <AddFile caseId={state.id} of={{ colony, finding: null }} says={named(colony)} on={on} />
        </div>
      ) : null}
      {files.length === 0 ? (
        <p className="q2">{say.none}</p>
      ) : (
        <ul className="files">
          {files.map((file) => (
            <FileCard
              key={file.entry}
              state={state}
              file={file}
              fetched={fetched}
              onFetched={onFetched}
              of={
                file.finding === null
                  ? named(file.colony)
                  : say.ofFinding({ colony: named(file.colony), finding: findingTerm(file.finding) })
              }
            />
          ))}
        </ul>
      )}
    </section>
  );
}
