/**
 * "Only one colony" and "most colonies", worked out from the records.
 *
 * @module views/model
 */
import { type Casebook, type CaseState, settled, wholeApiary } from "../../casebook/index.ts";
import type { FindingState } from "../../journal/index.ts";
import { type FindingId, findingIds, noTrouble } from "../../knowledge/index.ts";
import { daysBetween } from "../../units/index.ts";

type Spread = Readonly<Partial<Record<FindingId, FindingState>>>;

/** Fewest colonies at an apiary for "only one" or "most" to mean anything, by the definition of the findings. */
const fewestColonies = 4;

/** Two colonies show a sign at the same time when it was answered within so many days. Judgement. */
const sameTimeDays = 30;

const signsOfTrouble = findingIds.filter((id) => !noTrouble.includes(id));

/**
 * Which of the two is present for a colony, or for the whole apiary, by the signs that it shows: "most" where half or
 * more of the colonies show one and the same sign at the same time; "only one" where every other colony was looked at
 * for one of them and shows none, since not looked for is not absent.
 */
export function spreadOf(casebook: Casebook, state: CaseState, key: string): Spread {
  const all = Object.keys((state.apiary === null ? undefined : casebook.apiaries[state.apiary])?.colonies ?? {});
  if (all.length < fewestColonies) return {};
  const spreads = (key === wholeApiary ? all : [key]).map((colony) => spreadFrom(state, colony, all));
  return spreads.find(({ most_colonies: most }) => most) ?? aloneOf(spreads);
}

/** Of the whole apiary it is said where one colony alone shows a sign of trouble. */
function aloneOf(spreads: readonly Spread[]): Spread {
  const troubled = spreads.filter((spread) => Object.keys(spread).length > 0);
  return troubled.length === 1 ? (troubled[0] ?? {}) : {};
}

function spreadFrom(state: CaseState, colony: string, all: readonly string[]): Spread {
  const shown = signsOfTrouble.filter((id) => answer(state, colony, id) === "present");
  if (shown.length === 0) return {};
  const share = (id: FindingId) => all.filter((other) => isAtOnce(state, id, [colony, other])).length;
  if (shown.some((id) => share(id) * 2 >= all.length)) return { most_colonies: "present" };
  const isWell = (other: string) => {
    const answers = shown.map((id) => answer(state, other, id));
    return answers.includes("absent") && !answers.includes("present");
  };
  return all.every((other) => other === colony || isWell(other)) ? { single_colony: "present" } : {};
}

const answer = (state: CaseState, colony: string, id: FindingId): FindingState | null =>
  settled(state.findings[colony]?.[id]);

function isAtOnce(state: CaseState, id: FindingId, colonies: readonly [string, string]): boolean {
  if (colonies.some((colony) => answer(state, colony, id) !== "present")) return false;
  const [one = "", other = ""] = colonies.map((colony) => state.findings[colony]?.[id]?.candidates[0]?.at.slice(0, 10));
  return Math.abs(daysBetween(one, other)) <= sameTimeDays;
}

/** Answers to the signs of trouble of a colony, "not looked" left out. */
export const troubleIn = (state: CaseState, colony: string): readonly FindingState[] =>
  signsOfTrouble.flatMap((id) => answer(state, colony, id) ?? []).filter((each) => each !== "not-looked");
