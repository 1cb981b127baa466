/** Opens a saved copy: told what it would bring before anything is added. */
import { type ChangeEvent, useId, useState } from "react";
import { mediaTypeOf } from "../../../journal/index.ts";
import { type DeviceFile, fileHash } from "../../../storage/device.ts";
import type { Problem, Result } from "../../../units/index.ts";
import type { CopyCheck } from "../../model/index.ts";
import { Rich } from "../parts/Rich.tsx";
import { askJournal } from "../reckon/ask-journal.ts";
import { useCasebook } from "../store/context.ts";
import { sentence, words } from "../whole-words.ts";
import { Found } from "./RecordsPage.tsx";

type State =
  | { readonly at: "nothing" | "reading" | "failed" }
  | { readonly at: "read"; readonly copy: Result<CopyCheck>; readonly files: readonly DeviceFile[] }
  | {
      readonly at: "taken";
      readonly taken: number;
      readonly files: number;
      readonly refused: readonly Problem[];
    };

export function OpenCopy() {
  const { entries, programme, takeCopy, file: fileHere } = useCasebook();
  const id = useId();
  const say = words.records;
  const [state, setState] = useState<State>({ at: "nothing" });
  const read = async (event: ChangeEvent<HTMLInputElement>) => {
    const file = event.target.files?.[0];
    event.target.value = "";
    if (!file) return;
    setState({ at: "reading" });
    try {
      const { journal, files } = await contentOf(file);
      const question = { kind: "copy", text: journal, entries: await entries(), programme } as const;
      const { copy } = await askJournal(question);
      const fresh = [];
      for (const each of files) if ((await fileHere(each.sha256)) === null) fresh.push(each);
      setState({ at: "read", copy, files: fresh });
    } catch {
      setState({ at: "failed" });
    }
  };
  const take = async (fresh: CopyCheck["fresh"], files: readonly DeviceFile[]) => {
    try {
      const { refused, files: added } = await takeCopy(fresh, files);
      const problems = refused.map(({ problem }) => problem);
      setState({ at: "taken", taken: fresh.length - refused.length, files: added, refused: problems });
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
          accept=".jsonl,.zip,application/jsonl,application/zip"
          aria-describedby={`${id}-hint`}
          onChange={(event) => void read(event)}
        />
      </div>
      <div role="status">
        {state.at === "reading" ? <p>{say.reading}</p> : null}
        {state.at === "failed" ? <p>{say.failed}</p> : null}
        {state.at === "read" && !state.copy.ok ? <Refused problems={state.copy.problems} /> : null}
        {state.at === "read" && state.copy.ok ? (
          <Brings copy={state.copy.value} files={state.files} take={take} />
        ) : null}
        {state.at === "taken" ? (
          <>
            <p>
              <Rich text={say.taken({ taken: state.taken, files: state.files, refused: state.refused.length })} />
            </p>
            <Refused problems={state.refused} />
          </>
        ) : null}
      </div>
    </div>
  );
}

/** The journal of a copy and its files, those alone that are what their names say. */
async function contentOf(file: File): Promise<{ readonly journal: string; readonly files: readonly DeviceFile[] }> {
  const bytes = new Uint8Array(await file.arrayBuffer());
  const { isArchive, readSavedCopy } = await import("../../../transfer/index.ts");
  if (!isArchive(bytes)) return { journal: new TextDecoder().decode(bytes), files: [] };
  const copy = readSavedCopy(bytes) ?? { journal: "", files: [] };
  const files = [];
  for (const each of copy.files) {
    const mediaType = mediaTypeOf(each.bytes);
    if (mediaType !== null && (await fileHash(each.bytes)) === each.sha256) files.push({ ...each, mediaType });
  }
  return { journal: copy.journal, files };
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
  files,
  take,
}: {
  readonly copy: CopyCheck;
  /** Photos and voice notes that are not on this device. */
  readonly files: readonly DeviceFile[];
  readonly take: (fresh: CopyCheck["fresh"], files: readonly DeviceFile[]) => Promise<void>;
}) {
  const say = words.records;
  return (
    <>
      <Found check={check} />
      <p>
        <Rich text={say.brings({ fresh: fresh.length, known, devices: check.devices, files: files.length })} />
      </p>
      {fresh.length + files.length > 0 ? (
        <p className="acts">
          <button type="button" className="press" onClick={() => void take(fresh, files)}>
            {say.take({ fresh: fresh.length, files: files.length })}
          </button>
        </p>
      ) : null}
    </>
  );
}
