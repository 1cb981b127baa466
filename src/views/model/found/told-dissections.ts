/**
 * Dissections that came from elsewhere, as counts of one colony.
 *
 * @module views/model
 */
import type { CaseState } from "../../../casebook/index.ts";
import type { Day } from "../../../units/index.ts";

/** Bees with mites among those examined, as a laboratory told it; of no specimen that was read here. */
export interface ToldDissection {
  readonly colony: string;
  readonly on: Day;
  readonly positive: number;
  readonly examined: number;
  /** Not said is not no. */
  readonly aliveWhenTaken?: boolean | undefined;
  readonly laboratory?: string | undefined;
}

/** Those of a case; one of the whole apiary, and one that counts no bee, is a result and no count. */
export const toldDissections = (state: CaseState | undefined): readonly ToldDissection[] =>
  Object.values(state?.tests ?? {}).flatMap(({ value }) => {
    const { test, colony, on, positive, examined, aliveWhenTaken, laboratory } = value;
    if (test !== "tracheal-dissection" || colony === null || positive === undefined || !examined) return [];
    return [{ colony, on, positive, examined, aliveWhenTaken, laboratory }];
  });
