/** "If you had also seen …": the looks, tests and counts whose result would put another cause first. */
import type { ConditionId, Evidence, FindingId, TestId } from "../../knowledge/index.ts";
import { type AnyInput, type Belief, type Candidate, type MadeTest, statedPosteriors } from "../differential/index.ts";
import type { Marginals, Outcome, Worth } from "./value.ts";

/** A result not in yet that would put another cause first. */
export interface Change<C extends string = ConditionId, F extends string = FindingId> {
  readonly step: F | TestId;
  readonly kind: "look" | "test";
  /** `at-least` and `at-most`: a count of so many, or of more; of so many, or of fewer. */
  readonly result: "present" | "absent" | "found" | "none-found" | "at-least" | "at-most";
  /** The test with this result, or with the least count that changes the first place; null for a look. */
  readonly made: MadeTest | null;
  /** Chance of this result, or of such a count, by what is believed now. */
  readonly chance: number;
  /** The cause that would then come first. */
  readonly condition: C;
  readonly posterior: number;
  /** The cause that comes first now, and what would be left of it. */
  readonly instead: C;
  readonly left: number;
}

/** Changes told at most, one for each step; looks first. */
const mostTold = { look: 3, test: 3 } as const;
/** A lead smaller than this is no change of place. Judgement. */
const leastLead = 0.05;
/** A cause less likely than this is no first place worth waiting for. Judgement. */
const leastShare = 0.15;
/** A result less likely than this is not worth waiting for. Judgement. */
const leastChance = 0.02;

const results = {
  look: ["present", "absent"],
  test: ["found", "none-found"],
} as const;

/** Changes of a kind put to the exact ranking beyond those told; the list of sets may be wrong about one that is near. */
const moreAsked = 1;
/** Counts beside the one that the listed sets name that are put to the exact ranking. */
const mostBeside = 3;

/** A change by the listed sets, with what it takes to ask the exact ranking. */
interface Likely {
  readonly change: Change;
  /** What it asks: the step, or for counts of one agent that agent. */
  readonly about: string;
  /** The cases that the exact ranking is asked of in turn, each with its chance, until one changes the first place. */
  readonly asked: readonly { readonly input: AnyInput; readonly made: MadeTest | null; readonly chance: number }[];
}

/**
 * The results that would change the first place, those first that are likeliest to do so by much: chance times lead.
 *
 * Candidates come from the listed sets; each is then put to the exact ranking with the result in, and told only if another
 * cause comes first there too. Of a count the nearest one is told that does so, and the chance of it or of one beyond.
 */
export function changesOf(
  input: AnyInput,
  belief: { readonly conditions: Belief["conditions"]; readonly marginals: Marginals; readonly evidence: Evidence },
  weighed: readonly { readonly candidate: Candidate; readonly worth: Worth }[],
): readonly Change[] {
  const likely = likelyChanges(input, belief, weighed);
  return (["look", "test"] as const).flatMap((kind) => {
    const told: Change[] = [];
    for (const each of likely.filter(({ change }) => change.kind === kind).slice(0, mostTold[kind] + moreAsked))
      if (told.length < mostTold[kind]) told.push(...exactly(belief.evidence, each));
    return told;
  });
}

/** Changes by the listed sets, one for each step, and one for the counts of one agent. */
function likelyChanges(
  input: AnyInput,
  { conditions, marginals: { probability } }: Parameters<typeof changesOf>[1],
  weighed: Parameters<typeof changesOf>[2],
): readonly Likely[] {
  const now = topOf(probability);
  const changes = weighed.flatMap(({ candidate, worth: { outcomes } }): readonly Likely[] => {
    const { id: step, kind, made } = candidate;
    return resultsThatCount(kind, outcomes, now).flatMap(({ result, at, chance }): readonly Likely[] => {
      const after = (outcomes[at] as Outcome).after;
      const then = topOf(after);
      const [posterior = 0, left = 0] = [after[then], after[now]];
      const [condition, instead] = [conditions[then], conditions[now]] as readonly (ConditionId | undefined)[];
      if (condition === undefined || instead === undefined) return [];
      const change = { step, kind, result, made: made?.(at) ?? null, chance, condition, posterior, instead, left };
      const about = candidate.dependsOn === "condition" ? `${candidate.condition}` : step;
      return [{ change, about, asked: casesAsked(input, candidate, outcomes, { result, at }) }];
    });
  });
  const weight = ({ change: { chance, posterior, left } }: Likely) => chance * (posterior - left);
  const sorted = changes.toSorted((a, b) => weight(b) - weight(a) || (a.change.step < b.change.step ? -1 : 1));
  return sorted.filter(({ about }, index) => sorted.findIndex((each) => each.about === about) === index);
}

