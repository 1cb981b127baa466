/** Sentences of question 2: ranked causes, the verdict, what must not be missed. */
import { type RegionTold, regionSays } from "./apiaries.ts";
import { dayAndMonth, inHundred, inTen, list, lower, scale, some, whole, wordInTen } from "./numbers.ts";

interface Named {
  readonly term: string;
  readonly share: number;
}

const judgedAs = (slots: { readonly first: Named | null; readonly second: Named | null }) =>
  [slots.first, slots.second]
    .flatMap((cause) => (cause ? [`${lower(cause.term)}, **${inTen(cause.share)}** in 10`] : []))
    .join("; ");

const range = (low: number, high: number) => {
  const [from, to] = [inTen(low), inTen(high)];
  if (to === `over ${from}`) return `${from} or more`;
  return from !== to ? `${from} to ${to}` : Number.isNaN(Number(from)) ? from : `about ${from}`;
};

/** The range, where it says more than the number itself. */
const couldBe = ({ share, low, high }: { readonly share: number; readonly low: number; readonly high: number }) => {
  const says = range(low, high);
  return says.replace("about ", "") === inTen(share) ? "" : `; it could be ${says}`;
};

/** What a dissection saw. */
const proof = ({ positive, examined }: { readonly positive: number; readonly examined: number }) =>
  `mites in ${whole(positive)} of ${whole(examined)} bees`;

/** So many times, from bits of odds. */
function timesAs(bits: number): string {
  const times = 2 ** Math.abs(bits);
  if (times > 1e6) return "more than a million times";
  return `${times < 10 ? Number(times.toFixed(1)) : whole(Number(times.toPrecision(2)))} times`;
}

/** So many, or more, or fewer: of bees with mites, of mites on bees, or of spores in a bee. */
function counted(
  slots: { readonly what: "bees" | "mites" | "spores"; readonly count: number; readonly of: number } | null,
  beyond: "more" | "fewer",
): string {
  if (slots === null) return "something";
  const { what, count, of } = slots;
  const isNone = count === 0 && beyond === "fewer";
  const orBeyond = isNone ? "" : ` or ${what === "spores" && beyond === "fewer" ? "less" : beyond}`;
  if (what === "spores") return isNone ? "no spores" : `${count} million spores a bee${orBeyond}`;
  const among = `${whole(of)} bees`;
  if (what === "mites")
    return `${isNone ? "no" : whole(count)} ${count === 1 ? "mite" : "mites"}${orBeyond} on ${among}`;
  return `${isNone ? "no bee" : `${whole(count)}${orBeyond}`} of ${among} with mites`;
}

/** The absence of a sign; one whose name begins with "No" is named and said to be absent. */
const without = (term: string): string => (/^no\b/i.test(term) ? `“${lower(term)}” absent` : `no ${lower(term)}`);

