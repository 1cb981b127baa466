/** What is known of the mites under the microscope: sides, sizes, look-alikes, and what colour does not tell. */
import { commonPractice, computed, judged, recalled, seen } from "./cite.ts";
import { figure, span } from "./figure.ts";

/**
 * Left and right tube. Mites fall at random on either side and an occupied tube is no more or less attractive, so with
 * share P of infested bees a tube is infested with q = 1 − √(1 − P); a share q²/P of infested bees has both tubes
 * infested, and reading one side finds q/P of them. A survey in Mexico found far more bees with both sides infested
 * (25.4 against 11.9 %): bees of one colony differ by age.
 */
export const twoSides = {
  model: seen("gary-page-1987", "abstract: random sides, equal progeny at 1 to 3 females a tube"),
  /** Computed rows: share of infested bees, tube, both sides among infested, found by one side. */
  rows: [
    { infestedShare: 0.05, tube: 0.0253, bothAmongInfested: 0.0128, foundByOneSide: 0.506 },
    { infestedShare: 0.1, tube: 0.0513, bothAmongInfested: 0.0263, foundByOneSide: 0.513 },
    { infestedShare: 0.2, tube: 0.1056, bothAmongInfested: 0.0557, foundByOneSide: 0.528 },
    { infestedShare: 0.3, tube: 0.1633, bothAmongInfested: 0.0889, foundByOneSide: 0.544 },
    { infestedShare: 0.5, tube: 0.2929, bothAmongInfested: 0.1716, foundByOneSide: 0.586 },
    { infestedShare: 0.8, tube: 0.5528, bothAmongInfested: 0.382, foundByOneSide: 0.691 },
  ],
  rowsFrom: computed("q = 1 − √(1 − P)", "gary-page-1987"),
  observedBothSides: figure(25.4, "percent of all bees", computed("left + right − infested", "mexico-survey-1989")),
  expectedBothSides: figure(11.9, "percent of all bees", computed("if sides were independent", "mexico-survey-1989")),
} as const;

/** Facts of the dissection, by key. */
export const benchFacts = {
  "colour-is-not-the-test": {
    words:
      "A well tube is white or cream; a bad one has brown or black blotches and crusts. A clear tube may hold mites and a clouded one may hold none.",
    figure: null,
    citations: [seen("ah-690", "secondary")],
  },
  "screening-power": {
    words: "About 30 times is enough for a first look.",
    figure: figure(30, "times", commonPractice("microscopy page", "microscopy-page")),
    citations: [commonPractice("microscopy page", "microscopy-page")],
  },
  "no-graded-scale": {
    words: "No published graded scale was found: record both tubes, infested or not, by stage, and colour apart.",
    figure: null,
    citations: [judged("record proposed here")],
  },
  "female-length": {
    words: "Female: 120 to 190 micrometres long, 77 to 80 wide.",
    figure: span([120, 190], "micrometres", seen("beebook-tracheal", "2.2.1")),
    citations: [seen("beebook-tracheal", "2.2.1"), seen("ah-690", "143–174, secondary")],
  },
  "male-length": {
    words: "Male: 125 to 136 micrometres long, 60 to 77 wide.",
    figure: span([125, 136], "micrometres", seen("beebook-tracheal", "2.2.1")),
    citations: [seen("beebook-tracheal", "2.2.1")],
  },
  larva: {
    words: "Larva: three pairs of legs, larger than the grown female.",
    figure: figure(3, "pairs of legs", seen("beebook-tracheal", "2.2.1")),
    citations: [seen("beebook-tracheal", "2.2.1")],
  },
  "load-per-tube": {
    words: "When all bees are infested a tube holds about 21 to 22 mites of all stages (Apis cerana japonica).",
    figure: span([21, 22], "mites per tube", seen("maeda-2016", "abstract")),
    citations: [seen("maeda-2016", "abstract")],
  },
  "site-decides": {
    words: "Only Acarapis woodi lives inside the tubes; it alone can be named by its site.",
    figure: null,
    citations: [seen("delfinado-baker-1982", "abstract"), seen("ah-690", "secondary"), seen("ibay-1989", "abstract")],
  },
  "species-measures": {
    words:
      "Distance of the openings 13.9, 16.8, 16.7 and tarsus IV 7.4, 11.4, 7.6 micrometres in woodi, externus, dorsalis: from memory, verify.",
    figure: span([13.9, 16.8], "micrometres", recalled("table of the WOAH Manual")),
    citations: [recalled("table of the WOAH Manual")],
  },
  "clearing-deposit": {
    words: "A deposit clears in lactic acid in 10 minutes.",
    figure: figure(10, "minutes", seen("microscopy-page", "acarine diagnosis")),
    citations: [seen("microscopy-page", "acarine diagnosis")],
  },
  "one-neubauer-block": {
    words: "One of the 25 blocks of the improved Neubauer chamber holds 4 nanolitres.",
    figure: figure(4, "nl", computed("0.2 × 0.2 × 0.1 mm")),
    citations: [computed("0.2 × 0.2 × 0.1 mm"), seen("edis-in1123", "5 of 25 blocks")],
  },
  "debris-erratum": {
    words:
      "A paper prints 6.3 % positive of 11 debris samples, which no count of 11 gives; 4 of 44 bee samples is 9.1 %.",
    figure: figure(9.1, "percent", seen("pietropaoli-2022", "abstract")),
    citations: [seen("pietropaoli-2022", "abstract"), computed("1/16 = 6.25 %")],
  },
} as const;

/** Timing of the mite in the bee. */
export const lifeHistory = {
  maleEggToAdult: span([11, 12], "days", seen("beebook-tracheal", "2.2.4")),
  femaleEggToAdult: span([14, 15], "days", seen("beebook-tracheal", "2.2.4")),
  hostAgeEntered: span([0, 4], "days", seen("beebook-tracheal", "2.2.4")),
  hostAgeEnteredMostly: span([0, 2], "days", seen("villa-2006", "abstract")),
  hostAgeNoLonger: span([3, 4], "days", seen("villa-2007", "abstract")),
  hostAgeDispersal: span([15, 25], "days, peak", seen("beebook-tracheal", "2.2.5")),
  eggsPerFemaleExtension: span([5, 7], "eggs", seen("maarec-tracheal", "page")),
  eggsPerFemaleOther: span([8, 20], "eggs", seen("pietropaoli-2022", "introduction")),
  coolBroodFactor: span([2, null], "times the share", seen("mcmullan-brown-2005", "brood at 30 against 34 °C")),
  susceptibleStockEffect: seen("danka-villa-1996", "fecundity does not differ by stock"),
  winterCascade: seen("mcmullan-brown-2009", "failed warming late in winter; no coefficients in the abstract"),
} as const;

/** Harm in counted data: share of bees infested against what followed. */
export const harm = {
  honeyInCitrusFlow: {
    rows: [
      { infestedPercent: "below 5", honeyKg: 24.1 },
      { infestedPercent: "39.8", honeyKg: 11.5 },
      { infestedPercent: "86.7", honeyKg: 3.2 },
    ],
    citation: seen("eischen-1989", "Mexico, 31 days"),
  },
  mountainWintering: {
    rows: [{ infestedPercent: "86.0", smallerInAutumnPercent: 28 }],
    citation: seen("eischen-1987", "30 colonies in groups of 0, 28.2 and 86.0 %, Mexico, 2800 m"),
  },
  japaneseBees: {
    rows: [{ infestedPercent: "0", winterDeathPercent: 21 }],
    citation: seen("maeda-sakamoto-2016", "114 colonies; far more deaths when infested"),
  },
} as const;
