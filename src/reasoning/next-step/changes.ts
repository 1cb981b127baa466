/** "If you had also seen …": the looks and tests whose result would put another cause first. */
import type { ConditionId, Evidence, FindingId, TestId } from "../../knowledge/index.ts";
import { type AnyInput, type Belief, type Candidate, statedPosteriors } from "../differential/index.ts";
import type { Marginals, Worth } from "./value.ts";

/** A result not in yet that would put another cause first. */
export interface Change<C extends string = ConditionId, F extends string = FindingId> {
  readonly step: F | TestId;
  readonly kind: "look" | "test";
  readonly result: "present" | "absent" | "found" | "none-found";
  /** Chance of this result by what is believed now. */
  readonly chance: number;
  /** The cause that would then come first. */
  readonly condition: C;
  readonly posterior: number;
  /** The cause that comes first now, and what would be left of it. */
  readonly instead: C;
  readonly left: number;
}

/** Changes told at most, one for each step. */
const mostChanges = 3;
/** A lead smaller than this is no change of place. Judgement. */
const leastLead = 0.05;

const results = {
  look: ["present", "absent"],
  test: ["found", "none-found"],
} as const;

/** Changes that are put to the exact ranking; the list of sets may be wrong about one that is near. */
const mostAsked = 4;

/**
 * The results that would change the first place, those first that are likeliest to do so by much: chance times lead.
 *
 * Only steps with two results are asked: a count has many, and moves by degrees. Candidates come from the listed sets;
 * each is then put to the exact ranking with the result in, and told only if another cause comes first there too.
 */
export function changesOf(
  input: AnyInput,
  belief: { readonly conditions: Belief["conditions"]; readonly marginals: Marginals; readonly evidence: Evidence },
  weighed: readonly { readonly candidate: Candidate; readonly worth: Worth }[],
): readonly Change[] {
  const told: Change[] = [];
  for (const change of likelyChanges(belief, weighed).slice(0, mostAsked)) {
    if (told.length === mostChanges) break;
    told.push(...exactly(input, belief.evidence, change));
  }
  return told;
}

/** Changes by the listed sets, one for each step. */
function likelyChanges(
  { conditions, marginals: { probability } }: Parameters<typeof changesOf>[1],
  weighed: Parameters<typeof changesOf>[2],
): readonly Change[] {
  const now = topOf(probability);
  const changes = weighed.flatMap(({ candidate: { id, kind }, worth: { outcomes } }): readonly Change[] => {
    if (outcomes.length !== 2) return [];
    return outcomes.flatMap(({ chance, after }, index): readonly Change[] => {
      const then = topOf(after);
      const [posterior = 0, left = 0] = [after[then], after[now]];
      if (chance === 0 || then === now || posterior - left < leastLead) return [];
      const [condition, instead] = [conditions[then], conditions[now]] as readonly (ConditionId | undefined)[];
      const result = results[kind][index];
      if (condition === undefined || instead === undefined || result === undefined) return [];
      return [{ step: id, kind, result, chance, condition, posterior, instead, left }];
    });
  });
  const weight = ({ chance, posterior, left }: Change) => chance * (posterior - left);
  const sorted = changes.toSorted((a, b) => weight(b) - weight(a) || (a.step < b.step ? -1 : 1));
  return sorted.filter(({ step }, index) => sorted.findIndex((each) => each.step === step) === index);
}

/** The change with its exact figures; nothing where the ranking, the result in, does not put another cause first. */
function exactly(input: AnyInput, evidence: Evidence, change: Change): readonly Change[] {
  const conditions = evidence.conditionIds as readonly ConditionId[];
  const after = statedPosteriors(withResult(input, change), evidence);
  if (after === null) return [];
  const then = topOf(after);
  const [condition, posterior = 0, left = 0] = [
    conditions[then],
    after[then],
    after[conditions.indexOf(change.instead)],
  ];
  if (condition === undefined || condition === change.instead || posterior - left < leastLead) return [];
  return [{ ...change, condition, posterior, left }];
}

/** The case with the result in. */
function withResult(input: AnyInput, { step, result }: Change): AnyInput {
  if (result === "present" || result === "absent") return { ...input, findings: { ...input.findings, [step]: result } };
  return { ...input, tests: [...(input.tests ?? []), { test: step, result }] };
}

const topOf = (probability: Float64Array): number =>
  probability.reduce((top, each, index) => (each > (probability[top] ?? 0) ? index : top), 0);
