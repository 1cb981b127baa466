/** Whether a result of a test confirms a cause: the one thing that experience may learn from without a person's word. */
import { type ConditionId, isConditionId, isTestId, levels, tellsApart, tests } from "../../knowledge/index.ts";
import type { TestInput } from "./input.ts";
import { weighedTests } from "./weighed-tests.ts";

/** A result that was found confirms a cause when it multiplies the cause's odds by this or more. Judgement. */
export const confirmingRatio = 10;

/**
 * Whether this result by itself confirms the cause.
 *
 * Rule: a count confirms from the clinical level on; a found-or-not test when it found the cause, can tell it from what
 * else it finds, and finds it ten times as often where it is the cause as where it does no harm. An agent that is often
 * there without harm is not confirmed by being found. Tests without figures confirm nothing by themselves.
 *
 * @example
 * confirms({ test: "tracheal-dissection", positive: 17, examined: 50 }, "tracheal_mites")  // → true
 * confirms({ test: "species-pcr", result: "found", which: ["nosema_ceranae"] }, "nosema_ceranae")  // → false
 */
export function confirms(result: TestInput, cause: string): boolean {
  const { test } = result;
  if (!isTestId(test) || !isConditionId(cause) || !tests[test].conditions.includes(cause)) return false;
  const model = weighedTests[test];
  if (model?.model === "tracheal-count")
    return share(result.positive, result.examined) >= levels.tracheal_mites.clinicalFrom / 100;
  if (model?.model === "varroa-count") return share(result.mites, result.bees) >= levels.varroa_pms.clinicalFrom / 100;
  if (model?.model !== "found" || result.result !== "found") return false;
  if (tests[test].conditions.length > 1 && !(tellsApart(test).includes(cause) && isNamed(result, cause))) return false;
  const rate = model.rates[cause] ?? 0;
  const healthy = typeof model.healthy === "number" ? model.healthy : (model.healthy[cause] ?? 1);
  return rate >= confirmingRatio * healthy;
}

const isNamed = ({ which }: TestInput, cause: ConditionId): boolean => which?.includes(cause) === true;

const share = (part = 0, whole = 0): number => (whole > 0 ? part / whole : 0);
