/** What must not be missed: notices that fire on a key finding or test, whatever the ranking says. */
import { type FindingId, mustNotMiss, type TestId } from "../../knowledge/index.ts";
import type { Notice } from "./answer.ts";
import type { ReadCase } from "./input.ts";

/** Tests whose "found" says what a key finding says. */
const testsLikeFindings: Readonly<Partial<Record<TestId, FindingId>>> = {
  "rope-test": "ropy_thread",
  "afb-strip": "ropy_thread",
  "efb-strip": "twisted_discoloured_larva",
  "bump-test": "fast_small_mites",
};

/** The notices of a case: mites where there should be none, then those of the knowledge in its order. */
export function noticesOf(read: ReadCase): readonly Notice[] {
  return [...exoticMites(read), ...keyFindings(read)];
}

/** Mites seen in a region that is said to be without them. */
function exoticMites({ region, tests }: ReadCase): readonly Notice[] {
  const seen = [
    { condition: "tracheal_mites", isExotic: region.acarapisWoodi === "absent", count: "positive" },
    { condition: "varroa_pms", isExotic: region.varroa === "absent", count: "mites" },
  ] as const;
  return seen.flatMap(({ condition, isExotic, count }): readonly Notice[] => {
    const test = tests.find((each) => (each[count] ?? 0) > 0);
    if (!isExotic || test === undefined) return [];
    const finding = test.test as TestId;
    const act =
      "Keep what was found in alcohol and call the competent authority today; the reference laboratory decides.";
    return [
      { condition, finding, findings: [finding], act, doNot: ["Do not move bees out of the apiary."], report: true },
    ];
  });
}

function keyFindings(read: ReadCase): readonly Notice[] {
  const firedBy = (finding: FindingId): FindingId | TestId | null => {
    if (read.present.includes(finding)) return finding;
    const test = read.tests.find(
      ({ test, result }) => result === "found" && testsLikeFindings[test as TestId] === finding,
    );
    return test === undefined ? null : (test.test as TestId);
  };
  return Object.values(mustNotMiss).flatMap((notice): readonly Notice[] => {
    const { condition, findings, onlyIf, act, doNot, report } = notice;
    const fired = findings.map(firedBy);
    if (fired.some((each) => each === null)) return [];
    if (onlyIf === "colony-alive" && read.colonyState === "dead") return [];
    if (onlyIf === "not-endemic" && read.region.smallHiveBeetle === "endemic") return [];
    const by = fired as (FindingId | TestId)[];
    const first = by[0];
    return first === undefined ? [] : [{ condition, finding: first, findings: by, act, doNot, report }];
  });
}
