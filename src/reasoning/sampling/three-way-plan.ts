/** Light, moderate or severe: two sequential plans read side by side. */
import { answered, blocked, ensure, type Result } from "../../units/index.ts";
import { samplingProblem } from "./problems.ts";
import { type SequentialDesign, type SequentialPlan, type SequentialTest, sequentialPlan } from "./sequential-plan.ts";
import { saidAtEnd } from "./stopping-walk.ts";

export interface ThreeWayDesign extends Omit<SequentialDesign, keyof SequentialTest | "atEnd"> {
  /** What is said of a plan still open at the end, each by its own slope; midline when not given. */
  readonly atEnd?: "midline" | "undecided";
  /** Parts light from moderate. */
  readonly lower: SequentialTest;
  /** Parts moderate from severe: both its shares lie above those of `lower`. */
  readonly upper: SequentialTest;
}

export interface ThreeWayPlan {
  readonly lower: SequentialPlan;
  readonly upper: SequentialPlan;
}

export interface ThreeWayCharacteristics {
  readonly prevalence: number;
  readonly light: number;
  readonly moderate: number;
  readonly severe: number;
  /** The lower plan said low and the upper one high. */
  readonly contradictory: number;
  /** At least one plan was still open after the last bee and may stay so. */
  readonly undecided: number;
  readonly averageBees: number;
  /** Chance that the last bee is read and at least one plan has not crossed a line. */
  readonly reachesEnd: number;
}

/**
 * Two plans over the same bees and looks.
 *
 * @returns the pair, or `sequential-bands-disordered` and the problems of `sequentialPlan`
 * @throws DomainError as `sequentialPlan`
 * @source Armitage 1950, Journal of the Royal Statistical Society B 12:137–144, for testing three hypotheses by pairs (from memory)
 *
 * @example
 * threeWayPlan({ lower: { lowPrevalence: 0.05, highPrevalence: 0.15, alpha: 0.1, beta: 0.1 }, upper: { lowPrevalence: 0.25, highPrevalence: 0.4, alpha: 0.1, beta: 0.1 }, maxBees: 100 }).value.upper.lines.firstHigh  // → 5
 */
export function threeWayPlan({ lower, upper, ...reading }: ThreeWayDesign): Result<ThreeWayPlan> {
  const lowerPlan = sequentialPlan({ ...lower, ...reading });
  if (!lowerPlan.ok) return lowerPlan;
  const upperPlan = sequentialPlan({ ...upper, ...reading });
  if (!upperPlan.ok) return upperPlan;
  if (lower.lowPrevalence >= upper.lowPrevalence || lower.highPrevalence >= upper.highPrevalence) {
    const slots = {
      lowerLow: lower.lowPrevalence,
      lowerHigh: lower.highPrevalence,
      upperLow: upper.lowPrevalence,
      upperHigh: upper.highPrevalence,
    };
    return blocked(samplingProblem("sequential-bands-disordered", "blocked", "upper", slots));
  }
  return answered({ lower: lowerPlan.value, upper: upperPlan.value });
}

/** What a plan has said so far. */
const open = 0;
const low = 1;
const high = 2;
const mayStayOpen = 3;

/** The pairs of which at least one plan is open. */
const openPairs = [
  [open, open],
  [open, low],
  [open, high],
  [low, open],
  [high, open],
] as const;

const slotOf = new Map(openPairs.map(([a, b], slot) => [3 * a + b, slot]));

/**
 * Exact chances of the three answers at each prevalence. Each plan keeps what it said at its first crossing; reading
 * stops when both have spoken, and at the last bee an open plan is settled by its midline unless it may stay open.
 *
 * @throws DomainError for a prevalence outside [0, 1]
 * @source exact recursion on bees read, bees infested and what each plan has said
 *
 * @example
 * threeWayCharacteristics(threeWayPlan({ lower: { lowPrevalence: 0.05, highPrevalence: 0.15, alpha: 0.1, beta: 0.1 }, upper: { lowPrevalence: 0.25, highPrevalence: 0.4, alpha: 0.1, beta: 0.1 }, maxBees: 100 }).value, [0.2])[0].moderate  // → 0.96461305770
 */
