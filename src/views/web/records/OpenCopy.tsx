/** Opens a saved copy: told what it would bring before anything is added. */
import { type ChangeEvent, useId, useState } from "react";
import type { Problem, Result } from "../../../units/index.ts";
import type { CopyCheck } from "../../model/index.ts";
import { sentence } from "../parts/Form.tsx";
import { Rich } from "../parts/Rich.tsx";
import { askJournal } from "../reckon/ask-journal.ts";
import { useCasebook } from "../store/context.ts";
import { words } from "../whole-words.ts";
import { Found } from "./RecordsPage.tsx";

type State =
  | { readonly at: "nothing" | "reading" | "failed" }
  | { readonly at: "read"; readonly copy: Result<CopyCheck> }
  | { readonly at: "taken"; readonly taken: number; readonly refused: readonly Problem[] };

export function OpenCopy() {
  const { entries, programme, takeCopy } = useCasebook();
  const id = useId();
  const say = words.records;
  const [state, setState] = useState<State>({ at: "nothing" });
  const read = async (event: ChangeEvent<HTMLInputElement>) => {
    const file = event.target.files?.[0];
    event.target.value = "";
    if (!file) return;
    setState({ at: "reading" });
    try {
      const question = { kind: "copy", text: await file.text(), entries: await entries(), programme } as const;
      setState({ at: "read", copy: (await askJournal(question)).copy });
    } catch {
      setState({ at: "failed" });
    }
  };
  const take = async (fresh: CopyCheck["fresh"]) => {
    try {
      const { refused } = await takeCopy(fresh);
      const problems = refused.map(({ problem }) => problem);
      setState({ at: "taken", taken: fresh.length - refused.length, refused: problems });
    } catch {
      setState({ at: "failed" });
    }
  };
  return (
    <div className="open-copy">
      <div className="field">
        <label htmlFor={id}>{say.open}</label>
        <p className="hint" id={`${id}-hint`}>
          {say.openHint}
        </p>
        <input
          id={id}
          type="file"
          accept=".jsonl,application/jsonl"
          aria-describedby={`${id}-hint`}
          onChange={(event) => void read(event)}
        />
      </div>
      <div role="status">
        {state.at === "reading" ? <p>{say.reading}</p> : null}
        {state.at === "failed" ? <p>{say.failed}</p> : null}
        {state.at === "read" && !state.copy.ok ? <Refused problems={state.copy.problems} /> : null}
        {state.at === "read" && state.copy.ok ? <Brings copy={state.copy.value} take={take} /> : null}
        {state.at === "taken" ? (
          <>
            <p>
              <Rich text={say.taken({ taken: state.taken, refused: state.refused.length })} />
            </p>
            <Refused problems={state.refused} />
          </>
        ) : null}
      </div>
    </div>
  );
}

function Refused({ problems }: { readonly problems: readonly Problem[] }) {
  const says = [...new Set(problems.map(sentence))];
  return says.length === 0 ? null : (
    <ul className="notes">
      {says.map((each) => (
        <li key={each}>{each}</li>
      ))}
    </ul>
  );
}

function Brings({
  copy: { check, fresh, known },
  take,
}: {
  readonly copy: CopyCheck;
  readonly take: (fresh: CopyCheck["fresh"]) => Promise<void>;
}) {
  const say = words.records;
  return (
    <>
      <Found check={check} />
      <p>
        <Rich text={say.brings({ fresh: fresh.length, known, devices: check.devices })} />
      </p>
      {fresh.length > 0 ? (
        <p className="acts">
          <button type="button" className="press" onClick={() => void take(fresh)}>
            {say.take({ fresh: fresh.length })}
          </button>
        </p>
      ) : null}
    </>
  );
}
