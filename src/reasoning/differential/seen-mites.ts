/** Where the mite itself was seen: by a test that counts it, or by eye. */
import type { FindingId, TestId } from "../../knowledge/index.ts";
import type { ReadCase } from "./input.ts";
import { weighedTests } from "./weighed-tests.ts";

/** Agents whose absence from a region can be said, and the region's field that says it. */
export const regionalMites = [
  { condition: "tracheal_mites", field: "acarapisWoodi" },
  { condition: "varroa_pms", field: "varroa" },
] as const;

/** An agent whose absence from a region can be said. */
export type RegionalMite = (typeof regionalMites)[number]["condition"];

/** The first test or finding that showed the mite itself, a sequenced PCR too; null when none did. Signs are not its mite. */
export function miteSeenIn({ tests, present }: ReadCase, mite: RegionalMite): TestId | FindingId | null {
  const model = mite === "tracheal_mites" ? "tracheal-count" : "varroa-count";
  const counted = tests.find((each) => {
    const count = model === "tracheal-count" ? each.positive : each.mites;
    return weighedTests[each.test as TestId]?.model === model && (count ?? 0) > 0;
  });
  if (counted !== undefined) return counted.test as TestId;
  const named = tests.find(({ test, result, which, sequenced }) =>
    mite === "tracheal_mites"
      ? test === "pooled-pcr" && result === "found" && sequenced === true
      : test === "uncap-brood" && result === "found" && which?.includes(mite) === true,
  );
  if (named !== undefined) return named.test as TestId;
  return mite === "varroa_pms" && present.includes("varroa_on_adults") ? "varroa_on_adults" : null;
}
