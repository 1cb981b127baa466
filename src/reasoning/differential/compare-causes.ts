/** Two causes side by side: what was seen that parts them, and what would part them best. */

import {
  type ConditionId,
  type Evidence,
  type FindingId,
  publishedEvidence,
  type TestId,
  tests,
} from "../../knowledge/index.ts";
import { answered, blocked, ensure, problem, type Result } from "../../units/index.ts";
import { type Candidate, candidatesOf } from "./belief.ts";
import { type SetList, weightsOf } from "./best-first.ts";
import { caseModel, evidenceOf, statedCase, withoutItem } from "./case-model.ts";
import { checkedCase } from "./checked-case.ts";
import type { AnyInput, DifferentialInput } from "./input.ts";
import { smallestReason } from "./judgements.ts";
import { parametersOf } from "./parameters.ts";
import { isPossible } from "./possible-looks.ts";

/** Something seen or tested, and how it moves the odds of one cause against the other. */
export interface SeenBetween<F extends string = FindingId> {
  readonly id: F | TestId;
  readonly kind: "sign" | "circumstance" | "test";
  readonly isPositive: boolean;
  /** log2 of the odds of the first against the second with it, less the same without it. */
  readonly bits: number;
}

/** Something not looked at yet, and how it would part the two. */
export interface WouldPart<F extends string = FindingId> {
  readonly id: F | TestId;
  readonly kind: "look" | "test";
  /** Its result is a count or one of several, and not found or none found. */
  readonly isCount: boolean;
  /** log2 of how much oftener the first brings it than the second; of a count, of its likeliest result under the first. */
  readonly bitsIfFound: number;
  /** The same for its absence; of a count, for its likeliest result under the second. */
  readonly bitsIfNot: number;
  /** Bits that it is expected to tell of which of the two it is, at even odds; 1 parts them for sure. */
  readonly parts: number;
  readonly minutes: number;
}

/** Two causes against each other. */
export interface CauseComparison<C extends string = ConditionId, F extends string = FindingId> {
  readonly first: C;
  readonly second: C;
  /** log2 of the odds of the first alone against the second alone: before anything was seen, and now. */
  readonly before: number;
  readonly now: number;
  /** What moved them, strongest first. */
  readonly seen: readonly SeenBetween<F>[];
  /** What would part them, best first by what it tells a minute. */
  readonly unseen: readonly WouldPart<F>[];
}

/** Minutes beside any look, to write it down. Judgement. */
const minutesBeside = 1;

/**
 * The two causes, each as if it alone were the matter, set against each other by everything seen, and by everything
 * that was not.
 *
 * Exact for these two states by the engine's own likelihood, groups and levels included. That both or neither may be
 * there is not asked: see the ranking.
 *
 * @returns the comparison, or the problems of the input
 * @throws DomainError when both are the same cause
 * @example
 * compareCauses({ season: "spring", findings: { k_wing: "present" } }, "tracheal_mites", "dwv_overt").ok  // → true
 */
