/** What the pages say of a case that was put to the differential: what was assumed, left out, or cannot be. */
import { list } from "../numbers.ts";
import type { Slots } from "./index.ts";

const weaknesses: Readonly<Record<string, string>> = {
  summer: "taken in summer",
  "dead-when-taken": "the bees were dead when taken",
  "after-control": "soon after a treatment",
  "few-bees": "few bees",
};

export const caseProblems = {
  "no-latitude": () =>
    "No latitude is on record, so the season is taken as in the north. Add it on the page of the apiary.",
  "finding-in-conflict": (slots: Slots) =>
    `Two people answered “${slots.finding}” differently, so it counts for nothing. Settle it in question 1.`,
  "weak-answer": (slots: Slots) =>
    `This test weighs less: ${list(
      String(slots.reasons ?? "")
        .split(" ")
        .map((reason) => weaknesses[reason] ?? reason.replaceAll("-", " ")),
    )}.`,
  "dead-long-ago": (slots: Slots) =>
    `The bees have been dead for ${slots.days} days: signs on them fade, and mites leave dead hosts. What was found weighs less.`,
  "exotic-found": () => "Mites were found where none should be. Call the competent authority before anything is moved.",
  "evidence-contradicts-model": () =>
    "No set of causes known here could bring what was seen. Look again at what was answered.",
  "exclusive-findings": () => "Two of the findings cannot both be present. Set one of them back to not looked.",
  "unknown-finding": (slots: Slots) =>
    `The finding ${slots.finding ?? ""} is not known to this version.`.replace("  ", " "),
  "season-and-date-differ": () => "The season and the day do not agree. Check the day and the latitude.",
  "wrong-value": (slots: Slots) => `${slots.field} has a value that does not fit.`,
  "test-not-weighed": (slots: Slots) =>
    `No figures are known for the test ${slots.test}, so its result is kept and counts for nothing here.`,
  "test-unclear": (slots: Slots) => `The result of ${slots.test} is unclear and counts for nothing.`,
  "sensitivity-not-given": () => "No sensitivity entered; nothing is corrected for missed mites.",
};
