/**
 * "Only one colony" and "most colonies", worked out from the records.
 *
 * @module views/model
 */
import { type Casebook, type CaseState, settled, wholeApiary } from "../../casebook/index.ts";
import type { FindingState } from "../../journal/index.ts";
import { type FindingId, findingIds, noTrouble } from "../../knowledge/index.ts";
import { daysBetween } from "../../units/index.ts";
import { seenAfterDeath } from "./seen-after-death.ts";

type Spread = Readonly<Partial<Record<"single_colony" | "most_colonies", FindingState>>>;

/** Whether a finding is worked out here, and asked of nobody. */
export const isSpread = (id: FindingId): id is keyof Spread => id === "single_colony" || id === "most_colonies";

/** Fewest colonies at an apiary for "only one" or "most" to mean anything, by the definition of the findings. */
const fewestColonies = 4;

/** Two colonies show a sign at the same time when it was answered within so many days. Judgement. */
const sameTimeDays = 30;

const signsOfTrouble = findingIds.filter((id) => !noTrouble.includes(id));

/**
 * Which of the two is present for a colony, or for the whole apiary, by the signs that it shows: "most" where half or
 * more of the colonies show one and the same sign at the same time; "only one" where every other colony lives, was
 * looked at for one of them at that time and shows none, since not looked for is not absent.
 */
export function spreadOf(casebook: Casebook, state: CaseState, key: string): Spread {
  const all = Object.keys((state.apiary === null ? undefined : casebook.apiaries[state.apiary])?.colonies ?? {});
  if (all.length < fewestColonies) return {};
  if (key !== wholeApiary) return spreadFrom(state, key, all);
  const troubled = all.filter((colony) => shownBy(state, colony).length > 0);
  const spreads = troubled.map((colony) => spreadFrom(state, colony, all));
  return spreads.find(({ most_colonies: most }) => most) ?? (troubled.length === 1 ? (spreads[0] ?? {}) : {});
}

function spreadFrom(state: CaseState, colony: string, all: readonly string[]): Spread {
  const shown = shownBy(state, colony);
  if (shown.length === 0) return {};
  const answersAtOnce = (other: string) =>
    shown.flatMap((id) => (isAtOnce(state, id, [colony, other]) ? (answer(state, other, id) ?? []) : []));
  const share = (id: FindingId) =>
    all.filter((other) => answer(state, other, id) === "present" && isAtOnce(state, id, [colony, other])).length;
  if (shown.some((id) => share(id) * 2 >= all.length)) return { most_colonies: "present" };
  const isWell = (other: string) =>
    settled(state.colonyStates[other])?.state !== "dead" &&
    answersAtOnce(other).includes("absent") &&
    shown.every((id) => answer(state, other, id) !== "present");
  return all.every((other) => other === colony || isWell(other)) ? { single_colony: "present" } : {};
}

const shownBy = (state: CaseState, colony: string): readonly FindingId[] =>
  signsOfTrouble.filter((id) => answer(state, colony, id) === "present");

/** As it counts for the colony: what was answered for a day after its death does not. */
const answer = (state: CaseState, colony: string, id: FindingId): FindingState | null =>
  seenAfterDeath(state, colony).findings.includes(id) ? null : settled(state.findings[colony]?.[id]);

function isAtOnce(state: CaseState, id: FindingId, colonies: readonly [string, string]): boolean {
  const [one, other] = colonies.map((colony) => state.findings[colony]?.[id]?.candidates[0]?.at.slice(0, 10));
  return one !== undefined && other !== undefined && Math.abs(daysBetween(one, other)) <= sameTimeDays;
}

/** Answers to the signs of trouble of a colony, "not looked" left out. */
export const troubleIn = (state: CaseState, colony: string): readonly FindingState[] =>
  signsOfTrouble.flatMap((id) => answer(state, colony, id) ?? []).filter((each) => each !== "not-looked");
