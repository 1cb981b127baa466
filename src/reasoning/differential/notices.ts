/** What must not be missed: notices that fire on a key finding or test, whatever the ranking says. */
import { type ConditionId, type FindingId, type MustNotMiss, mustNotMiss, type TestId } from "../../knowledge/index.ts";
import type { Notice } from "./answer.ts";
import type { FoundResult, ReadCase } from "./input.ts";
import { miteSeenIn, regionalMites } from "./seen-mites.ts";

/** The notices of a case: mites where there should be none, then those of the knowledge in its order; a test need not be weighed to fire one. */
export function noticesOf(read: ReadCase): readonly Notice[] {
  return [...exoticMites(read), ...keyFindings(read)];
}

/** Mites seen in a region that is said to be without them. */
function exoticMites(read: ReadCase): readonly Notice[] {
  return regionalMites.flatMap(({ condition, field }): readonly Notice[] => {
    const finding = miteSeenIn(read, condition);
    if (read.region[field] !== "absent" || finding === null) return [];
    const act =
      "Keep what was found in alcohol and call the competent authority today; the reference laboratory decides.";
    return [
      { condition, finding, findings: [finding], act, doNot: ["Do not move bees out of the apiary."], report: true },
    ];
  });
}

function keyFindings(read: ReadCase): readonly Notice[] {
  return Object.values(mustNotMiss as Readonly<Record<string, MustNotMiss>>).flatMap((notice): readonly Notice[] => {
    const { condition, findings, tests, onlyIf, act, doNot, report } = notice;
    const isSeen = findings.length > 0 && findings.every((finding) => read.present.includes(finding));
    const test = read.found.find((each) => tests.includes(each.test) && mayBe(each, condition))?.test;
    const by: readonly (FindingId | TestId)[] = isSeen ? findings : test === undefined ? [] : [test];
    const [first] = by;
    if (first === undefined) return [];
    if (onlyIf === "colony-alive" && read.colonyState === "dead") return [];
    if (onlyIf === "not-endemic" && read.region.smallHiveBeetle === "endemic") return [];
    return [{ condition, finding: first, findings: by, act, doNot, report }];
  });
}

/** Whether the result can be of the condition: one that does not name what it found may be any of it. */
const mayBe = ({ which }: FoundResult, condition: ConditionId): boolean => which === null || which.includes(condition);
