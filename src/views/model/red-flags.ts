/**
 * What is asked of every caller before anything else, because the answer can mean: stop and report.
 *
 * @module views/model
 */
import { type CaseState, isInConflict, settled } from "../../casebook/index.ts";
import type { FindingState } from "../../journal/index.ts";
import { findings, mustNotMiss, type RedFlagKey, redFlags as redFlagFacts } from "../../knowledge/index.ts";

/** Red flags in the order they are asked. */
export const redFlagIds = Object.keys(redFlagFacts) as readonly RedFlagKey[];
export type RedFlagId = RedFlagKey;

export interface RedFlagView {
  readonly id: RedFlagId;
  readonly question: string;
  /** What answers it with yes, in words; empty where it is about people. */
  readonly suchAs: readonly string[];
  /** Null until someone answered; `conflict` when two people answered differently. */
  readonly state: FindingState | "conflict" | null;
  /** What to do now, and what not; null unless present. */
  readonly act: string | null;
  readonly doNot: readonly string[];
  /** The law may want to hear of it at once. */
  readonly stopAndReport: boolean;
}

/** The red flags of a case with their answers. */
export function redFlags(state: CaseState): readonly RedFlagView[] {
  return redFlagIds.map((id) => {
    const fact = redFlagFacts[id];
    const kept = state.redFlags[id];
    const answer = isInConflict(kept) ? "conflict" : (settled(kept)?.state ?? null);
    const isPresent = answer === "present";
    const notices = fact.leadsTo.map((key) => mustNotMiss[key]);
    return {
      id,
      question: fact.question,
      suchAs: fact.findings.map((finding) => findings[finding].term),
      state: answer,
      act: isPresent ? fact.act : null,
      doNot: isPresent ? [...new Set(notices.flatMap((notice) => notice.doNot))] : [],
      stopAndReport: isPresent && notices.some((notice) => notice.report),
    };
  });
}

/** The red flags a case still counts as open until asked: "not looked" is an answer, so those are left out. */
export const flagsToAsk = (state: CaseState): readonly RedFlagId[] =>
  redFlagIds.filter((id) => settled(state.redFlags[id])?.state !== "not-looked");

/** Red flags without an answer of any kind. */
export const flagsNotAsked = (state: CaseState): number => redFlagIds.filter((id) => !state.redFlags[id]).length;

export interface RedFlagCount {
  readonly asked: number;
  readonly present: number;
  readonly absent: number;
  readonly notLooked: number;
  readonly all: number;
  /** Every one has an answer, "not looked" included. */
  readonly complete: boolean;
}

/** How many red flags were asked and what came of it. */
export function countRedFlags(flags: readonly RedFlagView[]): RedFlagCount {
  const count = (state: RedFlagView["state"]) => flags.filter((flag) => flag.state === state).length;
  const asked = flags.filter((flag) => flag.state !== null).length;
  return {
    asked,
    present: count("present"),
    absent: count("absent"),
    notLooked: count("not-looked"),
    all: flags.length,
    complete: asked === flags.length,
  };
}
