/** Sentences of question 5: what shall be done. */
import { day, dayAndMonth, inHundred, list, some, whole } from "./numbers.ts";

const choices = { "act-now": "Act now", "test-first": "Test first", wait: "Wait" } as const;
type Choice = keyof typeof choices;
const grams = (value: number): string => `${Number(value.toFixed(1))} g`;
const tenth = (value: number): string => value.toFixed(1);
const money = (value: number): string =>
  value >= 100 ? whole(value) : String(Number(value.toFixed(value >= 10 ? 1 : 2)));
const inputs = {
  colonyValue: "A colony worth",
  actCost: "Acting at",
  testCost: "A test at",
  residualShare: "In spite of acting, of 100 extra losses left",
  "centre-of-belief": "Bees infested in 100",
  sensitivity: "Of 100 infested bees found",
} as const;

export const done = {
  stopAnswer:
    "**Stop and report first.** Nothing is decided, moved, burnt or treated here until the authority has spoken.",
  stopHead: "Stop and report",
  answerUndecided:
    "**Not decided yet.** Say what things are worth to you, and the three choices are weighed; or decide and say why.",
  answerNothing:
    "**Not decided yet.** Nothing is counted, so there is nothing to weigh: test first, or decide and say why.",
  answerWeighed: (slots: {
    readonly best: Choice;
    readonly colony: string;
    readonly second: number;
    readonly currency: string;
  }) =>
    `**${choices[slots.best]} in ${slots.colony}.** It loses least${slots.second < 1 ? ", by a little" : `, by ${money(slots.second)} ${slots.currency}`}. Not decided yet.`,
  answerDecided: (slots: {
    readonly choice: Choice;
    readonly colonies: readonly string[];
    readonly all: boolean;
    readonly on: string;
    readonly review: string;
  }) =>
    `**${choices[slots.choice]}${slots.all || slots.colonies.length === 0 ? "" : ` in ${list(slots.colonies)}`}.** Decided on ${day(slots.on)}; look again on ${day(slots.review)}.`,
  reasonGiven: (slots: { readonly reason: string; readonly by: string }) => `${slots.reason} (${slots.by})`,
  choices,
  withheld: (slots: { readonly colony: string }) =>
    `The sample of ${slots.colony} came with limits, so no choice is named from it. Sample it again, or weigh it all the same.`,
  weighAnyway: "Weigh it all the same",

  weighHead: "Weigh the choices",
  weighUnder: "In your own money, for one colony and one winter. There is no price in this tool.",
  currency: "Money",
  currencyHint: "Such as: $, €, hours of work.",
  colonyValue: "A colony is worth",
  actCost: "Acting costs",
  actCostHint: "Material, work, honey forgone, for one colony.",
  testCost: "A test costs",
  residual: "Of 100 extra winter losses, left in spite of acting",
  residualHint: "0: the act always works. 100: it never does.",
  bees: "Bees the test reads",
  finds: "Of 100 infested bees, found",
  findsHint: "Judged 90 to 95 for a trained eye.",
  about: "For the colony",
  own: "your own judgement",
  believed: "Bees infested in 100, by your judgement",
  sure: "As sure as if so many bees were read",
  weigh: "Weigh",
  other: "Try other values",

  strip: "Best choice, by bees infested in 100",
  stripAside: "one colony, one winter",
  below: (slots: { readonly to: number }) => `below ${inHundred(slots.to)}`,
  between: (slots: { readonly from: number; readonly to: number }) =>
    `${inHundred(slots.from)} to ${inHundred(slots.to)}`,
  above: (slots: { readonly from: number }) => `above ${inHundred(slots.from)}`,
  always: "at every share",
  here: (slots: { readonly value: number }) => `You are here: ${inHundred(slots.value)}`,
  hereAside: (slots: { readonly colony: string; readonly low: number; readonly high: number }) =>
    `${slots.colony}; could be ${inHundred(slots.low)} to ${inHundred(slots.high)}`,
  hereHow: (slots: { readonly bees: number; readonly middle: number; readonly share: number }) =>
    `The losses weigh every share that ${some(slots.bees, "bee", "bees")} allow, each by how well it fits the count (middle ${(100 * slots.middle).toFixed(1)} in 100), not ${inHundred(slots.share)} in 100 alone.`,
  stripLabel: (slots: { readonly parts: string; readonly here: string }) =>
    `Best choice by share infested: ${slots.parts}. ${slots.here}.`,
  stripPart: (slots: { readonly best: Choice; readonly range: string }) =>
    `${choices[slots.best].toLowerCase()} ${slots.range}`,
  stripColumns: { choice: "Best choice", from: "From, in 100", to: "To, in 100" },
  loss: (slots: { readonly value: number }) => tenth(slots.value),
  lossUnder: (slots: { readonly currency: string }) => `expected loss a colony, in ${slots.currency}`,
  least: "least loss",
  leastBy: "least loss, by a little",
  moreBy: (slots: { readonly margin: number }) => `${tenth(slots.margin)} more`,
  actFrom: (slots: { readonly positives: number; readonly bees: number }) =>
    `After a test: act from ${whole(slots.positives)} of ${some(slots.bees, "bee", "bees")} with mites on.`,
  actNever: "No result of that test would lead to acting.",
  flip: (slots: {
    readonly input: keyof typeof inputs;
    readonly at: number;
    readonly up: boolean;
    readonly becomes: Choice;
  }) => {
    const isShare = slots.input !== "colonyValue" && slots.input !== "actCost" && slots.input !== "testCost";
    const value = isShare ? inHundred(slots.at) : money(slots.at);
    return `${inputs[slots.input]} ${slots.up ? "more" : "less"} than ${value}: then ${choices[slots.becomes].toLowerCase()}.`;
  },
  flipsHead: "What would change it",
  noFlips: "No single value of these would change it.",
  readings: (slots: { readonly cold: Choice; readonly mild: Choice; readonly middle: Choice }) =>
    slots.cold === slots.mild && slots.mild === slots.middle
      ? "Every reading of the literature leads to the same choice."
      : `A cold reading of the literature: ${choices[slots.cold].toLowerCase()}; a mild one: ${choices[slots.mild].toLowerCase()}.`,
  trace: "Losses by winter: judged curve, no measured one was found (rule DE3).",
  reckonMoreBees: "Reckon what more bees would be worth",

  decidedBeforeStop: (slots: { readonly on: string }) =>
    `This was decided on ${day(slots.on)}, before the stop that was lifted since: weigh it anew.`,
  untilHead: "Until the result",
  until: { today: "Today", "not-yet": "Not until then" },
  urgentIn: (slots: { readonly colonies: readonly string[]; readonly act: string }) =>
    slots.colonies.length === 0 ? slots.act : `${list(slots.colonies)}: ${slots.act}`,

  decideHead: "Write the decision down",
  choice: "Choice",
  control: "With",
  noControl: "nothing chosen yet",
  colonies: "Colonies",
  reason: "Reason",
  reasonHint: "Stands on the report and in the journal.",
  reviewOn: "Look again on",
  decide: "Write it down",
  changeDecision: "Decide anew",

  planHead: "Make a plan",
  planUnder: "Grams and days come from a label record alone. This page is not a label.",
  startOn: "Wanted start",
  startOnHint: "Leave empty for the first lawful day.",
  label: "Label record",
  noLabel: "none",
  typeLabel: "Type a label record",
  noLabelFits: "No label record for this ingredient is on record.",
  labelChoice: (slots: {
    readonly ingredient: string;
    readonly jurisdiction: string;
    readonly dose: { readonly value: string; readonly unit: string };
    readonly durationDays: number;
    readonly low: string;
    readonly high: { readonly value: string; readonly unit: string };
    readonly source: string;
    readonly readOn: string;
  }) =>
    `${slots.ingredient}, ${slots.jurisdiction}: ${slots.dose.value} ${slots.dose.unit}, ${some(slots.durationDays, "day", "days")}, ${slots.low} to ${slots.high.value} ${slots.high.unit}; ${slots.source}, read ${day(slots.readOn)}`,
  validHere: "This label is valid where the hives stand",
  tested: (slots: { readonly colonies: number; readonly tested: number }) =>
    `${whole(slots.tested)} of ${some(slots.colonies, "colony", "colonies")} chosen ${slots.tested === 1 ? "was" : "were"} tested.`,
  untestedReason: "Why colonies that were not tested are treated too",
  beetle: "Small hive beetle here?",
  beetles: { unknown: "not known", absent: "not here", present: "here", endemic: "widespread" },
  keptHead: "Plans written down",
  act: "Act",
  keepPlan: "Write this plan down",
  keptPlans: "Plans written down",
  planKept: (slots: { readonly version: number; readonly on: string }) =>
    `Plan, version ${slots.version}, of ${day(slots.on)}`,
  calendar: "Calendar file",
  markSteps: "Mark its steps in question 6",
  calendarName: (slots: { readonly code: string; readonly place: string }) => `${slots.code} ${slots.place}`,
  columns: { when: "When", what: "What", why: "Why, and what to heed", act: "What unlocks it" },
  blocked: "blocked",
  refused: "refused",
  span: (slots: { readonly from: string; readonly to: string }) =>
    slots.from === slots.to ? day(slots.from) : `${dayAndMonth(slots.from)} to ${day(slots.to)}`,
  noDate: "no date",
  out: (slots: { readonly on: string }) => `out ${dayAndMonth(slots.on)}`,
  earliest: (slots: { readonly on: string }) => `First lawful start: ${day(slots.on)}.`,
  earliestOrdinary: (slots: { readonly on: string }) => `In an ordinary year, first lawful start: ${day(slots.on)}.`,
  noEarliest: "No lawful start in these days.",
  unlock: {
    "load-label-record": "Load a label",
    "supers-on": "Record supers off",
    weather: "Enter the weather",
    "give-reason": "Write the reason",
  },
  options: {
    wait: "wait",
    "oil-patty": "fat and sugar patty",
    requeen: "new queen",
    "load-label-record": "load a label record",
    "give-reason": "write down the reason",
  },
  optionsSay: (slots: { readonly options: readonly string[] }) => `What can be done: ${list(slots.options)}.`,
  restsOn: {
    "label-record": "from the label record",
    published: "published",
    "common-practice": "common practice, no source",
    judgement: "judgement",
  },
  rule: (slots: { readonly rule: string; readonly basis: string }) => `${slots.basis} (rule ${slots.rule})`,
  supersFrom: (slots: { readonly on: string }) => `Supers may go on from ${day(slots.on)} at the earliest.`,
  wear: (slots: { readonly what: string }) => `Wear: ${slots.what}.`,
  gramsInAll: (slots: { readonly grams: number; readonly ounces: number; readonly colonies: number }) =>
    `In all ${whole(slots.grams)} g (${tenth(slots.ounces)} oz weight) for ${some(slots.colonies, "colony", "colonies")}.`,
  vapour: (slots: { readonly coolest: number; readonly warmest: number }) =>
    `Against 21.1 °C the vapour leaves ${tenth(slots.coolest)} times as fast on the coolest day and ${tenth(slots.warmest)} times on the warmest.`,
  heedHead: "Heed",

  year: (slots: { readonly place: string }) => `The year at ${slots.place}`,
  yearAside: (slots: { readonly measured: boolean }) =>
    slots.measured ? "daily highs on record" : "ordinary year from monthly means; no forecast",
  yearLabel: (slots: { readonly from: string; readonly to: string; readonly windows: string; readonly bars: string }) =>
    `From ${day(slots.from)} to ${day(slots.to)}. ${slots.windows} ${slots.bars}`,
  yearColumns: { kind: "Kind", from: "From", to: "To", says: "What" },
  yearKinds: { flow: "nectar flow", bar: "barred", window: "window", step: "step" },
  high: "Daily high",
  highMean: "Daily mean",
  flows: "Forage",
  flowUnder: "nectar flow",
  bars: (slots: { readonly control: string }) => `Bars ${slots.control}`,
  doRow: "Do",
  today: (slots: { readonly day: string }) => `today, ${dayAndMonth(slots.day)}`,
  windowSays: (slots: { readonly days: number; readonly from: string; readonly latest: string }) =>
    `${whole(slots.days)} days can start ${dayAndMonth(slots.from)} to ${dayAndMonth(slots.latest)}`,
  noWindow: "No window.",
  supersToRecord: (slots: { readonly from: string }) =>
    `Nobody wrote down honey supers from ${day(slots.from)} on, so no day after is planned.`,
  recordSupers: "Record supers",
  supersUnknown: "supers not on record",
  barSays: (slots: { readonly reason: string; readonly from: string; readonly to: string }) =>
    `${slots.reason}: ${dayAndMonth(slots.from)} to ${dayAndMonth(slots.to)}`,
  noWeather: "No weather of this place is on record, so no days can be checked.",
  enterWeather: "Enter the weather",
  controlShort: {
    menthol: "menthol",
    "formic-acid": "formic acid",
    "oil-patty": "patty",
    requeen: "requeening",
    amitraz: "amitraz",
    "plant-oils": "plant oils",
  },
  stepShort: {
    apply: "Apply",
    check: "Check",
    remove: "Take out",
    recheck: "Recheck",
    feed: "Patty",
    requeen: "New queen",
    sample: "Sample",
  },

  steps: {
    "apply-by-label": (s: Slots) =>
      `${Number(s.of) > 1 ? `Application ${s.number} of ${s.of}: ` : "Apply "}by the label, ${s.placement}.`,
    "check-bees-and-heat": (s: Slots) =>
      s.harmfulAboveCelsius === undefined
        ? "Look at bees and queen; take it out if they suffer."
        : `Look at bees and queen. Above ${s.harmfulAboveCelsius} °C (${tenth(Number(s.harmfulAboveCelsius) * 1.8 + 32)} °F) take it out.`,
    "remove-by-label": () => "Take out what is left and write down the day.",
    "recheck-after-lifespan": (s: Slots) =>
      `Count again: same frames, same number of bees, with an untreated colony beside it. Dead mites stay in the trunks: stain for live ones from ${dayAndMonth(String(s.liveStainFrom))}, or take bees that emerged since from ${dayAndMonth(String(s.emergedSinceFrom))}.`,
    "feed-patty": (s: Slots) =>
      `Patty ${s.number}: ${s.fatParts} part vegetable fat, ${s.sugarParts} parts sugar by volume, on the top bars over the brood.`,
    "check-patty": () => "Look whether it is eaten; note the grams left.",
    "remove-patty": () => "Take leftovers away.",
    "requeen-colony": () => "Give the new queen.",
    "check-queen-accepted": () => "Look whether she is accepted and lays.",
  } as Readonly<Record<string, (s: Slots) => string>>,
  stepWhat: (slots: {
    readonly what: string;
    readonly grams: number | null;
    readonly ounces: number | null;
    readonly colonies: readonly string[];
  }) =>
    slots.grams === null || slots.ounces === null
      ? `**${slots.what}** in ${list(slots.colonies)}`
      : `**${slots.what}, ${Number(slots.grams.toFixed(1))} g** (${tenth(slots.ounces)} oz weight) a colony, in ${list(slots.colonies)}`,
  /** A step in a calendar, with the dose of the label record where there is one. */
  title: (slots: {
    readonly what: string;
    readonly grams: number | null;
    readonly inAll: number | null;
    readonly colonies: readonly string[];
  }) => {
    const dose =
      slots.grams === null
        ? ""
        : `, ${grams(slots.grams)} a colony${slots.inAll === null ? "" : ` (${grams(slots.inAll)} in all)`}`;
    return `${slots.what}${dose}: ${list(slots.colonies)}`;
  },
};

type Slots = Readonly<Record<string, string | number>>;
