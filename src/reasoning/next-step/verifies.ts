/** Which looks check a sign that was reported. */
import type { FindingId } from "../../knowledge/index.ts";

/**
 * Looks that settle whether a reported sign is one. Crawlers count only if they cannot fly after warming too: so says
 * their definition, and until someone has warmed them the sign stands on a cold morning's word.
 */
export const verifies: Readonly<Partial<Record<FindingId, readonly FindingId[]>>> = {
  revive_on_warming: ["crawlers"],
};
