/** What the pages say of a case that was put to the differential: what was assumed, left out, or cannot be. */
import { day, inHundred, list } from "../numbers.ts";
import type { Slots } from "./index.ts";

const weaknesses: Readonly<Record<string, string>> = {
  summer: "taken in summer",
  "dead-when-taken": "the bees were dead when taken",
  "after-control": "soon after a treatment",
  "few-bees": "few bees",
  "out-of-season": "not the season for it",
  "wrong-bees": "not the bees that this test asks for",
  "kept-dry": "the bees were kept dry",
  late: "days passed before the bees were frozen",
  "freezing-unsaid": "nobody said how soon the bees were frozen",
};

const keepings: Readonly<Record<string, string>> = {
  "ethanol-70": "in alcohol",
  frozen: "in the freezer",
  fresh: "fresh",
  dry: "dry",
};

export const caseProblems = {
  "mites-in-sister": (slots: Slots) =>
    `Tracheal mites were found in ${slots.colony} of this apiary on ${day(String(slots.on))}, so they count as found around the other colonies. Write it down at the apiary; their bees are worth opening.`,
  "lift-not-weighed": (slots: Slots) =>
    `The stop for “${slots.what}” was lifted on ${day(String(slots.on))}, laboratory reference ${slots.reference}. This ranking does not know what the laboratory found: write it down at question 4 before you go by it.`,
  "no-latitude": () =>
    "No latitude is on record, so the season is taken as in the north. Add it on the page of the apiary.",
  "region-in-conflict": () =>
    "Two people describe the region differently; neither counts until one of them writes it anew.",
  "finding-in-conflict": (slots: Slots) =>
    `Two people answered “${slots.finding}” differently, so it counts for nothing. Settle it in question 1.`,
  "weak-answer": (slots: Slots) =>
    `The test “${slots.test}” weighs less: ${list(
      String(slots.reasons ?? "")
        .split(" ")
        .map((reason) => weaknesses[reason] ?? reason.replaceAll("-", " ")),
    )}.`,
  "dead-long-ago": (slots: Slots) =>
    `The bees have been dead for ${slots.days} days: signs on them fade, mites leave them, and moth, mould and robbers come. No sign is weighed less for it here: a fresh one tells more.`,
  "exotic-found": () => "Mites were found where none should be. Call the competent authority before anything is moved.",
  "evidence-contradicts-model": () =>
    "No set of causes known here could bring what was seen. Look again at what was answered.",
  "exclusive-findings": () => "Two of the findings cannot both be present. Set one of them back to not looked.",
  "findings-contradict": (slots: Slots) =>
    `One look cannot show both “${slots.finding}” and “${slots.other}”. Both are counted; set back what is a slip or of another day.`,
  "seen-while-alive": (slots: Slots) =>
    `Only live bees show “${slots.finding}”: it is counted as seen before the colony died.`,
  "seen-after-death": (slots: Slots) =>
    `Only live bees show this, and it was answered for a day after the colony died on ${day(String(slots.on))}: ${slots.findings}. It counts for nothing; set it back at question 1, or mend the day.`,
  "absent-without-brood": (slots: Slots) =>
    `There was no brood to look at, so the answer “absent” counts for nothing: ${slots.findings}.`,
  "unknown-finding": (slots: Slots) =>
    `The finding ${slots.finding ?? ""} is not known to this version.`.replace("  ", " "),
  "season-and-date-differ": () => "The season and the day do not agree. Check the day and the latitude.",
  "threshold-below-half": (slots: Slots) =>
    `A cause is named here from ${inHundred(Number(slots.leading))} in 100 on: it may be less likely than not.`,
  "thresholds-crossed": (slots: Slots) =>
    `What follows other causes may be named here while a cause of up to ${inHundred(Number(slots.open))} in 100 is open, though ${inHundred(Number(slots.leading))} in 100 is enough to be named.`,
  "test-cannot-be": (slots: Slots) =>
    `The result of “${slots.test}” of ${day(String(slots.on))} cannot be, so it counts for nothing. Expected: ${slots.expected}. Take it back at question 4 and write it anew.`,
  "test-unknown": (slots: Slots) =>
    `The test “${slots.test}” of ${day(String(slots.on))} is not known to this version: it is kept and counts for nothing here.`,
  "test-after-look": (slots: Slots) =>
    `The result of “${slots.test}” of ${day(String(slots.on))} is ${slots.days} days later than the look of ${day(String(slots.look))}. It is weighed beside the signs of that look. Look again, or mend the day if it is a slip.`,
  "test-too-old": (slots: Slots) =>
    `The result of “${slots.test}” of ${day(String(slots.on))} is ${slots.days} days older than the last look: the colony has other bees since, so it counts for nothing here.`,
  "test-long-before": (slots: Slots) =>
    `The result of “${slots.test}” of ${day(String(slots.on))} is ${slots.days} days older than the last look. It is weighed as if it were of now; take it back at question 4 if the colony is another since.`,
  "wrong-value": (slots: Slots) => `${slots.field} has a value that does not fit.`,
  "test-not-weighed": (slots: Slots) =>
    `No figures are known for the test “${slots.test}”, so its result is kept and counts for nothing here.`,
  "test-needs-recovery": (slots: Slots) =>
    `How many mites the test “${slots.test}” brings down differs too much: it counts once the laboratory has measured its own.`,
  "test-needs-which": (slots: Slots) => `The test “${slots.test}” found something; say what, and it will count.`,
  "field-not-of-test": (slots: Slots) =>
    `The test “${slots.test}” has no “${slots.field}”; the value ${slots.given} was left out.`,
  "specimen-unfit": (slots: Slots) =>
    slots.place === undefined
      ? `The test “${slots.test}” cannot be read from bees kept ${keepings[String(slots.kept)] ?? slots.kept}: ${slots.why}. Its result is kept and counts for nothing.`
      : `The test “${slots.test}” cannot be of ${slots.place}: ${slots.why}. Its result is kept and counts for nothing.`,
  "test-needs-live-bees": (slots: Slots) =>
    `The test “${slots.test}” needs live bees, and the colony is dead. Its result is kept and counts for nothing unless its day is no later than the death.`,
  "test-unclear": (slots: Slots) => `The result of “${slots.test}” is unclear and counts for nothing.`,
  "sensitivity-not-given": () => "No sensitivity entered; nothing is corrected for missed mites.",
};
