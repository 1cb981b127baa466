/** Sentences of question 6: did it work? */
import { day, inHundred, list, some, whole } from "./numbers.ts";

const signed = (share: number): string => `${share < 0 ? "−" : ""}${inHundred(Math.abs(share))}`;
const group = (slots: { readonly infested: number; readonly examined: number }) =>
  `${slots.infested} of ${slots.examined}`;

export const worked = {
  answerNoPlan:
    "**Nothing was planned or rechecked yet.** The outcome of each colony can be written down all the same.",
  answerSteps: (slots: { readonly open: number; readonly overdue: number; readonly next: string | null }) =>
    slots.overdue > 0
      ? `**${some(slots.overdue, "step is", "steps are")} overdue.** Mark each as done or not done.`
      : slots.next === null
        ? "**Every step is marked.** Count again to see whether it worked."
        : `**The plan is under way.** Next on ${day(slots.next)}.`,
  answerEffect: (slots: {
    readonly value: number;
    readonly low: number;
    readonly high: number;
    readonly apparent: number;
  }) =>
    slots.low > 0
      ? `**Against the untreated, infestation fell by ${signed(slots.value)} in 100;** it could be ${signed(slots.low)} to ${signed(slots.high)}. Before and after alone it fell by ${signed(slots.apparent)}.`
      : `**Cannot tell yet whether it worked.** Against the untreated, infestation ${slots.value < 0 ? "rose" : "fell"} by ${inHundred(Math.abs(slots.value))} in 100, but it could be anything from a rise by ${inHundred(Math.abs(slots.low))} to a fall by ${inHundred(slots.high)}. Before and after alone it fell by ${signed(slots.apparent)}.`,
  answerNoComparator: (slots: {
    readonly before: number;
    readonly after: number;
    readonly colonies: readonly string[];
  }) =>
    `**${inHundred(slots.before)} in 100 before, ${inHundred(slots.after)} after** in ${list(slots.colonies)}. Without an untreated colony nobody can say what the treatment did.`,
  answerClosed: (slots: { readonly answered: boolean; readonly causes: readonly string[]; readonly on: string }) =>
    slots.answered
      ? `**Closed on ${day(slots.on)}.** ${slots.causes.length > 0 ? `Confirmed: ${list(slots.causes)}.` : "Answered, no cause confirmed."}`
      : `**Closed on ${day(slots.on)} without an answer.**`,
  confirmedBy: (slots: { readonly by: string }) => `Confirmed by ${slots.by}.`,
  learnt: (slots: { readonly learnt: string }) => `Learnt: ${slots.learnt}`,

  stepsHead: "The steps of the plan",
  noPlan: "No plan is written down.",
  columns: { when: "Planned", what: "What", state: "State" },
  late: "overdue",
  waits: "waits",
  done: (slots: { readonly on: string }) => `done ${day(slots.on)}`,
  notDone: (slots: { readonly on: string }) => `not done (${day(slots.on)})`,
  conflict: "two people differ",
  beside: (slots: { readonly on: string; readonly days: number }) =>
    `Planned for ${day(slots.on)}: done ${some(Math.abs(slots.days), "day", "days")} ${slots.days > 0 ? "later" : "earlier"}.`,
  outsideLabel: (slots: {
    readonly low: number;
    readonly high: number;
    readonly from: number;
    readonly to: number;
    readonly measured: boolean;
  }) =>
    `Outside the label: ${slots.measured ? "daily highs on record" : "daily means of an ordinary year"} while it was in ran from ${whole(slots.from)} to ${whole(slots.to)} °C, the label allows ${whole(slots.low)} to ${whole(slots.high)} °C.`,
  mark: "Mark it",
  isDone: "Done?",
  states: { done: "done", "not-done": "not done" },
  on: "On",
  grams: "Grams in all",
  high: "High of that day",
  deviation: "What differed",
  keep: "Write it down",

  checkHead: "Before and after",
  checkUnder: "Bees with mites, of bees read.",
  compareWith: "Compared with",
  nobody: "no untreated colony",
  scored: "What counted after",
  scores: { "any-mite": "any mite", "living-mites": "living mites, by the stain" },
  groups: { treated: "Treated", control: "Untreated" },
  checkColumns: { group: "Group", colonies: "Colonies", before: "Before", after: "After" },
  counts: group,
  noAfter: "No colony of the plan was counted both before and after. Take a recheck sample in question 3.",
  methods: {
    apparent: "Fall from before to after, no comparator",
    "henderson-tilton": "Against the untreated, before and after (Henderson and Tilton)",
    abbott: "Against the untreated, afterwards alone (Abbott)",
  },
  methodColumns: { method: "Method", value: "In 100", range: "Range", rule: "Rule" },
  share: (slots: { readonly share: number }) => signed(slots.share),
  range: (slots: { readonly low: number; readonly high: number }) => `${signed(slots.low)} to ${signed(slots.high)}`,
  expected: (slots: {
    readonly expected: number;
    readonly after: number;
    readonly before: number;
    readonly not: number;
  }) => {
    const [before, after, expected] = [slots.before, slots.after, slots.expected].map((share) =>
      Math.round(100 * share),
    );
    const fall = (before ?? 0) - (after ?? 0);
    return `Without treatment we would have expected about ${expected} in 100 by now; the treated have ${after}. So ${Math.round(100 * slots.not)} of the fall of ${fall} is not the treatment’s.`;
  },
  refusal: "No efficacy is given without an untreated colony counted before and after.",
  trace: "Ranges: 95 in 100 for the bees read; other colonies vary more.",
  reckonFurther: "Reckon further with these counts",

  outcomeHead: "What became of the colonies",
  colony: "Colony",
  survived: "Alive?",
  alive: "alive",
  lost: "lost",
  note: "Note",
  outcomeColumns: { colony: "Colony", on: "On", state: "Outcome" },
  noOutcome: "Nothing written down yet. Lost colonies count too.",

  closeHead: "Close the case",
  closeUnder: "A cause is confirmed by a test or an inspection, not by a rank.",
  outcome: "It ends",
  outcomes: { answered: "answered", "without-answer": "without an answer" },
  cause: (slots: { readonly number: number }) => (slots.number === 1 ? "Confirmed cause" : "Further confirmed cause"),
  noCause: "none confirmed",
  by: "Confirmed by",
  byHint: "Such as: dissection, laboratory, inspection of the dead hive. Needed with a cause.",
  learntLabel: "What was learnt",
  close: "Close the case",
  closeAgain: "Close it anew",
};
