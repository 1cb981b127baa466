/** Sentences of the page Season: where a colony and its tracheal mites go, with and without action. */
import { daysBetween } from "../../../units/index.ts";
import { day, dayAndMonth, inHundred, list, some, whole } from "./numbers.ts";

type Kind = "menthol" | "formic" | "oil-patty" | "requeen" | "brood-break" | "unite";
interface Ends {
  readonly low: number;
  readonly high: number;
}
interface Action {
  readonly kind: Kind;
  readonly from: string;
  readonly to?: string;
  readonly donor?: Donor;
  readonly susceptibility?: number;
}
interface Donor {
  readonly start: { readonly date: string; readonly bees: number; readonly infestedShare: number };
  readonly counts?: readonly (Count & { readonly date: string })[];
}

/** High of a day; isAssumed: no high is known, and the mean with an assumed height stands in. */
interface Warmth {
  readonly high: number;
  readonly isAssumed: boolean;
}

const kinds = {
  menthol: "menthol",
  formic: "formic acid",
  "oil-patty": "patty",
  requeen: "new queen",
  "brood-break": "brood break",
  unite: "uniting",
} as const;

const tenths = (share: number): string => (share < 0.05 ? "under 1" : String(Math.round(10 * share)));
const span = (low: string, high: string): string => (low === high ? low : `${low} to ${high}`);
/** Of 10 bees where the middle tells enough in tens, else of 100; both ranges in the same. */
const bees = (middle: Ends): ((ends: Ends) => string) =>
  middle.high >= 0.2
    ? ({ low, high }) => `${span(tenths(low), tenths(high))} of 10 bees`
    : ({ low, high }) => `${span(inHundred(low), inHundred(high))} of 100 bees`;
/** Rounded outwards: never narrower than it is. */
const alive = ({ low, high }: Ends): string =>
  span(String(Math.floor(10 * low + 1e-9)), String(Math.ceil(10 * high - 1e-9)));
const highsThen = ({ high, isAssumed }: Warmth): string =>
  `Highs then are about ${degrees(high)}${isAssumed ? ", as assumed from the means" : ""}`;
const actionWhen = ({ kind, from, to, donor }: Action): string =>
  donor !== undefined
    ? `${donorName(donor.start, from)} united on ${dayAndMonth(from)}`
    : to === undefined
      ? `${kinds[kind]} from ${dayAndMonth(from)}`
      : `${kinds[kind]} ${dayAndMonth(from)} to ${dayAndMonth(to)}`;
/** How many bees it has is told with their day, unless that is the day before. */
const donorName = ({ date, bees }: Donor["start"], from: string): string =>
  Number.isFinite(bees)
    ? `a colony of ${whole(bees)} bees${daysBetween(date, from) === 1 ? "" : ` on ${dayAndMonth(date)}`}`
    : "another colony";
/** With the year, the stock, and what is known of the other colony's mites: for two that would read alike. */
const actionInFull = ({ kind, from, to, donor, susceptibility }: Action): string => {
  if (donor !== undefined) {
    const counted = (donor.counts ?? []).map((count) => `counted ${countSays(count)} on ${day(count.date)}`);
    const { infestedShare: share } = donor.start;
    const mites = Number.isFinite(share) ? [`${Number((100 * share).toFixed(1))} of 100 infested`] : [];
    return [donorName(donor.start, from), ...mites, ...counted, `united on ${day(from)}`].join(", ");
  }
  const stock = susceptibility === undefined ? "" : ` of susceptibility ${susceptibility}`;
  const when = to === undefined ? `from ${day(from)}` : `${day(from)} to ${day(to)}`;
  return `${kinds[kind]}${stock} ${when}`;
};
interface Count {
  readonly infested: number;
  readonly examined: number;
  readonly oneSided?: { readonly infested: number; readonly examined: number };
}
const countSays = ({ infested, examined, oneSided }: Count): string => {
  const whole = `${infested} of ${examined}`;
  if (oneSided === undefined) return whole;
  const side = `${oneSided.infested} of ${oneSided.examined} with one trachea read`;
  return examined === 0 ? side : `${whole} and ${side}`;
};
interface LastNight {
  readonly middle: Ends;
  readonly wide: Ends;
  readonly on: string;
  readonly afterDone: boolean;
  readonly night: string;
  readonly stoodAt: string;
  readonly today: string;
}
const ofNight = ({ night, today }: Pick<LastNight, "night" | "today">): string =>
  night === today ? "Forecast of last night" : `Forecast of the night of ${day(night)}`;
