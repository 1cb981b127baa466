/** Sentences of the frame: the top line, the lights, keeping and sending, and when something broke. */
import { day, some } from "./numbers.ts";

export const shell = {
  tool: "Skepsis",
  skip: "To the page",
  needed: "needed",
  areas: "Areas",
  notes: "About the records and this version",
  area: {
    cases: "Cases",
    apiaries: "Apiaries",
    bench: "Bench",
    season: "Season",
    evidence: "Evidence",
    reckoner: "Reckoner",
  },
  lightNow: (slots: { readonly light: string }) => `Light: ${slots.light}`,
  lightByWork: (slots: { readonly light: string }) => `as the work asks (${slots.light})`,
  lights: { field: "field", desk: "desk", bench: "bench" },
  opening: "Opening …",
  openingRecords: "Opening the records on this device …",
  savedHere: (slots: { readonly time: string }) => `Saved here ${slots.time}`,
  nothingYet: "Nothing written here yet",
  unsent: (slots: { readonly entries: number; readonly files: number; readonly reached: boolean | null }) =>
    slots.entries + slots.files > 0
      ? `${some(slots.entries || slots.files, slots.entries ? "entry" : "file", slots.entries ? "entries" : "files")} not yet sent`
      : slots.reached === false
        ? "service not reachable, working here"
        : "all sent",
  keptLine: (slots: { readonly saved: string; readonly sent: string }) => `${slots.saved} · ${slots.sent}`,
  saveJournal: "Save a copy",
  saveJournalAs: "of the journal as a file",
  mayBeCleared:
    "This browser may clear what is kept here when the device runs short of space: it refused to promise otherwise. Send the entries, or save a copy of the journal.",
  refused: (slots: { readonly entries: number }) =>
    `The service did not take ${some(slots.entries, "entry", "entries")}. They are kept here; tell the person who runs the service.`,
  notYours: "**Your role in this programme does not include this.** An administrator can change the role.",
  signIn: "Sign in",
  signInNeeded: "You are not signed in, so nothing is exchanged with the service.",
  signInLost: "This device was reported lost. Its session has ended.",
  newVersion: "A new version is ready.",
  takeNewVersion: "Use it now",
  demonstration: "This is the demonstration casebook: invented places, invented readings. Nothing here is real.",
  demonstrationOn: (slots: { readonly day: string }) =>
    `This is the demonstration casebook: invented places, invented readings. Its day is ${day(slots.day)}.`,
  closeDemonstration: "Back to your own cases",
  removeDemonstration: "Remove the demonstration",
  notFound: "**There is no such page.** The address may be old or mistyped.",
  toCases: "To the cases",
  broke: "**This page stopped because of an error of ours.** What you have written is safe.",
  brokeDetail: "Copy the line below to tell us, then load the page again.",
  again: "Load again",
  noStore: "**The records on this device cannot be opened.** Nothing can be written down until they can.",
  noStoreDetail:
    "A private window, or a browser told to keep nothing, can be the reason. Use an ordinary window, then load the page again.",
  table: "Table",
  picture: "Picture",
  saveSvg: "SVG",
  saveCsv: "CSV",
  twins: (slots: { readonly picture: string }) => `Other forms of: ${slots.picture}`,
};
