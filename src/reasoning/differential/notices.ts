/** What must not be missed: notices that fire on a key finding or test, whatever the ranking says. */
import {
  cautions,
  firedBy,
  freeRegion,
  isMilder,
  type MustNotMiss,
  mustNotMiss,
  regionalMites,
} from "../../knowledge/index.ts";
import type { Notice } from "./answer.ts";
import type { ReadCase } from "./input.ts";
import { miteSeenIn } from "./seen-mites.ts";

/** The notices of a case: mites where there should be none, then those of the knowledge in its order. */
export const noticesOf = (read: ReadCase): readonly Notice[] => [...exoticMites(read), ...keyFindings(read)];

/** Mites seen in a region that is said to be without them. */
function exoticMites(read: ReadCase): readonly Notice[] {
  return regionalMites.flatMap(({ condition, field }): readonly Notice[] => {
    const finding = miteSeenIn(read, condition);
    if (read.region[field] !== "absent" || finding === null) return [];
    const { act, doNot, report } = freeRegion;
    return [{ condition, finding, findings: [finding], act, doNot, report }];
  });
}

function keyFindings({ present, found, colonyState, region }: ReadCase): readonly Notice[] {
  const record = {
    isPresent: (finding: (typeof present)[number]) => present.includes(finding),
    results: found.map(({ test, which }) => ({ test, result: "found" as const, which: which ?? undefined })),
    ...{ colonyState, region },
  };
  return Object.values(mustNotMiss as Readonly<Record<string, MustNotMiss>>).flatMap((notice): readonly Notice[] => {
    const findings = firedBy(notice, record);
    const [finding] = findings;
    if (finding === undefined) return [];
    const { condition, doNot, milder } = notice;
    const asked =
      milder !== undefined && isMilder(notice, record)
        ? { act: cautions[milder.act].words, report: false }
        : { act: notice.act, report: notice.report };
    return [{ condition, finding, findings, ...asked, doNot }];
  });
}
