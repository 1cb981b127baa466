/** Where the mite itself was seen: by a test that shows it, or by eye. */
import { type FindingId, miteByEye, type RegionalMite, showsMite, type TestId } from "../../knowledge/index.ts";
import type { ReadCase } from "./input.ts";

/** The first test or finding that showed the mite itself; null when none did. Signs are not its mite. */
export function miteSeenIn({ tests, setAside, present }: ReadCase, mite: RegionalMite): TestId | FindingId | null {
  const shown = [...tests, ...setAside].find((each) => showsMite(mite, each));
  if (shown !== undefined) return shown.test as TestId;
  const eye = miteByEye[mite];
  return eye !== undefined && present.includes(eye) ? eye : null;
}
