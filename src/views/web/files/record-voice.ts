/** Records a voice note by the browser's own recorder. */
import { largestFile, type MediaType, mediaTypeOf } from "../../../journal/index.ts";
import { type DeviceFile, fileHash } from "../../../storage/device.ts";

/** A note ends by itself after so long. A choice of ours: it fits the largest file at any rate a browser uses. */
export const longestSeconds = 300;
/** Speech is understood at this rate. A choice of ours. */
const bitsPerSecond = 32_000;
const forms = ["audio/webm;codecs=opus", "audio/mp4", "audio/ogg;codecs=opus"] as const;

export type NoteTrouble = "microphone-refused" | "microphone-missing" | "note-empty" | "note-too-large" | "note-unfit";

export type Note =
  | { readonly ok: true; readonly file: DeviceFile & { readonly mediaType: MediaType }; readonly seconds: number }
  | { readonly ok: false; readonly why: NoteTrouble };

export interface Recording {
  /** Ends it; the note comes by `done`. */
  readonly stop: () => void;
  /** Ends it and keeps nothing. */
  readonly discard: () => void;
}

export const canRecord = (): boolean =>
  typeof MediaRecorder !== "undefined" && typeof navigator.mediaDevices?.getUserMedia === "function";

/** Begins to record, or says why it cannot. `done` is called once, when the note is there or nothing came of it. */
export async function beginRecording(done: (note: Note | null) => void): Promise<Recording | NoteTrouble> {
  if (!canRecord()) return "microphone-missing";
  let sound: MediaStream;
  try {
    sound = await navigator.mediaDevices.getUserMedia({ audio: true });
  } catch {
    return "microphone-refused";
  }
  const letGo = () => {
    for (const track of sound.getTracks()) track.stop();
  };
  const mimeType = forms.find((form) => MediaRecorder.isTypeSupported(form));
  if (mimeType === undefined) {
    letGo();
    return "note-unfit";
  }
  const recorder = new MediaRecorder(sound, { mimeType, audioBitsPerSecond: bitsPerSecond });
  const pieces: Blob[] = [];
  const began = performance.now();
  let isKept = true;
  const limit = setTimeout(() => recorder.stop(), longestSeconds * 1000);
  recorder.addEventListener("dataavailable", ({ data }) => pieces.push(data));
  recorder.addEventListener("stop", () => {
    clearTimeout(limit);
    letGo();
    const seconds = Math.round((performance.now() - began) / 100) / 10;
    if (!isKept) done(null);
    else void noteOf(new Blob(pieces), seconds).then(done);
  });
  recorder.start();
  const end = () => recorder.state !== "inactive" && recorder.stop();
  return {
    stop: () => void end(),
    discard: () => {
      isKept = false;
      end();
    },
  };
}

async function noteOf(sound: Blob, seconds: number): Promise<Note> {
  if (sound.size === 0) return { ok: false, why: "note-empty" };
  if (sound.size > largestFile) return { ok: false, why: "note-too-large" };
  const bytes = new Uint8Array(await sound.arrayBuffer());
  const mediaType = mediaTypeOf(bytes);
  if (mediaType === null) return { ok: false, why: "note-unfit" };
  return { ok: true, file: { sha256: await fileHash(bytes), mediaType, bytes }, seconds };
}
