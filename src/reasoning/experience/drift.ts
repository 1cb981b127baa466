/** Whether signs become more or less frequent over the years. */
import type { Evidence } from "../../knowledge/index.ts";
import { wilsonInterval } from "../../numerics/index.ts";
import { answered, blocked, type Estimate, ensure, type Result } from "../../units/index.ts";
import { readCase } from "../differential/index.ts";
import { trendTest } from "../surveillance/index.ts";
import type { ClosedCase } from "./closed-case.ts";
import { experienceProblem } from "./problems.ts";
import { settledFindings } from "./settled-findings.ts";

/** One year of one finding. */
export interface DriftYear {
  readonly year: number;
  readonly present: number;
  readonly looked: number;
  /** Share with Wilson's limits. */
  readonly share: Estimate;
}

/** A trend over years. */
export interface Trend {
  /** Positive when the share rises. */
  readonly z: number;
  /** Two-sided, of this finding alone. */
  readonly pValue: number;
  /** The same held against the number of findings that were tested. */
  readonly adjusted: number;
}

/** A finding over the years. */
export interface Drift {
  readonly finding: string;
  readonly years: readonly DriftYear[];
  /** The trend, or that there are not enough cases. */
  readonly trend: Result<Trend>;
}

/**
 * A finding is tested from this many cases that looked for it on, in this many years, with and without it this often.
 * Judgement; with one case present among thirty the test's p is many times too small where years are unequal.
 */
export const fewestForDrift = { looked: 30, years: 3, either: 5 } as const;

/**
 * Each sign that any case looked for, by year, smallest adjusted p first; those without enough cases last.
 *
 * Model: Cochran and Armitage's trend over years; p adjusted by Holm over all findings that could be tested. Cases of
 * one year are taken as independent; p is not held against how often one looks anew. A trend may come of who looks, or of which cases are referred, as well as of bees.
 * Cases need no confirmed cause here. Circumstances are left out: they tell of places and of people.
 *
 * @source Cochran 1954; Armitage 1955; Holm 1979, Scandinavian Journal of Statistics 6:65–70 (from memory)
 */
export function driftOfSigns(cases: readonly ClosedCase[], evidence: Evidence, level = 0.95): readonly Drift[] {
  const looks = cases.flatMap((each) => {
    const read = readCase(each.whole, evidence);
    if (!read.ok) return [];
    const year = Number((each.whole.date ?? each.closedOn).slice(0, 4));
    return settledFindings(read.value, evidence)
      .filter(({ finding }) => evidence.findings[finding]?.kind === "sign")
      .map((each) => ({ ...each, year }));
  });
  const drifts = [...Map.groupBy(looks, ({ finding }) => finding)].map(([finding, own]) => {
    const years = [...Map.groupBy(own, ({ year }) => year)]
      .sort(([one], [other]) => one - other)
      .map(([year, ofYear]): DriftYear => {
        const present = ofYear.filter(({ isPresent }) => isPresent).length;
        const looked = ofYear.length;
        return { year, present, looked, share: shareOf(present, looked, level) };
      });
    return { finding, years, tested: testOf(finding, years) };
  });
  const p = holm(drifts.flatMap(({ tested }) => (tested.ok ? [tested.value.pValue] : [])));
  let next = 0;
  return drifts
    .map(({ finding, years, tested }): Drift => {
      if (!tested.ok) return { finding, years, trend: tested };
      const adjusted = p[next++] as number;
      return { finding, years, trend: answered({ ...tested.value, adjusted }) };
    })
    .sort((one, other) => weight(one) - weight(other) || (one.finding < other.finding ? -1 : 1));
}

const weight = ({ trend }: Drift): number => (trend.ok ? trend.value.adjusted : 2);

function testOf(finding: string, years: readonly DriftYear[]): Result<Omit<Trend, "adjusted">> {
  const looked = years.reduce((sum, year) => sum + year.looked, 0);
  const present = years.reduce((sum, year) => sum + year.present, 0);
  const either = Math.min(present, looked - present);
  if (looked < fewestForDrift.looked || years.length < fewestForDrift.years || either < fewestForDrift.either) {
    const slots = {
      ...{ finding, looked, needed: fewestForDrift.looked, present, neededOfEither: fewestForDrift.either },
      ...{ years: years.length, neededYears: fewestForDrift.years },
    };
    return blocked(experienceProblem("too-few-looked", "unknown", finding, slots));
  }
  const test = trendTest(years.map((year) => ({ positive: year.present, examined: year.looked, score: year.year })));
  return test.ok ? answered({ z: test.value.z, pValue: test.value.pValue }) : test;
}

function shareOf(x: number, n: number, level: number): Estimate {
  const { low, high } = wilsonInterval({ x, n, level });
  return { value: x / n, low, high, level, interval: "confidence", method: "wilson", rule: "DX175", n };
}

/**
 * p-values held against their number: the smallest times m, the next times m − 1 …, never falling, at most 1.
 *
 * @returns one for each p, in the order given
 * @throws DomainError for a p outside [0, 1]
 * @source Holm 1979 (from memory)
 * @example
 * holm([0.01, 0.04, 0.03])  // → [0.03,0.06,0.06]
 */
export function holm(pValues: readonly number[]): readonly number[] {
  for (const p of pValues) ensure(p >= 0 && p <= 1, "pValues", p, "from 0 to 1");
  const order = [...pValues.keys()].sort((one, other) => (pValues[one] as number) - (pValues[other] as number));
  const adjusted = pValues.map(() => 1);
  let most = 0;
  for (const [place, at] of order.entries()) {
    most = Math.max(most, Math.min(1, (pValues.length - place) * (pValues[at] as number)));
    adjusted[at] = most;
  }
  return adjusted;
}
