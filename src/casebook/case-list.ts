/** The list of cases: what waits on whom, overdue first. */
import { type Day, daysBetween } from "../units/index.ts";
import { coloniesOf, conflictsOf, stateOf } from "./lookups.ts";
import { compareCodes } from "./order.ts";
import { openIn, type Question } from "./questions.ts";
import { type Casebook, type CaseState, type SpecimenState, settled } from "./state.ts";
import { type Asked, type Whole, wholesOf } from "./whole.ts";

/** What a case waits for, as a key for its sentence. */
export type CaseWaitsFor =
  | "what-was-seen"
  | "what-to-ask"
  | "vials-to-label"
  | "vials-to-arrive"
  | "bees-to-read"
  | "decision"
  | "plan"
  | "plan-steps"
  | "outcome"
  | "nothing";

/** One case in the list. */
export interface CaseRow {
  readonly id: string;
  readonly code: string;
  /** Name of the place; null when the apiary has no record here or people disagree. */
  readonly place: string | null;
  /** Colonies the case is about. */
  readonly colonies: number;
  readonly question: Question;
  readonly waitsFor: CaseWaitsFor;
  /** Whom it waits on; null when nobody was named or people disagree. */
  readonly waitsOn: string | null;
  readonly due: Day | null;
  /** Days past the due day; 0 when not due yet, without a day, or closed. */
  readonly overdueDays: number;
  readonly isClosed: boolean;
  /** Slots of the case, its specimens and plans in which two values stand. */
  readonly conflicts: number;
}

/**
 * One row for each case that was opened and not withdrawn: most overdue first, then by due day, closed ones last.
 * `today` is the reader's calendar day.
 */
export function caseList(casebook: Casebook, today: Day, asked: Asked = {}): readonly CaseRow[] {
  return wholesOf(casebook, asked)
    .filter((whole) => whole.state.record !== null)
    .map((whole) => caseRow(casebook, today, whole))
    .sort(compareRows);
}

function caseRow(casebook: Casebook, today: Day, whole: Whole): CaseRow {
  const { state, specimens, plans } = whole;
  const isClosed = settled(state.closed) !== null;
  const question = openIn(whole);
  const { waitsOn, due } = waiting(state);
  return {
    id: state.id,
    code: state.record?.candidates[0].value.code ?? state.id,
    place: settled(stateOf(casebook.apiaries, state.apiary)?.record)?.name ?? null,
    colonies: coloniesOf(casebook, state.id).length,
    question,
    waitsFor: isClosed ? "nothing" : waitsFor(whole, question),
    waitsOn,
    due,
    overdueDays: isClosed || due === null ? 0 : Math.max(0, daysBetween(due, today)),
    isClosed,
    conflicts: [state, ...specimens, ...plans].reduce((sum, root) => sum + conflictsOf(casebook, root.id).length, 0),
  };
}

/** The newest word counts: handed on, else the decision's day to look again, else as the case was opened. */
function waiting(state: CaseState): Pick<CaseRow, "waitsOn" | "due"> {
  if (state.handedOn) {
    const handedOn = settled(state.handedOn);
    return { waitsOn: handedOn?.waitsOn ?? null, due: handedOn?.due ?? null };
  }
  const opened = settled(state.record);
  const decision = settled(state.decision);
  return { waitsOn: opened?.waitsOn ?? null, due: decision?.reviewOn ?? opened?.due ?? null };
}

function waitsFor({ state, specimens, plans }: Whole, question: Question): CaseWaitsFor {
  switch (question) {
    case 1:
      return "what-was-seen";
    case 2:
      return "what-to-ask";
    case 3:
      return "vials-to-label";
    case 4:
      return specimens.some(isOnItsWay) ? "vials-to-arrive" : "bees-to-read";
    case 5:
      return settled(state.decision)?.choice === "act-now" ? "plan" : "decision";
    case 6:
      return plans.some((plan) => settled(plan.record)?.steps.some((step) => stateOf(plan.done, step.step) === null))
        ? "plan-steps"
        : "outcome";
  }
}

const isOnItsWay = (specimen: SpecimenState): boolean =>
  specimen.received === null && Object.keys(specimen.readings).length === 0;

function compareRows(one: CaseRow, other: CaseRow): number {
  if (one.isClosed !== other.isClosed) return one.isClosed ? 1 : -1;
  const [a, b] = [one.due ?? "9999-12-31", other.due ?? "9999-12-31"];
  return a < b ? -1 : a > b ? 1 : compareCodes(one.code, other.code);
}
