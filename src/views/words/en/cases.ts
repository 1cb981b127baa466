/** Sentences of the list of cases and of opening one. */
import { day, dayAndMonth, some, whole } from "./numbers.ts";

/** What is due, of the open cases. */
const due = (slots: { readonly overdue: number; readonly thisWeek: number; readonly open: number }): string =>
  slots.overdue > 0
    ? `**${some(slots.overdue, "case is", "cases are")} overdue.** ${slots.thisWeek === 0 ? "Nothing more is" : slots.thisWeek === 1 ? "1 more is" : `${whole(slots.thisWeek)} more are`} due this week.`
    : slots.thisWeek > 0
      ? `**Nothing is overdue.** ${some(slots.thisWeek, "case is", "cases are")} due this week.`
      : slots.open > 0
        ? `**Nothing is due this week.** ${some(slots.open, "case is", "cases are")} open.`
        : "**No case is open.**";

export const cases = {
  title: "Cases",
  none: "**No cases yet.** Open a case, or open the demonstration casebook.",
  noneUnder: "A case begins with a call: what was seen, what was not looked for, what was already done.",
  openOne: "Open a case",
  openDemonstration: "Open the demonstration casebook",
  /** `stops`: apiaries at which something must be reported. */
  answer: (slots: {
    readonly stops: number;
    readonly overdue: number;
    readonly thisWeek: number;
    readonly open: number;
  }) => (slots.stops > 0 ? `**Stop and report: ${some(slots.stops, "place", "places")}.** ${due(slots)}` : due(slots)),
  answerFor: (slots: { readonly who: string; readonly open: number }) =>
    `**${some(slots.open, "case waits", "cases wait")}** on ${slots.who}.`,
  groups: { overdue: "Overdue", "this-week": "This week", later: "Later", "no-day": "Without a day", closed: "Closed" },
  columns: {
    due: "Due",
    place: "Place, case",
    colonies: "Colonies",
    question: "Open question",
    state: "State",
    waitsOn: "Waits on",
  },
  daysLate: (slots: { readonly days: number }) => some(slots.days, "day", "days"),
  today: "today",
  due: (slots: { readonly day: string }) => dayAndMonth(slots.day),
  dueLong: (slots: { readonly day: string }) => day(slots.day),
  noDay: "no day",
  noPlace: "place not recorded",
  nobody: "nobody named",
  waitsOnHead: "Waits on",
  everyone: "Everyone",
  closedHead: "Closed",
  answered: "With an answer",
  withoutAnswer: "Without one",
  filter: (slots: { readonly who: string; readonly count: number }) =>
    `${slots.who}, ${some(slots.count, "case", "cases")}`,
  states: {
    "what-was-seen": "findings not looked at yet",
    "red-flags": "red flags not asked",
    "no-flag-looked": "no red flag looked at yet",
    "what-to-ask": "causes ranked, no look or test chosen",
    "vials-to-label": "looks and tests to do",
    "vials-to-arrive": "vials not here yet",
    "bees-to-read": "bees to read",
    decision: "to be decided",
    plan: "no plan yet",
    "plan-steps": "plan under way",
    outcome: "outcome not recorded",
    nothing: "closed",
  },
  conflicts: (slots: { readonly count: number }) => `${some(slots.count, "answer", "answers")} in which people differ`,
  stepsLate: (slots: { readonly count: number }) => some(slots.count, "plan step overdue", "plan steps overdue"),
  stop: "Stop and report",
  ticks: (slots: { readonly question: number }) => `Open question: ${slots.question} of 6`,
  form: {
    title: "**Open a case.** Write down the call while you hear it.",
    under: "Only what is marked is needed now; the rest can come later.",
    needed: "needed",
    apiary: "Apiary",
    newApiary: "A new apiary",
    apiaryHead: "Where",
    apiaryName: "Name of the place",
    apiaryCode: "Short code",
    apiaryCodeHint: "Stands on every label. Proposed from the name.",
    district: "District",
    districtHint: "Coarse: a valley, a county. Its letters begin the codes of cases and specimens.",
    latitude: "Latitude, degrees",
    latitudeHint: "Whole degrees will do; south of the equator with a minus. It tells the season.",
    callHead: "The call",
    openedOn: "Call taken on",
    beganOn: "Trouble first noticed",
    beganOnHint: "As the caller tells it. Leave empty when nobody knows.",
    chooseApiary: "Choose one",
    question: "What is the question?",
    questionHint: "One sentence, such as: Why do bees crawl before the hives?",
    story: "In the caller’s own words",
    alreadyDone: "What was already done",
    alreadyDoneHint: "Treatments, feed, moves, new queens, with days.",
    coloniesHead: "Colonies with trouble",
    coloniesKnown: "Colonies on record here",
    coloniesNew: "Further colonies to register",
    coloniesNewHint: "Each gets a code, such as WB-07. Leave at 0 when nobody knows yet.",
    adminHead: "The case",
    code: "Case code",
    waitsOn: "Waits on",
    waitsOnHint: "Such as: keeper, inspector 2, bench, laboratory.",
    due: "Due",
    dueHint: "A week from today unless you say otherwise.",
    placeChoice: (slots: { readonly name: string; readonly place: string; readonly code: string }) =>
      `${slots.name}, ${slots.place} (${slots.code})`,
    author: "Your name or role",
    authorHint: "Stands on every entry you write on this device.",
    submit: "Open the case",
  },
};
