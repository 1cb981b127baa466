/** Runs the tabled cases of src/numerics and tells how far each is off. */
import { readFileSync } from "node:fs";
import * as numerics from "../../../src/numerics/index.ts";

export interface Case {
  readonly function: string;
  readonly args: readonly number[];
  /** Twenty digits. */
  readonly value: string;
}

export interface Outcome extends Case {
  readonly got: number;
  /** |got − value| / |value|. */
  readonly relativeError: number;
}

const { binomial, hypergeometric, betaBinomial, poisson, beta, gamma, chiSquare, studentT } = numerics;

type Make = (...parameters: readonly number[]) => Readonly<Record<string, unknown>>;
/** How a distribution is made from the leading arguments of a case, and how many those are. */
const makers: Readonly<Record<string, readonly [count: number, make: Make]>> = {
  binomial: [2, (n = NaN, p = NaN) => ({ ...binomial({ n, p }) })],
  hypergeometric: [
    3,
    (population = NaN, marked = NaN, drawn = NaN) => ({ ...hypergeometric({ population, marked, drawn }) }),
  ],
  betaBinomial: [3, (n = NaN, a = NaN, b = NaN) => ({ ...betaBinomial({ n, a, b }) })],
  poisson: [1, (mean = NaN) => ({ ...poisson({ mean }) })],
  beta: [2, (a = NaN, b = NaN) => ({ ...beta({ a, b }) })],
  gamma: [2, (shape = NaN, rate = NaN) => ({ ...gamma({ shape, rate }) })],
  chiSquare: [1, (df = NaN) => ({ ...chiSquare({ df }) })],
  studentT: [1, (df = NaN) => ({ ...studentT({ df }) })],
};

/** Functions that take one named object: the names of its fields in the order of the case. */
const fields: Readonly<Record<string, readonly string[]>> = {
  betaQuantile: ["p", "a", "b"],
  betaUpperQuantile: ["p", "a", "b"],
  gammaQuantile: ["p", "a"],
  gammaUpperQuantile: ["p", "a"],
};

function evaluate({ function: name, args }: Case): number {
  const [family = "", accessor] = name.split(".");
  if (accessor !== undefined) {
    const maker = makers[family];
    if (maker === undefined) throw new Error(`no distribution ${family}`);
    const [count, make] = maker;
    return (make(...args.slice(0, count))[accessor] as (x: number | undefined) => number)(args[count]);
  }
  const call = (numerics as Readonly<Record<string, unknown>>)[name] as (...given: readonly unknown[]) => number;
  const named = fields[name];
  return named ? call(Object.fromEntries(named.map((field, i) => [field, args[i]]))) : call(...args);
}

export const tables = [
  "numerics-special-functions.json",
  "numerics-tails.json",
  "numerics-quantiles.json",
  "numerics-distributions.json",
] as const;

/** The cases of one table with what src/numerics makes of them. */
export function outcomes(table: (typeof tables)[number]): readonly Outcome[] {
  const file = new URL(`../../golden/${table}`, import.meta.url);
  const { cases } = JSON.parse(readFileSync(file, "utf8")) as { cases: readonly Case[] };
  return cases.map((each) => {
    const got = evaluate(each);
    const value = Number(each.value);
    return { ...each, got, relativeError: got === value ? 0 : Math.abs((got - value) / value) };
  });
}

/** What every case must keep to, as relative error. The worst seen is 1.1e-13. */
export const allowance = 1e-12;

/** The worst case of each function, in the order of the table. */
export function worst(all: readonly Outcome[]): readonly Outcome[] {
  const names = [...new Set(all.map((each) => each.function))];
  return names.map((name) =>
    all
      .filter((each) => each.function === name)
      .reduce((most, each) => (each.relativeError > most.relativeError ? each : most)),
  );
}
