/** Gwet's AC1: agreement beyond chance that does not collapse when nearly all bees fall in one class. */
import { studentT } from "../../numerics/index.ts";
import { answered, blocked, type Estimate, ensure, type Result } from "../../units/index.ts";
import { type AgreementTable, marginsOf, rooted, tableProblem, total, withoutError } from "./agreement.ts";

export interface Ac1Estimate extends Estimate {
  /** Share of agreement seen. */
  readonly observed: number;
  /** Share expected by chance: Σ π(1 − π)/(q − 1) over the mean margins. */
  readonly expected: number;
  /** Standard error with n − 1, as the limits use it. */
  readonly standardError: number;
  /** The same with n, as some programs print. */
  readonly standardErrorByN: number;
  /** The upper limit before it is held to 1. */
  readonly highRaw: number;
}

/**
 * Gwet's AC1 for two readers, with Student's t limits from the standard error with n − 1.
 *
 * Programs differ: standard error with n or n − 1, limits by t or by the normal. Ours is n − 1 and t, labelled so.
 * With one class only it is 1.
 *
 * @returns Ac1Estimate with the warning `agreement-without-error`; or `nothing-examined`, `table-not-square`
 * @throws DomainError for counts that are not whole numbers ≥ 0, fewer than 2 bees or a level outside (0, 1)
 * @source Gwet 2008, British Journal of Mathematical and Statistical Psychology 61:29
 *
 * @example
 * agreementAc1({ table: [[13, 0, 0], [0, 20, 7], [0, 4, 56]] }).value.value  // → 0.84933054823
 * agreementAc1({ table: [[50, 0], [0, 0]] }).value.value  // → 1
 */
export function agreementAc1(reading: {
  readonly table: AgreementTable;
  readonly level?: number;
}): Result<Ac1Estimate> {
  const { table, level = 0.95 } = reading;
  ensure(level > 0 && level < 1, "level", level, "in (0, 1)");
  const trouble = tableProblem(table);
  if (trouble) return blocked(trouble);
  const n = total(table);
  ensure(n >= 2, "table", n, "at least 2 bees");
  const classes = table.length;
  const share = table.map((row) => row.map((count) => count / n));
  const [rows, columns] = marginsOf(share);
  const mean = rows.map((row, i) => (row + (columns[i] as number)) / 2);
  const observed = share.reduce((sum, row, i) => sum + (row[i] as number), 0);
  const expected = mean.reduce((sum, each) => sum + each * (1 - each), 0) / (classes - 1);
  const value = (observed - expected) / (1 - expected);
  let spread = 0;
  for (const [i, row] of share.entries()) {
    for (const [j, each] of row.entries()) {
      const apart = (1 - ((mean[i] as number) + (mean[j] as number)) / 2) / (classes - 1);
      spread += each * (Number(i === j) - 2 * (1 - value) * apart) ** 2;
    }
  }
  const byN = (spread - (observed - 2 * (1 - value) * expected) ** 2) / (n * (1 - expected) ** 2);
  const standardError = rooted((byN * n) / (n - 1));
  const width = studentT({ df: n - 1 }).upperQuantile((1 - level) / 2) * standardError;
  const estimate: Ac1Estimate = {
    value,
    low: value - width,
    high: Math.min(1, value + width),
    highRaw: value + width,
    level,
    interval: "confidence",
    method: "gwet-ac1-t-n-minus-1",
    rule: "BE203",
    n,
    observed,
    expected,
    standardError,
    standardErrorByN: rooted(byN),
  };
  return answered(estimate, withoutError(standardError, { value, n }));
}