export function threeWayCharacteristics(
  plan: ThreeWayPlan,
  prevalences: readonly number[],
): readonly ThreeWayCharacteristics[] {
  const sides = [sideOf(plan.lower), sideOf(plan.upper)] as const;
  return prevalences.map((prevalence) => {
    ensure(prevalence >= 0 && prevalence <= 1, "prevalence", prevalence, "in [0, 1]");
    return walkedPair(plan, { prevalence, sides });
  });
}

type Side = (bees: number, positive: number) => number;

/** What the lines of a plan say after `bees` with `positive` infested. */
function sideOf({ design, looks }: SequentialPlan): Side {
  const lowAt = new Int32Array(design.maxBees + 1).fill(-1);
  const highAt = new Int32Array(design.maxBees + 1).fill(design.maxBees + 1);
  for (const look of looks) {
    lowAt[look.bees] = look.low ?? -1;
    highAt[look.bees] = look.high ?? design.maxBees + 1;
  }
  return (n, x) => (x <= (lowAt[n] as number) ? low : x >= (highAt[n] as number) ? high : open);
}

interface PairWalk {
  readonly prevalence: number;
  readonly sides: readonly [Side, Side];
}

/** Chances of one pair by infested bees; nothing but 0 outside `from` to `to`. */
interface Lane {
  readonly chances: Float64Array;
  from: number;
  to: number;
}

function walkedPair({ lower, upper }: ThreeWayPlan, { prevalence: p, sides }: PairWalk): ThreeWayCharacteristics {
  const { maxBees } = lower.design;
  const settled = { low, high, undecided: mayStayOpen };
  const row = { light: 0, moderate: 0, severe: 0, contradictory: 0, undecided: 0, averageBees: 0, reachesEnd: 0 };
  let now = openPairs.map(() => emptyLane(maxBees));
  let next = openPairs.map(() => emptyLane(maxBees));
  add(now[0] as Lane, 0, 1);
  for (let n = 1; n <= maxBees; n += 1) {
    for (const [slot, [a, b]] of openPairs.entries()) {
      const { chances, from, to } = now[slot] as Lane;
      for (let x = from; x <= to + 1; x += 1) {
        const mass = (x <= to ? (chances[x] as number) * (1 - p) : 0) + (x > from ? (chances[x - 1] as number) * p : 0);
        let first: number = a || sides[0](n, x);
        let second: number = b || sides[1](n, x);
        if (n === maxBees && (first === open || second === open)) {
          row.reachesEnd += mass;
          first ||= settled[saidAtEnd(lower, x)];
          second ||= settled[saidAtEnd(upper, x)];
        }
        if (first === open || second === open) {
          add(next[slotOf.get(3 * first + second) as number] as Lane, x, mass);
        } else {
          row[answerOf(first, second)] += mass;
          row.averageBees += n * mass;
        }
      }
    }
    for (const lane of now) empty(lane);
    [now, next] = [next, now];
  }
  return { prevalence: p, ...row };
}

const emptyLane = (maxBees: number): Lane => ({ chances: new Float64Array(maxBees + 1), from: Infinity, to: -1 });

function add(lane: Lane, x: number, mass: number): void {
  lane.chances[x] = (lane.chances[x] as number) + mass;
  if (x < lane.from) lane.from = x;
  if (x > lane.to) lane.to = x;
}

function empty(lane: Lane): void {
  if (lane.to >= 0) lane.chances.fill(0, lane.from, lane.to + 1);
  lane.from = Infinity;
  lane.to = -1;
}

function answerOf(lower: number, upper: number): "light" | "moderate" | "severe" | "contradictory" | "undecided" {
  if (lower === mayStayOpen || upper === mayStayOpen) return "undecided";
  if (lower === low) return upper === low ? "light" : "contradictory";
  return upper === low ? "moderate" : "severe";
}
