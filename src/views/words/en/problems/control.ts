/** What sites and plans can be in trouble with: what it means, what to do. */
import { day, degrees, some, whole } from "../numbers.ts";
import type { Slots } from "./index.ts";

const n = (slots: Slots, name: string): number => Number(slots[name] ?? 0);
const date = (slots: Slots, name: string): string => day(String(slots[name] ?? ""));

export const controlProblems = {
  "no-temperatures": () => "No weather of this place is on record. Enter the twelve monthly means on its page.",
  "two-temperature-lists": () => "Both monthly means and daily highs are given. Keep one of them.",
  "monthly-means-not-twelve": (slots: Slots) =>
    `${slots.count} monthly means are given. Expected: twelve, January first.`,
  "temperature-not-a-number": (slots: Slots) => `The high of ${slots.date} is not a number.`,
  "month-mean-not-a-number": (slots: Slots) => `The mean of month ${slots.month} is not a number.`,
  "temperatures-look-like-fahrenheit": (slots: Slots) =>
    `The highest is ${slots.highest}: that looks like Fahrenheit. Expected: Celsius, here about ${whole(n(slots, "asCelsius"))}.`,
  "temperature-beyond-earth": (slots: Slots) => `${slots.value} °C is met nowhere. Check the list.`,
  "temperature-date-unknown": (slots: Slots) => `${slots.date} is not a day.`,
  "temperature-date-twice": (slots: Slots) => `${slots.date} has two different highs. Keep one.`,
  "high-above-mean-out-of-range": (slots: Slots) => `${slots.value} degrees between mean and high cannot be.`,
  "hemisphere-unlike-temperatures": () =>
    "The warm months fall in the winter of this latitude. Check the latitude and the months.",
  "ordinary-year": () => "This rests on an ordinary year; it is no forecast.",
  "mean-used-as-high": () =>
    "Only means are known, and a day’s high lies above its mean: this is cautious on the cold side and cannot judge the hot side.",
  "outside-vapour-range": (slots: Slots) =>
    `How fast ${slots.substance} leaves at ${degrees(n(slots, "celsius"))} is not known.`,

  "weather-in-conflict": () => "Two people recorded different weather for this place. Settle which one holds.",
  "records-in-conflict": () =>
    "People recorded different flows, supers or treatments; every one of them was taken to bar its days.",

  "date-unknown": (slots: Slots) => `“${slots.date}” is not a day. Expected: year-month-day.`,
  "span-ends-before-it-begins": (slots: Slots) => `The end, ${slots.to}, lies before the start, ${slots.from}.`,
  "span-too-long": (slots: Slots) => `${slots.days} days are asked about. Expected: at most ${slots.longest}.`,
  "label-temperatures-missing": () => "The label record names no temperatures. Type them from the label.",
  "label-temperatures-crossed": () => "The lowest daily high of the label record is not below the highest.",
  "label-temperatures-look-like-fahrenheit": () =>
    "The temperatures of the label record look like Fahrenheit. Type them again with the right unit.",
  "label-duration-out-of-range": () => "The days in the hive of the label record are out of range.",
  "label-applications-out-of-range": () => "The number of applications of the label record is out of range.",
  "label-applications-without-days-between": () =>
    "The label record has several applications and no days between them.",
  "label-days-before-supers-out-of-range": () => "The days before supers of the label record are out of range.",
  "label-read-date-unknown": () => "The label record does not say when the label was read.",
  "label-read-in-future": (slots: Slots) => `The label record was read on ${slots.readOn}, after this plan.`,
  "label-record-old": (slots: Slots) =>
    `The label was read ${some(n(slots, "days"), "day", "days")} ago, on ${date(slots, "readOn")}. Labels change: read it again.`,
  "label-record-invented": () => "The label record is invented, for demonstration. It is not a label.",
  "upper-limit-not-judged": () =>
    "Whether days are too hot cannot be told from means. Heed the forecast and the highest daily high of the label.",
  "flow-in-window": (slots: Slots) =>
    `A nectar flow, ${date(slots, "from")} to ${date(slots, "to")}, lies in these days; what is stored then may not be honey to sell.`,
  "jurisdiction-unknown": () => "Whether this label is valid where the hives stand was not checked. Check it.",
  "check-jurisdiction": () =>
    "No label is needed for this; ask all the same whether it is allowed where the hives stand.",
  "queen-not-settled": (slots: Slots) => `${slots.colonies}: the queen is new or missing. Let her settle first.`,
  "vapour-doubtful": (slots: Slots) =>
    `On ${some(n(slots, "days"), "day", "days")} the high stays below ${degrees(n(slots, "limitCelsius"))}, where a trial saw no control.`,
  "heat-harms-bees": (slots: Slots) =>
    `On ${some(n(slots, "days"), "day", "days")} the high passes ${degrees(n(slots, "limitCelsius"))}: bees can be driven out, queen and brood lost.`,
  "recheck-among-winter-bees": () =>
    "The recheck falls among winter bees, which live for months: some carry dead mites from before. Stain for live mites, or count bees that emerged since.",
  "no-bees-emerge-to-recheck": (slots: Slots) =>
    `${slots.colonies}: no bees emerge there, so stain for live mites or wait one life of a bee.`,
  "season-of-recheck-unknown": () => "The latitude is not on record, so the season of the recheck is not known.",
  "patty-does-not-kill": () => "A patty shields young bees. It does not remove mites already inside bees.",
  "patty-in-summer": () => "In a trial two summer patties did not stop the rise in autumn.",
  "patty-in-flow": () => "Sources contradict each other on patties during a flow.",
  "small-hive-beetle-unknown": () =>
    "Whether the small hive beetle lives here is not on record; its larvae breed in patties.",
  "requeening-may-be-worse": () => "New stock may be better or worse than the old.",
  "no-colonies-in-plan": () => "No colony is chosen. Choose at least one.",
  "colony-twice-in-plan": () => "A colony stands in the plan twice.",
  "more-colonies-planned-than-stand": (slots: Slots) =>
    `${slots.planned} colonies are planned, but only ${slots.standing} stand here.`,
  "more-colonies-tested-than-stand": (slots: Slots) =>
    `${slots.tested} colonies are said to be tested, but only ${slots.standing} stand here.`,
};

