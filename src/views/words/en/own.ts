/** Sentences about a programme's own evidence: what it changed, what its closed cases showed, how it reasons. */
import { day, inHundred, list, lower, some, whole } from "./numbers.ts";

const figureOf100 = (share: number): string => String(Number((100 * share).toPrecision(3)));
const of100 = (share: number): string => `${figureOf100(share)} of 100`;
const instead = (published: number | null): string =>
  published === null ? "where nothing of its own was published" : `instead of ${of100(published)}`;
const restsOn = (outOf: number | null): string => (outOf === null ? "" : `, from ${some(outOf, "colony", "colonies")}`);

export const own = {
  experience: "Own experience",
  changes: "Own changes",
  toExperience: "What your closed cases showed",
  toChanges: "Change the evidence, and see what was changed",
  // Experience
  answer: (slots: { readonly closed: number; readonly learnt: number }) =>
    slots.closed === 0
      ? "**No case is closed yet.** Closed cases with a confirmed cause teach."
      : `**${whole(slots.learnt)} of ${some(slots.closed, "closed case", "closed cases")} ${slots.learnt === 1 ? "teaches" : "teach"}.** ${
          slots.closed === slots.learnt
            ? slots.learnt === 1
              ? "Its cause is confirmed."
              : "Each has a cause that something confirms."
            : "The others have no cause that something confirms."
        }`,
  under: (slots: {
    readonly frequencies: boolean;
    readonly healthyRates: boolean;
    readonly priors: boolean;
    readonly learnt: number;
  }) => {
    const used = [
      slots.frequencies ? "how often a cause shows a sign" : "",
      slots.healthyRates ? "how often a well colony shows it" : "",
      slots.priors ? "how often a cause is there" : "",
    ].filter(Boolean);
    return used.length === 0
      ? "Nothing is reckoned with them yet: the figures stand as published until somebody says so below."
      : `They bear on ${list(used)}, beside the published start.`;
  },
  reckoning: "Asking each closed case anew …",
  failed: "The closed cases could not be asked: the program broke. Load the page again.",
  settingsHead: "How this programme reasons",
  settingsUnder: "What is left empty stays as the program has it. Everything here can be taken back.",
  learns: "What closed cases may change",
  frequencies: "How often a cause shows a sign",
  healthyRates: "How often a well colony shows it",
  priors: "How often a cause is there",
  priorsHint: "Confirmed cases are no random sample: what is easy to confirm is over-represented.",
  strength: "Worth of the start",
  strengthHint: "Times the counts that its width gives: 1 as published, 2 moves half as fast, 0.5 twice as fast.",
  leading: "A cause is named above",
  leadingHint: (slots: { readonly standard: number }) =>
    `The lower end of its range must exceed it. Left empty: ${of100(slots.standard)}.`,
  open: "A cause is open from",
  openHint: (slots: { readonly standard: number }) =>
    `A secondary trouble is not named while another cause stands this high. Left empty: ${of100(slots.standard)}.`,
  nothingWrong: "Nothing is wrong, before any sign",
  nothingWrongHint: (slots: { readonly standard: number }) =>
    `Share of the colonies you are called to that turn out well. Left empty: ${of100(slots.standard)}.`,
  reason: "Why",
  of100Unit: "of 100",
  tryIt: "See what would change",
  trying: "Asking every case anew …",
  keepSettings: "Reckon like this from now on",
  settingsBack: "Take these settings back",
  acceptChange: "Accept and record",
  tryFirst: "See what would change first; then it can be accepted.",
  scoresHead: "How well past answers did",
  scored: (slots: { readonly cases: number; readonly leftOut: boolean }) =>
    `${some(slots.cases, "case was", "cases were")} asked with what was on record before the result that confirmed the cause${
      slots.leftOut ? ", each with what the other cases taught" : ""
    }.`,
  scoreColumns: { name: "Score", value: "Value", range: "95 in 100", means: "What it means" },
  brier: { name: "Brier score", means: "Mean squared distance over all causes; 0 is perfect." },
  logScore: (slots: { readonly clip: number; readonly held: number }) => ({
    name: "Logarithmic score",
    means: `Mean of −ln of what the confirmed cause was given; 0 is perfect.${
      slots.held > 0
        ? ` ${some(slots.held, "case", "cases")} had less than ${slots.clip}, and ${slots.held === 1 ? "was" : "were"} held there.`
        : ""
    }`,
  }),
  topOne: { name: "Confirmed cause first, of 100 cases", means: "Cases in which it stood first." },
  topThree: { name: "Among the first three, of 100 cases", means: "Cases in which it stood among the first three." },
  plain: (value: number) => value.toFixed(2),
  share: (share: number) => figureOf100(share),
  reliability: {
    title: "What was stated, and what came true",
    under:
      "A dot for each tenth of what was stated, over all causes of all cases, with 95-in-100 limits. Causes of one case go together, so the limits are too narrow.",
    label: (slots: {
      readonly bins: readonly { readonly n: number; readonly stated: number; readonly observed: number }[];
    }) =>
      slots.bins
        .map(({ n, stated, observed }) => `stated ${of100(stated)}: ${of100(observed)} came true, of ${whole(n)}`)
        .join("; "),
    stated: "Stated, of 100",
    observed: "Came true, of 100",
    alike: "Stated and true alike",
    bin: "Cases and causes of that tenth",
  },
  casesHead: "Case by case",
  scoredCase: (slots: {
    readonly confirmed: readonly string[];
    readonly given: readonly number[];
    readonly rank: number;
    readonly likeliest: string;
    readonly posterior: number;
  }) =>
    `${list(slots.confirmed.map((term, at) => `${lower(term)} (${of100(slots.given[at] ?? 0)})`))} was confirmed${
      slots.rank === 1
        ? " and stood first"
        : `; it stood at place ${slots.rank}, behind ${lower(slots.likeliest)} (${of100(slots.posterior)})`
    }.`,
  valuesHead: "What closed cases showed, beside the start",
  valuesUnder: "Own cases never stand without the figure they started from.",
  valueColumns: {
    says: "Figure",
    published: "Published, of 100",
    start: "Start, of 100",
    seen: "Own cases",
    inUse: "In use, of 100",
  },
  valueKinds: {
    frequency: "How often a cause shows a sign",
    "healthy-rate": "How often a well colony shows it",
    prior: "How often a cause is there",
  },
  noValues: "No closed case bears on a figure yet.",
  nonePublished: "none",
  pair: (slots: { readonly condition: string; readonly finding: string }) =>
    `${slots.finding}, with ${lower(slots.condition)}`,
  inHealthy: (slots: { readonly finding: string; readonly season: string }) =>
    `${slots.finding}, in a well colony in ${slots.season}`,
  priorOf: (slots: { readonly condition: string; readonly season: string }) => `${slots.condition}, in ${slots.season}`,
  seen: (slots: { readonly present: number; readonly looked: number }) =>
    `${whole(slots.present)} of ${whole(slots.looked)}`,
  more: (slots: { readonly count: number }) => `Show ${whole(slots.count)} more`,
  driftHead: "Signs over the years",
  drift: (slots: { readonly tested: number; readonly looked: number; readonly drifting: number }) =>
    slots.looked === 0
      ? "No closed case looked for a sign."
      : slots.tested === 0
        ? `No sign was looked for in enough cases yet: a trend asks for 30 cases in 3 years.`
        : `${whole(slots.drifting)} of ${some(slots.tested, "sign", "signs")} with enough cases ${
            slots.drifting === 1 ? "changes" : "change"
          } over the years, held against the number of signs looked at.`,
  driftUnder: "A trend may come of who looks, or of which cases are brought, as well as of bees.",
  driftColumns: { finding: "Sign", years: "Seen, of looked for", says: "Trend" },
  years: (slots: {
    readonly years: readonly { readonly year: number; readonly present: number; readonly looked: number }[];
  }) => slots.years.map(({ year, present, looked }) => `${year}: ${present} of ${looked}`).join("; "),
  trend: (slots: { readonly rises: boolean; readonly adjusted: number; readonly sure: boolean }) =>
    `${slots.sure ? (slots.rises ? "rises" : "falls") : "no trend shown"}, p ${
      slots.adjusted < 0.001 ? "under 0.001" : slots.adjusted.toFixed(3)
    }`,
  refusedHead: "Cases that teach nothing",
  // Changes
  changesAnswer: (slots: { readonly changes: number; readonly idle: number }) =>
    slots.changes === 0
      ? "**Nothing is changed.** The evidence is as it was published."
      : `**${some(slots.changes, "change", "changes")} of this programme.** ${
          slots.idle === 0
            ? "All count."
            : `${whole(slots.idle)} ${slots.idle === 1 ? "counts" : "count"} for nothing, as told below.`
        }`,
  changesUnder: "The published figure stays beside each. A change counts once it is accepted, and can be taken back.",
  changesHead: "What was changed",
  cited: (slots: { readonly title: string | null; readonly year: number | null; readonly at: string }) =>
    slots.title === null
      ? `No source; ${slots.at}`
      : `${slots.title}${slots.year === null ? "" : ` (${slots.year})`}, ${slots.at}`,
  by: (slots: { readonly author: string; readonly on: string }) => `${slots.author}, ${day(slots.on)}`,
  takeBack: "Take it back",
  takeBackNow: "Take it back now",
  takeBackOf: (slots: { readonly says: string }) => `Take it back: ${slots.says}`,
  change: {
    source: (slots: { readonly title: string; readonly year: number | null }) =>
      `New source: ${slots.title}${slots.year === null ? "" : ` (${slots.year})`}`,
    condition: (slots: { readonly term: string; readonly before: string | null }) =>
      slots.before === null
        ? `New condition: ${slots.term}`
        : `Condition ${slots.before}, described anew as ${slots.term}`,
    finding: (slots: { readonly term: string; readonly before: string | null }) =>
      slots.before === null ? `New finding: ${slots.term}` : `Finding ${slots.before}, described anew as ${slots.term}`,
    frequency: (slots: {
      readonly condition: string;
      readonly finding: string;
      readonly rate: number;
      readonly published: number | null;
      readonly outOf: number | null;
    }) =>
      `${slots.finding}, with ${lower(slots.condition)}: ${of100(slots.rate)} ${instead(slots.published)}${restsOn(slots.outOf)}`,
    prior: (slots: {
      readonly condition: string;
      readonly season: string;
      readonly rate: number;
      readonly published: number | null;
      readonly outOf: number | null;
    }) =>
      `${slots.condition}, in ${slots.season}: ${of100(slots.rate)} ${instead(slots.published)}${restsOn(slots.outOf)}`,
    healthyRate: (slots: {
      readonly finding: string;
      readonly season: string;
      readonly rate: number;
      readonly published: number | null;
      readonly outOf: number | null;
    }) =>
      `${slots.finding}, in a well colony in ${slots.season}: ${of100(slots.rate)} ${instead(slots.published)}${restsOn(slots.outOf)}`,
  },
  formHead: "Change a figure, or add something",
  what: "What",
  whats: {
    frequency: "How often a cause shows a sign",
    prior: "How often a cause is there",
    "healthy-rate": "How often a well colony shows a sign",
    condition: "A condition: a new one, or another description",
    finding: "A finding: a new one, or another description",
    source: "A source",
  },
  condition: "Condition",
  finding: "Finding",
  season: "Season",
  newCondition: "A condition of our own",
  newFinding: "A finding of our own",
  seasons: { winter: "Winter", spring: "Spring", summer: "Summer", autumn: "Autumn" },
  rate: {
    frequency: "Colonies with this cause that show it",
    prior: "Failing colonies that have it, of those you are called to",
    "healthy-rate": "Well colonies that show it",
  },
  rateNow: (slots: { readonly now: number | null }) =>
    slots.now === null ? "Now: as in a well colony." : `Now: ${of100(slots.now)}.`,
  outOf: "Colonies looked at",
  outOfHint: "Where the source says so: the figure is then as sure as its count. Left empty: as a judged figure.",
  suppresses: "The cause makes the sign rarer than in a well colony",
  term: "Name",
  role: "Role",
  roles: {
    cause: "A cause",
    secondary: "Follows another trouble",
    syndrome: "A syndrome",
    normal: "A normal state",
  },
  rollUp: "Judged together with",
  none: "None",
  urgency: "To be acted on",
  urgencies: {
    "same-day": "the same day",
    "within-a-week": "within a week",
    "within-a-month": "within a month",
    "next-season": "next season",
  },
  priorBySeason: "Failing colonies that have it, by season",
  healthyBySeason: "Well colonies that show it, by season",
  kind: "Kind",
  kinds: { sign: "A sign", circumstance: "A circumstance" },
  question: "Question to be asked",
  lookFor: "What to look for, so that a stranger scores it alike",
  minutes: "Minutes it takes",
  title: "Title",
  authors: "Authors",
  year: "Year",
  where: "Where it can be found",
  readOfIt: "What of it was read",
  citationHead: "On whose word",
  source: "Source",
  noSource: "No source",
  sourceItself: "The source itself, added here",
  at: "Where in it, or what else it rests on",
  read: "How it was read",
  trial: (slots: { readonly compared: number; readonly changed: number }) =>
    slots.compared === 0
      ? "**No case is on record** on which it could be tried."
      : slots.changed === 0
        ? `**None of ${some(slots.compared, "past answer", "past answers")} would change** its verdict or its likeliest cause.`
        : `**${whole(slots.changed)} of ${some(slots.compared, "past answer", "past answers")} would change.**`,
  wholeApiary: "whole apiary",
  trialColumns: { case: "Case, colony", before: "Now", after: "Then" },
  answerInShort: (slots: { readonly names: string | null; readonly likeliest: string; readonly share: number }) =>
    `${slots.names === null ? "no cause named" : `${slots.names} named`}; likeliest ${lower(slots.likeliest)}, ${inHundred(slots.share)} of 100`,
  ofRecord: "What this programme has changed here",
  changeThis: "Change a figure of it",
};
