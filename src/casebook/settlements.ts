/** What people decided on entries kept apart. */
import type { BodyOf } from "../journal/index.ts";
import type { Candidate } from "./state.ts";

export type Settlement = BodyOf<"kept-apart-settled">;
export type Decision = Settlement["decision"];

/**
 * What was decided; null when nothing was, or people differ.
 * @example
 * decisionOn([])  // → null
 */
export function decisionOn(settlements: readonly Candidate<Settlement>[]): Decision | null {
  const [first, ...others] = new Set(settlements.map(({ value }) => value.decision));
  return others.length === 0 ? (first ?? null) : null;
}
