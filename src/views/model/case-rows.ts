/**
 * The list of cases: what waits on whom, overdue first, in groups of days.
 *
 * @module views/model
 */
import { type Casebook, type CaseRow, type CaseState, caseList, type Question, settled } from "../../casebook/index.ts";
import { type Day, daysBetween } from "../../units/index.ts";
import type { Words } from "../words/index.ts";
import { ownStops, type StopAct, stopActs } from "./done/stop-acts.ts";
import { reportsTold } from "./forms/reports-told.ts";
import { flagsNotAsked, flagsToAsk } from "./red-flag-answers.ts";
import { overdueSteps } from "./worked/step-state.ts";

export interface CaseRowView {
  readonly id: string;
  readonly code: string;
  readonly place: string;
  readonly colonies: number;
  readonly question: Question;
  readonly asks: string;
  readonly state: string;
  readonly waitsOn: string;
  readonly due: Day | null;
  /** The day in words, without a year when it is this one. */
  readonly dueSays: string;
  /** "13 days", "today" or nothing. */
  readonly late: string | null;
  readonly isOverdue: boolean;
}

export type CaseGroupKey = "overdue" | "this-week" | "later" | "no-day" | "closed";

export interface CasesView {
  readonly answer: string;
  /** Cases in which a red flag says: stop and report. */
  readonly stops: readonly {
    readonly id: string;
    readonly place: string;
    readonly code: string;
    readonly act: string;
  }[];
  readonly groups: readonly {
    readonly key: CaseGroupKey;
    readonly title: string;
    readonly rows: readonly CaseRowView[];
  }[];
  /** Whom open cases wait on, and how many. */
  readonly waiting: readonly { readonly who: string; readonly count: number }[];
  readonly open: number;
  readonly closed: { readonly answered: number; readonly withoutAnswer: number };
  readonly isEmpty: boolean;
}

/** Days of "this week": today and the six that follow. */
const week = 7;

/** The list as of `today`; `who` keeps only the cases that wait on that person, null keeps all. */
export function casesView(input: {
  readonly casebook: Casebook;
  readonly today: Day;
  readonly who: string | null;
  readonly words: Words;
}): CasesView {
  const { casebook, today, who, words } = input;
  const all = rowsOf(casebook, today);
  const open = all.filter((row) => !row.isClosed);
  const chosen = all.filter((row) => who === null || (row.waitsOn ?? words.cases.nobody) === who);
  const views = chosen.map((row) => ({
    key: groupOf(row, today),
    row: rowView(row, casebook.cases[row.id], { today, words }),
  }));
  const rowsIn = (key: CaseGroupKey) => views.filter((view) => view.key === key).map((view) => view.row);
  const keys: readonly CaseGroupKey[] = ["overdue", "this-week", "later", "no-day", "closed"];
  const count = (key: CaseGroupKey) => rowsIn(key).length;
  const closedStates = Object.values(casebook.cases).flatMap((state) => settled(state.closed)?.outcome ?? []);
  const stops = stopsOf(casebook, open, words);
  return {
    answer:
      who === null
        ? words.cases.answer({
            stops: new Set(stops.map(({ id }) => casebook.cases[id]?.apiary ?? id)).size,
            ...{ overdue: count("overdue"), thisWeek: count("this-week"), open: open.length },
          })
        : words.cases.answerFor({ who, open: chosen.filter((row) => !row.isClosed).length }),
    stops,
    groups: keys
      .map((key) => ({ key, title: words.cases.groups[key], rows: rowsIn(key) }))
      .filter((group) => group.rows.length > 0),
    waiting: waitingOn(open, words),
    open: open.length,
    closed: {
      answered: closedStates.filter((outcome) => outcome === "answered").length,
      withoutAnswer: closedStates.filter((outcome) => outcome === "without-answer").length,
    },
    isEmpty: all.length === 0,
  };
}

/** Each case is listed with its own red flags: "not looked" is an answer, so it is no longer asked for. */
function rowsOf(casebook: Casebook, today: Day): readonly Row[] {
  return Object.values(casebook.cases)
    .flatMap((state) => caseList({ ...casebook, cases: { [state.id]: state } }, today, { redFlags: flagsToAsk(state) }))
    .map((row) => withLateSteps(casebook, row, today))
    .sort((one, other) => (one.due ?? "9999").localeCompare(other.due ?? "9999") || one.code.localeCompare(other.code));
}

