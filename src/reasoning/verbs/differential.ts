/** `differential`: what could explain a failing colony, several causes at once, with reasons and the next steps. */
import * as z from "zod";
import { conditionIds, findingIds, testIds } from "../../knowledge/index.ts";
import { answered } from "../../units/index.ts";
import { differentialWithNext } from "../next-step/index.ts";
import { count, day, season } from "./fields.ts";
import { evidenceFrom, ownEvidence } from "./own-evidence.ts";
import { verb } from "./verb.ts";

const tuple = <T extends string>(ids: readonly T[]) => ids as readonly [T, ...T[]];
const finding = z.enum(tuple(findingIds));
/** What a programme added; only where the question brings evidence of its own. */
const ownId = z.string().regex(/^own_[a-z0-9]+(_[a-z0-9]+)*$/);
const findingOrTest = z.union([finding, z.enum(tuple(testIds))]);
const condition = z.enum(tuple(conditionIds));
export const anyFindingOrTest = z.union([finding, z.enum(tuple(testIds)), ownId]);
export const anyCondition = z.union([condition, ownId]);

const region = z.strictObject({
  varroa: z.enum(["present", "absent"]).exactOptional().describe("Left out: present."),
  acarapisWoodi: z.enum(["found", "unknown", "absent"]).exactOptional().describe("Tracheal mites. Left out: unknown."),
  smallHiveBeetle: z.enum(["absent", "present", "endemic"]).exactOptional().describe("Left out: absent."),
  tropilaelaps: z.enum(["absent", "present", "endemic"]).exactOptional().describe("Left out: absent."),
  vespa: z.enum(["absent", "established"]).exactOptional().describe("Yellow-legged hornet. Left out: absent."),
});

const test = z.strictObject({
  test: z.enum(tuple(testIds)).describe("Id of the test."),
  positive: count.exactOptional().describe("Bees found positive."),
  examined: count.exactOptional().describe("Bees that could be read."),
  unreadable: count.exactOptional().describe("Further bees that could not be read."),
  mites: count.exactOptional(),
  bees: count.exactOptional(),
  recovery: z
    .number()
    .gt(0)
    .lte(1)
    .exactOptional()
    .describe("Share of the mites that the wash brings down, where known."),
  sporesMillionsPerBee: z.number().min(0).max(1000).exactOptional(),
  result: z.enum(["found", "none-found", "unclear"]).exactOptional(),
  which: z
    .array(condition)
    .min(1)
    .exactOptional()
    .describe("What was found, where the test can find several; of viruses those in the highest class."),
  sequenced: z.boolean().exactOptional().describe("The product of the PCR for tracheal mites was sequenced."),
  harmfulDose: z.boolean().exactOptional().describe("The residue on the bees reaches a dose that harms them."),
  daysUntilFrozen: z.number().min(0).exactOptional().describe("Days from death to the freezer."),
  kept: z.enum(["ethanol-70", "frozen", "fresh", "dry"]).exactOptional().describe("How the bees were kept."),
  date: day.exactOptional(),
  takenFrom: z
    .enum(["S", "E", "B", "F", "D"])
    .exactOptional()
    .describe("S super, E honey edge, B brood, F entrance, D dead."),
  aliveWhenTaken: z.boolean().exactOptional(),
  daysSinceControl: z.number().min(0).exactOptional(),
  note: z.string().max(20_000).exactOptional().describe("Kept by the sender; not weighed."),
});

/** A case of one colony, as every verb about causes takes it. */
export const caseFields = {
  season: season.exactOptional().describe("Season at the colony; or give date and latitude."),
  date: day.exactOptional().describe("Day of the look; needs a latitude."),
  latitude: z.number().min(-90).max(90).exactOptional().describe("Degrees, south negative."),
  colony: z
    .strictObject({
      state: z.enum(["alive", "dying", "dead"]),
      daysSinceDeath: z.number().min(0).exactOptional().describe("Only for a dead colony."),
    })
    .exactOptional()
    .describe("Left out: alive."),
  region: region.exactOptional(),
  findings: z
    .partialRecord(finding, z.enum(["present", "absent", "not-looked"]))
    .default({})
    .describe("Finding id and what was seen. Not looked for is not absent."),
  ownFindings: z
    .record(ownId, z.enum(["present", "absent", "not-looked"]))
    .exactOptional()
    .describe("Findings that the programme added by `evidence`."),
  tests: z.array(test).max(200).exactOptional().describe("Results of tests."),
  nothingWrong: z
    .number()
    .gt(0)
    .lt(1)
    .exactOptional()
    .describe("Prior probability that nothing is wrong; a programme may set its own."),
  thresholds: z
    .strictObject({
      leading: z
        .number()
        .gt(0)
        .lt(1)
        .exactOptional()
        .describe("The low end of a range must exceed it before a cause is named."),
      open: z.number().gt(0).lt(1).exactOptional().describe("A primary cause at or above it is open."),
    })
    .exactOptional(),
  evidence: ownEvidence
    .exactOptional()
    .describe("What a programme changed and learnt. Left out: the published evidence."),
  draws: z.number().int().min(40).max(5000).exactOptional().describe("Draws behind the ranges. Left out: 400."),
  seed: z.number().int().min(0).exactOptional().describe("Seed of the draws. Left out: 1."),
};

