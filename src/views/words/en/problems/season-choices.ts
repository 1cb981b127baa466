/** What a comparison of choices for a colony can be in trouble with: what it means, what to do. */
import { whole } from "../numbers.ts";
import type { Slots } from "./index.ts";
import { date, n, per100, seasonAction } from "./season-slots.ts";

export const seasonChoiceProblems = {
  "season-choice-name-twice": (slots: Slots) =>
    `“${slots.name}” is the name of another choice already, or of doing nothing. Give each choice a name of its own.`,
  "season-choice-too-early": (slots: Slots) =>
    `${seasonAction(slots, "action")} of “${slots.name}” begins on ${date(slots, "date")}, before the choice is made on ${date(slots, "decideOn")}. Begin it later, or count it among what was done.`,
  "season-count-after-choice": (slots: Slots) =>
    `The count of ${date(slots, "date")} lies after the day of the choice, ${date(slots, "decideOn")}. Choose on that day or later.`,
  "season-decide-outside": (slots: Slots) =>
    `The day of the choice, ${date(slots, "date")}, is to lie after ${date(slots, "from")} and before ${date(slots, "until")}.`,
  "season-date-outside": (slots: Slots) =>
    `${date(slots, "date")} is asked about. Expected: a day from the choice on ${date(slots, "from")} to ${date(slots, "until")}.`,
  "season-line-out-of-range": (slots: Slots) =>
    `${per100(n(slots, "line"))} of 100 bees is no line. Expected: from 0 to 100 of 100.`,
  "season-sure-out-of-range": (slots: Slots) =>
    `${per100(n(slots, "sure"))} of 100 decisions cannot be asked to stand. Expected: from 50 to below 100.`,
  "season-more-bees-out-of-range": (slots: Slots) =>
    `A further count of ${slots.bees} bees cannot be looked ahead to. Expected: a whole number from 1 to ${whole(n(slots, "most"))}.`,
  "season-size-line-unread": (slots: Slots) =>
    `Line ${slots.line}, “${slots.given}”, is no size. Expected: day, frames, and bees or brood, such as 2026-08-25 8 bees.`,
  "season-count-line-unread": (slots: Slots) =>
    `Line ${slots.line}, “${slots.given}”, is no count. Expected: a day, bees with mites, bees read, such as 2026-10-15 6 50.`,
  "season-means-incomplete": (slots: Slots) =>
    `Twelve monthly means are expected, January first; ${slots.found} ${Number(slots.found) === 1 ? "number was" : "numbers were"} read. Fill in the missing months, or leave the field empty.`,
  "season-draws-thin": (slots: Slots) =>
    `A further count of ${whole(n(slots, "bees"))} bees would leave the worth of ${whole(n(slots, "worth"))} draws: what it narrows is rough.`,
};
