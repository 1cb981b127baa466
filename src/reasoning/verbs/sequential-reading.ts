/** `sequential-reading`: a sample read against a plan, what it says, and the share of infested bees when it stopped. */
import * as z from "zod";
import { answered, type Problem, type Result } from "../../units/index.ts";
import {
  type Counts,
  pastStopEstimate,
  runningPath,
  type SequentialPlan,
  samplingProblem,
  stoppedCoverage,
} from "../sampling/index.ts";
import { count, estimate, level, share } from "./fields.ts";
import {
  cutIsForNominal,
  endIsForNominal,
  linesShape,
  looks,
  planAsked,
  planFields,
  planRefusals,
  planShape,
  planTold,
} from "./sequential-fields.ts";
import { type Progress, verb } from "./verb.ts";

const input = z
  .strictObject({
    ...planFields,
    results: z
      .array(z.number().int().min(0).max(1))
      .min(1)
      .max(2000)
      .exactOptional()
      .describe("Each bee in the order read: 1 with mites, 0 without. In place of the counts at the stop."),
    examined: count.min(1).exactOptional().describe("Bees read at the stop."),
    positive: count.exactOptional().describe("Bees with mites at the stop."),
    allExamined: count.min(1).exactOptional().describe("All bees read, where reading went on past the stop."),
    allPositive: count.exactOptional().describe("Bees with mites among all bees read."),
    setBeforehand: count
      .min(1)
      .exactOptional()
      .describe("Number of bees to be read whatever was found, if it was set before the first bee."),
    level: level.default(0.95).describe("Probability content of each range."),
    coverageAt: z
      .array(share)
      .max(200)
      .default([0.01, 0.02, 0.05, 0.1, 0.2, 0.5])
      .describe("True shares at which to tell how often each range would hold the truth."),
  })
  .refine(endIsForNominal.fits, endIsForNominal.told)
  .refine(cutIsForNominal.fits, cutIsForNominal.told)
  .refine(({ results, examined }) => (results === undefined) !== (examined === undefined), {
    message: "one of: results; examined and positive",
    path: ["results"],
  })
  .refine(({ examined, positive }) => (examined === undefined) === (positive === undefined), {
    message: "a count beside the bees read at the stop, and none without",
    path: ["positive"],
  })
  .refine(({ examined, positive }) => examined === undefined || positive === undefined || positive <= examined, {
    message: "no more than the bees read at the stop",
    path: ["positive"],
  })
  .refine(({ allExamined, allPositive }) => (allExamined === undefined) === (allPositive === undefined), {
    message: "a count beside all bees read, and none without",
    path: ["allPositive"],
  })
  .refine(({ results, allExamined }) => results === undefined || allExamined === undefined, {
    message: "none beside results, which hold all bees read",
    path: ["allExamined"],
  });

const ahead = z.strictObject({ bees: z.number().int(), positive: z.number().int(), said: z.string() });

const output = z.strictObject({
  says: z.enum(["low", "high", "undecided", "read-on"]),
  examined: z.number().int().describe("bees read up to the stop, or so far"),
  positive: z.number().int().describe("bees with mites among them"),
  ifNoneMore: ahead.nullable().describe("the next stop if no further bee has mites; null when stopped"),
  ifAllMore: ahead.nullable().describe("the next stop if every further bee has mites; null when stopped"),
  estimate: estimate.nullable().describe("limits that know of the stop; null while reading goes on"),
  unbiased: z.number().nullable().describe("the estimate that is right on average over all stops"),
  naive: estimate.nullable().describe("limits that would hold for a number of bees fixed beforehand"),
  allBees: estimate.nullable().describe("limits from all bees read; null where none was read past the stop"),
  allBeesHold: z.boolean().describe("whether those keep their level: just this number was set beforehand"),
  coverage: z
    .array(
      z.strictObject({
        prevalence: z.number().describe("true share"),
        stageWise: z.number().describe("chance that the limits that know of the stop hold it"),
        naive: z.number().describe("chance that the others do"),
      }),
    )
    .describe("exact sums over every stop of the plan"),
  path: z
    .array(z.strictObject({ bees: z.number().int(), positive: z.number().int() }))
    .describe("bees with mites after each bee; empty where counts were given"),
  level: z.number().describe("probability content of the ranges"),
  plan: planShape,
  lines: linesShape,
  looks,
  method: z.string(),
  rule: z.string(),
});

type Input = z.output<typeof input>;
type Output = z.output<typeof output>;

