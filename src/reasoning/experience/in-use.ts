/** How a programme reckons now: its evidence with what its cases taught, and its settings. */
import type { ProgrammeEvidence, ReasoningSettings } from "../../casebook/index.ts";
import type { Evidence } from "../../knowledge/index.ts";
import type { Problem } from "../../units/index.ts";
import type { AnyInput } from "../differential/index.ts";
import { experienceCaveats } from "./caveats.ts";
import type { ClosedCase } from "./closed-case.ts";
import { type Experience, experienceOf } from "./lessons.ts";
import { isUsed, withExperience } from "./with-experience.ts";

/** What a case is put to: evidence and settings. */
export interface Reckoning {
  readonly evidence: Evidence;
  readonly settings: Pick<ReasoningSettings, "thresholds" | "nothingWrong">;
}

/** How a programme reckons, and what that comes from. */
export interface InUse extends Reckoning {
  /** Published facts with the programme's changes, before its experience. */
  readonly start: Evidence;
  readonly settings: ReasoningSettings;
  readonly experience: Experience;
  /** Changes left out, cases refused, and what to bear in mind. */
  readonly problems: readonly Problem[];
}

/**
 * How the programme reckons once these closed cases are counted. They are counted whether or not experience is used,
 * so that the counts can be shown before anyone says yes; the evidence learns only what the settings say.
 */
export function evidenceInUse(
  { evidence: start, settings, problems }: ProgrammeEvidence,
  cases: readonly ClosedCase[],
): InUse {
  const experience = experienceOf(cases, start);
  const { experience: use } = settings;
  const { counts } = experience;
  const evidence = isUsed(use) ? withExperience(start, counts, use) : start;
  const caveats = experienceCaveats({ start, learnt: evidence, counts, use });
  return {
    evidence,
    start,
    settings,
    experience,
    problems: [...problems, ...experience.refused, ...caveats],
  };
}

/** A question with the settings of a programme; what the question says itself stands. */
export function askedUnder(input: AnyInput, { settings: { thresholds, nothingWrong } }: Reckoning): AnyInput {
  return {
    ...(nothingWrong === null ? {} : { nothingWrong }),
    ...input,
    thresholds: { ...thresholds, ...input.thresholds },
  };
}
