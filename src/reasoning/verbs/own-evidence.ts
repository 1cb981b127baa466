/** Evidence of a programme's own, as it is sent with a question: changes, counts of its cases, what they may change. */
import * as z from "zod";
import { experienceUnused } from "../../casebook/index.ts";
import {
  changedEvidence,
  type Evidence,
  type EvidenceChange,
  type NotedChange,
  publishedEvidence,
} from "../../knowledge/index.ts";
import { answered, type Problem, type Result } from "../../units/index.ts";
import { experienceCaveats, noCounts, withExperience } from "../experience/index.ts";
import { day, season } from "./fields.ts";
import { readInput } from "./read-input.ts";
import type { Shape } from "./shape.ts";

const id = z.string().min(1).max(100);
const text = z.string().trim().min(1).max(4000);
/** A rate that is none is told by the rules of the evidence, with the place it is about. */
const rate = z.number();
const bySeason = z.strictObject({ winter: rate, spring: rate, summer: rate, autumn: rate });
const outOf = z.number().describe("Colonies that the source looked at.");

const change = z.discriminatedUnion("what", [
  z.strictObject({
    ...{ what: z.literal("source"), source: id, title: text, authors: text.exactOptional() },
    ...{ year: z.number().int().exactOptional(), where: text, read: text },
  }),
  z.strictObject({
    ...{ what: z.literal("condition"), condition: id, term: text },
    role: z.enum(["cause", "secondary", "syndrome", "normal"]),
    rollUp: z.enum(["varroa_and_viruses", "queen_trouble", "nosema", "brood_disease", "normal"]).nullable(),
    urgency: z.enum(["same-day", "within-a-week", "within-a-month", "next-season"]),
    prior: bySeason.exactOptional(),
  }),
  z.strictObject({
    ...{ what: z.literal("finding"), finding: id, term: text, kind: z.enum(["sign", "circumstance"]) },
    ...{ group: id.nullable(), question: text, lookFor: text },
    ...{ minutes: z.number().min(0), healthy: bySeason.exactOptional() },
  }),
  z.strictObject({
    ...{ what: z.literal("frequency"), condition: id, finding: id, rate, suppresses: z.boolean() },
    outOf: outOf.exactOptional(),
  }),
  z.strictObject({ what: z.literal("prior"), condition: id, season, rate, outOf: outOf.exactOptional() }),
  z.strictObject({ what: z.literal("healthy-rate"), finding: id, season, rate, outOf: outOf.exactOptional() }),
]);

const seen = z
  .strictObject({ present: z.number().min(0), looked: z.number().min(0).max(1_000_000) })
  .refine(({ present, looked }) => present <= looked, { message: "present must be at most looked" });
const counted = z.record(id, seen);

const changes = z
  .array(
    z.strictObject({
      change,
      citation: z.strictObject({
        source: id.nullable().describe("Key of a source; null where there is none."),
        at: text,
        read: z.enum(["seen", "memory", "common-practice", "judgement", "computed"]),
      }),
      on: day,
      entry: id.exactOptional(),
      author: text.exactOptional(),
    }),
  )
  .max(2000);

/** The member `evidence` of a question. */
export const ownEvidence = z.strictObject({
  changes: changes
    .exactOptional()
    .describe("What a programme added to the evidence or changed in it, each with its citation."),
  use: z
    .strictObject({
      frequencies: z.boolean(),
      healthyRates: z.boolean(),
      priors: z.boolean(),
      strength: z.number().min(0.1).max(10).describe("How many times its own counts the start is worth."),
    })
    .exactOptional()
    .describe("What the counts may change. Left out: nothing."),
  counts: z
    .strictObject({
      frequencies: z.record(id, counted),
      healthy: z.strictObject({ winter: counted, spring: counted, summer: counted, autumn: counted }),
      priors: z.record(
        id,
        z.strictObject({
          ...{ winter: seen.exactOptional(), spring: seen.exactOptional() },
          ...{ summer: seen.exactOptional(), autumn: seen.exactOptional() },
        }),
      ),
    })
    .exactOptional()
    .describe("What closed cases showed, as `experience` prints it."),
});

/** What a question brings with it: changes, counts, and what the counts may change. */
export type OwnEvidence = z.output<typeof ownEvidence>;

/** The evidence that a question brings with it, and what of it was left out. */
export function evidenceFrom(own: OwnEvidence | undefined): {
  readonly evidence: Evidence;
  readonly problems: readonly Problem[];
} {
  const { changes = [], use = experienceUnused, counts = noCounts } = own ?? {};
  const { evidence, problems } = changedEvidence(publishedEvidence, changes.map(notedChange));
  const learnt = withExperience(evidence, counts, use);
  return { evidence: learnt, problems: [...problems, ...experienceCaveats({ start: evidence, learnt, counts, use })] };
}

const notedChange = ({ change: what, citation, on, entry = "", author = "" }: z.output<typeof changes>[number]) => ({
  ...{ change: what as EvidenceChange, citation, on, entry, author },
});

/** A list of changes as it came from outside, or what does not fit. */
export function changesFrom(raw: unknown): Result<readonly NotedChange[]> {
  const read = readInput(changes, z.toJSONSchema(changes, { io: "input" }) as Shape, raw);
  return read.ok ? answered(read.value.map(notedChange)) : read;
}