const until = (slots: Slots, name: string) => (slots[name] ? ` until ${date(slots, name)}` : "");

/** Why days, or all of a plan, are refused; by the reason of the refusal. */
export const refusalReasons: Readonly<Record<string, (slots: Slots) => string>> = {
  "no-label-record": () => "No label record is loaded, and no dose is given without one.",
  "no-temperature": () => "No temperature is known for these days.",
  "too-cool": (slots) => `Too cool: the label asks for highs of at least ${degrees(n(slots, "limitCelsius"))}.`,
  "too-warm": (slots) => `Too warm: the label allows highs up to ${degrees(n(slots, "limitCelsius"))}.`,
  "vapour-too-weak": (slots) => `Too cool: below ${degrees(n(slots, "limitCelsius"))} the vapour is too weak to work.`,
  "supers-on": (slots) =>
    slots.off
      ? `Honey supers are on until ${date(slots, "off")}.`
      : "Honey supers are on; record the day they come off.",
  "too-close-to-supers": (slots) =>
    `Supers go on ${date(slots, "on")}, and the label asks for ${some(n(slots, "days"), "day", "days")} before.`,
  "flow-and-supers-not-recorded": () => "A nectar flow is on, and nobody recorded whether supers are.",
  "other-treatment-in-hive": (slots) =>
    `Another treatment, ${slots.activeIngredient}, is in the hives${until(slots, "off")}.`,
  "too-few-days": (slots) => `Only ${slots.days} lawful days in a row; the label needs ${slots.needed}.`,
  "too-few-days-before-end": (slots) =>
    `Only ${slots.days} lawful days before the season ends; the label needs ${slots.needed}.`,
  "season-over": () => "These days lie in the past.",
  "start-outside-days-asked": () => "The day wanted, or the end of the treatment, lies outside these days.",
  "label-for-another-ingredient": (slots) => `The label record is for ${slots.label}, not for ${slots.wanted}.`,
  "label-for-another-jurisdiction": (slots) => `The label record is valid in ${slots.label}, not in ${slots.wanted}.`,
  "reason-needed-for-untested": (slots) =>
    `${slots.planned} colonies are planned and ${slots.tested} were tested. Write down why the others are treated too.`,
};

/** Short words for a band of the year. */
export const refusalShort: Readonly<Record<string, string>> = {
  "no-label-record": "no label record",
  "no-temperature": "no temperature",
  "too-cool": "too cool",
  "too-warm": "too warm",
  "vapour-too-weak": "vapour too weak",
  "supers-on": "supers on",
  "too-close-to-supers": "supers near",
  "flow-and-supers-not-recorded": "flow, supers not recorded",
  "other-treatment-in-hive": "other treatment in",
  "too-few-days": "too few days",
  "too-few-days-before-end": "too few days left",
};
