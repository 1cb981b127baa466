/** Thresholds and rules of handbooks, each with season, region and source. None stands alone. */
import { commonPractice, computed, judged, recalled, seen } from "./cite.ts";
import type { Citations } from "./fact.ts";
import { type Figure, figure, type Span, span } from "./figure.ts";
import type { ConditionId } from "./ids.ts";

/** One band of a scale. */
export interface Band {
  readonly from: number;
  /** Null where the band is open upwards. */
  readonly to: number | null;
  readonly means: string;
}

/** A threshold or rule. */
export interface ThresholdFact {
  readonly about: ConditionId | "stores" | "strength" | "queen" | "brood" | "colony-loss" | "tracing";
  readonly words: string;
  readonly figure: Figure | Span | null;
  readonly bands: readonly Band[];
  readonly season: string | null;
  readonly region: string | null;
  /** What else says otherwise, or limits it. */
  readonly but: string | null;
  readonly citations: Citations;
}

const varroa = "mites per 100 bees";
const infested = "percent of bees infested";

/** Thresholds by key. */
export const thresholds = {
  "varroa-action-usda": {
    about: "varroa_pms",
    words: "General action line: 3 mites per 100 adult bees, or more than 30 mites a day on a board.",
    figure: figure(3, varroa, seen("carl-hayden-threshold", "quoted statement")),
    bands: [],
    season: null,
    region: "United States",
    but: null,
    citations: [seen("carl-hayden-threshold", "quoted statement")],
  },
  "varroa-economic-florida": {
    about: "varroa_pms",
    words:
      "Line used in Florida research: 3 per 100. Back to 3 in 4 to 5 months after winter or spring treatment, in under 3 months after summer or autumn treatment.",
    figure: figure(3, varroa, seen("jack-2023", "abstract")),
    bands: [],
    season: null,
    region: "Florida",
    but: null,
    citations: [seen("jack-2023", "abstract")],
  },
  "varroa-field-experience": {
    about: "varroa_pms",
    words: "Field experience: below 2 colonies thrive, at 5 brood fails, at 15 they are seldom saved.",
    figure: null,
    bands: [
      { from: 0, to: 2, means: "colonies thrive" },
      { from: 5, to: 15, means: "brood fails" },
      { from: 15, to: null, means: "seldom saved" },
    ],
    season: null,
    region: "California",
    but: "Between 2 and 5 nothing is said.",
    citations: [seen("oliver-2013", "text")],
  },
  "varroa-august-british-columbia": {
    about: "varroa_pms",
    words: "One mite or more per 100 bees in August went with clearly more winter deaths.",
    figure: figure(1, varroa, seen("bc-2024", "abstract")),
    bands: [],
    season: "August",
    region: "British Columbia",
    but: null,
    citations: [seen("bc-2024", "abstract")],
  },
  "varroa-ladder": {
    about: "varroa_pms",
    words:
      "Ladder through the season, mites per 100 bees: spring 1, early summer 2, August and September 2 (1 before a long cold winter), October without brood 1 to 2.",
    figure: span([1, 2], varroa, judged("seasonal ladder")),
    bands: [],
    season: "spring to October",
    region: null,
    but: null,
    citations: [judged("seasonal ladder"), recalled("North American guides")],
  },
  "varroa-adults-to-colony": {
    about: "varroa_pms",
    words: "While there is brood the colony has about twice the mites that ride on its adults.",
    figure: figure(1.8, "times", recalled("Lee and others 2010")),
    bands: [],
    season: "while there is brood",
    region: null,
    but: null,
    citations: [recalled("Lee and others 2010")],
  },
  "varroa-apiary-sample": {
    about: "varroa_pms",
    words: "About 300 bees from each of 8 colonies for the mean of an apiary.",
    figure: figure(8, "colonies", recalled("Lee and others 2010")),
    bands: [],
    season: null,
    region: null,
    but: null,
    citations: [recalled("Lee and others 2010")],
  },
  "tracheal-bands": {
    about: "tracheal_mites",
    words: "No single line: bands with their sources. Autumn-to-spring timing matters more than the number alone.",
    figure: null,
    bands: [
      { from: 0, to: 10, means: "low" },
      { from: 10, to: 15, means: "low to some" },
      { from: 15, to: 20, means: "act in autumn" },
      { from: 30, to: 40, means: "damage likely" },
      { from: 50, to: null, means: "high winter risk" },
    ],
    season: "autumn to winter",
    region: null,
    but: "The cold-climate and the mild-climate literature disagree; between the bands nothing is said.",
    citations: [
      seen("beebook-tracheal", "5.1, 5.2, 5.4"),
      seen("danka-1995", "abstract"),
      seen("bailey-1958", "abstract"),
      judged("choice of the bands"),
    ],
  },
  "tracheal-winter-death": {
    about: "tracheal_mites",
    words: "Colonies at 40 to 50 % infested or more often die in winter; a colder winter raises the risk.",
    figure: span([40, 50], infested, seen("beebook-tracheal", "5.1")),
    bands: [],
    season: "winter",
    region: "northern USA and Canada",
    but: "Conflicts with the autumn rule of the same work.",
    citations: [seen("beebook-tracheal", "5.1, after Furgala and others 1989, Otis and Scott-Dupree 1992")],
  },
  "tracheal-autumn-rule": {
    about: "tracheal_mites",
    words: "Colonies with 15 to 25 % infested in autumn are said not to survive the winter.",
    figure: span([15, 25], infested, seen("beebook-tracheal", "5.2")),
    bands: [],
    season: "autumn",
    region: null,
    but: "Absolute wording; conflicts with section 5.1 of the same work.",
    citations: [seen("beebook-tracheal", "5.2")],
  },
  "tracheal-economic": {
    about: "tracheal_mites",
    words: "Typical economic threshold: below 20 % infested.",
    figure: figure(20, infested, seen("beebook-tracheal", "5.4")),
    bands: [],
    season: null,
    region: null,
    but: null,
    citations: [seen("beebook-tracheal", "5.4")],
  },
  "tracheal-damage-level": {
    about: "tracheal_mites",
    words: "A mean below 15 % is held to be below economic damage.",
    figure: figure(15, infested, seen("danka-1995", "abstract")),
    bands: [],
    season: null,
    region: "United States",
    but: null,
    citations: [seen("danka-1995", "abstract")],
  },
  "tracheal-thirty": {
    about: "tracheal_mites",
    words: "Above 30 % infested: loss of yield and likely winter death.",
    figure: figure(30, infested, seen("erickson-1998", "citing Henderson and Morse 1990, Shimanuki and others 1992")),
    bands: [],
    season: "winter",
    region: "United States",
    but: "Eighty colonies in North Dakota with a lasting low share showed no effect over five years.",
    citations: [
      seen("erickson-1998", "citing Henderson and Morse 1990, Shimanuki and others 1992"),
      seen("erickson-1996", "80 colonies, 5 years"),
      seen("california-county", "text"),
    ],
  },
  "tracheal-britain": {
    about: "tracheal_mites",
    words: "Above 30 or 40 % colonies seemed more likely to die in winter; few get there; no signs in summer.",
    figure: span([30, 40], infested, seen("bailey-1958", "abstract")),
    bands: [],
    season: "winter",
    region: "Britain",
    but: "Deaths of bees are only slightly raised and only under long stress.",
    citations: [seen("bailey-1958", "abstract")],
  },
  "tracheal-half": {
    about: "tracheal_mites",
    words: "Damage to or death of a colony when half or more of the workers are infested.",
    figure: figure(50, infested, seen("danka-villa-2003", "the laboratory's summary")),
    bands: [],
    season: null,
    region: "United States",
    but: null,
    citations: [seen("danka-villa-2003", "the laboratory's summary")],
  },
  "tracheal-act-before-winter": {
    about: "tracheal_mites",
    words: "North American advice: act at 10 % infested or more in autumn.",
    figure: figure(10, infested, recalled("North American advice")),
    bands: [],
    season: "autumn",
    region: "North America",
    but: null,
    citations: [recalled("North American advice")],
  },
  "tracheal-ontario": {
    about: "tracheal_mites",
    words: "Of 25 colonies with tracheal mites in autumn 12 died, of 383 without 99 (48.0 and 25.8 %).",
    figure: figure(1.857, "risk ratio", computed("12/25 over 99/383", "guzman-novoa-2010")),
    bands: [],
    season: "autumn to spring",
    region: "Ontario",
    but: "Observed, other factors not adjusted for: no effect of the mite alone.",
    citations: [
      seen("guzman-novoa-2010", "table III"),
      computed("risk ratio 1.857 (1.194–2.889)", "guzman-novoa-2010"),
    ],
  },
  "nosema-action": {
    about: "nosema_apis",
    words: "One million spores a bee, pooled, is the customary line; it comes from Nosema apis.",
    figure: figure(1e6, "spores per bee", recalled("customary line")),
    bands: [],
    season: null,
    region: null,
    but: "A poor guide for Nosema ceranae: most colonies of Hawaii carried it without acute loss.",
    citations: [recalled("customary line"), seen("hawaii-nosema-2013", "abstract")],
  },
  "dead-bees-normal": {
    about: "acute_poisoning",
    words: "Up to about 100 dead bees a day at a hive is ordinary; more is suspicious.",
    figure: figure(100, "dead bees per day", seen("pesticide-stewardship", "text")),
    bands: [],
    season: null,
    region: null,
    but: null,
    citations: [seen("pesticide-stewardship", "text")],
  },
  "dead-bees-share-seen": {
    about: "acute_poisoning",
    words: "In a poisoning 10 to 20 % of the killed bees lie at the entrance: five to ten times as many died.",
    figure: span([10, 20], "percent of killed bees", seen("ontario-poisoning", "text")),
    bands: [],
    season: null,
    region: null,
    but: null,
    citations: [seen("ontario-poisoning", "text")],
  },
  "dead-bees-grades": {
    about: "acute_poisoning",
    words: "Grades of a kill, dead bees a day: 200 to 400 low, 500 to 900 moderate, 1000 or more high.",
    figure: null,
    bands: [
      { from: 200, to: 400, means: "low" },
      { from: 500, to: 900, means: "moderate" },
      { from: 1000, to: null, means: "high" },
    ],
    season: null,
    region: "Pacific Northwest",
    but: null,
    citations: [recalled("Pacific Northwest extension")],
  },
  "winter-stores-cold": {
    about: "stores",
    words: "Winter stores in a cold northern climate: 27 to 41 kg (60 to 90 lb).",
    figure: span([27, 41], "kg", seen("winter-stores-pages", "trade pages, low grade")),
    bands: [],
    season: "autumn",
    region: "cold, northern",
    but: "UK 18 to 20 kg and Central Europe 15 to 20 kg, from memory.",
    citations: [seen("winter-stores-pages", "trade pages, low grade"), recalled("UK and Central Europe")],
  },
  "winter-stores-hard-cold": {
    about: "stores",
    words: "Winter stores in hard cold: 36 to 45 kg (80 to 100 lb).",
    figure: span([36, 45], "kg", seen("winter-stores-pages", "trade pages, low grade")),
    bands: [],
    season: "autumn",
    region: "hard cold",
    but: null,
    citations: [seen("winter-stores-pages", "trade pages, low grade")],
  },
  "winter-stores-warm": {
    about: "stores",
    words: "Winter stores in a warm climate: 18 to 27 kg (40 to 60 lb).",
    figure: span([18, 27], "kg", seen("winter-stores-pages", "trade pages, low grade")),
    bands: [],
    season: "autumn",
    region: "warm",
    but: null,
    citations: [seen("winter-stores-pages", "trade pages, low grade")],
  },
  "winter-stores-small-colony": {
    about: "stores",
    words: "Winter stores of a small colony: 14 to 23 kg.",
    figure: span([14, 23], "kg", seen("winter-stores-pages", "trade pages, low grade")),
    bands: [],
    season: "autumn",
    region: null,
    but: "Low grade: pages of the trade, no study.",
    citations: [seen("winter-stores-pages", "trade pages, low grade")],
  },
  "winter-hive-mass": {
    about: "stores",
    words: "A whole hive ready for winter weighs 59 to 68 kg.",
    figure: span([59, 68], "kg", seen("winter-stores-pages", "trade pages, low grade")),
    bands: [],
    season: "autumn",
    region: null,
    but: "Low grade: pages of the trade, no study; hives differ in weight.",
    citations: [seen("winter-stores-pages", "trade pages, low grade")],
  },
  "honey-per-deep-comb": {
    about: "stores",
    words: "A full deep comb holds about 2.7 kg (6 lb) of honey.",
    figure: figure(2.7, "kg", recalled("handbooks")),
    bands: [],
    season: null,
    region: null,
    but: null,
    citations: [recalled("handbooks")],
  },
  "autumn-strength": {
    about: "strength",
    words: "Combs of bees in autumn: cold 8 to 10 or more, mild 5 to 6 or more; below 5 unite.",
    figure: null,
    bands: [
      { from: 0, to: 5, means: "unite" },
      { from: 5, to: 8, means: "enough where winters are mild" },
      { from: 8, to: null, means: "enough where winters are cold" },
    ],
    season: "autumn",
    region: null,
    but: null,
    citations: [commonPractice("combs of bees in autumn")],
  },
  "bees-per-deep-comb": {
    about: "strength",
    words: "A deep comb covered on both sides holds about 2,000 to 2,400 bees.",
    figure: span([2000, 2400], "bees", recalled("handbooks")),
    bands: [],
    season: null,
    region: null,
    but: null,
    citations: [recalled("handbooks")],
  },
  "brood-pattern-good": {
    about: "brood",
    words: "A brood pattern is good when 90 % or more of the cells of the patch are used.",
    figure: figure(90, "percent of cells", seen("journeyman-guide", "text")),
    bands: [],
    season: null,
    region: null,
    but: null,
    citations: [seen("journeyman-guide", "text")],
  },
  "foulbrood-tracing": {
    about: "tracing",
    words: "Apiaries within 3 km are inspected after foulbrood.",
    figure: figure(3, "km", recalled("UK and EU practice")),
    bands: [],
    season: null,
    region: "UK and EU",
    but: null,
    citations: [recalled("UK and EU practice")],
  },
  "colony-loss-definition": {
    about: "colony-loss",
    words:
      "Lost: too few bees to function, a queen problem that cannot be solved, stolen or destroyed, or no live bees. Depopulated: none or few live bees, none or few dead, food present.",
    figure: null,
    bands: [],
    season: null,
    region: null,
    but: null,
    citations: [seen("beebook-survey", "section 2.3")],
  },
} as const satisfies Readonly<Record<string, ThresholdFact>>;

/** Key of a threshold. */
export type ThresholdId = keyof typeof thresholds;
