/**
 * What the casebook's programme changed and learnt, as a question to `differential` brings it along.
 *
 * @module views/model
 */
import { type Casebook, standingChanges } from "../../casebook/index.ts";
import type { experience } from "../../reasoning/index.ts";

/**
 * Members of a question under the evidence in use: `evidence`, and the settings where there are any. Two changes of one
 * place are both in, so that the answer says that neither counts.
 */
export function questionUnder(casebook: Casebook, { settings, experience: learnt }: experience.InUse) {
  const { thresholds, nothingWrong, experience: use } = settings;
  return {
    ...(Object.keys(thresholds).length === 0 ? {} : { thresholds }),
    ...(nothingWrong === null ? {} : { nothingWrong }),
    evidence: { changes: standingChanges(casebook), use, counts: learnt.counts },
  };
}