export function compareCauses(
  input: DifferentialInput,
  first: ConditionId,
  second: ConditionId,
): Result<CauseComparison>;
/** The same under the evidence that a programme uses, whose own conditions may be set against each other too. */
export function compareCauses(
  input: AnyInput,
  first: string,
  second: string,
  inUse: Evidence,
): Result<CauseComparison<string, string>>;
export function compareCauses(
  input: AnyInput,
  first: string,
  second: string,
  inUse: Evidence = publishedEvidence,
): Result<CauseComparison<string, string>> {
  const { conditionIds } = inUse;
  ensure(first !== second, "second", second, `another cause than ${first}`);
  for (const cause of [first, second])
    ensure(conditionIds.includes(cause), "cause", cause, "a condition of the evidence");
  const read = checkedCase(input, inUse);
  if (!read.ok) return read;
  const problems = [...read.problems];
  const model = caseModel(read.value.checked, problems, inUse);
  const parameters = parametersOf(model.network, statedCase(model));
  const sets = alone(conditionIds.indexOf(first), conditionIds.indexOf(second));
  const oddsOf = (each: typeof model) => {
    const weights = weightsOf(parameters, evidenceOf(each, statedCase(each)), sets);
    return Math.log2((weights[1] ?? 0) / (weights[2] ?? 0));
  };
  const now = oddsOf(model);
  if (!Number.isFinite(now)) return blocked(problem("evidence-contradicts-model", "blocked", "findings"));
  const seen = model.items
    .map(({ id, kind, isPositive }) => ({
      id,
      kind,
      isPositive,
      bits: now - oddsOf(withoutItem(model, { id, kind, isPositive })),
    }))
    .filter(({ bits }) => Math.abs(bits) >= smallestReason)
    .sort((a, b) => Math.abs(b.bits) - Math.abs(a.bits));
  const bare = model.items.reduce(withoutItem, model);
  const evidence = evidenceOf(model, statedCase(model));
  const unseen = candidatesOf(model, { parameters, evidence, sets })
    .filter(({ id }) => isPossible(id as FindingId | TestId, model.read, model.read.present))
    .flatMap((candidate) => wouldPart(candidate, { first, second, inUse }))
    .filter(({ parts }) => parts >= smallestReason)
    .sort((a, b) => b.parts / (b.minutes + minutesBeside) - a.parts / (a.minutes + minutesBeside));
  return answered({ first, second, before: oddsOf(bare), now, seen, unseen }, problems);
}

/** Nothing, the first alone, the second alone. */
const alone = (first: number, second: number): SetList => ({
  count: 3,
  parent: Int32Array.of(-1, 0, 0),
  added: Int32Array.of(-1, first, second),
  weight: new Float64Array(3),
  total: 0,
});

interface TwoCauses {
  readonly first: string;
  readonly second: string;
  readonly inUse: Evidence;
}

function wouldPart(candidate: Candidate, causes: TwoCauses): readonly WouldPart[] {
  const [one, other] = chancesOf(candidate, causes);
  if (one === undefined || other === undefined) return [];
  const parts = one.reduce((sum, p, index) => {
    const q = other[index] ?? 0;
    const mean = (p + q) / 2;
    return sum + (p > 0 ? (p / 2) * Math.log2(p / mean) : 0) + (q > 0 ? (q / 2) * Math.log2(q / mean) : 0);
  }, 0);
  const bitsAt = (index: number) => Math.log2((one[index] ?? 0) / (other[index] ?? 0));
  const isCount = !(candidate.dependsOn === "set" && one.length === 2);
  const [found, not] = isCount ? [likeliest(one), likeliest(other)] : [0, 1];
  const { id, kind } = candidate;
  const minutes = kind === "look" ? (causes.inUse.findings[id]?.minutes ?? 0) : tests[id as TestId].minutes.value;
  const [bitsIfFound, bitsIfNot] = [bitsAt(found), bitsAt(not)];
  if (!Number.isFinite(bitsIfFound) || !Number.isFinite(bitsIfNot)) return [];
  return [{ id, kind, isCount, bitsIfFound, bitsIfNot, parts, minutes }];
}

/** Probability of each result under the first alone, and under the second. */
function chancesOf(candidate: Candidate, { first, second, inUse }: TwoCauses): readonly (readonly number[])[] {
  if (candidate.dependsOn === "set") {
    const results = candidate.results();
    return [1, 2].map((set) => results.map((result) => result[set] ?? 0));
  }
  const { condition, withCondition, without } = candidate;
  return [first, second].map((cause) => [...(inUse.conditionIds[condition] === cause ? withCondition : without)]);
}

const likeliest = (chances: readonly number[]): number =>
  chances.reduce((top, each, index) => (each > (chances[top] ?? 0) ? index : top), 0);
