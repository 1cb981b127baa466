/** Pieces of work that R and Python can do too: input, our way, and what the answer is checked by. */
import { blakerInterval, intervalCoverage, randomStream } from "../../src/numerics/index.ts";
import { findingsOnly, type Network } from "../../src/reasoning/differential/network.ts";
import { parametersOf } from "../../src/reasoning/differential/parameters.ts";
import { posteriorOf } from "../../src/reasoning/differential/posterior.ts";
import { bench, decision, efficacy, sampling, surveillance } from "../../src/reasoning/index.ts";
import type { Result } from "../../src/units/index.ts";

/** One row of the comparison. `ours` gives the numbers that the others must give too. */
export interface Work<Input = never> {
  /** By this name the scripts in R and Python know it. */
  readonly name: string;
  readonly what: string;
  readonly input: Input;
  readonly ours: (input: Input) => readonly number[];
  /** Share by which the answers may differ; the reason stands beside it. */
  readonly tolerance: number;
}

const value = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(`refused: ${result.problems[0]?.code}`);
  return result.value;
};
const sum = (values: readonly number[]): number => values.reduce((total, each) => total + each, 0);
/** A row with its own type of input, kept out of the list's. */
const work = <Input>(row: Work<Input>): Work => row as unknown as Work;

const wald = { lowPrevalence: 0.05, highPrevalence: 0.15, alpha: 0.1, beta: 0.1 } as const;
const shares = (count: number, most: number): readonly number[] =>
  Array.from({ length: count }, (_, i) => ((i + 1) * most) / count);

const plan = (input: { readonly maxBees: number; readonly shares: readonly number[] }): readonly number[] => {
  const rows = sampling.sequentialCharacteristics(
    value(sampling.sequentialPlan({ ...wald, maxBees: input.maxBees })),
    input.shares,
  );
  return [sum(rows.map(({ low }) => low)), sum(rows.map(({ averageBees }) => averageBees))];
};

const chance = randomStream({ seed: 14, stream: 1 });
const whole = (low: number, high: number): number => low + Math.floor(chance.next() * (high - low + 1));

/** Made-up colonies: each with a share of its own, the mean of a few uniform numbers squared, and its bees. */
const colonies = Array.from({ length: 1000 }, () => {
  const examined = whole(20, 60);
  const share = 0.3 * chance.next() * chance.next() + 0.02;
  return { positive: Array.from({ length: examined }, () => chance.next()).filter((u) => u < share).length, examined };
});

/** Made-up network: 20 conditions, 30 findings. */
const [conditions, findings] = [20, 30];
const network = {
  prior: Array.from({ length: conditions }, (_, i) => 0.02 + 0.01 * (i % 7)),
  leak: Array.from({ length: findings }, (_, j) => 0.02 + 0.002 * j),
  link: Array.from({ length: conditions }, (_, i) =>
    Array.from({ length: findings }, (_, j) => ((i + j) % 3 === 0 ? 0.1 + 0.04 * ((7 * i + 3 * j) % 20) : 0)),
  ),
  present: [0, 1, 2, 3, 4, 5, 6, 7],
  absent: [8, 9, 10, 11],
};
const diagnosis = ({ prior, leak, link, present, absent }: typeof network): readonly number[] => {
  const ours: Network = {
    conditions: prior.map((share, i) => ({ id: `c${i}`, odds: share / (1 - share), rollUp: null })),
    findings: leak.map((healthy, j) => ({ id: `f${j}`, healthy, group: null })),
    pairs: link.flatMap((row, condition) =>
      row.flatMap((strength, finding) => {
        const rate = 1 - (1 - (leak[finding] as number)) * (1 - strength);
        return strength > 0 ? [{ condition, finding, rate, suppresses: false }] : [];
      }),
    ),
    blocks: [],
    nothingWrong: null,
    dependence: 0,
  };
  return [...(posteriorOf(parametersOf(ours), findingsOnly(ours, present, absent), [])?.condition ?? [])];
};

const groups = Array.from({ length: 100_000 }, () => {
  const population = whole(20, 2000);
  return { population, infested: whole(1, Math.max(1, Math.floor(population / 5))) };
});

/** A net of 167 areas, each next to those left, right, above and below. */
const areas = Array.from({ length: 167 }, (_, i) => ({
  cases: whole(0, 12),
  population: whole(300, 6000),
  neighbours: [i % 13 > 0 ? i - 1 : -1, i % 13 < 12 ? i + 1 : -1, i - 13, i + 13].filter((j) => j >= 0 && j < 167),
}));

const herds = Array.from({ length: 14 }, () => 1.5 * (chance.next() + chance.next() - 1));
const rows = Array.from({ length: 56 }, (_, i) => {
  const [herd, period] = [Math.floor(i / 4), i % 4];
  const examined = whole(5, 30);
  const share = 1 / (1 + Math.exp(1.2 + 0.3 * period - (herds[herd] as number)));
  const positive = Array.from({ length: examined }, () => chance.next()).filter((u) => u < share).length;
  return { positive, examined, group: `h${herd}`, covariates: [1, +(period === 1), +(period === 2), +(period === 3)] };
});

/** Recursions and closed sums: rounding of some thousand additions. */
const exact = 1e-9;
/** Iterative fits stop where the likelihood is flat. */
const fitted = 1e-4;

