/** Which look or test is worth most next: what it would tell and spare, for the minutes and money it takes. */
import {
  type ConditionId,
  type Evidence,
  type FindingId,
  publishedEvidence,
  type TestId,
  tests,
} from "../../knowledge/index.ts";
import { answered, type Result } from "../../units/index.ts";
import {
  type AnyAnswer,
  type AnyInput,
  belief,
  type Candidate,
  type DifferentialAnswer,
  type DifferentialInput,
  differential,
  isPossible,
  type Verdict,
} from "../differential/index.ts";
import { type Change, changesOf } from "./changes.ts";
import { inOrder, type NextStep, type StepReason } from "./order.ts";
import { marginalsOf, resultsOf, type Worth, worthOf } from "./value.ts";
import { verifies } from "./verifies.ts";
import { heaviestSets, type Visit, visitFrom, weighedAt } from "./visit.ts";

/** The list, and how much of the belief it was reckoned from. */
export interface NextSteps<C extends string = ConditionId, F extends string = FindingId> {
  readonly next: readonly NextStep<F>[];
  /** Results not in yet that would put another cause first. */
  readonly changes: readonly Change<C, F>[];
  /** The best looks and field tests for one visit. */
  readonly visit: Visit<F>;
  /** Posterior mass of the sets of conditions that were left out of the reckoning. */
  readonly uncovered: number;
}

/**
 * Every finding not looked for and every weighed test not made, best first.
 *
 * One convention: bits are the mutual information between the result and the set of conditions that is present.
 * Order: first what checks a reported sign by its own definition, then the tests that `verdict` waits for, then bits per
 * minute of effort, where effort is the minutes, ten more for any step, and the minutes its cost class is weighed like.
 *
 * @example
 * nextSteps({ season: "spring", findings: { crawlers: "present" } }).ok  // → true
 */
export function nextSteps(
  input: AnyInput,
  verdict: Verdict<string> | null = null,
  evidence: Evidence = publishedEvidence,
): Result<NextSteps> {
  const believed = belief(input, evidence);
  if (!believed.ok) return believed;
  const marginals = marginalsOf(believed.value);
  const present = Object.entries(input.findings).flatMap(([id, state]) =>
    state === "present" ? [id as FindingId] : [],
  );
  const possible = believed.value.candidates.filter(({ id }) => isPossible(id, believed.value.setting, present));
  const heaviest = heaviestSets(believed.value);
  const weighed = possible.map((candidate) => {
    const results = resultsOf(candidate);
    const worth = worthOf(believed.value, marginals, candidate, results);
    return { candidate, worth, near: weighedAt(heaviest, candidate, { results, evidence }) };
  });
  const steps = weighed.map(({ candidate, worth }) => ({
    ...stepOf(candidate, worth, evidence),
    because: reasonOf(candidate.id, present, verdict),
  }));
  return answered({
    next: inOrder(steps, "tells"),
    changes: changesOf(input, { conditions: believed.value.conditions, marginals, evidence }, weighed),
    visit: visitFrom(
      heaviest,
      weighed.map(({ near }) => near),
      visitMinutes,
      steps.find(({ because }) => because === "checks-what-was-reported")?.step ?? null,
    ),
    uncovered: believed.value.uncovered,
  });
}

/** The whole answer to one colony. */
export interface WholeAnswer extends DifferentialAnswer {
  readonly next: readonly NextStep[];
  readonly changes: readonly Change[];
  readonly visit: Visit;
  /** Posterior mass left out of the reckoning of `next`, `changes` and `visit`. */
  readonly nextUncovered: number;
}

/** The whole answer under evidence that may hold conditions and findings of a programme's own. */
export interface AnyWholeAnswer extends AnyAnswer, Omit<NextSteps<string, string>, "uncovered"> {
  readonly nextUncovered: number;
}

/** The differential with its next steps. */
export function differentialWithNext(input: DifferentialInput): Result<WholeAnswer>;
/** The same under the evidence that a programme uses. */
export function differentialWithNext(input: AnyInput, evidence: Evidence): Result<AnyWholeAnswer>;
export function differentialWithNext(
  input: AnyInput,
  evidence: Evidence = publishedEvidence,
): Result<WholeAnswer | AnyWholeAnswer> {
  const answer = differential(input, evidence);
  if (!answer.ok) return answer;
  const steps = nextSteps(input, answer.value.verdict, evidence);
  if (!steps.ok) return steps;
  const { uncovered, ...told } = steps.value;
  return answered({ ...answer.value, ...told, nextUncovered: uncovered }, answer.problems);
}

/** Minutes of a visit that looks are chosen for. Judgement: one colony among several. */
export const visitMinutes = 20;

function stepOf(
  { id, kind }: Candidate,
  { bits, decisionGain }: Worth,
  { findings }: Evidence,
): Omit<NextStep, "because"> {
  const record = kind === "test" ? tests[id as TestId] : null;
  return {
    step: id,
    kind,
    bits,
    decisionGain,
    minutes: record === null ? (findings[id]?.minutes ?? 0) : record.minutes.value,
    cost: record === null ? 1 : record.costClass.low,
    days: record === null ? { low: 0, high: 0 } : { ...record.days },
  };
}

/** Tests that alone can lift what bars a verdict. */
const lifts: Readonly<Partial<Record<Verdict["because"], readonly TestId[]>>> = {
  "tracheae-not-opened": ["tracheal-dissection"],
  "needs-wash-and-spore-count": ["varroa-wash", "spore-count"],
};

function reasonOf(id: NextStep["step"], present: readonly FindingId[], verdict: Verdict<string> | null): StepReason {
  if ((verifies[id as FindingId] ?? []).some((sign) => present.includes(sign))) return "checks-what-was-reported";
  const waitsFor = verdict === null ? [] : (lifts[verdict.because] ?? []);
  return (waitsFor as readonly string[]).includes(id) ? "the-verdict-waits-for-it" : "worth-the-effort";
}
