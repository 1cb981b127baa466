/** An estimated quantity is never a bare number. */

export interface Estimate {
  /** The point estimate, in the unit of the quantity; proportions are 0–1. */
  readonly value: number;
  readonly low: number;
  readonly high: number;
  /** Probability content of the interval, 0 < level < 1. */
  readonly level: number;
  readonly interval: "confidence" | "credible";
  /** Method id, such as `clopper-pearson`. */
  readonly method: string;
  /** Rule id of the SPEC that fixes the method, such as `BE3`. */
  readonly rule: string;
  /** Units examined; null where the notion does not apply. */
  readonly n: number | null;
}