const input = z.strictObject(caseFields);

const probability = z.number();
const reasons = z.array(z.strictObject({ finding: anyFindingOrTest, bits: z.number() }));
const range = { posterior: probability, low: probability, high: probability };

const output = z.strictObject({
  conditions: z
    .array(
      z.strictObject({
        id: anyCondition,
        role: z.string(),
        ...range,
        level: z.strictObject({ none: probability, background: probability, clinical: probability }).exactOptional(),
        for: reasons,
        against: reasons,
      }),
    )
    .describe(
      "every condition, likeliest first; low and high are the 5 and 95 % points of the draws; bits of a reason are log2 odds with it minus without it",
    ),
  groups: z.array(z.strictObject({ id: z.string(), ...range })).describe("roll-up groups: any of their members"),
  nothingWrong: probability.describe("posterior probability that nothing is wrong"),
  verdict: z
    .strictObject({
      kind: z.enum(["cannot-tell", "leading"]),
      condition: anyCondition.exactOptional(),
      group: z.string().exactOptional(),
      because: z.string(),
    })
    .describe("a leading cause, or that none can be named yet, and why"),
  mustNotMiss: z
    .array(
      z.strictObject({
        condition,
        finding: findingOrTest,
        findings: z.array(findingOrTest),
        act: z.string(),
        doNot: z.array(z.string()),
        report: z.boolean(),
      }),
    )
    .describe("what must be acted on whatever the rank"),
  next: z
    .array(
      z.strictObject({
        step: anyFindingOrTest,
        kind: z.enum(["look", "test"]),
        bits: z.number(),
        decisionGain: z.number(),
        minutes: z.number(),
        cost: z.number().int(),
        days: z.strictObject({ low: z.number(), high: z.number() }).describe("until the result is in"),
        because: z.enum(["checks-what-was-reported", "the-verdict-waits-for-it", "worth-the-effort"]),
      }),
    )
    .describe(
      "every look and test that is open, best first; decisionGain in shares of one colony's value by the default loss table, cost in cost class 1 to 4. Beside a notice with `report` this is for whom it is reported to: no advice until a stop is lifted",
    ),
  changes: z
    .array(
      z.strictObject({
        step: anyFindingOrTest,
        kind: z.enum(["look", "test"]),
        result: z.enum(["present", "absent", "found", "none-found", "at-least", "at-most"]),
        made: test.nullable(),
        chance: z.number(),
        condition: anyCondition,
        posterior: probability,
        instead: anyCondition,
        left: probability,
      }),
    )
    .describe(
      "results not in yet that would put another cause first: the cause and its probability then, the one that comes first now and what would be left of it; `made` is the test with that result, of a count (at-least, at-most) with the nearest one that does so",
    ),
  visit: z
    .strictObject({
      steps: z.array(
        z.strictObject({
          step: anyFindingOrTest,
          kind: z.enum(["look", "test"]),
          minutes: z.number(),
          bitsTogether: z.number(),
        }),
      ),
      bits: z.number(),
      minutes: z.number(),
    })
    .describe("the looks and field tests for one visit of 20 minutes, what they have in common counted once"),
  neglectedMass: z.number().describe("bound on the posterior mass left out; 0 when all sets of causes are in"),
  nextUncovered: z.number().describe("posterior mass of the sets of causes that the bits of `next` leave out"),
  knowledge: z
    .strictObject({ version: z.string(), judgedShare: z.number() })
    .describe("version of the knowledge, and the share of the pairs used that rest on judgement alone"),
});

export const differential = verb({
  name: "differential",
  family: "case",
  summary: "What could explain a failing colony, several causes at once.",
  assumptions: [
    "One colony. Causes are present together or not; their prior odds go by season and region.",
    "Grades of how often a cause shows a sign are mostly experts' judgement: each posterior carries a range.",
    "Not looked for is not absent. An agent can be present without being the cause.",
    "Signs alone never name tracheal mites: that takes opened tracheae.",
  ],
  source:
    "Noisy-OR network over cited facts: Pearl 1988; Shwe et al. 1991; Heckerman 1989. Facts by source in the knowledge.",
  example: {
    season: "winter",
    colony: { state: "dying" },
    findings: { crawlers: "present", k_wing: "present", faeces_inside: "absent" },
    tests: [
      { test: "tracheal-dissection", positive: 17, examined: 50 },
      { test: "varroa-wash", mites: 2, bees: 300 },
    ],
  },
  input,
  output,
  run: ({ evidence: own, ownFindings = {}, ...asked }) => {
    if (own === undefined && Object.keys(ownFindings).length === 0) return differentialWithNext(asked);
    const { evidence, problems } = evidenceFrom(own);
    const answer = differentialWithNext({ ...asked, findings: { ...asked.findings, ...ownFindings } }, evidence);
    return answer.ok ? answered(answer.value, [...problems, ...answer.problems]) : answer;
  },
});
