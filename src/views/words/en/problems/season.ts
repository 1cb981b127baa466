/** What a question about a colony's season can be in trouble with: what it means, what to do. */
import { degrees, some, whole } from "../numbers.ts";
import type { Slots } from "./index.ts";
import { date, n, per100, seasonAction } from "./season-slots.ts";

const inside = (slots: Slots, name: string): string =>
  seasonAction(slots, name).replace(/^./, (first) => first.toLowerCase());
const sizeOf = (slots: Slots): string =>
  `${whole(n(slots, "number"))} ${slots.what === "bees" ? "bees" : "brood cells"}`;

const farthest = (slots: Slots): string =>
  `${degrees(n(slots, "high"))}${slots.highs === "assumed" ? ", as assumed from the means" : ""}`;
/** How many of the days with vapour, and when. */
const vapourDays = (slots: Slots): string => {
  const when =
    slots.date === slots.last ? `on ${date(slots, "date")}` : `from ${date(slots, "date")} to ${date(slots, "last")}`;
  return `${whole(n(slots, "days"))} of ${whole(n(slots, "of"))} days with vapour, ${when},`;
};

export const seasonProblems = {
  "season-bees-out-of-range": (slots: Slots) =>
    `The colony starts with ${Number.isNaN(n(slots, "bees")) ? "no number of" : whole(n(slots, "bees"))} bees. Expected: from ${whole(n(slots, "least"))} to ${whole(n(slots, "most"))}.`,
  "season-share-out-of-range": (slots: Slots) =>
    n(slots, "share") >= 0 && n(slots, "share") <= 1
      ? `${per100(n(slots, "share"))} of 100 bees infested cannot be on that day: bees just emerged carry no mites. The most is ${per100(n(slots, "most"))}.`
      : "The infested share at the start is not between 0 and 100 of 100 bees. Type it from a count.",
  "season-draws-out-of-range": (slots: Slots) =>
    `${whole(n(slots, "draws"))} draws cannot be reckoned. Expected: from ${whole(n(slots, "least"))} to ${whole(n(slots, "most"))}.`,
  "season-run-too-large": (slots: Slots) =>
    `${whole(n(slots, "days"))} days are more than can be reckoned at once with ${whole(n(slots, "draws"))} draws${n(slots, "unitings") > 0 ? ` and ${some(n(slots, "unitings"), "colony", "colonies")} to unite` : ""}. Expected: ${n(slots, "longest") > 0 ? `at most ${whole(n(slots, "longest"))} days, or ` : ""}at most ${whole(n(slots, "most"))} draws.`,
  "season-count-impossible": (slots: Slots) =>
    `${slots.infested} infested of ${slots.examined} bees is no count. Expected: whole numbers, from one bee to ${whole(n(slots, "most"))}, no more infested than examined.`,
  "season-count-outside": (slots: Slots) =>
    `The count of ${date(slots, "date")} lies outside the days from ${date(slots, "from")} to ${date(slots, "until")}.`,
  "season-count-contradicts": (slots: Slots) =>
    `The count of ${date(slots, "date")}, ${slots.infested} of ${slots.examined}, is one that hardly a colony of this start would give. Check the count, the colony and the start; the forecast leans on few possibilities now.`,
  "season-count-left-out": (slots: Slots) =>
    `The count of ${date(slots, "date")}, ${slots.infested} of ${slots.examined}, was left out: no colony of this start could give it. Check the count, its errors and the start; the forecast knows nothing of it but that the colony lived.`,
  "season-share-none-counted": (slots: Slots) =>
    `The colony starts without an infested bee, yet the count of ${date(slots, "date")} found ${slots.infested} of ${slots.examined}. Start with a small share, such as 0.5 of 100.`,
  "season-count-unlike-its-stop": (slots: Slots) =>
    `Reading was to end at ${slots.stopInfested} infested bees or at ${slots.stopExamined} read; ${slots.infested} of ${slots.examined} fits neither. Check the count and its rule.`,
  "season-particles-few": (slots: Slots) =>
    `What was seen on ${date(slots, "date")} leaves the worth of ${whole(n(slots, "worth"))} draws: ranges after it are rough.`,
  "season-size-impossible": (slots: Slots) =>
    `${slots.value} cannot be. Expected: ${n(slots, "least") > 0 ? `from ${slots.least} to` : "above 0 and at most"} ${whole(n(slots, "most"))}.`,
  "season-size-outside": (slots: Slots) =>
    `The frames of ${date(slots, "date")} lie outside the days from ${date(slots, "from")} to ${date(slots, "until")}.`,
  "season-size-left-out": (slots: Slots) =>
    `${sizeOf(slots)} on ${date(slots, "date")} was left out: no colony of this start could be of that size. Check the frames, the colony and the start; the forecast knows nothing of it but that the colony lived.`,
  "season-size-contradicts": (slots: Slots) =>
    `${sizeOf(slots)} on ${date(slots, "date")} is a size that hardly a colony of this start would have. Check the frames, the colony and the start; the forecast leans on few possibilities now.`,
  "season-frames-by-common-practice": (slots: Slots) =>
    `${whole(n(slots, "perFrame"))} ${slots.what === "bees" ? "bees on a covered frame" : "cells in a full frame of brood"} is common practice without a source. Say what holds for these frames.`,
  "season-stock-out-of-range": (slots: Slots) =>
    `A stock’s susceptibility from ${slots.least} to ${slots.most} is expected; 1 is the stock the model was tuned to.`,
  "season-day-unknown": (slots: Slots) => `“${slots.date}” is not a day. Expected: year-month-day.`,
  "season-span-out-of-range": (slots: Slots) =>
    n(slots, "days") < 1
      ? "The last day does not lie after the first. Choose a later one."
      : `${whole(n(slots, "days"))} days are asked about. Expected: at most ${whole(n(slots, "most"))}.`,
  "season-actions-overlap": (slots: Slots) =>
    `${seasonAction(slots, "second")} and ${inside(slots, "first")} meet on ${date(slots, "date")}. What they do together is not known; move one of them.`,
  "season-action-before-start": (slots: Slots) =>
    `${seasonAction(slots, "action")} begins on ${date(slots, "date")}, before the first day. Start the course earlier, or leave it out.`,
  "season-donor-too-late": (slots: Slots) =>
    `The other colony is told of on ${date(slots, "date")}. Expected: a day no later than ${date(slots, "latest")}, the day before the uniting.`,
  "season-lost-out-of-range": () => "How many of the other colony’s bees are lost is a share from 0 to 1.",
  "season-uniting-stopped": (slots: Slots) =>
    `No uniting on ${date(slots, "date")}: something was seen that is to be reported, and until it is cleared no bees, brood or combs go from colony to colony. Report first; leave the uniting out.`,
  "season-action-after-end": (slots: Slots) =>
    `${seasonAction(slots, "action")} begins on ${date(slots, "date")}, after the last day, and changes nothing here.`,
  "season-action-ends-early": (slots: Slots) =>
    `${seasonAction(slots, "action")} ends on ${date(slots, "to")}, before it begins on ${date(slots, "from")}. Check the two days.`,
  "season-reduction-out-of-range": () => "How much of the contact a patty takes away is a share from 0 to 1.",
  "season-flow-out-of-range": (slots: Slots) =>
    `Nectar flow ${slots.flow} needs a day from 1 to 365, a length above 0 days and a strength from 0 to 1.`,
  "season-latitude-out-of-range": () => "A latitude lies between −90 and 90 degrees.",
  "season-varroa-out-of-range": (slots: Slots) =>
    `${slots.value} cannot be meant of varroa. Expected: from 0 to ${whole(n(slots, "most"))}.`,
  "season-varroa-harm-left-out": () =>
    "Varroa makes bees here more susceptible to tracheal mites, by one study. What varroa itself does to bees and brood is left out: the colony will do worse.",
  "season-colony-likely-lost": (slots: Slots) =>
    `By ${date(slots, "date")} the colony is more likely lost to cold than not. Numbers after that are those of a colony that lived.`,
  "season-colony-lost-at-once": (slots: Slots) =>
    `${whole(n(slots, "bees"))} bees can hardly keep warm: by ${date(slots, "date")} the colony is more likely lost than not. Check the number of bees.`,
  "season-formic-cold": (slots: Slots) =>
    `Formic acid: ${vapourDays(slots)} with highs under ${degrees(n(slots, "bound"))}, the lowest ${farthest(slots)}. Its vapour is taken to do nothing on them (judgement, from one account of its window). The label says at which warmth it works.`,
  "season-formic-hot": (slots: Slots) =>
    `Formic acid: ${vapourDays(slots)} with highs above ${degrees(n(slots, "bound"))}, the highest ${farthest(slots)}. Queen and brood can be lost in such heat, and no such loss is reckoned. The label says at which warmth it is lawful; move the course or leave it out.`,
  "season-opened-in-cold": (slots: Slots) =>
    `${seasonAction(slots, "action")} on ${date(slots, "date")}, with a high of ${farthest(slots)}: under ${degrees(n(slots, "least"))} a cluster is not opened (common practice, no source). What the cold does to it is not reckoned.`,
  "season-colony-dwindles": (slots: Slots) =>
    `By ${date(slots, "date")} the middle of what could be left lies under ${whole(n(slots, "bees"))} bees: that is no colony any more (judgement). Check the bees, the place and what is done; numbers after that say nothing.`,
  "season-months-outside": (slots: Slots) =>
    `The coldest month here has a mean of ${degrees(n(slots, "coldest"))}, the warmest of ${degrees(n(slots, "warmest"))}. The model’s year is made for a winter month of ${degrees(n(slots, "coldestLeast"))} to ${degrees(n(slots, "between"))} and a summer month of ${degrees(n(slots, "between"))} to ${degrees(n(slots, "warmestMost"))} (judgement). Here its numbers say nothing.`,
  "season-site-invented": () => "No weather of this place is known; an invented cool-temperate place stands in for it.",
  "season-highs-assumed": () =>
    "No highs of this place are on record: they are taken as 6 °C above its means, assumed without a source. A plan takes the means themselves, since it must not promise warmth.",
  "season-highs-alone": () =>
    "Of this place daily highs alone are known. Warmth and flight follow an invented cool-temperate place, and so do the highs of days without one.",
  "season-calendar-cool-temperate": () =>
    "Laying and winter bees follow the calendar of a cool-temperate place. Elsewhere the course can be weeks off.",
};
