/** How far two readers agree beyond chance: kappa with weights, both its standard errors, and what to show beside it. */
import { normalUpperQuantile, wilsonInterval } from "../../numerics/index.ts";
import { answered, blocked, type Estimate, ensure, type Problem, type Result } from "../../units/index.ts";
import { benchProblem } from "./problems.ts";

/** Square: row = class by the first reader, column = class by the second; whole numbers ≥ 0. */
export type AgreementTable = readonly (readonly number[])[];

/** How much a near miss counts: not at all, by distance, or by squared distance. Distance needs classes in order. */
export type KappaWeights = "none" | "linear" | "quadratic";

export interface Agreement {
  /** Share of agreement seen, near misses weighted. */
  readonly observed: number;
  /** Share expected if the readers classed independently, each with their own margins. */
  readonly expected: number;
  /** Cohen's kappa with limits by its large-sample standard error; undefined where only one class was used. */
  readonly kappa: Result<KappaEstimate>;
  /** Prevalence- and bias-adjusted kappa with Wilson's limits of the agreement; for unweighted tables only. */
  readonly pabak: Estimate | null;
  /** For two classes: what can push kappa down although readers agree. */
  readonly indices: AgreementIndices | null;
}

export interface KappaEstimate extends Estimate {
  readonly standardError: number;
  /** Standard error if there were no agreement beyond chance: for the test, never for the limits. */
  readonly nullStandardError: number;
  /** Kappa over its null standard error; undefined where one reader used one class only. */
  readonly z: Result<number>;
}

export interface AgreementIndices {
  /** Share both called the first class, less share both called the second. */
  readonly prevalence: number;
  /** Share only the first reader called the first class, less share only the second did. */
  readonly bias: number;
  /** Agreement on the first class: 2a/(2a + b + c); undefined where nobody used it. */
  readonly onFirst: Result<number>;
  /** Agreement on the second class. */
  readonly onSecond: Result<number>;
}

/**
 * Agreement of two readers on the same bees.
 *
 * Limits use the large-sample standard error. Print often shows limits from the null standard error, which is a
 * different thing (.56–.79 where these give .52–.82). With one class only, kappa is undefined: look at the agreement.
 * Where the readers agree on every bee the error is 0 and the limits close on 1: a warning says so.
 *
 * @returns Agreement, its kappa with the warning `agreement-without-error`; or `nothing-examined`, `table-not-square`
 * @throws DomainError for counts that are not whole numbers ≥ 0 or a level outside (0, 1)
 * @source Cohen 1960, 1968; Fleiss, Cohen & Everitt 1969 (standard errors); Byrt, Bishop & Carlin 1993 (PABAK, indices)
 *
 * @example
 * agreement({ table: [[19, 10], [6, 256]] }).value.kappa.value.value  // → 0.67358384745
 * agreement({ table: [[50, 0], [0, 0]] }).value.kappa.problems[0].code  // → kappa-undefined
 */
