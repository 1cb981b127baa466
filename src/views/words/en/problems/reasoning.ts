/** What the pages say of what was assumed or left out before anything was reckoned. */
import type { Slots } from "./index.ts";

export const caseProblems = {
  "no-latitude": () =>
    "No latitude is on record, so the season is taken as in the north. Add it on the page of the apiary.",
  "finding-in-conflict": (slots: Slots) =>
    `Two people answered “${slots.finding}” differently, so it counts for nothing. Settle it in question 1.`,
};
