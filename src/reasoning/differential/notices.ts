/** What must not be missed: notices that fire on a key finding or test, whatever the ranking says. */
import { type ConditionId, type FindingId, mustNotMiss, type TestId } from "../../knowledge/index.ts";
import type { Notice } from "./answer.ts";
import type { FoundResult, ReadCase } from "./input.ts";
import { miteSeenIn, regionalMites } from "./seen-mites.ts";

/** Key findings that a test's "found" says, by what it found; a test need not be weighed to fire a notice. */
const testsLikeFindings: Readonly<Partial<Record<TestId, Readonly<Partial<Record<ConditionId, FindingId>>>>>> = {
  "rope-test": { american_foulbrood: "ropy_thread" },
  "afb-strip": { american_foulbrood: "ropy_thread" },
  "milk-test": { american_foulbrood: "hard_flat_scale" },
  "efb-strip": { european_foulbrood: "twisted_discoloured_larva" },
  "smear-microscopy": { european_foulbrood: "twisted_discoloured_larva", american_foulbrood: "ropy_thread" },
  "bump-test": { tropilaelaps: "fast_small_mites" },
  "uncap-brood": { tropilaelaps: "fast_small_mites", american_foulbrood: "ropy_thread" },
};

/** Whether the result says what the finding says; one that does not name what it found may be any of it. */
function saysFinding({ test, which }: FoundResult, finding: FindingId): boolean {
  const like = Object.entries(testsLikeFindings[test] ?? {});
  return like.some(
    ([condition, says]) => says === finding && (which === null || which.includes(condition as ConditionId)),
  );
}

/** The notices of a case: mites where there should be none, then those of the knowledge in its order. */
export function noticesOf(read: ReadCase): readonly Notice[] {
  return [...exoticMites(read), ...keyFindings(read), ...sporesWithoutSigns(read)];
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

/** Foulbrood spores from the laboratory: background as long as no brood shows signs, and to be reported all the same. */
function sporesWithoutSigns({ found }: ReadCase): readonly Notice[] {
  if (!found.some(({ test }) => test === "culture-pcr")) return [];
  const { condition, doNot, report } = mustNotMiss["rope-american-foulbrood"];
  const act =
    "Tell the competent authority: spores of American foulbrood were found. Then look at every brood comb; without signs in the brood the spores do not explain the loss.";
  return [{ condition, finding: "culture-pcr", findings: ["culture-pcr"], act, doNot, report }];
}

function keyFindings(read: ReadCase): readonly Notice[] {
  const firedBy = (finding: FindingId): FindingId | TestId | null => {
    if (read.present.includes(finding)) return finding;
    return read.found.find((each) => saysFinding(each, finding))?.test ?? null;
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