export const sequentialReading = verb({
  name: "sequential-reading",
  family: "sequential",
  summary: "What a sample read against a plan says, and the share at its stop.",
  assumptions: [
    "The plan was set before the first bee, and the bees were read in an order that owes nothing to how they look.",
    "Limits follow the order of the stops and keep at least their level whatever the truth; those for a fixed number do not.",
    "Bees read past the stop change nothing of what the plan said. All bees together are a fixed sample only if their number was set beforehand.",
    "Bees are drawn independently, and the bench finds every infested bee it reads.",
  ],
  source:
    "Fairbanks & Madsen 1982; Jennison & Turnbull 1983 (order of the stops); Girshick, Mosteller & Savage 1946 (estimate right on average); all from memory. Clopper & Pearson 1934 for a fixed number.",
  example: {
    lowPrevalence: 0.05,
    highPrevalence: 0.2,
    maxBees: 50,
    results: [0, 0, 1, 0, 0, 0, 0, 0, 0, 1, 0, 0, 0, 0, 0, 0, 1, 0, 0, 0, 0, 0, 1],
  },
  input,
  output,
  refusals: planRefusals,
  run: (asked, progress): Result<Output> => {
    const made = planAsked(asked, (done) => progress(done / 2));
    if (!made.ok) return made;
    const found = asked.results ? bySequence(made.value, asked, asked.results) : byCounts(made.value, asked);
    if (!found.ok) return found;
    const plan = made.value;
    return answered(
      {
        ...found.value,
        coverage: coverageOf(plan, asked, (done) => progress(0.5 + done / 2)),
        level: asked.level,
        plan: planTold(plan),
        lines: { ...plan.lines },
        looks: [...plan.looks],
        method: "stage-wise",
        rule: "SD156",
      },
      found.problems,
    );
  },
});

type Found = Omit<Output, "coverage" | "level" | "plan" | "lines" | "looks" | "method" | "rule">;

function bySequence(plan: SequentialPlan, asked: Input, results: readonly number[]): Result<Found> {
  const { positives, stop, soonest } = runningPath(
    plan,
    results.map((each) => each === 1),
  );
  const path = positives.map((positive, index) => ({ bees: index + 1, positive }));
  const all = { examined: results.length, positive: positives.at(-1) ?? 0 };
  if (stop) return atStop(plan, { asked, stop: { examined: stop.bees, positive: stop.positive }, all, path });
  const told = (next: { readonly bees: number; readonly positive: number; readonly said: string } | undefined) =>
    next ? { bees: next.bees, positive: next.positive, said: next.said } : null;
  return answered(
    {
      says: "read-on",
      ...all,
      ifNoneMore: told(soonest?.noneMore),
      ifAllMore: told(soonest?.allMore),
      estimate: null,
      unbiased: null,
      naive: null,
      allBees: null,
      allBeesHold: false,
      path,
    },
    [notStopped(all)],
  );
}

const notStopped = (counts: Counts): Problem =>
  samplingProblem("reading-not-stopped", "unknown", null, { examined: counts.examined, positive: counts.positive });

function byCounts(plan: SequentialPlan, asked: Input): Result<Found> {
  const { examined = 0, positive = 0, allExamined, allPositive } = asked;
  const stop = { examined, positive };
  const all =
    allExamined === undefined || allPositive === undefined ? stop : { examined: allExamined, positive: allPositive };
  return atStop(plan, { asked, stop, all, path: [] });
}

function atStop(
  plan: SequentialPlan,
  read: { readonly asked: Input; readonly stop: Counts; readonly all: Counts; readonly path: Output["path"] },
): Result<Found> {
  const { asked, stop, all, path } = read;
  const setBeforehand = asked.setBeforehand ?? null;
  const found = pastStopEstimate(plan, { atStop: stop, all, setBeforehand, level: asked.level });
  if (!found.ok) return { ok: false, problems: found.problems.map(atField) };
  const { estimate: stageWise, unbiased, naive } = found.value.atStop;
  return answered(
    {
      says: found.value.stop.said,
      ...stop,
      ifNoneMore: null,
      ifAllMore: null,
      estimate: { ...stageWise },
      unbiased,
      naive: { ...naive },
      allBees: found.value.allBees && { ...found.value.allBees },
      allBeesHold: found.value.allBeesHold,
      path,
    },
    found.problems,
  );
}

/** The counts of all bees are two fields here. */
const atField = (each: Problem): Problem => (each.field === "all" ? { ...each, field: "allPositive" } : each);

function coverageOf(plan: SequentialPlan, { coverageAt, level: wanted }: Input, progress: Progress) {
  return coverageAt.flatMap((prevalence, index) => {
    progress(index / coverageAt.length);
    return stoppedCoverage(plan, { prevalences: [prevalence], level: wanted });
  });
}
