/**
 * The reckoner: sample sizes and ranges from numbers typed by hand, each with its method, rule and source.
 *
 * @module views/model
 */
import { bench, sampling } from "../../../reasoning/index.ts";
import { answered, blocked, type Estimate, problem, type Result } from "../../../units/index.ts";
import type { Words } from "../../words/index.ts";
import { type Fields, readForm } from "../form.ts";

export interface SizeView {
  readonly bees: number;
  /** The share asked about and what the bench finds, for the curve beside the answer. */
  readonly design: { readonly bees: number; readonly at: number; readonly sensitivity: number };
  readonly isFinite: boolean;
  readonly says: string;
  readonly trace: string;
  /** Numbers around the answer, and how often each would find it. */
  readonly rows: readonly (readonly [number, number, number])[];
  readonly columns: readonly [string, string, string];
}

/** Sample size from the form; a number in all makes it a draw without replacement. */
export function reckonSize(fields: Fields, words: Words): Result<SizeView> {
  const form = readForm(fields);
  const designPrevalence = form.number("prevalence", { min: 0.01, max: 100 }) / 100;
  const confidence = form.number("confidence", { min: 1, max: 99.99 }) / 100;
  const sensitivity = form.number("sensitivity", { min: 1, max: 100 }) / 100;
  const population = form.maybeNumber("population", { min: 1, max: 100_000, whole: true });
  const read = form.result(null);
  if (!read.ok) return read;
  if (population === undefined) {
    if (designPrevalence * sensitivity >= 1)
      return answered(infinite({ bees: 1, designPrevalence, sensitivity }, words));
    const bees = sampling.detectionSampleSize({ designPrevalence, confidence, sensitivity });
    return answered(infinite({ bees, designPrevalence, sensitivity }, words));
  }
  const infested = Math.max(1, Math.round(designPrevalence * population));
  const group = { population, infested, sensitivity };
  const size = sampling.finiteDetectionSampleSize({ ...group, confidence });
  if (!size.ok) return blocked(...size.problems.map((each) => ({ ...each, field: "population" })));
  const found = (examined: number) => {
    const chance = sampling.finiteDetectionProbability({ ...group, examined });
    return chance.ok ? chance.value : 0;
  };
  return answered({
    bees: size.value,
    design: { bees: size.value, at: designPrevalence, sensitivity },
    isFinite: true,
    says: words.reckoner.size({
      bees: size.value,
      prevalence: designPrevalence,
      reached: found(size.value),
      population,
      infested,
    }),
    trace: words.reckoner.trace({
      rule: "SD6",
      method: words.reckoner.method.finite,
      source: words.reckoner.source.finite,
    }),
    ...twin(size.value, population, found, words),
  });
}

function infinite(
  design: { readonly bees: number; readonly designPrevalence: number; readonly sensitivity: number },
  words: Words,
): SizeView {
  const { bees, designPrevalence, sensitivity } = design;
  const found = (examined: number) => sampling.detectionProbability({ bees: examined, designPrevalence, sensitivity });
  return {
    bees,
    design: { bees, at: designPrevalence, sensitivity },
    isFinite: false,
    says: words.reckoner.size({
      bees,
      prevalence: designPrevalence,
      reached: found(bees),
      population: null,
      infested: null,
    }),
    trace: words.reckoner.trace({
      rule: "SD3",
      method: words.reckoner.method.infinite,
      source: words.reckoner.source.size,
    }),
    ...twin(bees, Number.POSITIVE_INFINITY, found, words),
  };
}

function twin(
  bees: number,
  most: number,
  found: (examined: number) => number,
  words: Words,
): Pick<SizeView, "rows" | "columns"> {
  const { examined, found: head, missed } = words.reckoner.fewerColumns;
  const numbers = [
    ...new Set([0.25, 0.5, 0.75, 1, 1.25, 1.5].map((part) => Math.max(1, Math.min(most, Math.round(part * bees))))),
  ];
  return {
    columns: [examined, head, missed],
    rows: numbers.map((number) => [number, 100 * found(number), 100 * (1 - found(number))]),
  };
}

const methods = ["clopper-pearson", "wilson", "jeffreys"] as const;

export interface RangeRow {
  readonly method: (typeof methods)[number];
  readonly name: string;
  readonly estimate: Estimate;
  readonly trace: string;
}

export interface EstimateView {
  readonly examined: number;
  readonly positive: number;
  readonly says: string;
  readonly rows: readonly RangeRow[];
  readonly label: string;
  /** On which side of the line the exact range lies, in words; null without a line. */
  readonly against: string | null;
  readonly line: number | null;
  readonly oneSided: string | null;
  readonly end: number;
  readonly table: {
    readonly columns: readonly string[];
    readonly rows: readonly (readonly (string | number)[])[];
  };
}

/** A range from a count, by three methods. */
export function reckonEstimate(fields: Fields, words: Words): Result<EstimateView> {
  const form = readForm(fields);
  const say = words.reckoner;
  const positive = form.number("positive", { min: 0, max: 100_000, whole: true });
  const examined = form.number("examined", { min: 1, max: 100_000, whole: true });
  const level = form.number("level", { min: 50, max: 99.9 }) / 100;
  const line = form.maybeNumber("line", { min: 0, max: 100 }) ?? null;
  if (positive > examined)
    form.complain(
      problem("positives-exceed-examined", "blocked", "positive", { given: positive, slots: { positive, examined } }),
    );
  const read = form.result(null);
  if (!read.ok) return read;
  const rows = methods.flatMap((method): RangeRow[] => {
    const estimate = bench.prevalence({ positive, examined, level, method });
    if (!estimate.ok) return [];
    return [
      {
        method,
        name: say.names[method],
        estimate: estimate.value,
        trace: say.trace({ rule: estimate.value.rule, method: say.method[method], source: say.source[method] }),
      },
    ];
  });
  const exact = rows[0]?.estimate;
  if (!exact) return blocked(problem("nothing-examined", "blocked", "examined"));
  const zero = positive === 0 ? sampling.upperLimitOfZero({ examined, level, sides: "one", sensitivity: 1 }) : null;
  return answered({
    examined,
    positive,
    says: say.estimate({ positive, examined, ...exact }),
    rows,
    label: say.chartLabel({ rows: rows.map((row) => say.row({ name: row.name, ...row.estimate })).join("; ") }),
    against: line === null ? null : sideOf(exact, line, words),
    line,
    oneSided: zero?.ok ? say.oneSided({ high: zero.value.high, level }) : null,
    end: Math.min(100, Math.max(10, Math.ceil((100 * exact.high) / 10) * 10, Math.ceil((line ?? 0) / 10) * 10)),
    table: {
      columns: [say.columns.method, say.columns.value, say.columns.low, say.columns.high, say.columns.rule],
      rows: rows.map(({ name, estimate }) => [
        name,
        100 * estimate.value,
        100 * estimate.low,
        100 * estimate.high,
        estimate.rule,
      ]),
    },
  });
}

function sideOf({ low, high }: Estimate, line: number, words: Words): string {
  const { against } = words.reckoner;
  return 100 * low >= line ? against.over(line) : 100 * high < line ? against.under(line) : against.either(line);
}
