/**
 * The red flags of a case as they were answered, and what an answer means; without the findings that answer them.
 *
 * @module views/model
 */
import { type CaseState, isInConflict, settled } from "../../casebook/index.ts";
import type { FindingState } from "../../journal/index.ts";
import { mustNotMiss, type RedFlagKey, redFlags as redFlagFacts } from "../../knowledge/index.ts";

/** Red flags in the order they are asked. */
export const redFlagIds = Object.keys(redFlagFacts) as readonly RedFlagKey[];
export type RedFlagId = RedFlagKey;

export interface RedFlagAnswer {
  readonly id: RedFlagId;
  readonly question: string;
  /** Null until someone answered; `conflict` when two people answered differently. */
  readonly state: FindingState | "conflict" | null;
  /** What to do now, and what not; null unless present. */
  readonly act: string | null;
  readonly doNot: readonly string[];
  /** The law may want to hear of it at once. */
  readonly stopAndReport: boolean;
}

/** A red flag of a case with its answer. */
export function redFlagAnswer(state: CaseState, id: RedFlagId): RedFlagAnswer {
  const fact = redFlagFacts[id];
  const kept = state.redFlags[id];
  const answer = isInConflict(kept) ? "conflict" : (settled(kept)?.state ?? null);
  const isPresent = answer === "present";
  const notices = fact.leadsTo.map((key) => mustNotMiss[key]);
  return {
    id,
    question: fact.question,
    state: answer,
    act: isPresent ? fact.act : null,
    doNot: isPresent ? [...new Set(notices.flatMap((notice) => notice.doNot))] : [],
    stopAndReport: isPresent && notices.some((notice) => notice.report),
  };
}

/** The red flags a case still counts as open until asked: "not looked" is an answer, so those are left out. */
export const flagsToAsk = (state: CaseState): readonly RedFlagId[] =>
  redFlagIds.filter((id) => settled(state.redFlags[id])?.state !== "not-looked");

/** Red flags without an answer of any kind. */
export const flagsNotAsked = (state: CaseState): number => redFlagIds.filter((id) => !state.redFlags[id]).length;