interface ResultThatCounts {
  readonly result: Change["result"];
  /** Place among the outcomes: of a count the one nearest to the middle that changes the first place. */
  readonly at: number;
  readonly chance: number;
}

/** The results of a step that would put another cause first, by the listed sets. */
function resultsThatCount(
  kind: Change["kind"],
  outcomes: readonly Outcome[],
  now: number,
): readonly ResultThatCounts[] {
  const first = outcomes.map(({ chance, after }) => (chance > 0 ? leadOver(after, now) : null));
  if (outcomes.length === 2)
    return outcomes.flatMap(({ chance }, at) => {
      const result = results[kind][at];
      const counts = result !== undefined && (first[at] ?? null) !== null && chance >= leastChance;
      return counts ? [{ result, at, chance }] : [];
    });
  const ends = [
    { result: "at-most", from: 0, by: 1 },
    { result: "at-least", from: outcomes.length - 1, by: -1 },
  ] as const;
  return ends.flatMap(({ result, from, by }): readonly ResultThatCounts[] => {
    // From the end inwards as long as one and the same cause comes first.
    let [at, chance] = [from, 0];
    while (outcomes[at] !== undefined && (first[at] ?? null) !== null && first[at] === first[from]) {
      chance += (outcomes[at] as Outcome).chance;
      at += by;
    }
    return at === from || chance < leastChance ? [] : [{ result, at: at - by, chance }];
  });
}

/** Index of the cause that comes first by a lead worth telling; null where the one that does so now stays first. */
function leadOver(after: Float64Array, now: number): number | null {
  const then = topOf(after);
  const share = after[then] ?? 0;
  return then === now || share < leastShare || share - (after[now] ?? 0) < leastLead ? null : then;
}

/** The result itself; of a count those that lie a little nearer first, since the exact ranking can turn a little sooner. */
function casesAsked(
  input: AnyInput,
  { id, made }: Candidate,
  outcomes: readonly Outcome[],
  { result, at }: Pick<ResultThatCounts, "result" | "at">,
): Likely["asked"] {
  if (result === "present" || result === "absent")
    return [
      {
        input: { ...input, findings: { ...input.findings, [id]: result } },
        made: null,
        chance: outcomes[at]?.chance ?? 0,
      },
    ];
  const outwards = result === "at-least" ? 1 : -1;
  const isCount = result === "at-least" || result === "at-most";
  const places = isCount
    ? Array.from({ length: 2 * mostBeside + 1 }, (_, index) => at + outwards * (index - mostBeside))
    : [at];
  return places.flatMap((place) => {
    const test = outcomes[place] === undefined ? undefined : made?.(place);
    if (test === undefined) return [];
    const beyond = result === "at-least" ? outcomes.slice(place) : outcomes.slice(0, place + 1);
    return [
      {
        input: { ...input, tests: [...(input.tests ?? []), test] },
        made: test,
        chance: isCount ? beyond.reduce((sum, { chance }) => sum + chance, 0) : (outcomes[place]?.chance ?? 0),
      },
    ];
  });
}

/** The change with its exact figures; nothing where the ranking, the result in, does not put another cause first. */
function exactly(evidence: Evidence, { change, asked }: Likely): readonly Change[] {
  const conditions = evidence.conditionIds as readonly ConditionId[];
  for (const { input, made, chance } of asked) {
    const after = statedPosteriors(input, evidence);
    const then = after === null ? null : leadOver(after, conditions.indexOf(change.instead));
    const condition = then === null ? undefined : conditions[then];
    if (after === null || then === null || condition === undefined) continue;
    const [posterior = 0, left = 0] = [after[then], after[conditions.indexOf(change.instead)]];
    return [{ ...change, made, chance, condition, posterior, left }];
  }
  return [];
}

const topOf = (probability: Float64Array): number =>
  probability.reduce((top, each, index) => (each > (probability[top] ?? 0) ? index : top), 0);
