/**
 * Names of what the evidence in use holds: published, or a programme's own.
 *
 * @module views/model
 */
import { type Evidence, isTestId, tests } from "../../knowledge/index.ts";

/** The name of a condition; its id where the evidence does not have it any more. */
export const conditionTerm = ({ conditions }: Evidence, id: string): string =>
  Object.hasOwn(conditions, id) ? (conditions[id]?.term ?? id) : id;

/** The name of a finding or a test; its id where the evidence does not have it any more. */
export const stepTerm = ({ findings }: Evidence, id: string): string =>
  Object.hasOwn(findings, id) ? (findings[id]?.term ?? id) : isTestId(id) ? tests[id].term : id;
