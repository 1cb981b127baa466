/** `compare-causes`: two causes of one colony side by side, by what was seen and by what was not. */
import * as z from "zod";
import { answered, blocked, problem } from "../../units/index.ts";
import { compareCauses as compared } from "../differential/index.ts";
import { caseFields, anyCondition as condition, anyFindingOrTest as findingOrTest } from "./differential.ts";
import { evidenceFrom } from "./own-evidence.ts";
import { verb } from "./verb.ts";

const input = z
  .strictObject({
    ...caseFields,
    first: condition.describe("A cause."),
    second: condition.describe("Another cause."),
  })
  .refine(({ first, second }) => first !== second, { message: "another cause than the first", path: ["second"] });

const output = z.strictObject({
  first: condition,
  second: condition,
  before: z.number().describe("log2 of the odds of the first alone against the second alone, before anything was seen"),
  now: z.number().describe("the same with all that was seen"),
  seen: z
    .array(
      z.strictObject({
        id: findingOrTest,
        kind: z.enum(["sign", "circumstance", "test"]),
        isPositive: z.boolean(),
        bits: z.number(),
      }),
    )
    .describe("what moved them, strongest first: above 0 towards the first cause"),
  unseen: z
    .array(
      z.strictObject({
        id: findingOrTest,
        kind: z.enum(["look", "test"]),
        isCount: z.boolean(),
        bitsIfFound: z.number().describe("of a count: of the likeliest under the first cause"),
        bitsIfNot: z.number().describe("of a count: of the likeliest under the second cause"),
        parts: z.number().describe("bits expected about which of the two it is, at even odds; 1 parts them for sure"),
        minutes: z.number(),
      }),
    )
    .describe("what would part them, best first by what it tells a minute"),
});

export const compareCauses = verb({
  name: "compare-causes",
  family: "case",
  summary: "Two causes side by side: what parts them, and what would.",
  assumptions: [
    "Each cause as if it alone were the matter. That both or neither is there is not asked: see `differential`.",
    "The same grades as the ranking, mostly experts' judgement, at their stated values: no ranges are drawn.",
    "Findings that go together count once, as in the ranking.",
  ],
  source: "Weights of evidence: Good 1950; the network as in `differential`.",
  example: {
    season: "spring",
    findings: { crawlers: "present", k_wing: "present", trembling: "absent" },
    first: "tracheal_mites",
    second: "chronic_paralysis",
  },
  input,
  output,
  run: ({ first, second, evidence: own, ownFindings = {}, ...asked }) => {
    const { evidence, problems } = evidenceFrom(own);
    for (const [field, cause] of Object.entries({ first, second })) {
      if (evidence.conditionIds.includes(cause)) continue;
      const expected = "the id of a condition of the evidence";
      return blocked(problem("field-unfit", "blocked", field, { given: cause, expected }));
    }
    const input = { ...asked, findings: { ...asked.findings, ...ownFindings } };
    const answer = compared(input, first, second, evidence);
    return answer.ok ? answered(answer.value, [...problems, ...answer.problems]) : answer;
  },
});