/** A row, and how many steps of its plans are past their day. */
interface Row extends CaseRow {
  readonly lateSteps: number;
}

/** A case is as late as the oldest step of its plans that nobody marked. */
function withLateSteps(casebook: Casebook, row: CaseRow, today: Day): Row {
  const state = casebook.cases[row.id];
  if (row.isClosed || !state) return { ...row, lateSteps: 0 };
  const late = overdueSteps(casebook, state, today);
  const [first] = late;
  if (first === undefined || (row.due !== null && row.due <= first)) return { ...row, lateSteps: late.length };
  return { ...row, due: first, overdueDays: daysBetween(first, today), lateSteps: late.length };
}

function groupOf(row: CaseRow, today: Day): CaseGroupKey {
  if (row.isClosed) return "closed";
  if (row.due === null) return "no-day";
  const days = daysBetween(today, row.due);
  return days < 0 ? "overdue" : days < week ? "this-week" : "later";
}

function rowView(row: Row, state: CaseState | undefined, { today, words }: { today: Day; words: Words }): CaseRowView {
  const say = words.cases;
  const isOverdue = row.overdueDays > 0;
  const stateSays = say.states[stateKey(row, state)];
  return {
    id: row.id,
    code: row.code,
    place: row.place ?? say.noPlace,
    colonies: row.colonies,
    question: row.question,
    asks: words.case.questions[row.question],
    state:
      row.conflicts > 0
        ? say.conflicts({ count: row.conflicts })
        : row.lateSteps > 0
          ? say.stepsLate({ count: row.lateSteps })
          : stateSays,
    waitsOn: row.waitsOn ?? say.nobody,
    due: row.due,
    dueSays:
      row.due === null
        ? say.noDay
        : (row.due.slice(0, 4) === today.slice(0, 4) ? say.due : say.dueLong)({ day: row.due }),
    late: isOverdue ? say.daysLate({ days: row.overdueDays }) : row.due === today && !row.isClosed ? say.today : null,
    isOverdue,
  };
}

/** What the case waits for; while question 1 is open, whether it is the red flags or the findings. */
function stateKey(row: CaseRow, state: CaseState | undefined): keyof Words["cases"]["states"] {
  if (row.waitsFor !== "what-was-seen" || !state) return row.waitsFor;
  if (flagsNotAsked(state) > 0) return "red-flags";
  return flagsToAsk(state).length === 0 ? "no-flag-looked" : row.waitsFor;
}

/**
 * The stops of open cases, each with its first act; where an apiary stops by a closed case alone, once, at its first
 * open one.
 */
function stopsOf(casebook: Casebook, open: readonly CaseRow[], words: Words): CasesView["stops"] {
  const atApiaries = new Set<string>();
  return open.flatMap((row) => {
    const state = casebook.cases[row.id];
    if (!state) return [];
    const [own] = ownStops(casebook, state);
    const isTold = state.apiary !== null && atApiaries.has(state.apiary);
    const [notice = null] = own ? [own] : isTold ? [] : stopActs(casebook, state).filter(isOfClosed(casebook));
    if (!notice) return [];
    if (!own && state.apiary !== null) atApiaries.add(state.apiary);
    const { reports, missing } = reportsTold(casebook, casebook.cases[notice.caseId] ?? state, words);
    const act = [notice.act, ...reports, missing ?? ""].join(" ").trim();
    return [{ id: row.id, place: row.place ?? words.cases.noPlace, code: row.code, act }];
  });
}

const isOfClosed =
  ({ cases }: Casebook) =>
  ({ caseId }: StopAct): boolean =>
    settled(cases[caseId]?.closed) !== null;

function waitingOn(open: readonly CaseRow[], words: Words): CasesView["waiting"] {
  const counts = new Map<string, number>();
  for (const row of open) {
    const who = row.waitsOn ?? words.cases.nobody;
    counts.set(who, (counts.get(who) ?? 0) + 1);
  }
  return [...counts].map(([who, count]) => ({ who, count })).sort((one, other) => one.who.localeCompare(other.who));
}
