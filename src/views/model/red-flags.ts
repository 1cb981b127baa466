/**
 * What is asked of every caller before anything else, because the answer can mean: stop and report.
 *
 * @module views/model
 */
import { type CaseState, settled } from "../../casebook/index.ts";
import { findings, type MustNotMiss, mustNotMiss, redFlags as redFlagFacts } from "../../knowledge/index.ts";
import { type RedFlagAnswer, redFlagAnswer, redFlagIds } from "./red-flag-answers.ts";

export interface RedFlagView extends RedFlagAnswer {
  /** What answers it with yes, in words; empty where it is about people. */
  readonly suchAs: readonly string[];
  /** Findings on record as present though the flag was not answered with yes, in words. */
  readonly against: readonly string[];
}

/** The red flags of a case with their answers. */
export function redFlags(state: CaseState): readonly RedFlagView[] {
  return redFlagIds.map((id) => ({
    ...redFlagAnswer(state, id),
    suchAs: redFlagFacts[id].findings.map((finding) => findings[finding].term),
    against: redFlagAnswer(state, id).state === "present" ? [] : presentOf(state, id),
  }));
}

/**
 * Findings that each answer the flag with yes and are present in a colony; none where it takes several colonies or
 * signs together, and none of a dead colony where the flag asks about a living one.
 */
function presentOf(state: CaseState, id: RedFlagView["id"]): readonly string[] {
  const { findings: signs, leadsTo } = redFlagFacts[id];
  const notices = leadsTo.map((key): MustNotMiss => mustNotMiss[key]);
  if (notices.some((notice) => notice.findings.length > 1)) return [];
  const asksAlive = notices.some(({ onlyIf }) => onlyIf === "colony-alive");
  const seen = Object.entries(state.findings)
    .filter(([key]) => !(asksAlive && settled(state.colonyStates[key])?.state === "dead"))
    .flatMap(([, own]) => signs.filter((finding) => settled(own[finding]) === "present"));
  return [...new Set(seen)].map((finding) => findings[finding].term);
}

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
