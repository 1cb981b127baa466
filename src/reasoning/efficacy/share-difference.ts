/** The difference of two shares with limits: Newcombe's from Wilson's, and two that invert a score test. */
import { root, wilsonInterval } from "../../numerics/index.ts";
import { answered, blocked, type Estimate, ensure, type Result } from "../../units/index.ts";
import { type Share, shareProblem } from "./group.ts";
import { twoSidedQuantile } from "./share-ratio.ts";

export type DifferenceMethod = "newcombe" | "miettinen-nurminen" | "mee";

/**
 * First share less second share.
 *
 * Newcombe's method squares and adds the distances to Wilson's limits and needs no search. Mee's limits hold all
 * differences that a score test does not reject; Miettinen and Nurminen's are the same with the variance times
 * N/(N − 1), a little wider. All stay within −1 and 1.
 *
 * @returns Estimate of a difference of proportions; or `infested-exceed-examined`, `group-not-examined`
 * @throws DomainError for counts that are not whole or a level outside (0, 1)
 * @source Newcombe 1998, Statistics in Medicine 17:873 (method 10); Miettinen & Nurminen 1985; Mee 1984
 *
 * @example
 * shareDifference({ first: { infested: 56, examined: 70 }, second: { infested: 48, examined: 80 } }).value.low  // → 0.05243147240
 * shareDifference({ first: { infested: 56, examined: 70 }, second: { infested: 48, examined: 80 }, method: "mee" }).value.low  // → 0.05333384929
 */
export function shareDifference(pair: {
  readonly first: Share;
  readonly second: Share;
  readonly level?: number;
  /** Newcombe's when not given. */
  readonly method?: DifferenceMethod;
}): Result<Estimate> {
  const { first, second, level = 0.95, method = "newcombe" } = pair;
  ensure(level > 0 && level < 1, "level", level, "in (0, 1)");
  const troubles = [shareProblem("first", first), shareProblem("second", second)].filter((each) => each !== null);
  if (troubles.length > 0) return blocked(...troubles);
  const value = first.infested / first.examined - second.infested / second.examined;
  const limits = method === "newcombe" ? newcombe({ first, second, level }) : byScore({ first, second, level, method });
  const n = first.examined + second.examined;
  return answered({ value, ...limits, level, interval: "confidence", method, rule: "EF202", n });
}

interface Asked {
  readonly first: Share;
  readonly second: Share;
  readonly level: number;
}

function newcombe({ first, second, level }: Asked): { readonly low: number; readonly high: number } {
  const wilson = ({ infested, examined }: Share) => wilsonInterval({ x: infested, n: examined, level });
  const [p1, p2] = [first.infested / first.examined, second.infested / second.examined];
  const [one, two] = [wilson(first), wilson(second)];
  return {
    low: p1 - p2 - Math.hypot(p1 - one.low, two.high - p2),
    high: p1 - p2 + Math.hypot(one.high - p1, p2 - two.low),
  };
}

/** At the observed difference itself the variance can vanish, so the search starts this far beside it. */
const besideObserved = 1e-12;

function byScore({ first, second, level, method }: Asked & { readonly method: DifferenceMethod }) {
  const [n1, n2] = [first.examined, second.examined];
  const observed = first.infested / n1 - second.infested / n2;
  const factor = method === "mee" ? 1 : (n1 + n2) / (n1 + n2 - 1);
  const allowed = twoSidedQuantile(level) ** 2 * factor;
  const excess = (difference: number) => {
    const p2 = likeliestSecond({ first, second, difference });
    const p1 = p2 + difference;
    return (observed - difference) ** 2 - allowed * ((p1 * (1 - p1)) / n1 + (p2 * (1 - p2)) / n2);
  };
  return {
    low: observed <= -1 ? -1 : root({ f: excess, low: -1, high: observed - besideObserved }),
    high: observed >= 1 ? 1 : root({ f: excess, low: observed + besideObserved, high: 1 }),
  };
}

/**
 * The second share that is likeliest when the first lies `difference` above it.
 *
 * The likelihood has one top, so its slope falls from one end of the possible shares to the other: the root of the
 * slope, or the end that it points to. This keeps its digits where the closed form by cosines loses half of them.
 */
function likeliestSecond(given: {
  readonly first: Share;
  readonly second: Share;
  readonly difference: number;
}): number {
  const { first, second, difference } = given;
  const [low, high] = [Math.max(0, -difference), Math.min(1, 1 - difference)];
  const per = (count: number, share: number) => (count === 0 ? 0 : count / Math.max(0, share));
  const slope = (p2: number) =>
    per(first.infested, p2 + difference) -
    per(first.examined - first.infested, 1 - p2 - difference) +
    per(second.infested, p2) -
    per(second.examined - second.infested, 1 - p2);
  if (!(low < high) || slope(low) <= 0) return low;
  return slope(high) >= 0 ? high : root({ f: slope, low, high, tolerance: 0 });
}