const nightEnds = ({ middle, wide, on }: LastNight): string =>
  `about ${bees(middle)(middle)} infested on ${day(on)}, could be ${bees(middle)(wide)}`;
/** An instant in UTC: the service has no other time of its own. */
const instant = (iso: string): string => `${day(iso.slice(0, 10))} at ${iso.slice(11, 16)} UTC`;
const noAction = (afterDone: boolean): string => (afterDone ? "without further action" : "without action");

export const season = {
  title: "Season",
  answerEmpty: "**Where does the infestation go from here?** Say how the colony stands, and what was counted.",
  answerBusy: "**Reckoning the season** …",
  answer: (slots: { readonly middle: Ends; readonly wide: Ends; readonly on: string; readonly afterDone: boolean }) =>
    `**${slots.afterDone ? "Without further action" : "Without action"} about ${bees(slots.middle)(slots.middle)} infested on ${day(slots.on)};** it could be ${bees(slots.middle)(slots.wide)}.`,
  answerWith: (slots: { readonly name: string; readonly middle: Ends; readonly wide: Ends }) =>
    ` With ${slots.name} about **${bees(slots.middle)(slots.middle)}**, could be ${bees(slots.middle)(slots.wide)}.`,
  lastNight: (slots: LastNight) =>
    `${ofNight(slots)}, as the records stood on ${instant(slots.stoodAt)}: ${slots.afterDone ? "without further action" : "without action"} ${nightEnds(slots)}.`,
  lastNightShort: (slots: LastNight) => upper(nightEnds(slots)),
  nightOf: (slots: Pick<LastNight, "night" | "stoodAt" | "today">) =>
    `${ofNight(slots)}, as the records stood on ${instant(slots.stoodAt)}.`,
  nightMissedShort: (slots: { readonly why: string }) => `Could not be reckoned. ${slots.why}`,
  nightMissed: (slots: Pick<LastNight, "night" | "stoodAt" | "today"> & { readonly why: string }) =>
    `${ofNight(slots)}, as the records stood on ${instant(slots.stoodAt)}: it could not be reckoned. ${slots.why}`,
  answerTrouble: "**This cannot be reckoned yet.** What stands in the way is told below.",
  survival: (slots: {
    readonly on: string;
    readonly without: Ends;
    readonly choice: { readonly name: string; readonly range: Ends } | null;
  }) =>
    `**Alive on ${dayAndMonth(slots.on)}:** ${alive(slots.without)} of 10 such colonies${slots.choice === null ? "" : ` without, ${alive(slots.choice.range)} of 10 with ${slots.choice.name}`}. Weakly supported: losses to cold alone, by a curve whose points were chosen and not fitted; the range is widened by 1 in 10 on both sides, by judgement.`,
  working: (slots: { readonly share: number }) => `Reckoning, ${whole(100 * slots.share)} of 100`,
  stop: "Stop",
  stopped: (slots: { readonly reckoned: number; readonly all: number }) =>
    `Stopped: ${whole(slots.reckoned)} of ${whole(slots.all)} reckoned, doing nothing among them. What is shown holds; the rest is missing.`,
  stoppedDays: (slots: { readonly to: string }) =>
    `Stopped: what is told goes to ${day(slots.to)} and is held to the counts until then. The days after it are missing.`,
  stoppedEarly: "Stopped before anything was reckoned.",
  failed: "The forecast stopped because of an error of ours. Your journal is safe. Load the page again.",
  again: "Reckon again",

  picture: "Bees infested in 100",
  pictureUnder: "Bands hold 50 and 90 of 100 runs. Dots: counts with their own 95 % intervals.",
  pictureLabel: (slots: {
    readonly from: string;
    readonly to: string;
    readonly says: string;
    readonly counts: readonly string[];
  }) =>
    `Bees infested in 100 from ${day(slots.from)} to ${day(slots.to)}. ${slots.says}${slots.counts.length > 0 ? ` Counts: ${slots.counts.join("; ")}.` : ""}`,
  countSays,
  countOn: (slots: Count & { readonly date: string }) => `${countSays(slots)} on ${day(slots.date)}`,
  today: "choice",
  without: noAction,
  /** Short: it stands inside the picture. */
  with: (slots: { readonly kinds: readonly Kind[] }) =>
    `with ${list([...new Set(slots.kinds)].map((kind) => kinds[kind]))}`,
  rows: { warmth: "Warmth", forage: "Nectar", supers: "Supers" },
  cool: "high under 21 °C: too cool for menthol",
  columns: {
    date: "Day",
    choice: "Choice",
    q05: "Infested in 100, 5 %",
    q25: "25 %",
    q50: "middle",
    q75: "75 %",
    q95: "95 %",
    bees: "Bees, middle",
    aliveFrom: "Alive of 100, from",
    aliveTo: "to",
    celsius: "Mean °C",
    flow: "Nectar, of full",
  },

  flagsHead: "What is done, and when",
  flagsOf: (slots: { readonly name: string }) => `Flags of: ${slots.name}`,
  noFlags: "Nothing: this is the course without action. Add a choice to compare with it.",
  letters: { menthol: "M", formic: "F", "oil-patty": "P", requeen: "Q", "brood-break": "B", unite: "U" },
  actionName: (slots: { readonly kind: Kind }) => kinds[slots.kind].replace(/^./, (first) => first.toUpperCase()),
  actionWhen,
  actionInFull,
  flag: (slots: { readonly kind: Kind; readonly isLast: boolean }) =>
    `${kinds[slots.kind].replace(/^./, (first) => first.toUpperCase())}, ${slots.kind === "unite" ? "day" : slots.isLast ? "last day" : "first day"}`,
  dayOf: (slots: { readonly date: string }) => day(slots.date),
  out: (slots: { readonly kind: Kind }) => (slots.kind === "brood-break" ? "end" : "out"),
  tooCool: (slots: Warmth & { readonly least: number }) =>
    `${highsThen(slots)}: under ${degrees(slots.least)} menthol hardly leaves its crystals.`,
  breakUnmeasured:
    "What a brood break does to tracheal mites has no published figure: the course follows from the model alone.",
  donor: {
    which: "The other colony",
    another: "another one",
    bees: "Bees in it",
    share: "Infested of 100",
    of: (slots: { readonly date: string }) => `on ${day(slots.date)}`,
    counts: (slots: { readonly counts: readonly string[] }) =>
      `Its last count: ${list(slots.counts)}. The figure for infested bees is the guess before it.`,
    notCounted: "It is not counted: its mites are what is typed, and the ranges hold the usual doubt about a guess.",
    missing: "Say how many bees it has and how many of 100 are infested; until then this choice is not reckoned.",
    losses:
      "Its queen is taken away and its brood comes along (common practice, no source); a tenth of its bees is lost to fighting and to flying home (judgement). Its bees count as of the same stock. Robbing, the loss of the queen that stays, and whatever else the other colony carries are not reckoned.",
  },
  earlier: "One day earlier",
  later: "One day later",
  takeOut: "Take out",
  stock: "New stock",
  stocks: { "0.7": "less susceptible (0.7)", "1": "as the model's (1)", "1.25": "more susceptible (1.25)" },
  addAction: "Add to this choice",
  doneBefore: (slots: { readonly actions: readonly string[] }) =>
    `Done already, in every course: ${list(slots.actions)}.`,
  leftOutDone: (slots: { readonly actions: readonly string[] }) =>
    `Left out, though at work on the first day: ${list(slots.actions)}. A first day no later than its beginning takes it in.`,
  overBefore: (slots: { readonly actions: readonly string[] }) =>
    `Over before the first day: ${list(slots.actions)}. What it did is in the counts and in the guess, not in the course.`,
  unknownDone: (slots: { readonly ingredients: readonly string[] }) =>
    `Also put in: ${list(slots.ingredients)}. The model knows nothing of ${slots.ingredients.length === 1 ? "it" : "them"}.`,

  choicesHead: "Choices beside each other",
  choicesUnder: "Each meets the same colonies and the same chance, so a difference is the action's.",
  choiceName: (slots: { readonly actions: readonly string[] }) => list(slots.actions),
  choiceNumbered: (slots: { readonly name: string; readonly number: number }) => `${slots.name} (${slots.number})`,
  addChoice: "Add a choice",
  noActions: "No action is weighed beside what must be reported, until the stop is lifted on a laboratory’s result.",
  newChoice: "Another choice",
  newWith: {
    menthol: "Menthol",
    formic: "Formic acid",
    "oil-patty": "Patty",
    requeen: "New queen",
    "brood-break": "Brood break",
    unite: "Uniting",
  },
  show: "shown above",
  removeChoice: "Remove",
  choiceColumns: {
    choice: "Choice",
    infested: (slots: { readonly on: string }) => `Infested in 100 on ${dayAndMonth(slots.on)}`,
    difference: "Less than without",
    better: "Fewer in",
    bees: "Bees",
    alive: "Alive of 10",
  },
  middleAndRange: (slots: { readonly middle: number; readonly low: number; readonly high: number }) =>
    `${inHundred(slots.middle)}, could be ${inHundred(slots.low)} to ${inHundred(slots.high)}`,
  lessBy: (slots: { readonly middle: number; readonly low: number; readonly high: number }) =>
    `${points(slots.middle)} (${points(slots.low)} to ${points(slots.high)})`,
  hardly: "hardly any difference",
  tableOf: (slots: { readonly head: string }) => `Table: ${slots.head}`,
  betterIn: (slots: { readonly share: number }) => `${inHundred(slots.share)} of 100 runs`,
  beesRange: (slots: { readonly middle: number; readonly low: number; readonly high: number }) =>
    `${whole(100 * Math.round(slots.middle / 100))} (${whole(100 * Math.round(slots.low / 100))} to ${whole(100 * Math.round(slots.high / 100))})`,
  aliveRange: alive,

  tellHead: "What would tell",
  settledNow: (slots: { readonly name: string; readonly chance: number; readonly line: number }) =>
    `**Settled:** ${slots.name} is best in ${inHundred(slots.chance)} of 100 runs. ${best(slots.line)}`,
  settledAlike: (slots: {
    readonly name: string;
    readonly alike: readonly string[];
    readonly chance: number;
    readonly line: number;
  }) =>
    `**Not to be told apart:** ${list([slots.name, ...slots.alike])} end alike, as far as these runs can tell. ${upper(slots.name)} counts as best in ${inHundred(slots.chance)} of 100 runs; before ${slots.alike.length === 1 ? "the other" : "the others"} only because it stands first in the list. ${best(slots.line)}`,
  settles: (slots: {
    readonly date: string;
    readonly bees: number;
    readonly sure: number;
    readonly line: number;
    readonly inTime: boolean;
  }) =>
    `**A count of ${some(slots.bees, "bee", "bees")} on ${day(slots.date)} would settle it:** no earlier one would leave ${inHundred(slots.sure)} of 100 decisions standing. ${best(slots.line)}${slots.inTime ? "" : " By then a choice has begun: decide before it, or move it."}`,
  neverSettles: (slots: {
    readonly bees: number;
    readonly held: number;
    readonly sure: number;
    readonly line: number;
  }) =>
    `**No count of ${some(slots.bees, "bee", "bees")} would settle it** to ${inHundred(slots.sure)} of 100 decisions; at most ${inHundred(slots.held)} would stand. ${best(slots.line)}`,
  nothingToSettle: "With no choice beside doing nothing there is nothing to settle.",
  narrows: (slots: { readonly bees: number; readonly before: number; readonly after: number }) =>
    points(slots.before) === points(slots.after)
      ? `Another ${some(slots.bees, "bee", "bees")} now would not narrow the forecast: in the mean over what the count could find, the 90 % range without action stays ${points(slots.before)} of 100 bees wide.`
      : `Another ${some(slots.bees, "bee", "bees")} now would narrow the 90 % range without action from ${points(slots.before)} to ${points(slots.after)} of 100 bees, in the mean over what the count could find.`,
  bestColumns: { choice: "Choice", chance: "Best in, of 100 runs" },

  fromHead: "What this is reckoned from",
  fromCase: (slots: { readonly code: string; readonly case: string }) =>
    `Counts of ${slots.code} in case ${slots.case}.`,
  colony: "Colony",
  start: "First day",
  startHint: "A day before the first count, or the first of a treatment that was at work then.",
  bees: "Bees in the colony then, about",
  beesHint: "At first the model's own colony of that day and place.",
  share: "Bees infested in 100 then, best guess before any count",
  shareHint: "8 is the guess the ranges were tried with; assumed.",
  brood: "Brood then",
  broods: { usual: "as usual on that day", none: "none: a winter cluster" },
  susceptibility: "Susceptibility of the stock",
  susceptibilityHint: "1: the stock the model was tuned to; 0.1 to 3.",
  counts: "Counts: day, bees with mites, bees read",
  countsHint:
    "One a line, such as 2026-10-15 6 50. After it, where it was so: bees of which one trachea could be read, as one side 1 3; the rule by which reading was to end, infested or read, as stop 3 50.",
  sizes: "Size: day, frames, bees or brood",
  sizesHint:
    "One a line, such as 2026-08-25 8 bees or 2026-08-25 4.5 brood. After it what is on such a frame, where you know it.",
  decideOn: "Day of the choice",
  decideOnHint: "No count lies after it, and no choice acts before it.",
  until: "Last day",
  line: "Good enough at the end: bees infested in 100, at most",
  lineHint: "30: above it handbooks name likely winter death (United States). A line of your own may be lower.",
  moreBees: "Bees of a further count",
  latitude: "Latitude, north positive",
  means: "Mean temperature of the twelve months, °C, January first",
  meansHint: "Left empty: an invented cool-temperate place.",
  reckon: "Reckon the season",
  leftOut: (slots: { readonly code: string; readonly count: string }) =>
    `Left out: ${slots.code}, ${slots.count}, taken with limits.`,
  endedEarly: (slots: { readonly code: string; readonly count: string }) =>
    `${slots.code}, ${slots.count}, ended before its target. Why it ended says nothing of the share of bees with mites: it is taken as it stands.`,
  afterDone: (slots: { readonly count: string; readonly action: string; readonly days: number }) =>
    `${slots.count.replace(/^./, (first) => first.toUpperCase())} was counted ${some(slots.days, "day", "days")} after ${slots.action} began. Dead mites stay in the trunks; it is taken as a count of bees with living ones.`,
  noWeather: "No monthly means of this place are on record, so an invented cool-temperate place stands in.",
  flowAssumed: "How strong the flows on record are is not known: each is taken as full.",
  ordinaryYear: "The weather is that of an ordinary year of the place, not of the year to come.",
  fewWorth: (slots: { readonly date: string; readonly worth: number }) =>
    `What was seen on ${day(slots.date)} fits few of the possibilities tried, the worth of ${whole(slots.worth)}: ranges after it are rough.`,
  thin: (slots: { readonly bees: number; readonly worth: number }) =>
    `A further count of ${some(slots.bees, "bee", "bees")} would leave the worth of ${whole(slots.worth)} of the possibilities tried: what it narrows is rough.`,
  noCounts: "Nothing of this colony is counted yet: the ranges are those of the guess alone.",
  toCase: (slots: { readonly code: string }) => `To case ${slots.code}`,
  onRecord: "Counted colonies of open cases",
  colonyOf: (slots: { readonly colony: string; readonly case: string }) => `${slots.colony}, case ${slots.case}`,
  noColony: "**There is no such colony in this case.**",

  unknownHead: "What the model does not know",
  unknown: [
    "It was tuned by hand and not tried in the field: it shows shapes and differences, and no promise for one colony.",
    "The ranges hold the doubt of start, contact and chance, all assumed. They hold no doubt about the model, nor about how strong an action is: with an action they are too narrow.",
    "Varroa, robbing, drifting, food, swarming and new mites from neighbours are not in it; of another colony only what is united with it.",
    "Laying and winter bees follow the calendar of a cool-temperate place; the peak falls about a month late beside New York.",
    "The actions are courses of published trials and no doses. Label, local codes and the competent authority come first.",
  ],

  ahead: "The season ahead",
  aheadOf: (slots: { readonly code: string }) => `The season ahead of ${slots.code}`,
  toSeason: "Season: move the days and compare",
  notModelled: (slots: { readonly control: string }) =>
    `The model knows nothing of ${slots.control}: only the course without it is shown.`,
  aheadNothing: "No colony of this case is counted, so a forecast would rest on a guess alone.",
} as const;

/** Both ways, as thermometers differ. */
const degrees = (celsius: number): string =>
  `${Math.round(celsius)} °C (${Math.round(1.8 * celsius + 32)} °F)`.replaceAll("-", "−");

const upper = (text: string): string => text.replace(/^./, (first) => first.toUpperCase());
const best = (line: number): string =>
  `Best is the first in the list that ends at ${inHundred(line)} of 100 bees or fewer, else the first that ends within half a bee in 100 of the lowest.`;
/** A difference of shares in points of 100, rounded. */
function points(share: number): string {
  return String(Math.round(100 * share))
    .replace("-", "−")
    .replace(/^−0$/, "0");
}
