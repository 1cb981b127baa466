/**
 * Choices as they are put together on the page: named by what they do, moved by days, turned into the reasoning's.
 *
 * @module views/model
 */
import type { Casebook } from "../../../casebook/index.ts";
import { dynamics } from "../../../reasoning/index.ts";
import { addDays, type Day, daysBetween, isDay } from "../../../units/index.ts";
import { seasonWords } from "../../words/index.ts";
import {
  asCount,
  type ColonySeason,
  colonySeason,
  countedSeasons,
  modelledControls,
  usedCounts,
  usualNewStock,
} from "./colony-season.ts";
import { doneFrom, startWith } from "./season-done.ts";
import { usualShare } from "./season-form.ts";

export type SeasonActionKind = dynamics.Action["kind"];
export const seasonActionKinds = [
  "menthol",
  "formic",
  "oil-patty",
  "requeen",
  "brood-break",
  "unite",
] as const satisfies readonly SeasonActionKind[];

/** Most choices and most actions of one: what fits beside each other. */
export const mostChoices = 4;
export const mostActions = 4;
/** Days that patties are renewed in the colony at first: eleven weeks, as the example of the method; judgement. */
const pattiesDays = 75;

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
  if (kind === "oil-patty") return { kind, from, to: addDays(from, pattiesDays) };
  if (kind === "brood-break") return { kind, from, to: addDays(from, dynamics.usualBreakDays - 1) };
  if (kind === "requeen") return { kind, from, susceptibility: usualNewStock };
  if (kind === "unite") return { kind, from, donor: unknownDonor(from) };
  return { kind, from };
}

/** Another colony of which nothing is typed yet; no number stands in. */
export const unknownDonor = (from: Day): dynamics.Donor => ({
  start: { date: addDays(from, -1), bees: Number.NaN, infestedShare: Number.NaN, brood: "usual" },
});

const isCounted = ({ counts = [] }: dynamics.Donor): boolean => counts.length > 0;

/** Nothing that is to be typed is missing. */
export const isWhole = (action: dynamics.Action): boolean =>
  action.kind !== "unite" ||
  (Number.isFinite(action.donor.start.bees) && Number.isFinite(action.donor.start.infestedShare));

/** Choices that can be reckoned, and the place among them of the one that is shown. */
export function wholeChoices(
  choices: readonly (readonly dynamics.Action[])[],
  shown: number | null,
): { readonly asked: readonly (readonly dynamics.Action[])[]; readonly shown: number | null } {
  const asked = choices.filter((actions) => actions.every(isWhole));
  const own = shown === null ? undefined : choices[shown];
  const place = own === undefined ? -1 : asked.indexOf(own);
  return { asked, shown: place < 0 ? null : place };
}

/** Another counted colony of a case, as it can be united: its bees are to be typed. */
export interface DonorOffered {
  readonly id: string;
  readonly code: string;
  readonly donor: dynamics.Donor;
}

/** The other counted colonies of a case, as they were last counted: of a nearer day people know how many bees there were. */
export const donorsOf = (
  casebook: Casebook,
  of: { readonly caseId: string; readonly colony: string; readonly today: Day },
): readonly DonorOffered[] =>
  countedSeasons(casebook, of.caseId)
    .filter(({ id }) => id !== of.colony)
    .flatMap(({ id, code }) => {
      const other = colonySeason(casebook, { ...of, colony: id });
      const counts = (other ? usedCounts(other) : []).map(asCount);
      const last = counts.at(-1)?.date;
      if (last === undefined) return [];
      const putIn = (other?.done ?? []).filter(isPutIn);
      const start = {
        date: startWith(putIn, addDays(last, -1)),
        bees: Number.NaN,
        infestedShare: usualShare / 100,
        brood: "usual",
      } as const;
      const actions = doneFrom(putIn, start.date).actions.filter(isPutIn);
      return [{ id, code, donor: { start, counts: counts.filter(({ date }) => date === last), actions } }];
    });

