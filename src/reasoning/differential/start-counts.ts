/** A stated probability as counts: the width that draws give it says how many colonies it is worth. */
import type { Seen, ValueInUse } from "../../knowledge/index.ts";
import { root, trigamma } from "../../numerics/index.ts";
import { ensure } from "../../units/index.ts";
import { spread } from "./judgements.ts";

/** What kind of number it is: grades and healthy rates are drawn with one width, prior odds with another. */
export type JudgedKind = "grade" | "priorOdds";

/**
 * Counts of a beta distribution with this mean, and with log odds as wide as those of the draws.
 *
 * Model: Beta(a, b) with a / (a + b) = `value` and ψ′(a) + ψ′(b) = `sd`²; `present` is a, `looked` a + b, in colonies
 * that need not be whole. So the start has one strength, the one that its range already shows.
 *
 * @throws DomainError unless 0 < value < 1 and 0.01 ≤ sd ≤ 10
 * @source log odds of a beta share: Johnson, Kotz & Balakrishnan 1995, Continuous univariate distributions 2 (from memory)
 * @example
 * startCounts(0.35, 0.5).looked  // → 18.756
 */
export function startCounts(value: number, sd: number): Seen {
  ensure(value > 0 && value < 1, "value", value, "between 0 and 1");
  ensure(sd >= 0.01 && sd <= 10, "sd", sd, "from 0.01 to 10");
  const excess = (logLooked: number) => {
    const looked = Math.exp(logLooked);
    return trigamma(value * looked) + trigamma((1 - value) * looked) - sd * sd;
  };
  // Below, one count is far under 1 and the log odds are wider than 10; above, narrower than 0.01 for any value.
  const [low, high] = [Math.log(1e-3), Math.log(4e4 / Math.min(value, 1 - value))];
  const looked = Math.exp(root({ f: excess, low, high }));
  return { present: value * looked, looked };
}

/**
 * Standard deviation of the log odds of a share with these counts.
 * @throws DomainError unless both counts are above 0
 * @example
 * countsSpread({ present: 1, looked: 2 })  // → 1.8138
 */
export const countsSpread = ({ present, looked }: Seen): number =>
  Math.sqrt(trigamma(present) + trigamma(looked - present));

/** The start of a value as counts: those of its source where a change says so, else those of its width. */
export function startOf(stated: ValueInUse, kind: JudgedKind): Seen {
  const { value, change, published } = stated;
  const start = change?.value ?? published ?? value;
  const outOf = change?.outOf ?? null;
  return outOf === null ? startCounts(start, widthOf(stated, kind)) : { present: start * outOf, looked: outOf };
}

/** The width that a number without counts has by its mark. */
const widthOf = (value: ValueInUse, kind: JudgedKind): number =>
  kind === "grade" && isCited(value) ? spread.citedGrade : spread[kind];

/** Whether a work stands behind the number: the published one, or one that a change names and somebody read. */
function isCited({ source, change }: ValueInUse): boolean {
  if (change === null) return source !== null && source !== "judgement";
  return change.citation.source !== null && (change.citation.read === "seen" || change.citation.read === "computed");
}

/** How wide the draws of a value are where that is not the width of a judged number; else nothing. */
export function spreadOf(value: ValueInUse, kind: JudgedKind): { readonly spread?: number } {
  if (value.spread !== null) return { spread: value.spread };
  if ((value.change?.outOf ?? null) !== null) return { spread: countsSpread(startOf(value, kind)) };
  const width = widthOf(value, kind);
  return width === spread[kind] ? {} : { spread: width };
}
