/** `--programme` of a question: the evidence and settings of a programme's records are sent along. */
import type { Verb } from "../../reasoning/index.ts";
import { answered, blocked, type Result } from "../../units/index.ts";
import { inUseOf, questionUnder } from "../model/index.ts";
import type { Given } from "./arguments.ts";
import { programmeOf, valueFlag, wordsOf } from "./hand-flags.ts";
import type { Io } from "./io.ts";
import { withRecords } from "./records.ts";

/** The flag, for verbs that take evidence of one's own. */
export const ownEvidenceFlag = valueFlag(
  "programme",
  "Programme whose evidence, experience and settings are used. Left out: the published evidence.",
);

/** Whether the verb takes evidence of one's own. */
export const takesEvidence = ({ inputShape }: Verb): boolean => inputShape.properties?.evidence !== undefined;

/**
 * What was asked, with the programme's evidence and settings beneath it where one is named; settings that count for
 * nothing are told. What is wrong with changes and counts the verb tells itself.
 */
export async function withOwnEvidence(
  asked: Readonly<Record<string, unknown>>,
  given: Given,
  io: Io,
): Promise<Result<Readonly<Record<string, unknown>>>> {
  if (wordsOf(given, ownEvidenceFlag.name) === null) return answered(asked);
  const programme = programmeOf(given);
  if (typeof programme !== "string") return blocked(programme);
  const states = await withRecords(programme, io, (store) => store.states());
  if (!states.ok) return states;
  const casebook = states.value;
  const inUse = inUseOf(casebook);
  const question = questionUnder(casebook, inUse);
  const own = typeof asked.thresholds === "object" ? asked.thresholds : {};
  const thresholds = { ...question.thresholds, ...own };
  return answered(
    { ...question, ...asked, ...(Object.keys(thresholds).length === 0 ? {} : { thresholds }) },
    inUse.problems.filter(({ code }) => code === "settings-in-conflict"),
  );
}