const isPutIn = (action: dynamics.Action): action is dynamics.PutIn =>
  action.kind !== "unite" && action.kind !== "requeen";

/** Which of the colonies offered a uniting is with; null for another one. */
export const donorChosen = (action: dynamics.Uniting, offered: readonly DonorOffered[]): DonorOffered | null =>
  offered.find(
    ({ donor }) => isCounted(action.donor) && JSON.stringify(donor.counts) === JSON.stringify(action.donor.counts),
  ) ?? null;

/** The action begun on another day; what has a last day keeps its length. */
export function movedTo(action: dynamics.Action, from: Day): dynamics.Action {
  if ("to" in action) return { ...action, from, to: addDays(from, Math.max(0, daysBetween(action.from, action.to))) };
  if (action.kind !== "unite") return { ...action, from };
  // A colony that is not counted is told of as it stands the day before.
  const { donor } = action;
  return {
    ...action,
    from,
    donor: isCounted(donor) ? donor : { ...donor, start: { ...donor.start, date: addDays(from, -1) } },
  };
}

/** What a choice is called: what it does and when. */
const choiceName = (actions: readonly dynamics.Action[]): string =>
  seasonWords.choiceName({ actions: actions.map((action) => seasonWords.actionWhen(action)) });

/** The names of choices beside each other: told more fully, then numbered, where two would read alike. */
export function choiceNames(choices: readonly (readonly dynamics.Action[])[]): readonly string[] {
  const say = seasonWords;
  const short = choices.map((actions) => choiceName(actions));
  const full = short.map((name, place) => {
    if (short.indexOf(name) === short.lastIndexOf(name)) return name;
    return say.choiceName({ actions: (choices[place] ?? []).map((action) => say.actionInFull(action)) });
  });
  return full.map((name, place) => {
    const number = full.slice(0, place + 1).filter((each) => each === name).length;
    return number === 1 ? name : say.choiceNumbered({ name, number });
  });
}

/** The choices as they are asked. */
export function choicesAsked(choices: readonly (readonly dynamics.Action[])[]): readonly dynamics.Choice[] {
  const names = choiceNames(choices);
  return choices.map((actions, place) => ({ name: names[place] ?? "", actions }));
}

/** Choices as they are kept while one is away from the page. */
export const choicesText = (choices: readonly (readonly dynamics.Action[])[]): string => JSON.stringify(choices);

/** Choices that were kept; null when nothing was, or nothing that can be read. */
export function keptChoices(text: string | undefined): readonly (readonly dynamics.Action[])[] | null {
  if (text === undefined) return null;
  try {
    const kept: unknown = JSON.parse(text);
    if (!Array.isArray(kept)) return null;
    const isFit = kept.every((each) => Array.isArray(each) && each.length > 0 && each.every(isAction));
    return isFit ? (kept as readonly (readonly dynamics.Action[])[]).map((each) => each.map(withMissing)) : null;
  } catch {
    return null;
  }
}

/** Numbers that were missing: a text keeps none of them. */
function withMissing(action: dynamics.Action): dynamics.Action {
  if (action.kind !== "unite") return action;
  const { bees, infestedShare, ...start } = action.donor.start;
  const number = (kept: unknown): number => (typeof kept === "number" ? kept : Number.NaN);
  return {
    ...action,
    donor: { ...action.donor, start: { ...start, bees: number(bees), infestedShare: number(infestedShare) } },
  };
}

function isAction(value: unknown): value is dynamics.Action {
  if (typeof value !== "object" || value === null) return false;
  const { kind, from, to, susceptibility, donor } = value as Readonly<Record<string, unknown>>;
  const isDate = (each: unknown): boolean => typeof each === "string" && isDay(each);
  if (!isDate(from)) return false;
  if (kind === "oil-patty" || kind === "brood-break") return isDate(to);
  if (kind === "unite") {
    const start = (donor as { readonly start?: { readonly date?: unknown } } | null | undefined)?.start;
    return isDate(start?.date);
  }
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
