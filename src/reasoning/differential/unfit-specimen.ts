/** Results that cannot be of what their test asks for: kept or taken otherwise, or of a colony that was dead by then. */
import { needsLiveBees, type TakenFrom, type TestFact, type TestId, tests } from "../../knowledge/index.ts";
import { type Day, daysBetween, isDay, type Problem, problem } from "../../units/index.ts";
import type { DifferentialInput, TestInput } from "./input.ts";
import { words } from "./wrong-value.ts";

/** The look that the results stand beside. */
export type Look = Pick<DifferentialInput, "date" | "colony">;

/** A place as the problem names it. */
const placeNames: Readonly<Record<TakenFrom, string>> = {
  S: "the super (S)",
  E: "the honey edge (E)",
  B: "the brood (B)",
  F: "the entrance (F)",
  D: "bees found dead (D)",
};

/** A specimen that cannot answer this test: the result is kept and counts for nothing; each reason is told. */
export function isUnfit(
  id: TestId,
  test: TestInput,
  { path, problems, look }: { readonly path: string; readonly problems: Problem[]; readonly look: Look },
): boolean {
  const reasons = [
    keptOtherwise(id, test, path),
    takenElsewhere(id, test, path),
    madeOnTheDead(id, test, { path, look }),
  ];
  const told = reasons.filter((each) => each !== null);
  problems.push(...told);
  return told.length > 0;
}

function keptOtherwise(id: TestId, { kept }: TestInput, path: string): Problem | null {
  const { unfit, specimen }: TestFact = tests[id];
  if (kept === undefined || unfit?.kept.includes(kept) !== true) return null;
  return problem("specimen-unfit", "warned", `${path}.kept`, {
    given: kept,
    expected: specimen,
    slots: { test: id, kept, why: unfit.why },
  });
}

function takenElsewhere(id: TestId, { takenFrom }: TestInput, path: string): Problem | null {
  const { places }: TestFact = tests[id];
  if (takenFrom === undefined || !Object.hasOwn(placeNames, takenFrom)) return null;
  if (places === undefined || places.from.includes(takenFrom)) return null;
  return problem("specimen-unfit", "warned", `${path}.takenFrom`, {
    given: placeNames[takenFrom],
    expected: words(places.from.map((each) => placeNames[each])),
    slots: { test: id, place: placeNames[takenFrom], why: places.why },
  });
}

/** A test that only live bees allow, told of a dead colony; of a day up to the death it was made while the bees lived. */
function madeOnTheDead(
  id: TestId,
  { date }: TestInput,
  { path, look }: { readonly path: string; readonly look: Look },
): Problem | null {
  const { state, daysSinceDeath } = look.colony ?? {};
  if (state !== "dead" || !needsLiveBees.includes(id)) return null;
  if (isDayGiven(date) && isDayGiven(look.date) && daysSinceDeath !== undefined)
    if (daysBetween(date, look.date) >= daysSinceDeath) return null;
  return problem("test-needs-live-bees", "warned", `${path}.date`, {
    given: date ?? null,
    expected: "a day no later than the death, which the day of the look and the days since the death tell",
    slots: { test: id },
  });
}

/** Whether it is a day at all. */
export const isDayGiven = (date: unknown): date is Day => typeof date === "string" && isDay(date);