export const works: readonly Work[] = [
  work({
    name: "plan-one",
    what: "exact sequential plan, 100 bees, one share",
    input: { maxBees: 100, shares: [0.08] },
    ours: plan,
    tolerance: exact,
  }),
  work({
    name: "plan-many",
    what: "exact sequential plan, 500 bees, 50 shares",
    input: { maxBees: 500, shares: shares(50, 0.3) },
    ours: plan,
    tolerance: exact,
  }),
  work({
    name: "plan-long",
    what: "exact sequential plan, 2,000 bees, 50 shares",
    input: { maxBees: 2000, shares: shares(50, 0.3) },
    ours: plan,
    tolerance: exact,
  }),
  work({
    name: "three-way",
    what: "three decisions, 200 bees, 10 shares",
    input: { maxBees: 200, shares: shares(10, 0.5) },
    ours: (input) => {
      const pair = value(
        sampling.threeWayPlan({
          lower: wald,
          upper: { ...wald, lowPrevalence: 0.25, highPrevalence: 0.4 },
          maxBees: input.maxBees,
        }),
      );
      const found = sampling.threeWayCharacteristics(pair, input.shares);
      return [sum(found.map(({ moderate }) => moderate)), sum(found.map(({ averageBees }) => averageBees))];
    },
    tolerance: exact,
  }),
  work({
    name: "beta-binomial",
    what: "beta-binomial fit, 1,000 colonies of 20 to 60 bees",
    input: colonies,
    ours: (input) => {
      const { mean, intraclass } = value(bench.betaBinomialFit(input));
      return [mean.value, intraclass];
    },
    tolerance: fitted,
  }),
  work({
    name: "diagnosis",
    what: "20 conditions, 8 findings present, 4 absent; theirs over all sets",
    input: network,
    ours: diagnosis,
    tolerance: 1e-7, // the bound at which our expansion gives way
  }),
  work({
    name: "diagnosis-expanded",
    what: "the same; theirs by signed products too",
    input: network,
    ours: diagnosis,
    tolerance: 1e-7,
  }),
  work({
    name: "finite-sizes",
    what: "100,000 exact sizes to detect in a counted group",
    input: groups,
    ours: (input) => [
      sum(
        input.map((group) => value(sampling.finiteDetectionSampleSize({ ...group, confidence: 0.95, sensitivity: 1 }))),
      ),
    ],
    tolerance: 1e-6, // a tie lost to rounding adds 1 to a sum of some ten millions
  }),
  work({
    name: "survey",
    what: "smallest survey, 250 of 5,000, a test that errs both ways",
    input: { population: 5000, infested: 250, sensitivity: 0.95, specificity: 0.98 },
    ours: (input) => {
      const design = value(sampling.smallestSurvey({ ...input, missAllowed: 0.05, falseAlarmAllowed: 0.05 }));
      return [design.examined, design.callInfestedFrom, design.finds];
    },
    tolerance: exact,
  }),
  work({
    name: "bayes",
    what: "true prevalence with beliefs about both errors of the test",
    input: { positive: 45, examined: 150, sensitivity: [96, 4], specificity: [89, 11] },
    ours: ({ positive, examined, sensitivity, specificity }) => {
      const [a, b, c, d] = [...sensitivity, ...specificity] as [number, number, number, number];
      const found = value(
        bench.prevalencePosterior({ positive, examined, sensitivity: { a, b }, specificity: { a: c, b: d } }),
      );
      return [found.mean, found.low, found.median, found.high];
    },
    tolerance: 1e-4, // theirs sums over 6,000 points
  }),
  work({
    name: "unconditional",
    what: "Barnard and Boschloo, 20 against 21",
    input: { a: 5, b: 15, c: 12, d: 9 },
    ours: (table) => {
      const compared = { ...efficacy.sharesOfTable(table), alternative: "less" } as const;
      return [value(efficacy.barnardTest(compared)).pValue, value(efficacy.boschlooTest(compared)).pValue];
    },
    tolerance: fitted,
  }),
  work({
    name: "power",
    what: "exact power of Fisher's test, 30 against 30",
    input: { first: 0.3, second: 0.05, size: 30 },
    ours: ({ first, second, size }) => [
      efficacy.fisherPower({ firstShare: first, secondShare: second, firstSize: size, secondSize: size }),
    ],
    tolerance: exact,
  }),
  work({
    name: "blaker",
    what: "coverage of Blaker's interval, 30 bees",
    input: { n: 30, p: 0.1 },
    ours: ({ n, p }) => [intervalCoverage({ interval: blakerInterval, n, p, level: 0.95 })],
    tolerance: exact,
  }),
  work({
    name: "evsi",
    what: "value of sampling for 0 to 200 bees",
    input: { a: 2, b: 18, loss: 300, cost: 45, sizes: Array.from({ length: 201 }, (_, i) => i) },
    ours: ({ a, b, loss, cost, sizes }) => {
      const found = decision.valueOfSampling({
        belief: { a, b },
        lossAtFull: loss,
        actCost: cost,
        sizes,
        costPerBee: 0,
        fixedCost: 0,
      });
      return [sum(found.rows.map(({ evsi }) => evsi))];
    },
    tolerance: exact,
  }),
  work({
    name: "local-rates",
    what: "local empirical Bayes rates, 167 areas",
    input: areas,
    ours: (input) => [sum(value(surveillance.marshallLocal(input)).byFocalMean)],
    tolerance: exact,
  }),
  work({
    name: "random-intercept",
    what: "logistic regression with random intercepts, 56 rows, 25 nodes",
    input: rows,
    ours: (input) => {
      const { coefficients, sigma } = value(surveillance.logisticRandomIntercept(input));
      return [...coefficients.map((each) => each.value), sigma];
    },
    tolerance: 2e-3, // their searches stop earlier
  }),
];
