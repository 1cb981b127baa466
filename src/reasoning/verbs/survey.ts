/** `survey`: a survey with a test that errs both ways: its smallest size with its cut-point, or what a given one can do. */
import * as z from "zod";
import { answered, blocked, type Result } from "../../units/index.ts";
import { type SurveyedGroup, smallestSurvey, surveyChances, wholeShare } from "../sampling/index.ts";
import { count, openShare, positiveShare } from "./fields.ts";
import { type Deep, type Progress, verb } from "./verb.ts";

/** Sums over what is drawn from a counted group stay quick up to here. */
const mostCounted = 20_000;
const mostExamined = 1_500;
const mostOfMany = 10_000;

const input = z
  .strictObject({
    designPrevalence: positiveShare.describe("Smallest share infested that must not be missed."),
    sensitivity: positiveShare.describe("Share of infested ones that test positive. It has no default."),
    specificity: positiveShare.describe("Share of clean ones that test negative. It has no default."),
    population: count
      .min(1)
      .max(mostCounted)
      .exactOptional()
      .describe("How many there are in all, when they are counted. Left out: so many that it does not matter."),
    missAllowed: openShare.default(0.05).describe("Largest allowed chance to miss the infestation."),
    falseAlarmAllowed: openShare.default(0.05).describe("Largest allowed chance to call a clean group infested."),
    examined: count.min(1).max(mostOfMany).exactOptional().describe("A number to examine, in place of the smallest."),
    callInfestedFrom: count
      .min(1)
      .max(mostOfMany)
      .exactOptional()
      .describe("With it: the group is called infested at so many positive or more."),
  })
  .refine(({ examined, callInfestedFrom }) => (examined === undefined) === (callInfestedFrom === undefined), {
    message: "both examined and callInfestedFrom, or neither",
    path: ["callInfestedFrom"],
  })
  .refine(({ examined, population }) => examined === undefined || population === undefined || examined <= population, {
    message: "no more than there are",
    path: ["examined"],
  });

const chances = {
  callInfestedFrom: z.number().int().describe("called infested at so many positive or more"),
  missed: z.number().describe("chance to miss the infestation at the design prevalence"),
  falseAlarm: z.number().describe("chance to call a clean group infested"),
};

const output = z.strictObject({
  examined: z.number().int(),
  callInfestedFrom: chances.callInfestedFrom,
  readAsNoneUpTo: z.number().int().describe("so many positive or fewer are still read as free: one fewer"),
  finds: z.number().describe("chance to call the group infested at the design prevalence"),
  clears: z.number().describe("chance to read a clean group as free"),
  missed: chances.missed,
  falseAlarm: chances.falseAlarm,
  chosen: z.enum(["smallest", "given"]).describe("the smallest survey within the errors allowed, or the one given"),
  byCutPoint: z.array(z.strictObject(chances)).describe("what other cut-points would do with as many examined"),
  infested: z.number().int().nullable().describe("how many infested the design supposes; null in a large group"),
  design: z.strictObject({
    designPrevalence: z.number(),
    sensitivity: z.number(),
    specificity: z.number(),
    population: z.number().int().nullable(),
    missAllowed: z.number(),
    falseAlarmAllowed: z.number(),
  }),
  method: z.string(),
  rule: z.string(),
});

type Input = z.output<typeof input>;
type Answer = Deep<z.output<typeof output>>;

export const survey = verb({
  name: "survey",
  family: "designs",
  summary: "How many to test, and from how many positive on to call a group infested.",
  assumptions: [
    "Those tested are drawn at random; of a counted group without putting back.",
    "The test errs alike and independently in each one tested.",
    "“Cut-point” is used in two ways by authors: here the group is called infested from so many positive on, and read as free up to one fewer.",
    "The smallest survey is the first number at which the smallest cut-point with few enough false alarms also misses little enough.",
  ],
  source: "Cameron & Baldock 1998, Preventive Veterinary Medicine 34:1–17.",
  example: { designPrevalence: 0.05, sensitivity: 0.95, specificity: 0.98, population: 5000 },
  input,
  output,
  run,
});

function run(given: Input, progress: Progress): Result<Answer> {
  const { designPrevalence, sensitivity, specificity, missAllowed, falseAlarmAllowed } = given;
  const population = given.population ?? null;
  const infested = population === null ? null : wholeShare(designPrevalence, population);
  const group: SurveyedGroup = { population, infested: infested ?? designPrevalence, sensitivity, specificity };
  const plan = planOf(given, group, progress);
  if (!plan.ok) return plan;
  const at = chancesOf(group, plan.value);
  if (!at.ok) return at;
  const others = cutPointsNear(plan.value).map((callInfestedFrom) =>
    chancesOf(group, { ...plan.value, callInfestedFrom }),
  );
  const smallest = given.examined === undefined;
  return answered({
    examined: plan.value.examined,
    readAsNoneUpTo: plan.value.callInfestedFrom - 1,
    ...at.value,
    chosen: smallest ? "smallest" : "given",
    byCutPoint: others.flatMap((each) => {
      if (!each.ok) return [];
      const { callInfestedFrom, missed, falseAlarm } = each.value;
      return [{ callInfestedFrom, missed, falseAlarm }];
    }),
    infested,
    design: { designPrevalence, sensitivity, specificity, population, missAllowed, falseAlarmAllowed },
    method: population === null ? "binomial" : "hypergeometric",
    rule: smallest ? "SD104" : "SD102",
  });
}

interface Plan {
  readonly examined: number;
  readonly callInfestedFrom: number;
}

function planOf(given: Input, group: SurveyedGroup, progress: Progress): Result<Plan> {
  const { examined, callInfestedFrom, missAllowed, falseAlarmAllowed } = given;
  if (examined !== undefined && callInfestedFrom !== undefined) return answered({ examined, callInfestedFrom });
  const searchUpTo = group.population === null ? mostOfMany : Math.min(group.population, mostExamined);
  return smallestSurvey({ ...group, missAllowed, falseAlarmAllowed, searchUpTo, progress });
}

function chancesOf(group: SurveyedGroup, { examined, callInfestedFrom }: Plan) {
  const found = surveyChances({ ...group, examined, callInfestedFrom });
  if (!found.ok) return blocked(...found.problems);
  const { finds, clears } = found.value;
  return answered({ callInfestedFrom, finds, clears, missed: 1 - finds, falseAlarm: 1 - clears });
}

/** Cut-points from 1 to twice the plan's, or all around it when it is large. */
function cutPointsNear({ examined, callInfestedFrom }: Plan): readonly number[] {
  const from = Math.max(1, callInfestedFrom - 15);
  const to = Math.min(examined + 1, Math.max(4, Math.min(2 * callInfestedFrom, callInfestedFrom + 15)));
  return Array.from({ length: Math.max(0, to - from + 1) }, (_, index) => from + index);
}
