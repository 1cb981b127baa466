/** Words on paper. */

import { liftingRoles } from "./case.ts";
import { whole as count, day, ended, inHundred, list, lower, some } from "./numbers.ts";
import type { Slots } from "./problems/index.ts";

const gramsSay = (grams: number): string => `${Number(grams.toFixed(1))} g`;
const whole = (share: number): string => String(Math.round(share));

export const paper = {
  invented: "Invented case, for demonstration",
  use: { vial: "vial", sheet: "sheet", spare: "spare" },
  page: (page: number, pages: number): string => `Page ${page} of ${pages}`,
  printAtFullSize: "Print at 100 %, no fitting. Write the slip inside the vial in pencil.",
  nextFreeLabel: (next: number, perPage: number): string =>
    next > perPage ? "This sheet is full" : `Next free label: ${next}`,
  kit: {
    title: "Kit card",
    forLaboratory: "For:",
    asked: "We ask",
    vials: "Vials",
    code: "Code",
    colony: "Colony",
    from: "Take bees from",
    bees: "Bees",
    takenOn: "Taken on",
    by: "By",
    how: "How",
    looks: "Look for",
    lookColumn: "At the hives",
    lookAnswers: "Write yes, no or –. A dash: not looked.",
    alsoTake: "Also take",
    heed: "Heed",
    handOver: "Hand-over",
    sentBy: "Sent by:",
    sentOn: "Sent on:",
    drained: "Alcohol drained: yes / no",
    receivedBy: "Received by:",
    receivedOn: "Received on:",
    countMatches: "Vials as listed: yes / no",
  },
  report: {
    title: "Diagnostic report",
    caseLine: "Case",
    printed: (on: string): string => `Printed ${day(on)}. A draft until a signatory releases it.`,
    sampled: "sampled",
    asked: "We were asked",
    found: "We found",
    looked: "We looked at",
    missed: "We could have missed",
    opinion: "Opinion: what to do",
    heed: "Heed",
    rules: "Rules of this report",
    heads: "Rests on the journal up to:",
    endOfReport: (parts: { readonly causes: number | null; readonly opinion: number }): string =>
      `Results relate only to the bees received. ${parts.causes === null ? `Part ${parts.opinion} is` : `Parts ${parts.causes} and ${parts.opinion} are`} opinion. End of report.`,
    signs: "Signs on record",
    causes: "Opinion: what it could be",
    done: "What was done",
    effect: "Before and after",
    cause: "Cause",
    of10: "Of 10",
    causeRange: "Range",
    word: "In words",
    causesNote:
      "Our judgement, from experts’ grades, not from counted cases. More than one can be true, so they do not add to 10. The range holds 90 in 100 of how the answer could fall. What is proven to be there need not make the trouble: the numbers are of the trouble.",
    group: "Group",
    before: "Before",
    after: "After",
    method: "Fall",
    specimen: "Specimen",
    colony: "Colony",
    from: "From",
    condition: "Condition",
    read: "Read",
    withMites: "With mites",
    inHundred: "In 100",
    noEstimate: "not read",
    range: (value: number, low: number, high: number): string => `${value} (${low} to ${high})`,
    lines: (lines: readonly number[]): string => (lines.length > 0 ? `lines at ${lines.join(", ")} in 100` : "in 100"),
    squares: (picture: { value: number; low: number; high: number }): string =>
      `100 squares: ${whole(picture.value)} black, the best estimate; the range runs from ${whole(picture.low)} to ${whole(picture.high)}`,
    squaresKey: (picture: { colony: string; value: number; low: number; high: number }): string =>
      `100 bees of ${picture.colony}. Black: the ${whole(picture.value)} we expect. Dots: the range, ${whole(picture.low)} to ${whole(picture.high)}.`,
  },
  from: {
    S: "S super, inner cover",
    E: "E honey, pollen edge",
    B: "B open brood",
    F: "F entrance",
    D: "D found dead",
  },
  condition: { 0: "0 firm", 1: "1 slightly soft", 2: "2 soft", 3: "3 rotten, mouldy" },
  sheetTitle: (place: string, vials: number): string => `${place}, ${some(vials, "vial", "vials")}`,
  ownBench: "own bench",
  kitSteps: {
    queen: "Find the queen first and leave her in the hive.",
    take: (bees: number, spare: number): string =>
      `Take ${count(bees)} bees of each colony${spare > 0 ? ` and ${count(spare)} spare ones` : ""}; one vial a colony, never two colonies in one.`,
    slip: "Write the code in pencil on the slip and put the slip into the vial; then label the vial.",
    write: "Write on this card when the bees were taken, and by whom.",
    by: {
      "ethanol-70": "Cover them with 70 % ethanol at once; never let them dry.",
      frozen: "Freeze them alive at once and keep them frozen.",
      fresh: "Keep them cool and send them the same day.",
      dry: "Keep them dry and cool, with air; never in plastic.",
    },
    laboratory: (keep: string): string => `The laboratory asks: ${keep}`,
    pack: (pack: string): string => `Packing: ${pack}`,
    ask: "Rules of laboratories change: ask for those of today before you send.",
  },
  kitPromise: (slots: {
    readonly bees: number;
    readonly design: number;
    readonly sensitivity: number;
    readonly found: number;
  }): string =>
    `${some(slots.bees, "bee", "bees")} of one colony find ${inHundred(slots.design)} in 100 infested ${inHundred(slots.found)} times in 100, ${
      slots.sensitivity === 1
        ? "if reading is perfect"
        : `if the bench finds ${inHundred(slots.sensitivity)} in 100 of those with mites`
    }.`,
  stop: (slots: { readonly what: string; readonly because: string; readonly acts: readonly string[] }): string =>
    [`Stop and report: ${ended(slots.what)}`, slots.because ? ended(slots.because) : "", ...slots.acts]
      .filter(Boolean)
      .join(" "),
  stopSampling: "Nothing is sampled or sent beyond what the authority asks for.",
  others: "Others",
  notLooked: (slots: { readonly colonies: readonly string[] }): string => `nobody looked: ${list(slots.colonies)}.`,
  signs: (slots: {
    readonly present: readonly string[];
    readonly absent: readonly string[];
    /** Answered for a day after the colony had died, on what only live bees show. */
    readonly late: readonly string[];
  }): string => {
    const row = (terms: readonly string[]) => terms.map(lower).join(", ");
    // "Absent: no varroa control" is read twice.
    const absent = (terms: readonly string[]) =>
      terms.map((term) => (/^no\b/i.test(term) ? `“${lower(term)}”` : lower(term))).join(", ");
    return [
      slots.present.length > 0 ? `Present: ${row(slots.present)}.` : "Of what was looked for, nothing is present.",
      slots.absent.length > 0 ? `Absent: ${absent(slots.absent)}.` : "",
      slots.late.length > 0 ? `Answered for a day after it had died, and left out: ${row(slots.late)}.` : "",
    ]
      .filter(Boolean)
      .join(" ");
  },
  didStep: (slots: {
    readonly what: string;
    readonly done: boolean;
    readonly colonies: readonly string[];
    readonly grams: number | null;
    readonly asPlanned: boolean;
    readonly more: readonly string[];
  }): string =>
    [
      `${slots.what}, ${list(slots.colonies)}${slots.done ? "" : ": not done"}.`,
      slots.grams === null
        ? ""
        : `${gramsSay(slots.grams)} in all, ${gramsSay(slots.grams / Math.max(1, slots.colonies.length))} a colony${slots.asPlanned ? ", as planned" : ""}.`,
      ...slots.more.map(ended),
    ]
      .filter(Boolean)
      .join(" "),
  group: (slots: { readonly name: string; readonly colonies: readonly string[] }): string =>
    `${slots.name}: ${list(slots.colonies)}`,
  counted: (slots: { readonly infested: number; readonly examined: number; readonly on: string }): string =>
    `${slots.infested} of ${slots.examined}, ${day(slots.on)}`,
  head: (slots: { readonly device: string; readonly entry: number; readonly seal: string }): string =>
    `device ${slots.device}, entry ${slots.entry}, seal ${slots.seal}`,
  unsampled: (colonies: number): string =>
    colonies === 0
      ? "Every colony of the case was sampled."
      : "This report speaks for the colonies sampled, not for the yard.",
  howRead: (slots: {
    readonly letters: readonly string[];
    readonly kept: readonly string[];
    readonly received: readonly string[];
    readonly read: readonly string[];
    readonly readers: readonly string[];
  }): string =>
    [
      "Read: bees read, of those sent.",
      slots.letters.length > 0 ? `${list(slots.letters)}.` : "",
      slots.kept.length > 0 ? `Kept: ${list(slots.kept)}.` : "",
      slots.received.length > 0 ? `Received ${list(slots.received.map(day))}.` : "",
      slots.read.length > 0 ? `Read ${list(slots.read.map(day))} by ${list(slots.readers)}.` : "",
      "Both prothoracic trunks of each bee were opened. Torn, partly read and rotten bees are left out. Ranges are exact, 95 in 100, and take reading as perfect.",
    ]
      .filter(Boolean)
      .join(" "),
  limited: (colony: string): string => `${colony} is accepted with limits: please sample it again.`,
  elsewhere: (slots: { readonly colony: string }): string => `${slots.colony}, opened elsewhere`,
  missedZero: (colony: string, bees: number, five: number, two: number): string =>
    `${colony}: none found in ${some(bees, "bee", "bees")}. If 5 in every 100 bees had mites, such bees show none ${inHundred(five)} times in 100; if 2 in every 100, ${inHundred(two)} times.`,
  missedAny: (bees: number, five: number): string =>
    `${some(bees, "bee", "bees")} of a colony with 5 in 100 infested show none ${inHundred(five)} times in 100.`,
  nothingFound: { heavy: "No bee was opened.", rest: "No specimen was read and no result was told." },
  nothingMissed: "Mites in the breathing tubes show only in bees that are opened; no sign tells of them for certain.",
  lifted: (slots: {
    readonly what: string;
    readonly role: keyof typeof liftingRoles;
    readonly liftedBy: string;
    readonly laboratoryReference: string;
  }): string =>
    `The stop was lifted by ${slots.liftedBy}, ${liftingRoles[slots.role]}, laboratory reference ${slots.laboratoryReference}: ${ended(slots.what)}`,
  deadSince: (slots: { readonly on: string | null }): string =>
    slots.on === null ? "Dead." : `Dead since ${day(slots.on)}.`,
  missedElsewhere: "No bee was read here: what the results told could have missed, their laboratory can say.",
  seasonOf: (slots: { readonly season: string; readonly on: string }): string =>
    `Looked at until ${day(slots.on)}, in ${slots.season}.`,
  /** What is told of a ranking, by its code, without what is to be done on the page; the page's sentence for the rest. */
  notes: {
    "mites-in-sister": (slots: Slots) =>
      `Tracheal mites were found in ${slots.colony} of this apiary on ${day(String(slots.on))}, so they count as found around the other colonies.`,
    "seen-after-death": (slots: Slots) =>
      `Only live bees show this, and the colony had died on ${day(String(slots.on))}, so it counts for nothing: ${slots.findings}.`,
    "lift-not-weighed": (slots: Slots) =>
      `A stop was lifted on ${day(String(slots.on))} on a laboratory’s result, reference ${slots.reference}: ${slots.what}. The result itself is not on record, and this ranking does not know it.`,
    "finding-in-conflict": (slots: Slots) =>
      `Two people answered “${slots.finding}” differently, so it counts for nothing.`,
    "region-in-conflict": () => "Two people describe the region differently, so neither counts.",
    "test-cannot-be": (slots: Slots) =>
      `The result of “${slots.test}” of ${day(String(slots.on))} cannot be, so it counts for nothing. Expected: ${slots.expected}.`,
    "test-long-before": (slots: Slots) =>
      `The result of “${slots.test}” of ${day(String(slots.on))} is ${slots.days} days older than the last look. It is weighed as if it were of now.`,
  } as Readonly<Record<string, (slots: Slots) => string>>,
  decided: (choice: string, reason: string): string => `${choice}. ${reason}`,
  lookAgain: "Look at the decision again.",
  nothingToDo: "Nothing is decided yet.",
  rulesOf: (bands: string, version: string): string =>
    `${bands} A range that crosses a line can hide another class; the sources disagree. Shares by rule BE5, classes by rule BE13, zeros by the sampling rules. Signs and place are as told by the sender. Knowledge ${version}.`,
  screen: {
    answer: {
      labels: (vials: number): string =>
        vials === 0
          ? "**No vial to label.** No sample is planned in question 3."
          : `**Labels for ${some(vials, "vial", "vials")}.** Each is printed three times: vial, sheet, spare.`,
      kit: "**The kit card** travels with the vials.",
      report: "**The report,** as the records stand now.",
    },
    stock: "Label sheets",
    page: "Paper",
    start: "Start at label",
    startHint: "1 on a whole sheet.",
    which: "Vials",
    whichWaits: "not here yet",
    whichAll: "all of the case",
    destination: "Goes to",
    print: "Print",
    printHint: "Print at 100 %, no fitting, without the browser’s own headers and footers.",
    back: "Back to the case",
    preview: "The paper as it prints",
    stocks: { "a4-65": "A4, 65 labels of 38.1 × 21.2 mm", "letter-80": "US Letter, 80 labels of 44.5 × 12.7 mm" },
  },
} as const;
