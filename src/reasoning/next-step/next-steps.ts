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
import { marginalsOf, resultsOf, type Worth, worthOf } from "./value.ts";
import { verifies } from "./verifies.ts";
import { heaviestSets, type Visit, visitFrom, weighedAt } from "./visit.ts";

/**
 * Why a step stands where it does: it checks a reported sign by its own definition; the verdict waits for it, since
 * nothing else can lift a bar; or it is worth its effort. They come in this order.
 */
export type StepReason = "checks-what-was-reported" | "the-verdict-waits-for-it" | "worth-the-effort";
const reasonsInOrder: readonly StepReason[] = [
  "checks-what-was-reported",
  "the-verdict-waits-for-it",
  "worth-the-effort",
];

/** A look or test in the list. */
export interface NextStep<F extends string = FindingId> {
  /** Id of the finding or test. */
  readonly step: F | TestId;
  readonly kind: "look" | "test";
  /** Expected information on which conditions are present, in bits. */
  readonly bits: number;
  /** Expected loss it spares, in shares of one colony's value, by the default loss table. */
  readonly decisionGain: number;
  /** Working minutes; judgement. */
  readonly minutes: number;
  /** Cost class, 1 (in the field, nearly free) to 4 (a specialised laboratory). */
  readonly cost: 1 | 2 | 3 | 4;
  /** Days until the result is in; 0 for a look. Told, and not weighed: no price of a day is known. */
  readonly days: { readonly low: number; readonly high: number };
  /** Why it stands where it does. */
  readonly because: StepReason;
}

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

/** Minutes that come on top of any look or test: going there, opening, writing down. Judgement. */
const minutesBeside = 10;
/** Minutes of work that a cost class is weighed like. Judgement, no price is known here. */
const minutesOfCost = { 1: 0, 2: 60, 3: 180, 4: 480 } as const;

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
    next: steps.sort(byWorth),
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

const perEffort = ({ bits, minutes, cost }: NextStep): number => bits / (minutes + minutesBeside + minutesOfCost[cost]);

function byWorth(a: NextStep, b: NextStep): number {
  const first = reasonsInOrder.indexOf(a.because) - reasonsInOrder.indexOf(b.because);
  return first || perEffort(b) - perEffort(a) || (a.step < b.step ? -1 : 1);
}
