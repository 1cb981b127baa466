/** What must not be missed: notices that fire on a key finding or test, whatever the ranking says. */
import { type FindingId, mustNotMiss, type TestId } from "../../knowledge/index.ts";
import type { Notice } from "./answer.ts";
import type { ReadCase } from "./input.ts";
import { miteSeenIn, regionalMites } from "./seen-mites.ts";

/** Tests whose "found" says what a key finding says; a test need not be weighed to fire a notice. */
const testsLikeFindings: Readonly<Partial<Record<TestId, FindingId>>> = {
  "rope-test": "ropy_thread",
  "afb-strip": "ropy_thread",
  "milk-test": "hard_flat_scale",
  "efb-strip": "twisted_discoloured_larva",
  "smear-microscopy": "twisted_discoloured_larva",
  "bump-test": "fast_small_mites",
};

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
  if (!found.includes("culture-pcr")) return [];
  const { condition, doNot, report } = mustNotMiss["rope-american-foulbrood"];
  const act =
    "Tell the competent authority: spores of American foulbrood were found. Then look at every brood comb; without signs in the brood the spores do not explain the loss.";
  return [{ condition, finding: "culture-pcr", findings: ["culture-pcr"], act, doNot, report }];
}

function keyFindings(read: ReadCase): readonly Notice[] {
  const firedBy = (finding: FindingId): FindingId | TestId | null => {
    if (read.present.includes(finding)) return finding;
    return read.found.find((test) => testsLikeFindings[test] === finding) ?? null;
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
