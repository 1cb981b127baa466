/** Sentences of photos and voice notes. */
import { day, some, whole } from "./numbers.ts";

const minutes = (seconds: number): string =>
  `${whole(Math.floor(seconds / 60))}:${String(Math.floor(seconds % 60)).padStart(2, "0")}`;

export const fileWords = {
  head: "Photos and voice notes",
  none: "None yet. A photo is made smaller here, and where it was taken goes out of it.",
  addPhoto: "Add a photo",
  recordNote: "Record a note",
  addPhotoOf: (slots: { readonly of: string }) => `Add a photo: ${slots.of}`,
  recordNoteOf: (slots: { readonly of: string }) => `Record a note: ${slots.of}`,
  of: "Of",
  preparing: "Making the photo smaller …",
  recording: (slots: { readonly seconds: number }) => `Recording ${minutes(slots.seconds)}`,
  recordingHint: (slots: { readonly most: number }) => `Stops by itself after ${whole(slots.most / 60)} minutes.`,
  stop: "Stop and keep",
  discard: "Throw away",
  kept: { photo: "The photo is kept on this device.", note: "The note is kept on this device." },
  unsent: (slots: { readonly files: number }) => `${some(slots.files, "file", "files")} not yet sent`,
  photo: (slots: { readonly of: string }) => `Photo, ${slots.of}`,
  note: (slots: { readonly of: string; readonly seconds: number | null }) =>
    `Voice note, ${slots.of}${slots.seconds === null ? "" : `, ${minutes(slots.seconds)}`}`,
  ofFinding: (slots: { readonly colony: string; readonly finding: string }) => `${slots.finding} of ${slots.colony}`,
  takenOn: (slots: { readonly on: string; readonly by: string }) =>
    slots.by === "" ? day(slots.on) : `${day(slots.on)}, ${slots.by}`,
  elsewhere: (slots: { readonly kilobytes: number }) =>
    `Not on this device: fetch it (${whole(Math.max(1, slots.kilobytes))} KB)`,
  fetching: "Fetching …",
  notThere: "Not to be had now: the service does not answer, or the device that holds it has not sent it yet.",
  damaged: "This file cannot be shown on this device.",
  caption: "What it shows",
  keepCaption: "Keep these words",
  withdraw: "Take it back",
  sureWithdraw: "Take it back? It is shown no more; the entry stays in the journal.",
  yes: "Yes, take it back",
  no: "No",
  close: "Close",
  open: (slots: { readonly what: string }) => `Open: ${slots.what}`,
  refusals: {
    "photo-unreadable":
      "This device cannot read that picture, so where it was taken cannot be taken out of it. Choose a JPEG, or take the photo with the camera from here.",
    "photo-too-large": "That picture stays too large even after it was made smaller. Choose another one.",
    "microphone-refused": "The microphone may not be used here. Allow it in the browser's settings for this page.",
    "microphone-missing": "This browser cannot record sound.",
    "note-empty": "Nothing was recorded.",
    "note-too-large": "That note is too long to be kept. Make it shorter.",
    "note-unfit": "This browser records sound in a form that cannot be kept here.",
  },
};
