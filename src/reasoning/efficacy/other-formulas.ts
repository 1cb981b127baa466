/** Two older forms of efficacy from percentages alone; without counts they carry no limits. */
import { answered, blocked, ensure, type Result } from "../../units/index.ts";
import { efficacyProblem } from "./problems.ts";

/**
 * Schneider-Orelli's form, (mt − mc)/(1 − mc), from the shares dead in the treated and the untreated group.
 *
 * The same value as Abbott's on the survivors.
 *
 * @returns a proportion ≤ 1, or `efficacy-undefined` when all of the untreated died
 * @throws DomainError unless both shares lie in [0, 1]
 * @source Schneider-Orelli 1947; Abbott 1925
 *
 * @example
 * schneiderOrelli({ treatedDead: 0.88, controlDead: 0.2 }).value  // → 0.85
 */
export function schneiderOrelli(shares: {
  readonly treatedDead: number;
  readonly controlDead: number;
}): Result<number> {
  const { treatedDead, controlDead } = shares;
  ensure(treatedDead >= 0 && treatedDead <= 1, "treatedDead", treatedDead, "in [0, 1]");
  ensure(controlDead >= 0 && controlDead <= 1, "controlDead", controlDead, "in [0, 1]");
  if (controlDead === 1) {
    return blocked(efficacyProblem("efficacy-undefined", "blocked", "controlDead", { group: "control" }));
  }
  return answered((treatedDead - controlDead) / (1 - controlDead));
}

/**
 * Sun and Shepard's form, (m + c)/(1 + c): share dead in the treated group, relative change of the untreated.
 *
 * @returns a proportion ≤ 1, or `efficacy-undefined` when the untreated group vanished
 * @throws DomainError unless the share lies in [0, 1] and the change is −1 or more
 * @source Sun & Shepard 1947, Journal of Economic Entomology 40:710
 *
 * @example
 * sunShepard({ treatedDead: 0.9, controlChange: 0.2 }).value  // → 0.9166666667
 */
export function sunShepard(shares: {
  readonly treatedDead: number;
  /** Growth of the untreated group as a share, + when it grew. */
  readonly controlChange: number;
}): Result<number> {
  const { treatedDead, controlChange } = shares;
  ensure(treatedDead >= 0 && treatedDead <= 1, "treatedDead", treatedDead, "in [0, 1]");
  ensure(controlChange >= -1 && controlChange < Infinity, "controlChange", controlChange, "−1 or more");
  if (controlChange === -1) {
    return blocked(efficacyProblem("efficacy-undefined", "blocked", "controlChange", { group: "control" }));
  }
  return answered((treatedDead + controlChange) / (1 + controlChange));
}
