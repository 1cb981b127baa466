/** "Add a photo" and "Record a note", of the case, a colony or a finding: kept on this device before it is said so. */
import { type ChangeEvent, useEffect, useId, useRef, useState } from "react";
import type { BodyOf } from "../../../journal/index.ts";
import type { DeviceFile } from "../../../storage/device.ts";
import type { Day } from "../../../units/index.ts";
import { type FileOf, fileDraft } from "../../model/index.ts";
import { fileWords } from "../../words/index.ts";
import { useCasebook } from "../store/context.ts";
import { preparePhoto } from "./prepare-photo.ts";
import { beginRecording, canRecord, longestSeconds, type Note, type Recording } from "./record-voice.ts";
import "./files.css";

interface Props {
  readonly caseId: string;
  readonly of: FileOf;
  /** What it is of, in words. */
  readonly says: string;
  /** Day on which it is taken. */
  readonly on: Day;
}

type State =
  | { readonly at: "idle" | "preparing" | "keeping" }
  | { readonly at: "recording"; readonly recording: Recording; readonly seconds: number }
  | { readonly at: "told"; readonly says: string; readonly of: string };

type Attached = BodyOf<"file-attached">;

export function AddFile({ caseId, of, says, on }: Props) {
  const { record, may } = useCasebook();
  const [state, setState] = useState<State>({ at: "idle" });
  const id = useId();
  const say = fileWords;
  const running = useRef<Recording | null>(null);
  useEffect(() => () => running.current?.stop(), []); // who leaves while speaking loses nothing
  const isRecording = state.at === "recording";
  useEffect(() => {
    if (!isRecording) return undefined;
    const began = Date.now();
    const clock = setInterval(
      () =>
        setState((now) =>
          now.at === "recording" ? { ...now, seconds: Math.floor((Date.now() - began) / 1000) } : now,
        ),
      500,
    );
    return () => clearInterval(clock);
  }, [isRecording]);
  if (!may("file-attached")) return null;

  const tell = (told: string) => setState({ at: "told", says: told, of: says });
  /** Of what was shown when it was begun, whatever is shown when it is done. */
  const keep = async (file: DeviceFile & Pick<Attached, "mediaType">, told: string, seconds?: number) => {
    setState({ at: "keeping" });
    const { sha256, mediaType, bytes } = file;
    const named = { sha256, mediaType, bytes: bytes.length, ...(seconds === undefined ? {} : { seconds }) };
    try {
      await record([fileDraft({ caseId, file: named, of, on })], [file]);
      tell(told);
    } catch {
      setState({ at: "idle" }); // what was not kept is told at the top
    }
  };
  const choose = async (event: ChangeEvent<HTMLInputElement>) => {
    const chosen = event.target.files?.[0];
    event.target.value = "";
    if (!chosen) return;
    setState({ at: "preparing" });
    const prepared = await preparePhoto(chosen);
    if (prepared.ok) await keep({ ...prepared.file, mediaType: "image/jpeg" }, say.kept.photo);
    else tell(say.refusals[prepared.why]);
  };
  const take = (note: Note | null) => {
    running.current = null;
    if (note === null) setState({ at: "idle" });
    else if (note.ok) void keep(note.file, say.kept.note, note.seconds);
    else tell(say.refusals[note.why]);
  };
  const begin = async () => {
    const recording = await beginRecording(take);
    if (typeof recording === "string") return tell(say.refusals[recording]);
    running.current = recording;
    return setState({ at: "recording", recording, seconds: 0 });
  };
  const isBusy = state.at === "preparing" || state.at === "keeping";
  return (
    <div className="add-file">
      {state.at === "recording" ? (
        <>
          <span className="now-recording">{say.recording({ seconds: state.seconds })}</span>
          <button type="button" className="press" onClick={state.recording.stop}>
            {say.stop}
          </button>
          <button type="button" className="act" onClick={state.recording.discard}>
            {say.discard}
          </button>
          <span className="note q3">{say.recordingHint({ most: longestSeconds })}</span>
        </>
      ) : (
        <>
          <input
            id={id}
            className="vh"
            type="file"
            accept="image/*"
            aria-label={say.addPhotoOf({ of: says })}
            disabled={isBusy}
            onChange={(event) => void choose(event)}
          />
          <label className="act" htmlFor={id} aria-hidden="true">
            {say.addPhoto}
          </label>
          {canRecord() ? (
            <button
              type="button"
              className="act"
              aria-label={say.recordNoteOf({ of: says })}
              disabled={isBusy}
              onClick={() => void begin()}
            >
              {say.recordNote}
            </button>
          ) : null}
        </>
      )}
      <span className="note q2" role="status">
        {isBusy ? say.preparing : state.at === "told" && state.of === says ? state.says : ""}
      </span>
    </div>
  );
}
