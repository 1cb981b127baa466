/** The six questions of a case: which are answered, which is open, which come later. */
import type { Day } from "../units/index.ts";
import { plansOf, specimensOf, stateOf } from "./lookups.ts";
import {
  type Candidate,
  type Casebook,
  type CaseState,
  type Kept,
  type PlanState,
  type SpecimenState,
  settled,
} from "./state.ts";

/** 1 seen, 2 could be, 3 would tell, 4 found, 5 be done, 6 did it work. */
export type Question = 1 | 2 | 3 | 4 | 5 | 6;

export interface QuestionState {
  readonly question: Question;
  /** open: the first that waits; later: waits behind it. */
  readonly status: "done" | "open" | "later";
  /** Day of the newest entry that bears on it; null when there is none. */
  readonly lastDay: Day | null;
  /** Entries that bear on it. */
  readonly entries: number;
}

/** What the caller knows and the casebook does not. */
export interface Asked {
  /** Ids of the red flags that must be asked. Left out: those that were recorded are all. */
  readonly redFlags?: readonly string[];
}

interface Whole {
  readonly state: CaseState;
  readonly specimens: readonly SpecimenState[];
  readonly plans: readonly PlanState[];
  readonly redFlags: readonly string[];
}

/** The question a case opens at: the first that is not done; 6 when all are. 1 for a case that is not here. */
export const openQuestion = (casebook: Casebook, caseId: string, asked: Asked = {}): Question =>
  questionsOf(casebook, caseId, asked).find((each) => each.status === "open")?.question ??
  (stateOf(casebook.cases, caseId) ? 6 : 1);

/** The state of each of the six questions, in order; none for a case that is not here. */
export function questionsOf(casebook: Casebook, caseId: string, asked: Asked = {}): readonly QuestionState[] {
  const state = stateOf(casebook.cases, caseId);
  if (!state) return [];
  const whole: Whole = {
    state,
    specimens: specimensOf(casebook, caseId),
    plans: plansOf(casebook, caseId),
    redFlags: asked.redFlags ?? Object.keys(state.redFlags),
  };
  const isClosed = settled(state.closed) !== null;
  const done = [wasSeen, wasAsked, isBeingTold, wasFound, isDecided, isClosedNow].map(
    (rule) => isClosed || rule(whole),
  );
  const open = done.indexOf(false);
  return done.map((isDone, index) => ({
    question: (index + 1) as Question,
    status: isDone ? "done" : index === open ? "open" : "later",
    ...bearingOn(whole, index + 1),
  }));
}

/** Every red flag has an answer, at least one was asked, and a finding was looked for. */
function wasSeen({ state, redFlags }: Whole): boolean {
  // "Not looked" is an answer to a red flag: asked, and the hive was not opened. Silence is not.
  const flagsAnswered =
    redFlags.length > 0 && redFlags.every((flag) => settled(stateOf(state.redFlags, flag)) !== null);
  const findings = Object.values(state.findings).flatMap((own) => Object.values(own));
  return (
    flagsAnswered &&
    findings.some((finding) => wasLookedFor(finding.candidates.map(({ value }) => ({ value: { state: value } }))))
  );
}

type Looked = readonly { readonly value: { readonly state: string } }[];

/** Settled, and not merely "not looked". */
const wasLookedFor = (candidates: Looked | undefined): boolean =>
  candidates?.length === 1 && candidates[0]?.value.state !== "not-looked";

/** Something is planned, sampled, tested or decided: what it could be has been weighed. */
const wasAsked = ({ state, specimens }: Whole): boolean =>
  specimens.length > 0 ||
  hasAny(state.samplePlans) ||
  hasAny(state.tests) ||
  state.decision !== null ||
  Object.values(state.steps).some((step) => settled(step)?.state !== "dropped");

/** A look or test was made, vials have labels, or it was decided to do without. */
const isBeingTold = ({ state, specimens }: Whole): boolean =>
  specimens.length > 0 ||
  hasAny(state.tests) ||
  isSettledOtherThanTesting(state) ||
  Object.values(state.steps).some((step) => settled(step)?.state === "done");

/** No vial waits, and there is a result, a look done, or a decision to do without. */
const wasFound = (whole: Whole): boolean => isBeingTold(whole) && whole.specimens.every((specimen) => isRead(specimen));

/** Refused at the bench, or read to the end with no reading still under way. */
function isRead(specimen: SpecimenState): boolean {
  if (settled(specimen.received)?.acceptance === "rejected") return true;
  const readings = Object.values(specimen.readings);
  return readings.length > 0 && readings.every((reading) => settled(reading.finished) !== null);
}

/** Wait, with its day to look again; or act now, with a plan. "Test first" leaves the question open. */
function isDecided({ state, plans }: Whole): boolean {
  const choice = settled(state.decision)?.choice;
  return choice === "wait" || (choice === "act-now" && plans.some((plan) => settled(plan.record) !== null));
}

const isClosedNow = ({ state }: Whole): boolean => settled(state.closed) !== null;

function isSettledOtherThanTesting(state: CaseState): boolean {
  const choice = settled(state.decision)?.choice;
  return choice === "act-now" || choice === "wait";
}

const hasAny = (members: Readonly<Record<string, unknown>>): boolean => Object.keys(members).length > 0;

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
