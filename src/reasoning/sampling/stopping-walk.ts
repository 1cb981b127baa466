/** The exact chance of every way a sequential plan can end, by recursion on bees read and bees found infested. */
import { lineSlack, type SequentialPlan } from "./sequential-plan.ts";

/** low, high: a line was crossed; end: `maxBees` were read and neither line was crossed. */
export type StopKind = "low" | "end" | "high";

export interface Stop {
  readonly kind: StopKind;
  readonly bees: number;
  readonly positive: number;
}

export type SeeStop = (kind: StopKind, bees: number, positive: number, chance: number) => void;

/**
 * A function that tells `see` every stop of the plan with its chance at a prevalence, zeros among them:
 * by bees read, at each look the low stops rising, then the high ones falling, then the unstopped ends.
 *
 * P(n, x) = q·P(n − 1, x) + p·P(n − 1, x − 1), and what crosses a line leaves. Only the counts between the lines are
 * carried, so a plan costs about its bees times the distance of its lines. `firstPositive` keeps only the samples
 * whose first bee is infested.
 */
export function stoppingWalk({
  design,
  looks,
}: SequentialPlan): (prevalence: number, see: SeeStop, firstPositive?: boolean) => void {
  const { maxBees } = design;
  const lowAt = new Int32Array(maxBees + 1).fill(-1);
  const highAt = new Int32Array(maxBees + 1).fill(maxBees + 1);
  for (const { bees, low, high } of looks) {
    lowAt[bees] = low ?? -1;
    highAt[bees] = high ?? maxBees + 1;
  }
  return (p, see, firstPositive = false) => {
    const chance = new Float64Array(maxBees + 1);
    chance[0] = 1;
    let from = 0;
    let to = 0;
    for (let n = 1; n <= maxBees && from <= to; n += 1) {
      to += 1;
      for (let x = to; x > 0 && x >= from; x -= 1) {
        chance[x] = (chance[x] as number) * (1 - p) + (chance[x - 1] as number) * p;
      }
      if (from === 0) chance[0] = firstPositive && n === 1 ? 0 : (chance[0] as number) * (1 - p);
      const low = lowAt[n] as number;
      const high = highAt[n] as number;
      for (; from <= to && from <= low; from += 1) {
        see("low", n, from, chance[from] as number);
        chance[from] = 0;
      }
      for (; from <= to && to >= high; to -= 1) {
        see("high", n, to, chance[to] as number);
        chance[to] = 0;
      }
    }
    for (let x = from; x <= to; x += 1) see("end", maxBees, x, chance[x] as number);
  };
}

/** What a plan says of `positive` infested bees at its end. */
export function saidAtEnd({ design, lines }: SequentialPlan, positive: number): "low" | "high" | "undecided" {
  if (design.atEnd === "undecided") return "undecided";
  if (typeof design.atEnd === "object") return positive <= design.atEnd.lowUpTo ? "low" : "high";
  return positive <= lines.slope * design.maxBees + lineSlack ? "low" : "high";
}
