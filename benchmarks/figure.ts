/** What a bench prints. */

/** One figure: what, how much, and the most it may be. */
export interface Figure {
  readonly what: string;
  readonly value: number;
  readonly unit: string;
  readonly goal: number | null;
}
