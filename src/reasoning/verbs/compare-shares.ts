/** `compare-shares`: two groups by difference, ratio and odds ratio, and by every exact test. */
import * as z from "zod";
import { answered, blocked, type Estimate, type Problem, type Result } from "../../units/index.ts";
import { association, fisherTest, prevalence } from "../bench/index.ts";
import {
  allInfested,
  barnardTest,
  boschlooTest,
  type DifferenceMethod,
  efficacyProblem,
  katzRatio,
  koopmanRatio,
  type Share,
  shareDifference,
} from "../efficacy/index.ts";
import { count, estimate, level } from "./fields.ts";
import { type Deep, type Progress, verb } from "./verb.ts";

const group = (which: string) =>
  z
    .strictObject({
      positive: count.describe(`Bees or colonies of the ${which} group with the property.`),
      examined: count.min(1).max(1_000_000).describe(`All of the ${which} group that could be read.`),
    })
    .refine(({ positive, examined }) => positive <= examined, {
      message: "no more than examined",
      path: ["positive"],
    });

const input = z.strictObject({
  first: group("first"),
  second: group("second"),
  alternative: z
    .enum(["two-sided", "less", "greater"])
    .default("two-sided")
    .describe("Which way the first share was thought to lie from the second before anyone looked."),
  level: level.default(0.95).describe("Probability content of each interval."),
});

const tests = ["fisher", "fisher-mid-p", "barnard", "boschloo", "pearson", "yates"] as const;

const output = z.strictObject({
  first: estimate.describe("share in the first group"),
  second: estimate.describe("share in the second group"),
  differences: z.array(estimate).describe("first share less second share, by each method"),
  ratios: z.array(estimate).describe("first share over second share; empty where none of the second was positive"),
  oddsRatio: estimate.nullable().describe("null where a group or an outcome never occurs"),
  tests: z
    .array(
      z.strictObject({
        test: z.enum(tests),
        statistic: z.number().nullable(),
        pValue: z.number().describe("chance of a table as extreme, both groups being alike"),
        rule: z.string(),
      }),
    )
    .describe("the exact ones first; those by chi-square only two-sided"),
  alternative: z.enum(["two-sided", "less", "greater"]),
  rule: z.string(),
});

type Input = z.output<typeof input>;
type Answer = Deep<z.output<typeof output>>;
type Test = Answer["tests"][number];

const methods: readonly DifferenceMethod[] = ["newcombe", "miettinen-nurminen", "mee"];

/** Tables up to which the chance is maximised over the common share: some seconds of work. */
const mostTables = 250_000;

export const compareShares = verb({
  name: "compare-shares",
  family: "comparison",
  summary: "Two groups: how far apart their shares lie, and whether by chance.",
  assumptions: [
    "Each bee, or colony, was drawn at random and by itself. Bees of one colony are alike: compare colonies then, or the limits are too narrow.",
    "Fisher's test holds both margins fixed; Barnard's and Boschloo's only the sizes of the groups, and find more in small groups.",
    "A difference is no cause: nothing is adjusted.",
  ],
  source:
    "Newcombe 1998, Stat. Med. 17:873; Miettinen & Nurminen 1985; Mee 1984; Katz et al. 1978; Koopman 1984; Woolf 1955; Fisher 1935; Lancaster 1961 (mid-P); Barnard 1947; Boschloo 1970.",
  example: { first: { positive: 7, examined: 15 }, second: { positive: 12, examined: 15 } },
  input,
  output,
  run,
});

function run(given: Input, progress: Progress): Result<Answer> {
  const { level, alternative } = given;
  const [first, second] = [share(given.first), share(given.second)];
  const [one, two] = [given.first, given.second].map((each) => prevalence({ ...each, level }));
  if (!one?.ok) return blocked(...(one?.problems ?? []));
  if (!two?.ok) return blocked(...(two?.problems ?? []));
  const differences = methods.map((method) => shareDifference({ first, second, level, method }));
  const linked = association(tableOf(given), level);
  const exact = exactTests(given);
  progress(0.05);
  const unconditional = unconditionalTests(given, progress);
  const chiSquares: readonly Test[] =
    linked.ok && alternative === "two-sided"
      ? [
          { test: "pearson", ...linked.value.chiSquare, rule: "BE10" },
          { test: "yates", ...linked.value.yates, rule: "BE10" },
        ]
      : [];
  const notices = linked.problems.map((each): Problem => (linked.ok ? each : { ...each, severity: "unknown" }));
  return answered(
    {
      first: one.value,
      second: two.value,
      differences: differences.flatMap((each) => (each.ok ? [each.value] : [])),
      ratios: ratiosOf(first, second, level),
      oddsRatio: linked.ok ? linked.value.oddsRatio : null,
      tests: [...exact, ...unconditional.tests, ...chiSquares],
      alternative,
      rule: "EF202",
    },
    [...notices, ...unconditional.problems],
  );
}

const share = ({ positive, examined }: Input["first"]): Share => ({ infested: positive, examined });
const tableOf = ({ first, second }: Input) => ({
  a: first.positive,
  b: first.examined - first.positive,
  c: second.positive,
  d: second.examined - second.positive,
});

/** Where all are positive in both groups Katz's limits close on 1, and Koopman's stand alone. */
function ratiosOf(first: Share, second: Share, level: number): readonly Estimate[] {
  if (second.infested === 0) return [];
  const pair = { first, second, level };
  const koopman = { method: "koopman", ...koopmanRatio(pair) };
  const katz = { method: "katz", ...katzRatio(pair) };
  return (allInfested(first, second) ? [koopman] : [katz, koopman]).map(
    ({ method, ratio, low, high, halfAdded }): Estimate => ({
      value: ratio,
      low: halfAdded ? 0 : low,
      high,
      level,
      interval: "confidence",
      method: halfAdded ? `${method}-half` : method,
      rule: "EF206",
      n: first.examined + second.examined,
    }),
  );
}

function exactTests(given: Input): readonly Test[] {
  const { midP, ...plain } = fisherTest(tableOf(given));
  const side = ({ "two-sided": "twoSided", less: "less", greater: "greater" } as const)[given.alternative];
  return [
    { test: "fisher", statistic: null, pValue: plain[side], rule: "BE204" },
    { test: "fisher-mid-p", statistic: null, pValue: midP[side], rule: "BE204" },
  ];
}

function unconditionalTests(
  given: Input,
  progress: Progress,
): { tests: readonly Test[]; problems: readonly Problem[] } {
  const { first, second, alternative } = given;
  const tables = (first.examined + 1) * (second.examined + 1);
  if (tables > mostTables)
    return { tests: [], problems: [efficacyProblem("too-many-tables", "unknown", null, { tables, most: mostTables })] };
  const shares = { first: share(first), second: share(second), alternative };
  const barnard = barnardTest(shares);
  progress(0.4);
  const boschloo = boschlooTest(shares);
  return {
    tests: [
      ...(barnard.ok ? [testOf("barnard", barnard.value)] : []),
      ...(boschloo.ok ? [testOf("boschloo", boschloo.value)] : []),
    ],
    problems: [],
  };
}

const testOf = (
  test: "barnard" | "boschloo",
  { statistic, pValue }: { readonly statistic: number; readonly pValue: number },
): Test => ({ test, statistic, pValue, rule: test === "barnard" ? "EF200" : "EF201" });
