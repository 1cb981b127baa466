/** A case as it is reckoned: read, and where it contradicts itself, resolved with a word. */
import { type Evidence, publishedEvidence, type RegionalMite, regionalMites } from "../../knowledge/index.ts";
import { answered, type Problem, problem, type Result } from "../../units/index.ts";
import type { AnyInput, ReadCase } from "./input.ts";
import { longDeadDays } from "./judgements.ts";
import { withoutIdleAbsence } from "./possible-looks.ts";
import { readInput } from "./read-input.ts";
import { miteSeenIn } from "./seen-mites.ts";

/** The case as it was given, and as it is reckoned. */
export interface CheckedCase {
  readonly given: ReadCase;
  readonly checked: ReadCase;
}

/** The case for whoever reckons with it, or every problem of the input; what was resolved is told. */
export function checkedCase(input: AnyInput, evidence: Evidence = publishedEvidence): Result<CheckedCase> {
  const read = readInput(input, evidence);
  if (!read.ok) return read;
  const problems = [...read.problems];
  return answered(
    { given: read.value, checked: contradictionsResolved(withoutIdleAbsence(read.value, problems), problems) },
    problems,
  );
}

/** What a region is taken for once its mite was seen in it. */
const asFound: Readonly<Record<RegionalMite, Partial<ReadCase["region"]>>> = {
  tracheal_mites: { acarapisWoodi: "unknown" },
  varroa_pms: { varroa: "present" },
};

/** Mites seen where there should be none outweigh the map: the region is then taken as it was found, and it is said. */
function contradictionsResolved(read: ReadCase, problems: Problem[]): ReadCase {
  if (read.colonyState === "dead" && (read.daysSinceDeath ?? 0) > longDeadDays) {
    const slots = { days: read.daysSinceDeath ?? 0 };
    problems.push(problem("dead-long-ago", "warned", "colony.daysSinceDeath", { given: read.daysSinceDeath, slots }));
  }
  let region = read.region;
  for (const { condition, field } of regionalMites) {
    if (region[field] !== "absent" || miteSeenIn(read, condition) === null) continue;
    problems.push(
      problem("exotic-found", "warned", `region.${field}`, {
        given: "absent",
        expected: "call the competent authority before anything is moved: mites were seen where there should be none",
        slots: { condition },
      }),
    );
    region = { ...region, ...asFound[condition] };
  }
  return { ...read, region };
}
