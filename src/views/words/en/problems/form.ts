/** What can be wrong with a field of a form. */
import { capital, day, ended } from "../numbers.ts";
import type { Slots } from "./index.ts";

const unit = (slots: Slots) => (slots.unit ? ` ${slots.unit}` : "");

/** Where in the lines of a field. */
const place = ({ line, member, at }: Slots) =>
  at ? `Number ${at}: ` : line ? `Line ${line}${member ? `, ${member}` : ""}: ` : "";

/** The numbers that a field takes. */
function range({ min, max, above, below }: Slots): string {
  const low = above === undefined ? (min === undefined ? "" : `${min} or more`) : `above ${above}`;
  const high = below === undefined ? (max === undefined ? "" : `${max} at most`) : `below ${below}`;
  if (min !== undefined && max !== undefined) return ` from ${min} to ${max}`;
  return low || high ? `, ${[low, high].filter((part) => part !== "").join(" and ")}` : "";
}

export const formProblems = {
  "which-without-find": () => "This says what was found, and the result says that nothing was. Change one of them.",
  "find-without-which": () => "Something was found, and it is not said what. Tick at least one.",
  "field-missing": (slots: Slots) =>
    `${place(slots)}${place(slots) ? "a value is missing here." : "Nothing is entered here; it is needed."}`,
  "field-unfit": (slots: Slots) =>
    slots.kind
      ? `${place(slots)}${slots.given} does not fit. Expected: a ${slots.kind === "integer" ? "whole number" : "number"}${range(slots)}.`
      : slots.items
        ? `Too few or too many values. Expected: ${slots.items} or more, each fit for it.`
        : capital(`${place(slots)}this does not fit. Expected: ${slots.expected}.`),
  "fields-disagree": (slots: Slots) =>
    capital(`${place(slots)}this does not go with the rest. Expected: ${slots.expected}.`),
  "field-unknown": (slots: Slots) => `${place(slots)}more values than the line has. Expected: as the hint says.`,
  "closing-under-stop": (slots: Slots) =>
    `Stop and report stands and nobody is recorded as told of it: ${ended(String(slots.what))} Write down who was told, or that it was lifted, first.`,
  "told-before-seen": (slots: Slots) =>
    `${day(String(slots.given))} lies before the last answer that is reported, of ${day(String(slots.seen))}. Expected: that day or a later one.`,
  "lifted-before-seen": (slots: Slots) =>
    `${day(String(slots.given))} lies before the last answer that the stop follows from, of ${day(String(slots.seen))}. Expected: that day or a later one.`,
  "died-after-seen-dead": (slots: Slots) =>
    `${day(String(slots.given))} lies after the day the colony was seen dead, ${day(String(slots.seen))}. Expected: that day or an earlier one.`,
  "field-empty": () => "Nothing is entered here; it is needed.",
  "field-not-number": (slots: Slots) =>
    slots.min === undefined
      ? `“${slots.given}” is not a number. Expected: figures, with blanks between several.`
      : `“${slots.given}” is not a number. Expected: from ${slots.min} to ${slots.max}${unit(slots)}.`,
  "number-in-two-ways": (slots: Slots) =>
    `“${slots.given}” can be read in two ways. Expected: a point for decimals, a blank between numbers, nothing between thousands.`,
  "field-out-of-range": (slots: Slots) =>
    `${String(slots.given).trim() === "" ? "An empty field" : slots.given} is outside the range. Expected: from ${slots.min} to ${slots.max}${unit(slots)}.`,
  "field-not-whole": (slots: Slots) =>
    `${slots.given} is not a whole number. Expected: from ${slots.min} to ${slots.max}.`,
  "field-not-day": (slots: Slots) => `“${slots.given}” is not a day. Expected: year-month-day, such as 2026-03-09.`,
  "field-not-chosen": () => "Nothing is chosen here; choose one.",
  "field-code-taken": (slots: Slots) => `${slots.given} is taken. Expected: a code that no other has.`,
  "field-days-reversed": (slots: Slots) =>
    `The end, ${slots.to}, lies before the start, ${slots.from}. Check both days.`,
  "day-to-come": (slots: Slots) =>
    `${day(String(slots.given))} is still to come. Expected: ${day(String(slots.latest))} or earlier.`,
  "day-long-ago": (slots: Slots) =>
    `${day(String(slots.given))} is more than ${slots.years} years back. Check the year. Expected: ${day(String(slots.earliest))} or later.`,
  "day-before-call": (slots: Slots) =>
    `${day(String(slots.given))} lies before the call of ${day(String(slots.call))}. Expected: that day or later.`,
  "noticed-after-call": (slots: Slots) =>
    `${day(String(slots.given))} lies after the call of ${day(String(slots.call))}. Expected: that day or earlier.`,
  "due-before-told": (slots: Slots) =>
    `${day(String(slots.given))} lies before the day it was told, ${day(String(slots.told))}. Expected: that day or later.`,
  "field-range-reversed": (slots: Slots) =>
    `The highest value, ${slots.max}, is below the lowest, ${slots.min}. Check both.`,
  "taken-after-received": (slots: Slots) =>
    `Taken ${day(String(slots.taken))}, received ${day(String(slots.received))}: bees are taken before they come. Check both days.`,
  "step-before-plan": (slots: Slots) => `The plan was made ${day(String(slots.made))}. Expected: that day or later.`,
  "step-out-of-order": (slots: Slots) =>
    `${slots.other} was done ${day(String(slots.on))}, and it comes ${slots.before ? "before" : "after"} this step. Expected: that day or ${slots.before ? "later" : "earlier"}.`,
  "step-needs-earlier": (slots: Slots) => `${slots.other} is not marked as done. Mark it first.`,
  "code-shape": (slots: Slots) =>
    `“${slots.typed}” is not a specimen code. Expected: two letters, two digits, a dash, four digits, a letter, such as TV26-0147-M.`,
  "code-check-letter": (slots: Slots) =>
    `The last letter of “${slots.typed}” does not fit the rest, so one character is wrong. Read the label again.`,
};
