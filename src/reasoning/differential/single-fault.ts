/** One cause and no other: the textbook rule of Bayes, as a second opinion beside the network of several causes. */
import { answered, blocked, ensure, problem, type Result } from "../../units/index.ts";

export interface SingleFaultModel {
  /** Prior weight of each cause, ≥ 0; exactly one of them is taken to hold. */
  readonly prior: readonly number[];
  /** P(finding present | cause): one row per cause, one entry per finding. */
  readonly rates: readonly (readonly number[])[];
  /** Findings looked for, by index: true when present. */
  readonly evidence: ReadonlyMap<number, boolean>;
}

/**
 * Posterior of causes that exclude each other, findings independent given the cause.
 *
 * Not for colonies with two troubles at once: there it names the one that fits least badly. See `noisyOr`.
 *
 * @returns one probability per cause, sum 1; or `evidence-contradicts-model`
 * @throws DomainError for a negative prior, a rate outside [0, 1] or a finding without a rate
 * @source Bayes' rule; "idiot's Bayes" of the early diagnostic programs
 *
 * @example
 * singleFault({ prior: [0.5, 0.5], rates: [[0.9], [0.3]], evidence: new Map([[0, true]]) }).value  // → [0.75, 0.25]
 */
export function singleFault({ prior, rates, evidence }: SingleFaultModel): Result<readonly number[]> {
  ensure(rates.length === prior.length, "rates", rates.length, `${prior.length} rows, one per cause`);
  const weights = prior.map((weight, cause) => {
    ensure(weight >= 0 && Number.isFinite(weight), "prior", weight, "0 or more");
    let product = weight;
    for (const [finding, present] of evidence) {
      const rate = rates[cause]?.[finding] ?? Number.NaN;
      ensure(rate >= 0 && rate <= 1, "rates", rate, `in [0, 1] for finding ${finding}`);
      product *= present ? rate : 1 - rate;
    }
    return product;
  });
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  if (!(total > 0)) {
    return blocked(
      problem("evidence-contradicts-model", "blocked", "evidence", { slots: { findings: evidence.size } }),
    );
  }
  return answered(weights.map((weight) => weight / total));
}
