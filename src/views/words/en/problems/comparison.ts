/** What comparisons, agreement of readers, fits of counts and scores can be in trouble with. */
import { inHundred, some, whole } from "../numbers.ts";
import type { Slots } from "./index.ts";

const n = (slots: Slots, name: string): number => Number(slots[name] ?? 0);
const oneDigit = (value: number): string => String(Number(value.toFixed(1)));

export const comparisonProblems = {
  "table-not-square": () =>
    "Both readers must use the same classes, two or more. Expected: as many rows as columns in the table.",
  "kappa-undefined": () =>
    "Both readers used one class only, so agreement beyond chance cannot be told. Look at the share on which they agree.",
  "one-class-by-a-reader": () => "One reader used one class only, so there is no agreement beyond chance to test.",
  "agreement-without-error": (slots: Slots) =>
    `In ${whole(Number(slots.readings ?? 0))} readings nothing scatters about an agreement of ${slots.estimate}, so its limits close on it. That is no certainty: look at the limits of PABAK, or read more bees.`,
  "class-never-used": (slots: Slots) => `Neither reader used class ${slots.class}.`,
  "no-bee-read-differently": () => "The two readings agree on every bee, so there is nothing to test.",

  "no-more-uneven-than-chance": (slots: Slots) =>
    `Mites sit no more unevenly on the bees than chance gives (mean ${oneDigit(n(slots, "mean"))}, variance ${oneDigit(n(slots, "variance"))}), so no crowding can be reckoned.`,
  "too-few-without-mites": (slots: Slots) =>
    `Only ${inHundred(n(slots, "without"))} in 100 bees are without mites; chance alone gives ${inHundred(n(slots, "byChance"))}. No crowding fits that.`,
  "group-without-mites": () =>
    "One group has no mites at all, so its ratio to the others has no lower end. Compare the shares of infested bees.",
  "fit-did-not-settle": (slots: Slots) => `The fit did not settle in ${slots.rounds} rounds, so no answer is given.`,

  "no-result-leads-to-acting": (slots: Slots) =>
    n(slots, "bees") === 0
      ? "Without a sample, waiting is the better."
      : `Whatever ${some(n(slots, "bees"), "bee shows", "bees show")}, waiting stays the better.`,

  "signed-sum-cancels": (slots: Slots) =>
    `${slots.findings} signs present at once are too many for this sum: its digits are lost. Leave out the weakest.`,
  "cause-was-ruled-out": (slots: Slots) =>
    `In ${some(n(slots, "cases"), "case", "cases")} the cause that held had been given no chance at all, so the mean loss has no value.`,
};
