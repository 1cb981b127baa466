/**
 * What is asked of every caller before anything else, because the answer can mean: stop and report.
 *
 * @module views/model
 */
import type { CaseState } from "../../casebook/index.ts";
import { isInConflict, settled } from "../../casebook/index.ts";
import type { FindingState } from "../../journal/index.ts";
import { type FindingId, findings } from "../../knowledge/index.ts";
import type { Words } from "../words/index.ts";

/** Red flags in the order they are asked. Those named like a finding mean that finding. Choice and order: judgement. */
export const redFlagIds = [
  "ropy_thread",
  "hard_flat_scale",
  "twisted_discoloured_larva",
  "fast_small_mites",
  "beetles_or_spined_larvae",
  "green_hard_mummies",
  "sudden_mass_death",
  "stores_exhausted",
  "person_reacts_to_stings",
] as const;
export type RedFlagId = (typeof redFlagIds)[number];

/** Red flags that mean: tell the competent authority, and move, burn and treat nothing first. */
export const reportedFlags: readonly RedFlagId[] = [
  "ropy_thread",
  "hard_flat_scale",
  "twisted_discoloured_larva",
  "fast_small_mites",
  "beetles_or_spined_larvae",
];

export interface RedFlagView {
  readonly id: RedFlagId;
  readonly question: string;
  readonly lookFor: string;
  /** Null until someone answered; `conflict` when two people answered differently. */
  readonly state: FindingState | "conflict" | null;
  /** What to do now; only when present. */
  readonly act: string | null;
  readonly stopAndReport: boolean;
}

const isFinding = (id: RedFlagId): id is RedFlagId & FindingId => id in findings;

/** The red flags of a case with their answers. */
export function redFlags(state: CaseState, words: Words): readonly RedFlagView[] {
  return redFlagIds.map((id) => {
    const kept = state.redFlags[id];
    const answer = isInConflict(kept) ? "conflict" : (settled(kept)?.state ?? null);
    const asked = isFinding(id)
      ? findings[id]
      : words.seen.flags[id as "sudden_mass_death" | "person_reacts_to_stings"];
    return {
      id,
      question: asked.question,
      lookFor: asked.lookFor,
      state: answer,
      act: answer === "present" ? words.seen.flagActs[id] : null,
      stopAndReport: answer === "present" && reportedFlags.includes(id),
    };
  });
}

/** The red flags a case still counts as open until asked: "not looked" is an answer, so those are left out. */
export const flagsToAsk = (state: CaseState): readonly RedFlagId[] =>
  redFlagIds.filter((id) => settled(state.redFlags[id])?.state !== "not-looked");

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
