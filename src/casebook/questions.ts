/** The six questions of a case: which are answered, which is open, which come later. */
import type { FindingState } from "../journal/index.ts";
import type { Day } from "../units/index.ts";
import { stateOf } from "./lookups.ts";
import { type Candidate, type Casebook, type Kept, type SpecimenState, settled } from "./state.ts";
import { type Asked, type Whole, wholeOf } from "./whole.ts";

/** 1 seen, 2 could be, 3 would tell, 4 found, 5 be done, 6 did it work. */
export type Question = 1 | 2 | 3 | 4 | 5 | 6;

/** How far a question has come. */
export interface QuestionState {
  readonly question: Question;
  /** open: the first that waits; later: waits behind it. */
  readonly status: "done" | "open" | "later";
  /** Day of the newest entry that bears on it; null when there is none. */
  readonly lastDay: Day | null;
  /** Entries that bear on it. */
  readonly entries: number;
}

/** The question a case opens at: the first that is not done; 6 when all are. 1 for a case that is not here. */
export function openQuestion(casebook: Casebook, caseId: string, asked: Asked = {}): Question {
  const state = stateOf(casebook.cases, caseId);
  return state ? openIn(wholeOf(casebook, state, asked)) : 1;
}

/** The state of each of the six questions, in order; none for a case that is not here. */
export function questionsOf(casebook: Casebook, caseId: string, asked: Asked = {}): readonly QuestionState[] {
  const state = stateOf(casebook.cases, caseId);
  if (!state) return [];
  const whole = wholeOf(casebook, state, asked);
  const open = openIn(whole);
  return doneIn(whole).map((isDone, index) => ({
    question: (index + 1) as Question,
    status: isDone ? "done" : index + 1 === open ? "open" : "later",
    ...bearingOn(whole, index + 1),
  }));
}

/** The first question of a case that is not done; 6 when all are. */
export const openIn = (whole: Whole): Question => (doneIn(whole).indexOf(false) + 1 || 6) as Question;

/** Whether each of the six questions is done. A closed case has none left. */
function doneIn(whole: Whole): readonly boolean[] {
  if (settled(whole.state.closed) !== null) return [true, true, true, true, true, true];
  return [wasSeen(whole), wasAsked(whole), isBeingTold(whole), wasFound(whole), isDecided(whole), false];
}

/**
 * Every red flag has an answer, at least one was asked, and a finding was looked for.
 * "Not looked" answers a red flag: it was asked, and the hive was not opened. Silence does not.
 */
function wasSeen({ state, redFlags }: Whole): boolean {
  const isAnswered = redFlags.every((flag) => settled(stateOf(state.redFlags, flag)) !== null);
  const findings = Object.values(state.findings).flatMap((own) => Object.values(own));
  return redFlags.length > 0 && isAnswered && findings.some((finding) => wasLookedFor(settled(finding)));
}

const wasLookedFor = (state: FindingState | null): boolean => state === "present" || state === "absent";

/** Something is planned, sampled, tested or decided: what it could be has been weighed. */
const wasAsked = (whole: Whole): boolean =>
  isBeingTold(whole) ||
  settled(whole.state.decision) !== null ||
  Object.values(whole.state.samplePlans).some((plan) => settled(plan) !== null) ||
  hasStep(whole, "planned");

/** A vial that was not rejected has a label, or there is something without vials. */
const isBeingTold = (whole: Whole): boolean =>
  isToldWithoutVials(whole) ||
  whole.specimens.some((specimen) => settled(specimen.label) !== null && !wasRejected(specimen));

/** A result is there, a planned look is done, or it was decided to act or wait without testing. */
function isToldWithoutVials(whole: Whole): boolean {
  const choice = settled(whole.state.decision)?.choice;
  return (
    Object.keys(whole.state.tests).length > 0 || hasStep(whole, "done") || choice === "act-now" || choice === "wait"
  );
}

/** No vial waits, and there is a reading, or something without vials. */
const wasFound = (whole: Whole): boolean =>
  (isToldWithoutVials(whole) || whole.specimens.some(wasRead)) &&
  whole.specimens.every((specimen) => wasRead(specimen) || wasRejected(specimen));

const wasRejected = (specimen: SpecimenState): boolean => settled(specimen.received)?.acceptance === "rejected";

/** Read to the end, and no reading still under way. */
function wasRead(specimen: SpecimenState): boolean {
  const readings = Object.values(specimen.readings);
  return readings.length > 0 && readings.every((reading) => settled(reading.finished) !== null);
}

const hasStep = ({ state }: Whole, wanted: "planned" | "done"): boolean =>
  Object.values(state.steps).some((step) => settled(step)?.state === wanted);

/** Wait, with its day to look again; or act now, with a plan. "Test first" leaves the question open. */
function isDecided({ state, plans }: Whole): boolean {
  const choice = settled(state.decision)?.choice;
  return choice === "wait" || (choice === "act-now" && plans.some((plan) => settled(plan.record) !== null));
}

/** Days and number of the entries that bear on a question. What it could be rests on what was seen and found. */
function bearingOn(whole: Whole, question: number): Pick<QuestionState, "lastDay" | "entries"> {
  const { state, specimens, plans } = whole;
  const seen = [
    all(state.record),
    ...each(state.redFlags),
    ...Object.values(state.findings).flatMap(each),
    ...each(state.colonyStates),
  ];
  const found = [
    Object.values(state.tests),
    ...specimens.flatMap((specimen) => [
      all(specimen.received),
      ...Object.values(specimen.readings).flatMap((reading) => [
        all(reading.started),
        ...each(reading.bees),
        all(reading.finished),
      ]),
    ]),
  ];
  const byQuestion: Readonly<Record<number, readonly (readonly Stamp[])[]>> = {
    1: seen,
    2: [...seen, ...found],
    3: [...each(state.steps), ...each(state.samplePlans), ...specimens.map((specimen) => all(specimen.label))],
    4: found,
    5: [all(state.decision), ...plans.map((plan) => all(plan.record))],
    6: [...plans.flatMap((plan) => each(plan.done)), ...Object.values(state.outcomes).flatMap(each), all(state.closed)],
  };
  const stamps = (byQuestion[question] ?? []).flat();
  const days = stamps.map((stamp) => stamp.at.slice(0, 10)).sort();
  return { lastDay: days.at(-1) ?? null, entries: stamps.length };
}

type Stamp = Pick<Candidate<unknown>, "at">;
const all = (kept: Kept<unknown> | null): readonly Stamp[] => kept?.candidates ?? [];
const each = (slots: Readonly<Record<string, Kept<unknown>>>): readonly (readonly Stamp[])[] =>
  Object.values(slots).map(all);