export function agreement(reading: {
  readonly table: AgreementTable;
  readonly weights?: KappaWeights;
  readonly level?: number;
}): Result<Agreement> {
  const { table, weights = "none", level = 0.95 } = reading;
  ensure(level > 0 && level < 1, "level", level, "in (0, 1)");
  const trouble = tableProblem(table);
  if (trouble) return blocked(trouble);
  const n = total(table);
  const classes = table.length;
  const share = table.map((row) => row.map((count) => count / n));
  const [rows, columns] = marginsOf(share);
  const weight = weightOf(weights, classes);
  const over = (term: (i: number, j: number) => number) =>
    rows.reduce((sum, _, i) => columns.reduce((inner, _each, j) => inner + term(i, j), sum), 0);
  const p = (i: number, j: number) => share[i]?.[j] as number;
  const byChance = (i: number, j: number) => (rows[i] as number) * (columns[j] as number);
  const observed = over((i, j) => weight(i, j) * p(i, j));
  const expected = over((i, j) => weight(i, j) * byChance(i, j));
  const matched = table.reduce((sum, row, i) => sum + (row[i] as number), 0);
  return answered({
    observed,
    expected,
    kappa: kappaOf(),
    pabak: weights === "none" ? pabakOf({ matched, n, classes, level }) : null,
    indices: classes === 2 ? indicesOf(share) : null,
  });

  function kappaOf(): Result<KappaEstimate> {
    const used = rows.filter((row, i) => row + (columns[i] as number) > 0).length;
    if (used < 2) return blocked(benchProblem("kappa-undefined", "unknown", "table", { readings: n }));
    const value = (observed - expected) / (1 - expected);
    const meanOfRow = rows.map((_, i) => columns.reduce((sum, column, j) => sum + weight(i, j) * column, 0));
    const meanOfColumn = columns.map((_, j) => rows.reduce((sum, row, i) => sum + weight(i, j) * row, 0));
    const means = (i: number, j: number) => (meanOfRow[i] as number) + (meanOfColumn[j] as number);
    const spread = over((i, j) => p(i, j) * (weight(i, j) - means(i, j) * (1 - value)) ** 2);
    const nullSpread = over((i, j) => byChance(i, j) * (weight(i, j) - means(i, j)) ** 2);
    const scale = n * (1 - expected) ** 2;
    const standardError = rooted((spread - (value - expected * (1 - value)) ** 2) / scale);
    const nullStandardError = rooted((nullSpread - expected ** 2) / scale);
    const width = normalUpperQuantile((1 - level) / 2) * standardError;
    const [low, high] = [value - width, value + width];
    const z: Result<number> =
      nullStandardError > 0
        ? answered(value / nullStandardError)
        : blocked(benchProblem("one-class-by-a-reader", "unknown", "table", { readings: n }));
    const method = weights === "none" ? "cohen-kappa" : `cohen-kappa-${weights}`;
    const estimate = { value, low, high, level, interval: "confidence", method, rule: "BE200", n } as const;
    return answered({ ...estimate, standardError, nullStandardError, z }, withoutError(standardError, estimate));
  }
}

/** What is wrong with a table, or null: not square, fewer than two classes, or empty. */
export function tableProblem(table: AgreementTable): Problem | null {
  const classes = table.length;
  if (classes < 2 || table.some((row) => row.length !== classes)) {
    return benchProblem("table-not-square", "blocked", "table", { rows: classes });
  }
  for (const count of table.flat()) ensure(Number.isInteger(count) && count >= 0, "table", count, "whole numbers ≥ 0");
  return total(table) === 0 ? benchProblem("nothing-examined", "blocked", "table", {}) : null;
}

export const total = (table: AgreementTable): number => table.flat().reduce((sum, count) => sum + count, 0);

/** Shares of the classes by the first and by the second reader. */
export const marginsOf = (share: AgreementTable): readonly [readonly number[], readonly number[]] => [
  share.map((row) => row.reduce((sum, each) => sum + each, 0)),
  share.map((_, j) => share.reduce((sum, row) => sum + (row[j] as number), 0)),
];

/** Told where no pair of readings scatters about the estimate. */
export const withoutError = (
  standardError: number,
  { value, n }: { readonly value: number; readonly n: number },
): readonly Problem[] =>
  standardError > 0
    ? []
    : [
        benchProblem("agreement-without-error", "warned", "table", {
          readings: n,
          estimate: Math.round(value * 1e9) / 1e9,
        }),
      ];

/** A variance that rounding left a hair below 0 is 0: with kappa at 1 the two parts cancel exactly. */
export const rooted = (variance: number): number => Math.sqrt(variance < 1e-15 ? 0 : variance);

const weightOf = (weights: KappaWeights, classes: number) => (i: number, j: number) => {
  if (weights === "none") return Number(i === j);
  const distance = Math.abs(i - j) / (classes - 1);
  return weights === "linear" ? 1 - distance : 1 - distance ** 2;
};

function pabakOf(counted: {
  readonly matched: number;
  readonly n: number;
  readonly classes: number;
  readonly level: number;
}): Estimate {
  const { matched, n, classes, level } = counted;
  const adjusted = (agreed: number) => (classes * agreed - 1) / (classes - 1);
  const { low, high } = wilsonInterval({ x: matched, n, level });
  return {
    value: adjusted(matched / n),
    low: adjusted(low),
    high: adjusted(high),
    level,
    interval: "confidence",
    method: "pabak-wilson",
    rule: "BE202",
    n,
  };
}

function indicesOf(share: AgreementTable): AgreementIndices {
  const [[a = 0, b = 0] = [], [c = 0, d = 0] = []] = share;
  const on = (both: number): Result<number> => {
    const used = 2 * both + b + c;
    return used > 0
      ? answered((2 * both) / used)
      : blocked(benchProblem("class-never-used", "unknown", "table", { class: both === a ? 1 : 2 }));
  };
  return { prevalence: a - d, bias: b - c, onFirst: on(a), onSecond: on(d) };
}
