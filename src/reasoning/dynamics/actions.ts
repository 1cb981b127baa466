/** What a person plans to do to a colony, with dates, turned into the measures of each day. */
import {
  addDays,
  answered,
  blocked,
  type Day,
  dayNumber,
  daysBetween,
  isDay,
  type Problem,
  type Result,
} from "../../units/index.ts";
import { laterOf } from "../site/index.ts";
import { type BroodBreak, broodBreak } from "./interventions/brood-break.ts";
import { formic, formicDays } from "./interventions/formic.ts";
import { menthol, mentholFigures } from "./interventions/menthol.ts";
import { oilPatty, pattyReduction } from "./interventions/oil-patty.ts";
import { requeen, requeeningGapDays } from "./interventions/requeen.ts";
import { type Uniting, unitingFaults } from "./interventions/uniting.ts";
import { type Warmth, warmthTroubles } from "./interventions/warmth.ts";
import { broodDays } from "./layout.ts";
import { type Measures, noMeasures } from "./measures.ts";
import { dynamicsProblem } from "./problems.ts";

/**
 * One action. Each is the course of a published trial, not a dose to use: label, local codes and the competent
 * authority come first. `from` is its first day, `to` its last.
 */
export type Action =
  | { readonly kind: "menthol"; readonly from: Day }
  | { readonly kind: "formic"; readonly from: Day }
  | { readonly kind: "oil-patty"; readonly from: Day; readonly to: Day; readonly reduction?: number }
  | { readonly kind: "requeen"; readonly from: Day; readonly susceptibility: number }
  | BroodBreak
  | Uniting;

/** Least and most susceptibility of a stock the model was tried with, beside 1. */
export const stockRange = { least: 0.1, most: 3 } as const;

export interface Plan {
  readonly actions: readonly Action[];
  readonly stockSusceptibility: number;
  readonly warmth: Warmth;
}

/**
 * The measures of each day of the run. Blocked where an action has no sound date or two stand in each other's way:
 * the same kind twice at once, or two vapours at once. Warned where the highs of its days speak against one.
 */
export function measuresOf({ actions, stockSusceptibility, warmth }: Plan): Result<Measures> {
  const { from, days, highs, formicLeastCelsius: least } = warmth;
  const { on: highOn } = highs;
  const faults = actions.flatMap((action, index) => faultsOf(action, `actions[${index}]`, from));
  if (faults.length > 0) return blocked(...faults);
  const overlaps = overlapsAmong(actions);
  if (overlaps.length > 0) return blocked(...overlaps);

  const measures = noMeasures(days, stockSusceptibility);
  const notes: Problem[] = [];
  const inOrder = actions
    .map((action, index) => ({ action, index }))
    .sort((a, b) => dayNumber(a.action.from) - dayNumber(b.action.from));
  for (const { action, index } of inOrder) {
    const first = daysBetween(from, action.from);
    const { kind } = action;
    if (first >= days)
      notes.push(
        dynamicsProblem("season-action-after-end", "noted", `actions[${index}].from`, {
          action: kind,
          date: action.from,
        }),
      );
    else if (kind === "menthol") menthol(measures, first, highOn);
    else if (kind === "formic") formic(measures, first, { highOn, least });
    else if (kind === "oil-patty")
      oilPatty(measures, first, daysBetween(from, action.to), action.reduction ?? pattyReduction);
    else if (kind === "brood-break") broodBreak(measures, first, daysBetween(from, action.to));
    else if (kind === "requeen")
      requeen(measures, first, { susceptibility: action.susceptibility, gapDays: requeeningGapDays });
  }
  return answered(measures, [
    ...notes,
    ...actions.flatMap((action, index) => warmthTroubles(action, `actions[${index}]`, warmth)),
  ]);
}

/** Last day on which an action works by itself; a requeening until the first bees of the new queen emerge. */
export function lastDayOf(action: Action): Day {
  if (action.kind === "menthol") return addDays(action.from, mentholFigures.days - 1);
  if (action.kind === "formic") return addDays(action.from, formicDays - 1);
  if (action.kind === "oil-patty" || action.kind === "brood-break") return action.to;
  if (action.kind === "unite") return action.from;
  return addDays(action.from, requeeningGapDays + broodDays - 1);
}

function faultsOf(action: Action, field: string, start: Day): readonly Problem[] {
  const unknown = (part: string, date: unknown) =>
    dynamicsProblem("season-day-unknown", "blocked", `${field}.${part}`, { date: String(date) });
  if (!isDay(action.from)) return [unknown("from", action.from)];
  const problems: Problem[] = [];
  if (action.from < start)
    problems.push(
      dynamicsProblem("season-action-before-start", "blocked", `${field}.from`, {
        action: action.kind,
        date: action.from,
      }),
    );
  if (action.kind === "oil-patty" || action.kind === "brood-break") {
    if (!isDay(action.to)) return [...problems, unknown("to", action.to)];
    if (action.to < action.from)
      problems.push(
        dynamicsProblem("season-action-ends-early", "blocked", `${field}.to`, {
          action: action.kind,
          from: action.from,
          to: action.to,
        }),
      );
  }
  if (action.kind === "oil-patty") {
    const { reduction = pattyReduction } = action;
    if (!(reduction >= 0 && reduction <= 1))
      problems.push(
        dynamicsProblem("season-reduction-out-of-range", "blocked", `${field}.reduction`, { value: reduction }),
      );
  }
  if (action.kind === "unite") problems.push(...unitingFaults(action, field));
  if (action.kind === "requeen") problems.push(...stockFault(action.susceptibility, `${field}.susceptibility`));
  return problems;
}

/** The trouble with a stock's susceptibility, if any. */
export const stockFault = (value: number, field: string): readonly Problem[] =>
  value >= stockRange.least && value <= stockRange.most
    ? []
    : [dynamicsProblem("season-stock-out-of-range", "blocked", field, { value, ...stockRange })];

const isVapour = ({ kind }: Action): boolean => kind === "menthol" || kind === "formic";

function overlapsAmong(actions: readonly Action[]): readonly Problem[] {
  const problems: Problem[] = [];
  actions.forEach((second, index) => {
    for (const first of actions.slice(0, index)) {
      const clash = first.kind === second.kind || (isVapour(first) && isVapour(second));
      const meet = first.from <= lastDayOf(second) && second.from <= lastDayOf(first);
      if (clash && meet)
        problems.push(
          dynamicsProblem("season-actions-overlap", "blocked", `actions[${index}].from`, {
            first: first.kind,
            second: second.kind,
            date: laterOf(first.from, second.from),
          }),
        );
    }
  });
  return problems;
}
