/** How a programme reasons: its evidence, with what it changed, and its settings. */
import { changedEvidence, type Evidence, type NotedChange, publishedEvidence } from "../knowledge/index.ts";
import { type Problem, problem } from "../units/index.ts";
import { type Casebook, isInConflict, settled } from "./state.ts";

/** What a programme's own closed cases may change, and how much the start is worth beside them. */
export interface ExperienceUse {
  readonly frequencies: boolean;
  readonly healthyRates: boolean;
  readonly priors: boolean;
  /** How many times its own counts the start is worth: 1 as its width says. */
  readonly strength: number;
}

/** Experience that changes nothing: how every programme begins. */
export const experienceUnused: ExperienceUse = { frequencies: false, healthyRates: false, priors: false, strength: 1 };

/** What a programme has set; what is absent stays as the program has it. */
export interface ReasoningSettings {
  readonly thresholds: { readonly leading?: number; readonly open?: number };
  readonly nothingWrong: number | null;
  readonly experience: ExperienceUse;
}

/** How a programme reasons, before its experience is counted. */
export interface ProgrammeEvidence {
  readonly evidence: Evidence;
  readonly settings: ReasoningSettings;
  /** Changes that count for nothing, and why. */
  readonly problems: readonly Problem[];
}

/**
 * The published evidence with the standing changes of the casebook's programme, and its settings. A change that was
 * withdrawn is not there; of two unreplaced changes of one place, or two unreplaced settings, none counts.
 */
export function evidenceOf(casebook: Casebook): ProgrammeEvidence {
  const states = Object.values(casebook.programmes);
  const { evidence, problems } = changedEvidence(publishedEvidence, standingChanges(casebook));
  const isUndecided = states.length > 1 || states.some((state) => isInConflict(state.settings));
  const set = isUndecided ? null : settled(states[0]?.settings);
  const { leading, open } = set?.thresholds ?? {};
  return {
    evidence,
    settings: {
      thresholds: { ...(leading === undefined ? {} : { leading }), ...(open === undefined ? {} : { open }) },
      nothingWrong: set?.nothingWrong ?? null,
      experience: set?.experience ?? experienceUnused,
    },
    problems: isUndecided ? [...problems, problem("settings-in-conflict", "warned", "settings")] : problems,
  };
}

/** The changes of the evidence that were not withdrawn or replaced; two of one place are both here. */
export const standingChanges = (casebook: Casebook): readonly NotedChange[] =>
  Object.values(casebook.programmes).flatMap((state) =>
    Object.values(state.changes).flatMap(({ candidates }) =>
      candidates.map(
        ({ value, entry, author }): NotedChange => ({
          ...{ change: value.change, citation: value.citation, entry, author, on: value.on },
        }),
      ),
    ),
  );
