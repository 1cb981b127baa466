/** Whether a result of a test confirms a cause: the one thing that experience may learn from without a person's word. */
import { type ConditionId, isConditionId, isTestId, levels, tellsApart, tests } from "../../knowledge/index.ts";
import { beta, gamma } from "../../numerics/index.ts";
import type { Problem } from "../../units/index.ts";
import type { TestInput } from "./input.ts";
import { fewBees } from "./judgements.ts";
import { readTests } from "./read-tests.ts";
import { weighedTests } from "./weighed-tests.ts";

/** A result that was found confirms a cause when it multiplies the cause's odds by this or more. Judgement. */
export const confirmingRatio = 10;
/** A count that could be one of the background band with more than this chance confirms nothing. Judgement. */
const background = 0.05;

/**
 * Whether this result by itself confirms the cause.
 *
 * Rule: a count confirms from the clinical level on, of thirty bees or more and with the background band below its lower
 * limit (Clopper and Pearson's of a share, Garwood's of a count; one-sided, 95 %); a found-or-not test when it found the cause, can tell it from what
 * else it finds, and finds it ten times as often where it is the cause as where it does no harm. An agent that is often
 * there without harm is not confirmed by being found. Tests without figures confirm nothing by themselves,
 * nor do results that the differential leaves out: bees kept so that they cannot answer, counts that cannot be.
 *
 * @example
 * confirms({ test: "tracheal-dissection", positive: 17, examined: 50 }, "tracheal_mites")  // → true
 * confirms({ test: "species-pcr", result: "found", which: ["nosema_ceranae"] }, "nosema_ceranae")  // → false
 */
export function confirms(result: TestInput, cause: string): boolean {
  const { test } = result;
  if (!isTestId(test) || !isConditionId(cause) || !tests[test].conditions.includes(cause)) return false;
  if (!isWeighed(result)) return false;
  const model = weighedTests[test];
  if (model?.model === "tracheal-count") return isClinicalShare(result);
  if (model?.model === "varroa-count") return isClinicalLoad(result);
  if (model?.model !== "found" || result.result !== "found") return false;
  if (tests[test].conditions.length > 1 && !(tellsApart(test).includes(cause) && isNamed(result, cause))) return false;
  const rate = model.rates[cause] ?? 0;
  const healthy = typeof model.healthy === "number" ? model.healthy : (model.healthy[cause] ?? 1);
  return rate >= confirmingRatio * healthy;
}

const isNamed = ({ which }: TestInput, cause: ConditionId): boolean => which?.includes(cause) === true;

function isWeighed(result: TestInput): boolean {
  const problems: Problem[] = [];
  return readTests([result], problems).tests.length === 1 && !problems.some(({ severity }) => severity === "blocked");
}

/** Bees with mites in the tubes. */
function isClinicalShare({ positive = 0, examined = 0 }: TestInput): boolean {
  const { clinicalFrom, backgroundBelow } = levels.tracheal_mites;
  if (examined < fewBees || positive < (clinicalFrom / 100) * examined) return false;
  return beta({ a: positive, b: examined - positive + 1 }).quantile(background) >= backgroundBelow / 100;
}

/** Mites on the bees washed. */
function isClinicalLoad({ mites = 0, bees = 0 }: TestInput): boolean {
  const { clinicalFrom, backgroundBelow } = levels.varroa_pms;
  if (bees < fewBees || mites < (clinicalFrom / 100) * bees) return false;
  return gamma({ shape: mites, rate: 1 }).quantile(background) >= (backgroundBelow / 100) * bees;
}
