/** Sentences of the case page: the six questions and what their scale says. */
import { day, dayAndMonth, ended, list, some, whole } from "./numbers.ts";

const questions = {
  1: "What was seen?",
  2: "What could it be?",
  3: "What would tell?",
  4: "What was found?",
  5: "What shall be done?",
  6: "Did it work?",
} as const;

export const liftingRoles = {
  "competent-authority": "competent authority",
  "reference-laboratory": "reference laboratory",
  "apiary-inspector": "apiary inspector",
} as const;

/** Results that can stop, within a sentence. */
const stopResults: Readonly<Record<string, string>> = {
  "rope-test": "matchstick test",
  "afb-strip": "field kit for American foulbrood",
  "efb-strip": "field kit for European foulbrood",
  "milk-test": "milk test",
  "smear-microscopy": "smear under the microscope",
  "culture-pcr": "culture or PCR",
  "bump-test": "bumped brood comb",
  "uncap-brood": "opened brood",
  "tracheal-dissection": "opened breathing tubes",
  "thoracic-disc": "opened breathing tubes",
  "pooled-pcr": "sequenced PCR",
  "varroa-wash": "mite wash",
  "sugar-roll": "sugar roll",
  "co2-roll": "carbon dioxide roll",
};

export const caseWords = {
  questions,
  toQuestion: (slots: { readonly question: keyof typeof questions }) =>
    `To question ${slots.question}: ${questions[slots.question]}`,
  spine: "The six questions of this case",
  missing: "**There is no such case here.** It may not have arrived on this device yet.",
  colonies: (slots: { readonly count: number }) => some(slots.count, "colony", "colonies"),
  under: (slots: { readonly district: string; readonly colonies: number }) =>
    `${slots.district}, ${some(slots.colonies, "colony", "colonies")}`,
  foot: (slots: { readonly author: string }) => `call taken by ${slots.author}`,
  waits: (slots: { readonly who: string; readonly due: string; readonly note?: string | undefined }) =>
    slots.who === "" && slots.due === ""
      ? "Waits on nobody named"
      : `Waits on ${slots.who || "nobody named"}${slots.due === "" ? "" : `, due ${dayAndMonth(slots.due)}`}${slots.note === undefined ? "" : `: ${slots.note}`}`,
  papers: { labels: "Labels", kit: "Kit card", report: "Report" },
  handOn: "Hand it on",
  stop: {
    head: "Stop and report",
    stands:
      "The stop stands for the apiary until what it follows from is corrected, a sign on question 1 or a result on question 4, or until it is lifted on a laboratory’s result. Telling someone does not lift it.",
    because: (slots: {
      readonly signs: readonly string[];
      readonly tests: readonly string[];
      readonly colonies: readonly string[];
    }) => {
      const what = [...slots.signs, ...slots.tests.map((test) => stopResults[test] ?? "a result")].join("; ");
      return slots.colonies.length === 0 || what === "" ? what : `${what}: ${list(slots.colonies)}`;
    },
    elsewhere: (slots: { readonly code: string }) => `On record in case ${slots.code} of this apiary`,
    lift: "Write down that the stop is lifted",
    liftUnder:
      "Only the competent authority, the reference laboratory or an apiary inspector lifts a stop, on a laboratory’s result. It is lifted for what is on record now: a new sign stops again.",
    whichStop: "Which stop",
    role: "Lifted by, role",
    roleNone: "choose",
    roles: liftingRoles,
    liftedBy: "Name",
    laboratoryReference: "Laboratory reference",
    liftedOn: "Lifted on",
    lifted: (slots: {
      readonly what: string;
      readonly role: keyof typeof liftingRoles;
      readonly liftedBy: string;
      readonly laboratoryReference: string;
      readonly on: string;
    }) =>
      `Lifted on ${day(slots.on)} by ${slots.liftedBy}, ${liftingRoles[slots.role]}, laboratory reference ${slots.laboratoryReference}: ${ended(slots.what)} What the laboratory found counts once it is written down at question 4.`,
    takeBack: "Take it back",
    correct: "To the findings and red flags",
    notTold: "Nobody is recorded as told yet.",
    notToldSince: "Nobody is recorded as told of the newest sign yet.",
    tell: "Write down who was told",
    tellAgain: "Write down a further report",
    whom: "Who was told",
    whomHint: "Such as: competent authority, bee inspector. The case then waits on them.",
    on: "Told on",
    reference: "Reference",
    referenceHint: "The number or name they gave it, if any.",
    due: "Answer due",
    keep: "Keep it",
    note: (slots: { readonly toldWhom: string; readonly on: string; readonly reference?: string | undefined }) =>
      `Told on ${day(slots.on)}: ${slots.toldWhom}${slots.reference ? `, reference ${slots.reference}` : ""}.`,
    waits: (slots: { readonly who: string; readonly due: string }) =>
      `The case waits on ${slots.who}, answer due ${day(slots.due)}.`,
  },
  noPlace: "Place not recorded",
  flagsOpen: (slots: { readonly left: number }) => `${some(slots.left, "red flag", "red flags")} not asked`,
  seen: (slots: { readonly answered: number; readonly notLooked: number }) =>
    `${whole(slots.answered)} answered, ${whole(slots.notLooked)} not looked`,
  nothingSeen: "Nothing looked at yet",
  ranked: (slots: { readonly answered: number }) => `Ranked from ${some(slots.answered, "finding", "findings")}`,
  nothingToRank: "Nothing to rank yet",
  planned: (slots: { readonly looks: number; readonly tests: number; readonly vials: number }) =>
    [
      slots.looks > 0 ? some(slots.looks, "look", "looks") : "",
      slots.tests > 0 ? some(slots.tests, "test", "tests") : "",
      slots.vials > 0 ? some(slots.vials, "vial labelled", "vials labelled") : "",
    ]
      .filter(Boolean)
      .join(", "),
  nothingPlanned: "No look or test chosen",
  noSpecimens: "No specimens yet",
  foundSays: (slots: { readonly read: number; readonly vials: number; readonly results: number }) =>
    [
      slots.vials > 0 ? `${whole(slots.read)} of ${some(slots.vials, "vial", "vials")} read` : "",
      slots.results > 0 ? some(slots.results, "result told", "results told") : "",
    ]
      .filter(Boolean)
      .join(", "),
  notDecided: "Not decided yet",
  decided: { "act-now": "Act now", "test-first": "Test first", wait: "Wait" },
  decidedUntil: (slots: { readonly choice: string; readonly day: string }) =>
    `${slots.choice}; look again on ${dayAndMonth(slots.day)}`,
  noOutcome: "No outcome recorded",
  outcomes: (slots: { readonly count: number; readonly colonies: number }) =>
    `Outcome of ${whole(slots.count)} of ${some(slots.colonies, "colony", "colonies")}`,
  closed: "Closed",
  day: (slots: { readonly day: string }) => day(slots.day),
  story: "In the caller’s own words",
  alreadyDone: "Already done",
  question: "The question",
};