export const could = {
  nothingYet: "**Nothing to rank yet.** Answer the red flags and look for at least one finding.",
  reckoning: "Reckoning the ranges",
  cannotTell: (slots: { readonly first: Named; readonly second: Named | null }) =>
    `**Cannot tell yet.** Our judgement: ${judgedAs(slots)}.`,
  reportFirst: (slots: { readonly first: Named | null; readonly second: Named | null }) =>
    `**Report first.** Our judgement meanwhile: ${slots.first ? judgedAs(slots) : "no cause reaches 1 in 10 here"}.`,
  stepsWait:
    "No look, test or treatment is advised beside what must be reported, until the stop is lifted on a laboratory’s result.\n",
  nothingStandsOut: "**Cannot tell yet.** No cause reaches 1 in 10.",
  leads: (slots: { readonly term: string; readonly share: number; readonly low: number; readonly high: number }) =>
    `**Leading: ${lower(slots.term)}.** Our judgement: **${inTen(slots.share)}** in 10${couldBe(slots)}.`,
  proven: (slots: { readonly term: string; readonly positive: number; readonly examined: number }) =>
    `**${slots.term} are proven**: ${proof(slots)}. How much of the trouble they make is another question.`,
  provenWord: "proven",
  provenBy: (slots: { readonly proof: string }) => `proven: ${slots.proof}`,
  seenItself: "A mite seen in a breathing tube is the mite itself, not a sign of it.",
  proof,
  groups: {
    varroa_and_viruses: "Varroa and its viruses",
    queen_trouble: "Queen trouble",
    nosema: "Nosema",
    brood_disease: "A brood disease",
    normal: "A normal state",
  },
  because: {
    leads: "It stands clear of the others, and its range does too.",
    "group-leads": "The group stands clear; which of its members it is, only a test can say.",
    "no-sign-or-test": "No sign and no test speaks for any cause yet.",
    "nothing-likely": "No cause passes the line from which on it is named.",
    "range-too-wide": "The ranges overlap; a look or a test must part them.",
    "primary-open": "This comes after another trouble, and that one is still open.",
    "needs-wash-and-spore-count": "This name is given only after a mite wash and a spore count.",
    "tracheae-not-opened": "No outward sign proves tracheal mites: open the breathing tubes of 50 bees.",
    "spotty-brood-alone": "Spotty brood alone names no queen.",
    "one-common-sign":
      "One sign speaks for it, and other causes bring that sign too: one more look or a test is needed.",
    "needs-test-frame":
      "A brood break and a queenless colony look alike: a frame of young brood from another colony, looked at after three days, tells.",
    "report-first": "Something must be reported first; until that is settled no normal state is named.",
    "circumstances-only": "Only circumstances, how many colonies and how soon speak for it, no sign and no test.",
  },
  underAnswer: (slots: { readonly because: string }) =>
    `${slots.because} Our judgement means: from experts’ grades, not from counted cases.`,
  noSign: (slots: { readonly share: number }) =>
    `**No sign of trouble is on record of this colony.** Nothing wrong: ${inTen(slots.share)} in 10; what is ranked below rests on how common each is.`,
  isDead: (slots: { readonly colony: string; readonly on: string | null }) =>
    `${slots.colony} is **dead**${slots.on === null ? "" : `, since ${dayAndMonth(slots.on)}`}: ranked as one that died.`,
  season: (slots: { readonly season: string; readonly on: string; readonly latitude: number | null }) =>
    `Season: **${slots.season}**, from ${dayAndMonth(slots.on)} ${
      slots.latitude === null
        ? "as in the north, since no latitude is known"
        : `at ${Math.round(Math.abs(slots.latitude))}° ${slots.latitude < 0 ? "south" : "north"}`
    }, the last day anything was looked at.`,
  region: (slots: { readonly region: RegionTold | null }) =>
    slots.region === null
      ? "Region: **not described**; taken as usual, with varroa and without the pests of elsewhere."
      : `Region: ${regionSays(slots.region, "what is there")}.`,
  ownUsed: (slots: { readonly changes: number; readonly cases: number | null; readonly set: boolean }) => {
    const parts = [
      slots.changes > 0 ? some(slots.changes, "change of the evidence", "changes of the evidence") : "",
      slots.cases !== null ? `the experience of ${some(slots.cases, "closed case", "closed cases")}` : "",
      slots.set ? "its own thresholds" : "",
    ].filter(Boolean);
    return parts.length === 0 ? "" : `Reckoned with what this programme has set: ${list(parts)}.`;
  },
  seeOwn: "See what differs from the published evidence",
  tellRegion: "Say what lives around the apiary",
  changeRegion: "Change it",
  changeDay: "Another day: “Seen on” at question 1.",
  colonyOf: "Colony",
  missHead: "Must not miss",
  miss: (slots: {
    readonly all: number;
    readonly present: number;
    readonly absent: number;
    readonly notLooked: number;
    readonly open: number;
  }) =>
    [
      `${whole(slots.all)} red flags:`,
      list(
        [
          slots.present > 0 ? `**${whole(slots.present)} yes**` : "",
          `${whole(slots.absent)} no`,
          slots.notLooked > 0 ? `${whole(slots.notLooked)} not looked` : "",
          slots.open > 0 ? `${whole(slots.open)} not asked` : "",
        ].filter(Boolean),
      ),
    ]
      .join(" ")
      .concat("."),
  seeFlags: "See them",
  noticeStop: "Stop and report",
  noticeHeed: (slots: { readonly condition: string }) => slots.condition,
  noticeWhy: (slots: { readonly findings: readonly string[]; readonly condition: string }) =>
    `${list(slots.findings)}: this can be ${lower(slots.condition)}.`,
  head: "Ranked causes",
  headNote: "More than one can be true, so they do not add to 10.",
  axisRange: "of 10, range",
  axisWeights: "each tick half a bit of weight; bold parts it from its neighbours",
  inTen: (slots: { readonly share: number }) => inTen(slots.share),
  in10: "in 10",
  range: (slots: { readonly low: number; readonly high: number }) => range(slots.low, slots.high),
  word: (slots: { readonly share: number }) => wordInTen(slots.share),
  for: "For",
  against: "Against",
  and: "And",
  nothingFor: "nothing that was looked for",
  nothingAgainst: "nothing that was looked for",
  withOthers: (slots: { readonly others: readonly string[] }) => `can come with ${list(slots.others.map(lower))}`,
  noPairing: "no pairing on record",
  reason: (slots: { readonly term: string }) => lower(slots.term),
  testReason: (slots: { readonly term: string; readonly isPositive: boolean }) =>
    `${lower(slots.term)}: ${slots.isPositive ? "found" : "none found"}`,
  elsewhere: "explained by another cause",
  asCause: "the chance is that they make the trouble; whether they are carried, only opened breathing tubes tell",
  signsAlone: "stands lower; shown because signs speak for it and only opened breathing tubes can tell",
  absentReason: (slots: { readonly term: string }) => without(slots.term),
  changesHead: "What would put another cause first",
  changesUnder: "Looks and tests not made yet, by how likely and how far they would.",
  noChanges: "No single look or test would.",
  change: (slots: {
    readonly term: string;
    readonly result: "present" | "absent" | "found" | "none-found" | "at-least" | "at-most";
    readonly counted: {
      readonly what: "bees" | "mites" | "spores";
      readonly count: number;
      readonly of: number;
    } | null;
    readonly chance: number;
    readonly cause: string;
    readonly share: number;
    readonly instead: string;
    readonly left: number;
  }) => {
    const when = {
      present: `If you had also seen ${lower(slots.term)}`,
      absent: `If you had looked and not seen “${lower(slots.term)}”`,
      found: `If “${lower(slots.term)}” found something`,
      "none-found": `If “${lower(slots.term)}” found nothing`,
      "at-least": `If “${lower(slots.term)}” found ${counted(slots.counted, "more")}`,
      "at-most": `If “${lower(slots.term)}” found ${counted(slots.counted, "fewer")}`,
    }[slots.result];
    return `${when} (${inTen(slots.chance)} in 10): **${lower(slots.cause)}** first, ${inTen(slots.share)} in 10; ${lower(slots.instead)} ${inTen(slots.left)}.`;
  },
  compareHead: "Side by side",
  compareUnder:
    "Each as if it alone were the matter, so this can differ from the ranking, where several are weighed at once.",
  compareWith: "Compare",
  compareAnd: "with",
  compared: (slots: {
    readonly first: string;
    readonly second: string;
    readonly bits: number;
    readonly before: number;
  }) => {
    const [near, far] = slots.bits >= 0 ? [slots.first, slots.second] : [slots.second, slots.first];
    const says =
      2 ** Math.abs(slots.bits) < 1.25
        ? `**${slots.first} and ${lower(slots.second)}: as likely as each other.**`
        : `**${near}: ${timesAs(slots.bits)} as likely as ${lower(far)}.**`;
    const started = slots.before >= 0 ? slots.first : slots.second;
    return `${says} ${
      2 ** Math.abs(slots.before) < 1.25
        ? "Before anything was seen they were alike."
        : `Before anything was seen it was ${timesAs(slots.before)} as likely, for ${lower(started)}.`
    }`;
  },
  compareSeen: "What was seen",
  compareNothing: "Nothing that was seen parts them.",
  compareUnseen: "What would part them",
  compareColumns: {
    what: "Look or test",
    found: "If so",
    not: "If not",
    minutes: "Takes",
    towards: "Speaks for",
    bits: "Weight",
  },
  towards: (slots: {
    readonly first: string;
    readonly second: string;
    readonly bits: number;
    /** The cause whose usual result is meant; null where the result is found or none found. */
    readonly countOf: string | null;
  }) => {
    const says =
      Math.abs(slots.bits) < 0.05
        ? "hardly moves"
        : `${lower(slots.bits > 0 ? slots.first : slots.second)}, ${Math.abs(slots.bits).toFixed(1)} bits`;
    return slots.countOf === null ? says : `a result usual with ${lower(slots.countOf)}: ${says}`;
  },
  bits: (slots: { readonly bits: number }) => `${Math.abs(slots.bits).toFixed(1)} bits`,
  trackRole: {
    cause: "",
    secondary: "secondary: find what came first",
    syndrome: "a name for what is unexplained",
    normal: "no trouble: look again",
  },
  more: (slots: { readonly count: number; readonly atMost: number }) =>
    `${whole(slots.count)} more, each ${slots.atMost < 0.1 ? "under 1 in 10" : `${inTen(slots.atMost)} in 10 or fewer`}:`,
  showAll: "show all",
  showFewer: "show fewer",
  scaleSays: (slots: { readonly words: readonly string[] }) =>
    `${list(
      scale
        .filter((row) => slots.words.includes(row.word))
        .map((row) => `${row.word} is ${inHundred(row.from)} to ${inHundred(row.to)} in 100`),
    )}.`.replace(/^./, (letter) => letter.toUpperCase()),
  judged: (slots: { readonly share: number; readonly version: string; readonly draws: number }) =>
    `${inHundred(slots.share)} in 100 of the links used are judgement alone; their doubt is drawn through ${whole(slots.draws)} times. Knowledge ${slots.version}.`,
  dotsLegend: "Each dot is 1 in 20 of how the answer could fall; the bar holds 90 in 100.",
  barLegend: "The bar holds 90 in 100 of how the answer could fall.",
  chartName: "Ranked causes of 10 with ranges",
  chartText: (slots: {
    readonly rows: readonly {
      readonly term: string;
      readonly share: number;
      readonly low: number;
      readonly high: number;
    }[];
  }) => slots.rows.map((row) => `${row.term}: ${inTen(row.share)} in 10, ${range(row.low, row.high)}`).join("; "),
  columns: {
    condition: "Cause",
    share: "In 100",
    low: "Low",
    high: "High",
    word: "Word",
    for: "For",
    against: "Against",
  },
  inHundred: (slots: { readonly share: number }) => inHundred(slots.share),
  normalHead: "Nothing wrong at all",
  nothingWrong: (slots: { readonly share: number }) => `Nothing wrong at all: ${inTen(slots.share)} in 10.`,
  refused: "**This cannot be reckoned.** Mend what is listed here.",
  notesHead: "Assumed",
};
