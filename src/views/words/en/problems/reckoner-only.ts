/** What only the reckoner and the pages of experience can be in trouble with: pairs, tables, scores. */
import { some } from "../numbers.ts";
import type { Slots } from "./index.ts";

const n = (slots: Slots, name: string): number => Number(slots[name] ?? 0);

export const reckonerProblems = {
  "no-pair-differs": (slots: Slots) =>
    `Before and after are the same in all ${some(n(slots, "pairs"), "pair", "pairs")}, so there is nothing to test.`,
  "changes-tie": () =>
    "Some changes are of the same size, so their ranks have no exact law. Take the test that flips signs.",
  "too-many-pairs-to-list": (slots: Slots) =>
    `${slots.pairs} pairs are too many to list every flip of signs. Up to ${slots.most} it can be done; take the test by ranks or by signs.`,
  "too-many-tables": () =>
    "The groups are too large for Barnard’s and Boschloo’s tests, which would take minutes. Fisher’s test says as much there.",
  "shares-equal": () => "The two shares are the same: no number of bees tells them apart. Give two different shares.",
  "columns-repeat": () => "Two columns of the comparison say the same thing. Leave one of them out.",
  "no-forecasts": () => "There is no case to score. Expected: at least 1.",
  "outcomes-all-alike": () => "All cases came out alike, so true and false cannot be told apart.",
  "outcomes-parted": () => "The stated chances part the outcomes completely, so no slope fits. More cases are needed.",
  "stated-all-alike": () => "All cases were given the same chance, so no slope fits.",
  "recalibration-did-not-settle": () => "The fit of the slope did not settle, so none is given.",
};
