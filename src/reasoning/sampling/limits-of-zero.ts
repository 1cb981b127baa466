/** None found: the rule of three beside the exact limits it stands for. */
import { betaQuantile } from "../../numerics/index.ts";
import { answered, type Result } from "../../units/index.ts";
import { upperLimitOfZero } from "./upper-limit-of-zero.ts";

/** Upper limits for a prevalence of which none was found; proportions. The shortcuts can lie above 1. */
export interface LimitsOfZero {
  readonly exactOneSided: number;
  readonly exactTwoSided: number;
  readonly jeffreysOneSided: number;
  /** −ln(1 − level)/n: the shortcut behind the rule. */
  readonly logShortcut: number;
  /** 3/n, whatever the level: meant for 95 %. */
  readonly ruleOfThree: number;
}

/**
 * The upper limits of a zero, exact and by shortcut, for a large colony and a perfect test.
 *
 * Plan and report with the exact ones. The rule of three is for the head; it is always a little too large at 95 %.
 *
 * @returns LimitsOfZero, or the problem `nothing-examined`
 * @throws DomainError for a count that is not whole or a level outside (0, 1)
 * @source Hanley & Lippman-Hand 1983, JAMA 249:1743–1745 (3/n); Brown, Cai & DasGupta 2001 (Jeffreys)
 *
 * @example
 * limitsOfZero({ examined: 30, level: 0.95 }).value.exactOneSided  // → 0.0950338529
 * limitsOfZero({ examined: 30, level: 0.95 }).value.ruleOfThree  // → 0.1
 */
export function limitsOfZero(zero: { readonly examined: number; readonly level: number }): Result<LimitsOfZero> {
  const { examined, level } = zero;
  const one = upperLimitOfZero({ ...zero, sides: "one", sensitivity: 1 });
  const two = upperLimitOfZero({ ...zero, sides: "two", sensitivity: 1 });
  if (!one.ok) return one;
  if (!two.ok) return two;
  return answered({
    exactOneSided: one.value.high,
    exactTwoSided: two.value.high,
    jeffreysOneSided: betaQuantile({ p: level, a: 0.5, b: examined + 0.5 }),
    logShortcut: -Math.log1p(-level) / examined,
    ruleOfThree: 3 / examined,
  });
}
