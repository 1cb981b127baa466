/** Sentences of the page on which a person judges what the service keeps apart. */
import { some } from "./numbers.ts";
import { apartProblems } from "./problems/apart.ts";

const decisions = { "taken-in": "Take it in", "left-out": "Leave it out" };
const decided = { "taken-in": "Taken in", "left-out": "Left out" };

export const apartWords = {
  title: (slots: { readonly waiting: number; readonly settled: number }) =>
    slots.waiting > 0
      ? `**${some(slots.waiting, "entry waits", "entries wait")} for a person to judge.**`
      : slots.settled > 0
        ? `**Nothing waits.** ${some(slots.settled, "entry is", "entries are")} kept apart and settled.`
        : "**Nothing is kept apart.**",
  under:
    "A phone that was restored or copied writes two entries under one number, and a lost phone may be in other hands. The service takes the first and keeps the rest apart, word for word. Say what shall become of each: a new entry says so, and nothing is deleted.",
  looking: "Asking the service …",
  unreached: "The service does not answer now. What is kept apart is there, not on this device.",
  notYours: "What is kept apart is settled by a reviewer or an administrator.",
  demonstration: "Nothing is kept apart in the demonstration.",
  more: (slots: { readonly count: number }) => `${slots.count} more are told when these are settled.`,
  head: (slots: { readonly seq: number; readonly device: string }) => `Entry ${slots.seq} of device ${slots.device}`,
  kept: "Kept apart",
  standing: "Stands under its number",
  noneStands: "Nothing stands under its number: its device was reported lost when it sent this.",
  cameIn:
    "An entry in its place is on record: its device wrote it again, or a person took it in. To take it in adds no second copy.",
  whereItStands: "See where it stands",
  isWithdrawn: "A withdrawal on record names it: to take it in notes the decision and adds nothing.",
  withoutWords: "Its words were erased or are not given to you.",
  happened: "Happened",
  where: "Where",
  by: (slots: { readonly author: string; readonly when: string }) => `${slots.author}, written ${slots.when}`,
  nothing: "says nothing",
  yes: "yes",
  no: "no",
  decision: "What shall become of it?",
  choose: "Choose",
  decisions,
  reason: "Why?",
  settle: "Settle it",
  settled: "**Settled.** The new entry is sent with the next exchange.",
  says: (slots: { readonly decision: keyof typeof decided; readonly author: string; readonly when: string }) =>
    `**${decided[slots.decision]}** by ${slots.author}, ${slots.when}:`,
  differ: "People decided differently without knowing of each other. Choose what stands.",
  notAllowed: "Your role does not include writing an entry of this kind, so you can only leave it out.",
  problems: apartProblems,
};
