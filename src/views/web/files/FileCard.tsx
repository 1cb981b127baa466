/** One photo or voice note in a list: a small picture or a player, what it is of, and the whole of it when opened. */
import { useRef, useState } from "react";
import type { CaseState } from "../../../casebook/index.ts";
import { captionDraft, type FileView, fileWithdrawnDraft } from "../../model/index.ts";
import { fileWords } from "../../words/index.ts";
import { useCasebook } from "../store/context.ts";
import { Thumb } from "./Thumb.tsx";
import { type FileHere, useAddress, useFile } from "./use-file.ts";

interface Props {
  readonly state: CaseState;
  readonly file: FileView;
  /** What it is of, in words. */
  readonly of: string;
  readonly fetched: number;
  readonly onFetched: () => void;
}

export function FileCard({ state, file, of, fetched, onFetched }: Props) {
  const say = fileWords;
  const { here, fetch } = useFile(file.sha256, { fetched, onFetched });
  const dialog = useRef<HTMLDialogElement>(null);
  const [isOpen, setOpen] = useState(false);
  const what = file.isPhoto ? say.photo({ of }) : say.note({ of, seconds: file.seconds });
  const open = () => {
    setOpen(true);
    dialog.current?.showModal();
  };
  return (
    <li className="file-card">
      {here.at === "here" && file.isPhoto ? (
        <button
          type="button"
          className="thumb-press"
          aria-label={say.open({ what: file.caption || what })}
          onClick={open}
        >
          <Thumb file={here.file} says={file.caption || what} />
        </button>
      ) : (
        <Elsewhere here={here} fetch={fetch} bytes={file.bytes} />
      )}
      {here.at === "here" && !file.isPhoto ? <Player here={here} says={what} /> : null}
      <p>
        <button type="button" className="act" onClick={open}>
          {file.caption || what}
        </button>
      </p>
      <p className="note q3">
        {file.caption === "" ? "" : `${what}. `}
        {say.takenOn({ on: file.takenOn, by: file.author })}
      </p>
      <dialog ref={dialog} className="file-whole" aria-label={what} onClose={() => setOpen(false)}>
        {isOpen ? (
          <Whole state={state} file={file} what={what} here={here} close={() => dialog.current?.close()} />
        ) : null}
      </dialog>
    </li>
  );
}

/** What stands in place of a file that is not on this device. */
function Elsewhere({
  here,
  fetch,
  bytes,
}: {
  readonly here: FileHere;
  readonly fetch: () => void;
  readonly bytes: number;
}) {
  const say = fileWords;
  if (here.at === "here" || here.at === "looking") return null;
  if (here.at === "fetching") return <p className="note q2">{say.fetching}</p>;
  return (
    <>
      {here.at === "not-there" ? <p className="note q2">{say.notThere}</p> : null}
      <button type="button" className="act note" onClick={fetch}>
        {say.elsewhere({ kilobytes: bytes / 1024 })}
      </button>
    </>
  );
}

function Player({ here, says }: { readonly here: Extract<FileHere, { at: "here" }>; readonly says: string }) {
  const address = useAddress(here.file);
  if (address === null) return null;
  // biome-ignore lint/a11y/useMediaCaption: a note that was just spoken has no written form; its caption stands beside it
  return <audio controls preload="metadata" src={address} aria-label={says} />;
}

/** The whole picture, the words to it, and the way to take it back. */
function Whole({
  state,
  file,
  what,
  here,
  close,
}: Pick<Props, "state" | "file"> & { readonly what: string; readonly here: FileHere; readonly close: () => void }) {
  const { record, today, may } = useCasebook();
  const [isSure, setSure] = useState(false);
  const say = fileWords;
  const address = useAddress(here.at === "here" ? here.file : null);
  const keepCaption = async (form: HTMLFormElement) => {
    const draft = captionDraft(state, file.entry, String(new FormData(form).get("caption") ?? ""));
    if (draft) await record([draft]);
    close();
  };
  const withdraw = async () => {
    close();
    await record([fileWithdrawnDraft(state, file.entry, today)]);
  };
  return (
    <>
      <p className="file-head">
        <b>{what}</b>
        <button type="button" className="act" onClick={close}>
          {say.close}
        </button>
      </p>
      {address !== null && file.isPhoto ? <img src={address} alt={file.caption || what} /> : null}
      {here.at === "here" && !file.isPhoto ? <Player here={here} says={what} /> : null}
      <p className="note q3">{say.takenOn({ on: file.takenOn, by: file.author })}</p>
      {may("file-attached") ? (
        <form
          className="line-form"
          onSubmit={(event) => {
            event.preventDefault();
            void keepCaption(event.currentTarget).catch(() => {}); // what was not kept is told at the top
          }}
        >
          <label className="field">
            <span>{say.caption}</span>
            <input name="caption" defaultValue={file.caption} maxLength={4000} autoComplete="off" />
          </label>
          <button type="submit" className="press quiet">
            {say.keepCaption}
          </button>
          {isSure ? (
            <span className="both">
              {say.sureWithdraw}{" "}
              <button type="button" className="act" onClick={() => void withdraw().catch(() => {})}>
                {say.yes}
              </button>{" "}
              <button type="button" className="act" onClick={() => setSure(false)}>
                {say.no}
              </button>
            </span>
          ) : (
            <button type="button" className="act" onClick={() => setSure(true)}>
              {say.withdraw}
            </button>
          )}
        </form>
      ) : null}
    </>
  );
}
