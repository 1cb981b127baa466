/** Sentences of question 4: what was found. */
import { capital, day, inHundred, list, lower, some, whole } from "./numbers.ts";

const tenths = (value: number): string => String(Number(value.toFixed(1)));

interface Told {
  readonly colony: string;
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

const told = ({ colony, value, low, high }: Told): string =>
  `${colony}, ${inHundred(value)} in 100 (${inHundred(low)} to ${inHundred(high)})`;

/** A result that was not read here, as the answer and the report tell it. */
interface ToldResult {
  readonly test: string;
  readonly colony: string;
  readonly on: string;
  readonly says: string;
  readonly laboratory: string | null;
}

const toldResult = ({ test, colony, on, says, laboratory }: ToldResult): string =>
  `${capital(colony)}, ${lower(test)}, ${day(on)}${laboratory === null ? "" : `, ${laboratory}`}: ${says.replace(/\.$/, "")}.`;

const results = { found: "found", "none-found": "none found", unclear: "unclear" } as const;

export const found = {
  toldResult,
  none: "**No specimens yet.** Add a sample to the kit in question 3, or write down a result you were given.",
  /** `first`: those told in the answer itself, of so many. */
  toldOnly: (slots: { readonly results: number; readonly first: readonly ToldResult[]; readonly vials: number }) =>
    [
      `**${capital(some(slots.results, "result", "results"))} told, no bee read here.**`,
      ...slots.first.map(toldResult),
      ...(slots.vials === 0 ? [] : [`${some(slots.vials, "vial is", "vials are")} on record, none read.`]),
    ].join(" "),
  nothingRead: (slots: { readonly vials: number }) =>
    `**Nothing is read yet.** ${some(slots.vials, "vial is", "vials are")} on record.`,
  answerMites: (slots: { readonly infested: number; readonly sampled: number }) =>
    slots.sampled === 1
      ? "**Mites in the one colony sampled.**"
      : `**Mites in ${whole(slots.infested)} of the ${whole(slots.sampled)} colonies sampled.**`,
  answerNone: (slots: { readonly bees: number; readonly colonies: number }) =>
    `**None found in ${some(slots.bees, "bee", "bees")}** of ${some(slots.colonies, "colony", "colonies")}.`,
  answerWorst: (slots: {
    readonly colony: string;
    readonly value: number;
    readonly low: number;
    readonly high: number;
    /** The one colony counted on that day. */
    readonly only: boolean;
  }) =>
    ` ${slots.only ? "" : "Highest, "}${slots.colony}: ${inHundred(slots.value)} bees in 100, and it could be ${inHundred(slots.low)} to ${inHundred(slots.high)}.`,
  answerTreated: (slots: { readonly treated: Told; readonly untreated: Told | null }) =>
    ` After the treatment: treated ${told(slots.treated)}; ${slots.untreated ? `untreated ${told(slots.untreated)}` : "no untreated colony was counted beside it"}.`,
  answerLimited: (slots: { readonly colony: string; readonly read: number }) =>
    ` ${slots.colony}: only ${some(slots.read, "bee", "bees")} could be read, so this cannot say.`,
  answerUnsampled: (slots: { readonly colonies: number }) =>
    slots.colonies === 0 ? "" : ` ${some(slots.colonies, "colony was", "colonies were")} not sampled.`,
  columns: {
    colony: "Colony",
    from: "From",
    withMites: "With mites",
    inHundred: "In 100",
    range: "Range",
    reading: "Reading",
  },
  plotHead: "Bees infested in 100",
  takenOn: (slots: { readonly day: string; readonly recheck: boolean }) =>
    `Taken ${day(slots.day)}${slots.recheck ? ", to check again" : ""}`,
  noDay: "Not taken yet",
  of: (slots: { readonly positive: number; readonly read: number }) =>
    slots.positive === 0 ? `none in ${whole(slots.read)}` : `${whole(slots.positive)} of ${whole(slots.read)}`,
  notRead: "not read",
  range: (slots: { readonly low: number; readonly high: number }) =>
    `${inHundred(slots.low)} to ${inHundred(slots.high)}`,
  value: (slots: { readonly share: number }) => inHundred(slots.share),
  cannotSay: "cannot say",
  readable: (slots: { readonly read: number; readonly received: number }) =>
    `${whole(slots.read)} of ${some(slots.received, "bee", "bees")} readable`,
  noneFound: (slots: { readonly read: number }) => `none found in ${some(slots.read, "bee", "bees")}`,
  between: "between the classes",
  reaches: (slots: { readonly band: string }) => `range reaches ${slots.band}`,
  withinBand: "all of the range",
  waiting: {
    reading: "being read",
    waits: "waits to be read",
    "to-arrive": "not here yet",
    held: "held",
    rejected: "not accepted",
  },
  beesSoFar: (slots: { readonly bees: number }) => `${some(slots.bees, "bee", "bees")} so far, shown when locked`,
  bandsHead: (slots: { readonly bands: string }) =>
    `Classes, bees in 100: ${slots.bands}. Between them nothing is said.`,
  band: (slots: { readonly from: number; readonly to: number | null; readonly means: string }) =>
    slots.to === null ? `from ${slots.from} ${slots.means}` : `${slots.from} to ${slots.to} ${slots.means}`,
  linesTrace: "Ranges: exact, 95 in 100, reading taken as perfect (rule BE5). Hatched: accepted with limits.",
  linesHead: "What the sources say of this number",
  linesUnder: "They do not agree; none stands alone.",
  lineColumns: { line: "Line, in 100", says: "It says", where: "Season, place", here: "Here" },
  positions: {
    over: "all of the range is over it",
    under: "all of the range is under it",
    either: "the range crosses it",
  },
  line: (slots: { readonly from: number; readonly to: number }) =>
    slots.from === slots.to ? String(slots.from) : `${slots.from} to ${slots.to}`,
  specimen: (slots: { readonly code: string }) => `Specimen ${slots.code}`,
  determination: "Determination label",
  inTrunks: (slots: { readonly positive: number; readonly read: number }) =>
    `inside trunks, ${whole(slots.positive)} of ${some(slots.read, "bee", "bees")}`,
  nothingInTrunks: (slots: { readonly read: number }) => `none found in ${some(slots.read, "bee", "bees")}`,
  readBy: (slots: { readonly readers: string }) => slots.readers,
  collectedBy: (slots: { readonly kept: string; readonly collector: string | null }) =>
    slots.collector === null ? slots.kept : `${slots.kept}; ${slots.collector}`,
  missedHead: (slots: { readonly bees: number }) => `What ${some(slots.bees, "bee", "bees")} could miss`,
  missedUnder: (slots: { readonly bees: number }) =>
    `Times in 100 that ${some(slots.bees, "bee shows", "bees show")} none, by bees infested in 100.`,
  missedDashed: (slots: { readonly sensitivity: number }) =>
    `Dashed: ${inHundred(1 - slots.sensitivity)} in 100 infested bees are read as clear (judgement).`,
  missedAt: (slots: { readonly prevalence: number }) => `${inHundred(slots.prevalence)} in 100 infested:`,
  missedTimes: (slots: { readonly missed: number }) => `missed ${inHundred(slots.missed)} times in 100`,
  missedPoint: (slots: { readonly prevalence: number; readonly missed: number }) =>
    `${inHundred(slots.prevalence)} in 100: ${inHundred(slots.missed)}`,
  missedLabel: (slots: { readonly bees: number; readonly points: string }) =>
    `Chance that ${slots.bees} bees show no mite, by bees infested in 100: ${slots.points}`,
  missedColumns: {
    prevalence: "Infested in 100",
    missed: "Missed, times in 100",
    judged: "Missed when some are overlooked, times in 100",
  },
  qualityHead: "Quality",
  quality: {
    twice: (slots: { readonly first: string; readonly second: string }) =>
      `**Read twice.** ${slots.first}, then ${slots.second}; no more apart than chance allows.`,
    once: "**Read once.** A second reader can read it blind at the bench.",
    outside: (slots: {
      readonly received: number;
      readonly partly: number;
      readonly unreadable: number;
      readonly lost: number;
    }) =>
      `**${whole(slots.received)} received;** ${[
        slots.partly > 0 ? `${whole(slots.partly)} partly read` : "",
        slots.unreadable > 0 ? `${whole(slots.unreadable)} unreadable` : "",
        slots.lost > 0 ? `${whole(slots.lost)} lost` : "",
      ]
        .filter(Boolean)
        .join(", ")}. They stay outside the count.`,
    bounds: (slots: { readonly best: number; readonly worst: number }) =>
      `**With every bee decided** it would lie between ${inHundred(slots.best)} and ${inHundred(slots.worst)} in 100.`,
    limits: (slots: { readonly reason: string }) => `**Accepted with limits:** ${slots.reason}.`,
    resample: "Sample this colony again.",
    condition: (slots: { readonly score: number; readonly says: string }) =>
      `**Condition ${slots.score}:** ${slots.says}.`,
    dead: "**Not alive when taken.** Mites leave dead bees: none found in bees long dead is a weak answer.",
    sides: "**Left and right agree** with what chance gives.",
    stopped: "**Stopped before the target.** The range is that of a stopped reading.",
    notInSeason: "**The season is not known:** the place has no latitude on record.",
    conflict: (slots: { readonly bees: number }) =>
      `**${some(slots.bees, "bee was", "bees were")} read twice in one reading** and stay outside until someone settles it.`,
    darkNoMite: (slots: { readonly bees: number }) =>
      `**${some(slots.bees, "dark trunk", "dark trunks")} without a mite:** not counted as infested.`,
  },
  otherHead: "Other tests",
  noOther: "No other result is on record.",
  addHead: "Add a result",
  test: "Test",
  colony: "Colony",
  wholeApiary: "the whole apiary",
  on: "Read or reported on",
  positive: "Bees with mites",
  examined: "Bees examined",
  mites: "Mites",
  bees: "Bees",
  spores: "Spores, million a bee",
  result: "Result",
  results,
  resultOf: (slots: { readonly result: "found" | "none-found" | "unclear"; readonly which: readonly string[] }) =>
    slots.which.length > 0 ? `found: ${list(slots.which)}` : results[slots.result],
  sequencedSays: (slots: { readonly sequenced: boolean }) =>
    slots.sequenced ? "the product was sequenced" : "the product was not sequenced: external mites would look alike",
  doseSays: (slots: { readonly harmful: boolean }) =>
    slots.harmful ? "at a dose that harms bees" : "below a dose that harms bees",
  chooseResult: "choose",
  which: "What was found",
  whichHint: "Tick each; of viruses, those in the highest class.",
  sequenced: "Product sequenced?",
  sequencedHint: "If not, the external mites look alike.",
  harmfulDose: "A dose that harms bees?",
  harmfulDoseHint: "Compared with the lethal dose; a residue alone is no cause.",
  daysUntilFrozen: "Days from death to the freezer",
  kept: "Kept",
  keptAs: { "ethanol-70": "in 70 % alcohol", frozen: "frozen", fresh: "fresh", dry: "dry" },
  laboratory: "Laboratory",
  takenFrom: "Bees taken from",
  notSaid: "not said",
  alive: "Alive when taken?",
  note: "Note",
  keep: "Keep this result",
  takeBack: "Take it back",
  takenBack: "taken back by the person who entered it",
  wash: (slots: {
    readonly mites: number;
    readonly bees: number;
    readonly value: number;
    readonly low: number;
    readonly high: number;
  }) =>
    `${slots.mites === 0 ? "none found on" : `${some(slots.mites, "mite", "mites")} on`} ${some(slots.bees, "bee", "bees")}: ${tenths(100 * slots.value)} in 100 (${tenths(100 * slots.low)} to ${tenths(100 * slots.high)})`,
  share: (slots: {
    readonly positive: number;
    readonly examined: number;
    readonly value: number;
    readonly low: number;
    readonly high: number;
  }) =>
    `${slots.positive === 0 ? "none found in" : `${whole(slots.positive)} of`} ${some(slots.examined, "bee", "bees")}: ${inHundred(slots.value)} in 100 (${inHundred(slots.low)} to ${inHundred(slots.high)})`,
  sporesSay: (slots: { readonly millions: number }) => `${slots.millions} million spores a bee`,
  linesOf: "Lines",
  season: { winter: "winter", spring: "spring", summer: "summer", autumn: "autumn" },
  toBench: "To the bench",
  reckonFurther: (slots: { readonly code: string }) => `Reckon further with the count of ${slots.code}`,
  sources: "sources",
};
