/**
 * Choices as they are put together on the page: named by what they do, moved by days, turned into the reasoning's.
 *
 * @module views/model
 */
import type { dynamics } from "../../../reasoning/index.ts";
import { addDays, type Day, daysBetween, isDay } from "../../../units/index.ts";
import { seasonWords } from "../../words/index.ts";
import { type ColonySeason, modelledControls, usualNewStock } from "./colony-season.ts";

export type SeasonActionKind = dynamics.Action["kind"];
export const seasonActionKinds = [
  "menthol",
  "formic",
  "oil-patty",
  "requeen",
] as const satisfies readonly SeasonActionKind[];

/** Most choices and most actions of one: what fits beside each other. */
export const mostChoices = 4;
export const mostActions = 4;
/** Days a patty lies in the colony at first: eleven weeks, as the example of the method; judgement. */
const pattyDays = 75;

/** Days between two choices of one kind, so that they are not the same. */
const apart = 14;

/** A new action of a kind, a week after the choice, or two weeks after the last of its kind in another choice. */
export function newAction(
  kind: SeasonActionKind,
  decideOn: Day,
  others: readonly (readonly dynamics.Action[])[] = [],
): dynamics.Action {
  const last = others
    .flat()
    .filter((each) => each.kind === kind)
    .reduce<Day | null>((latest, each) => (latest !== null && latest > each.from ? latest : each.from), null);
  const from = last === null ? addDays(decideOn, 7) : addDays(last, apart);
  if (kind === "oil-patty") return { kind, from, to: addDays(from, pattyDays) };
  if (kind === "requeen") return { kind, from, susceptibility: usualNewStock };
  return { kind, from };
}

/** The action begun on another day; what has a last day keeps its length. */
export const movedTo = (action: dynamics.Action, from: Day): dynamics.Action =>
  action.kind === "oil-patty"
    ? { ...action, from, to: addDays(from, Math.max(0, daysBetween(action.from, action.to))) }
    : { ...action, from };

/** What a choice is called: what it does and when. */
export const choiceName = (actions: readonly dynamics.Action[]): string =>
  seasonWords.choiceName({ actions: actions.map((action) => seasonWords.actionWhen(action)) });

/** The choices as they are asked. */
export const choicesAsked = (choices: readonly (readonly dynamics.Action[])[]): readonly dynamics.Choice[] =>
  choices.map((actions) => ({ name: choiceName(actions), actions }));

/** Choices as they are kept while one is away from the page. */
export const choicesText = (choices: readonly (readonly dynamics.Action[])[]): string => JSON.stringify(choices);

/** Choices that were kept; null when nothing was, or nothing that can be read. */
export function keptChoices(text: string | undefined): readonly (readonly dynamics.Action[])[] | null {
  if (text === undefined) return null;
  try {
    const kept: unknown = JSON.parse(text);
    return Array.isArray(kept) && kept.every((each) => Array.isArray(each) && each.length > 0 && each.every(isAction))
      ? kept
      : null;
  } catch {
    return null;
  }
}

function isAction(value: unknown): value is dynamics.Action {
  if (typeof value !== "object" || value === null) return false;
  const { kind, from, to, susceptibility } = value as Readonly<Record<string, unknown>>;
  const isDate = (each: unknown): boolean => typeof each === "string" && isDay(each);
  if (!isDate(from)) return false;
  if (kind === "oil-patty") return isDate(to);
  return kind === "requeen" ? typeof susceptibility === "number" : kind === "menthol" || kind === "formic";
}

/** What a case intends for a colony: its plan, else the control decided on and not yet put in; empty where the model knows none. */
export function intended(
  colony: ColonySeason,
  { control, today }: { readonly control: string | null; readonly today: Day },
): readonly dynamics.Action[] {
  if (colony.planned.length > 0) return colony.planned;
  const kind = control === null ? undefined : modelledControls[control];
  return kind === undefined || colony.done.some((each) => each.kind === kind) ? [] : [newAction(kind, today)];
}

/** The address of a colony's season. */
export const seasonAddress = (caseId: string, colony: string): string =>
  `/season?case=${encodeURIComponent(caseId)}&colony=${encodeURIComponent(colony)}`;
