/** "If you had also seen …": the looks and tests whose result would put another cause first. */
import type { ConditionId, FindingId, TestId } from "../../knowledge/index.ts";
import type { Belief, Candidate } from "../differential/index.ts";
import type { Marginals, Worth } from "./value.ts";

/** A result not in yet that would put another cause first. */
export interface Change {
  readonly step: FindingId | TestId;
  readonly kind: "look" | "test";
  readonly result: "present" | "absent" | "found" | "none-found";
  /** Chance of this result by what is believed now. */
  readonly chance: number;
  /** The cause that would then come first. */
  readonly condition: ConditionId;
  readonly posterior: number;
  /** The cause that comes first now, and what would be left of it. */
  readonly instead: ConditionId;
  readonly left: number;
}

/** Changes told at most, one for each step. */
const mostChanges = 4;
/** A lead smaller than this is no change of place. Judgement. */
const leastLead = 0.05;

const results = {
  look: ["present", "absent"],
  test: ["found", "none-found"],
} as const;

/**
 * The results that would change the first place, those first that are likeliest to do so by much: chance times lead.
 *
 * Only steps with two results are asked: a count has many, and moves by degrees. Probabilities are those of the listed
 * sets, like the bits.
 */
export function changesOf(
  { conditions }: Belief,
  { probability }: Marginals,
  weighed: readonly { readonly candidate: Candidate; readonly worth: Worth }[],
): readonly Change[] {
  const now = topOf(probability);
  const changes = weighed.flatMap(({ candidate: { id, kind }, worth: { outcomes } }): readonly Change[] => {
    if (outcomes.length !== 2) return [];
    return outcomes.flatMap(({ chance, after }, index): readonly Change[] => {
      const then = topOf(after);
      const [posterior = 0, left = 0] = [after[then], after[now]];
      if (chance === 0 || then === now || posterior - left < leastLead) return [];
      const [condition, instead] = [conditions[then], conditions[now]];
      const result = results[kind][index];
      if (condition === undefined || instead === undefined || result === undefined) return [];
      return [{ step: id, kind, result, chance, condition, posterior, instead, left }];
    });
  });
  const weight = ({ chance, posterior, left }: Change) => chance * (posterior - left);
  const sorted = changes.toSorted((a, b) => weight(b) - weight(a) || (a.step < b.step ? -1 : 1));
  return sorted
    .filter(({ step }, index) => sorted.findIndex((each) => each.step === step) === index)
    .slice(0, mostChanges);
}

const topOf = (probability: Float64Array): number =>
  probability.reduce((top, each, index) => (each > (probability[top] ?? 0) ? index : top), 0);
