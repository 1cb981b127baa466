/** Formic acid, patties, queens and the rest: what sources report. */
import { commonPractice, computed, recalled, seen } from "../cite.ts";
import { doseReport, figure, span } from "../figure.ts";
import type { ControlFact } from "./control-fact.ts";

/** Controls but menthol. */
export const otherControls = {
  "formic-acid": {
    id: "formic-acid",
    term: "Formic acid vapour",
    kind: "vapour",
    activeIngredients: ["formic acid"],
    needsLabelRecord: true,
    cautions: ["label-is-law", "honey-supers-off", "temperature-window", "formic-corrosive"],
    statements: [
      {
        topic: "dose-reported",
        words: "A trial gave 30 ml of 65 % three times at a week's distance; pad on top bars or bottom board alike.",
        figure: doseReport([30, 30], "ml of 65 %, three times", seen("clark-canadian-beekeeping", "abstract")),
        citations: [seen("clark-canadian-beekeeping", "abstract")],
      },
      {
        topic: "efficacy",
        words: "In that trial more than 95 % of mites died; two months later about 95 % below the untreated.",
        figure: span([95, null], "percent of mites", seen("clark-canadian-beekeeping", "abstract")),
        citations: [seen("clark-canadian-beekeeping", "abstract")],
      },
      {
        topic: "efficacy",
        words: "Gel pack, Tennessee, 42 days: share of infested bees −100 % against +75 % untreated.",
        figure: figure(100, "percent, control-corrected", computed("1 − ratio of ratios", "skinner-2001")),
        citations: [seen("skinner-2001", "abstract"), computed("1 − ratio of ratios", "skinner-2001")],
      },
      {
        topic: "no-benefit",
        words: "Four Canadian apiaries: a short-lived effect in 1993, none in 1994.",
        figure: null,
        citations: [seen("vanengelsdorp-otis-2001", "abstract")],
      },
      {
        topic: "mode",
        words:
          "Indoors in winter it killed many mites, but the share of bees with infested tubes did not fall in the trial.",
        figure: null,
        citations: [seen("underwood-currie-2009", "abstract")],
      },
      {
        topic: "mode",
        words: "Air in the hive: below 5 ppm from a gel pack at day 13, 15 ppm from fibreboard.",
        figure: span([5, 15], "ppm in hive air", seen("skinner-2001", "abstract")),
        citations: [seen("skinner-2001", "abstract")],
      },
      {
        topic: "side-effect",
        words: "Colonies with fibreboard stored less honey.",
        figure: null,
        citations: [seen("skinner-2001", "abstract")],
      },
      {
        topic: "mode",
        words:
          "Indoors at 2 to 4 °C half of the varroa mites died at 49 ppm for a day and 95 % at 111: varroa, not these mites.",
        figure: span([49, 111], "ppm days", seen("underwood-currie-indoor", "abstract; against varroa")),
        citations: [seen("underwood-currie-indoor", "abstract; against varroa")],
      },
      {
        topic: "status",
        words: "Given against varroa, it and other treatments may be why tracheal mites are few today.",
        figure: null,
        citations: [seen("beebook-tracheal", "5.3")],
      },
      {
        topic: "efficacy",
        words:
          "A guideline asks 90 % of treatments that are not synthetic and 95 % of synthetic ones: against varroa, a likeness only.",
        figure: span([90, 95], "percent of varroa", seen("beebook-varroa", "4.5.4, guideline of 2008")),
        citations: [seen("beebook-varroa", "4.5.4, guideline of 2008")],
      },
      {
        topic: "side-effect",
        words: "Indoors with least air a third of the queens were lost at room air of 57 ± 8 ppm, none at 27 ± 8 ppm.",
        figure: span([27, 57], "ppm in room air", seen("underwood-currie-indoor", "abstract; against varroa")),
        citations: [seen("underwood-currie-indoor", "abstract; against varroa")],
      },
      {
        topic: "side-effect",
        words: "Less sealed brood than in the untreated.",
        figure: null,
        citations: [seen("canadian-acaricides-1999", "abstract")],
      },
      {
        topic: "temperature",
        words: "One account: 50 to 85 °F, with queen losses in heat.",
        figure: span([10, 29.4], "°C", seen("formic-notes-2022", "50–85 °F")),
        citations: [seen("formic-notes-2022", "50–85 °F")],
      },
      {
        topic: "speed",
        words: "From 250 ml 109.52 g left in 33 days (3.32 g a day): too slow against varroa.",
        figure: figure(3.32, "g per day", seen("calderone-1999", "abstract")),
        citations: [seen("calderone-1999", "abstract")],
      },
    ],
  },
  "oil-patty": {
    id: "oil-patty",
    term: "Patty of vegetable fat and sugar",
    kind: "patty",
    activeIngredients: ["vegetable shortening"],
    needsLabelRecord: false,
    cautions: ["label-is-law", "patty-pests"],
    statements: [
      {
        topic: "recipe",
        words: "Two parts of sugar to one of solid vegetable shortening by volume; no animal fat, it turns rancid.",
        figure: null,
        citations: [seen("beebook-tracheal", "5.4")],
      },
      {
        topic: "dose-reported",
        words: "A patty of 113 g (4 oz) on the top bars in the middle of the brood nest.",
        figure: doseReport([113, 113], "g per patty", seen("beebook-tracheal", "5.4")),
        citations: [seen("beebook-tracheal", "5.4")],
      },
      {
        topic: "season",
        words: "Autumn and early spring, there all the time, since young bees emerge all the time.",
        figure: null,
        citations: [seen("beebook-tracheal", "5.4")],
      },
      {
        topic: "efficacy",
        words: "Expected to hold the share of infested bees at about 10 %.",
        figure: figure(10, "percent of bees infested", seen("beebook-tracheal", "5.4")),
        citations: [seen("beebook-tracheal", "5.4")],
      },
      {
        topic: "efficacy",
        words:
          "Ohio, kept on 1992–93: clear control; dead by spring 0 % with patty, 20 % with patty and antibiotic, 45 % untreated.",
        figure: null,
        citations: [seen("sammataro-1994", "abstract")],
      },
      {
        topic: "no-benefit",
        words: "Ohio 1991: two patties in summer did not stop the rise in autumn.",
        figure: null,
        citations: [seen("sammataro-1994", "abstract")],
      },
      {
        topic: "mode",
        words: "Hides young bees from searching mites. It does not kill and does not remove mites already inside bees.",
        figure: null,
        citations: [seen("beebook-tracheal", "5.4"), seen("patty-notes", "protects, does not cure")],
      },
      {
        topic: "recipe",
        words: "Other recipes contradict each other, on the flow above all.",
        figure: null,
        citations: [commonPractice("blogs, popular books, newsletter", "unattributed-recipes")],
      },
    ],
  },
  requeen: {
    id: "requeen",
    term: "New queen of resistant stock",
    kind: "queen",
    activeIngredients: [],
    needsLabelRecord: false,
    cautions: ["test-frame-before-queen"],
    statements: [
      {
        topic: "mode",
        words:
          "Acts only as the new queen's workers take the place of the old ones; the new stock may be better or worse.",
        figure: null,
        citations: [seen("beebook-tracheal", "5.4")],
      },
      {
        topic: "stock",
        words:
          "Two-way selection: susceptible line 1.4 and 2.4 times as likely infested after one and two generations.",
        figure: span([1.4, 2.4], "risk ratio", seen("page-gary-1990", "abstract")),
        citations: [seen("page-gary-1990", "abstract")],
      },
      {
        topic: "stock",
        words: "Ontario, two generations: lower share and number of mites in each; short test against field r = 0.64.",
        figure: figure(0.64, "rank correlation", seen("nasr-2001", "abstract")),
        citations: [seen("nasr-2001", "abstract")],
      },
      {
        topic: "stock",
        words:
          "Four stocks, three US sites, a year: resistant below 15 % on average, susceptible 13 to 95 % in the last six months.",
        figure: null,
        citations: [seen("danka-1995", "abstract")],
      },
      {
        topic: "stock",
        words: "Russian stock kept almost no mites in Louisiana while domestic bees reached high levels.",
        figure: null,
        citations: [seen("deguzman-2002", "abstract")],
      },
      {
        topic: "stock",
        words: "Of 83 breeder colonies about two thirds were resistant and a quarter susceptible.",
        figure: null,
        citations: [seen("danka-villa-2000", "abstract")],
      },
      {
        topic: "mode",
        words: "A grooming bee loses about 75 % of mites in both stocks; resistant bees begin to groom more often.",
        figure: figure(75, "percent of mites", seen("danka-villa-2003", "abstract")),
        citations: [seen("danka-villa-2003", "abstract"), seen("danka-villa-2005", "36 of 50 against 9 of 50")],
      },
      {
        topic: "stock",
        words: "Families differ even within resistant stock: judge sister groups.",
        figure: null,
        citations: [seen("vanengelsdorp-otis-2001", "abstract")],
      },
    ],
  },
  amitraz: {
    id: "amitraz",
    term: "Amitraz",
    kind: "contact",
    activeIngredients: ["amitraz"],
    needsLabelRecord: true,
    cautions: ["label-is-law"],
    statements: [
      {
        topic: "status",
        words: "Has been used against tracheal mites: check whether it is registered for that.",
        figure: null,
        citations: [seen("beebook-tracheal", "5.3")],
      },
      {
        topic: "efficacy",
        words: "As an aerosol no difference over 8 weeks in one trial, a clear fall in another.",
        figure: doseReport([25, 50], "mg per colony", seen("vandenberg-shimanuki-1990", "abstract")),
        citations: [seen("vandenberg-shimanuki-1990", "abstract")],
      },
      {
        topic: "side-effect",
        words: "Strips in mailing cages killed bees above about 0.01 g a cage and still left living mites.",
        figure: null,
        citations: [seen("vandenberg-shimanuki-1990", "abstract")],
      },
      {
        topic: "mode",
        words: "Good on adult mites, poor on young ones.",
        figure: null,
        citations: [seen("herbert-1988", "citing Eischen and others 1987")],
      },
    ],
  },
  "plant-oils": {
    id: "plant-oils",
    term: "Vapours of plant oils",
    kind: "vapour",
    activeIngredients: ["thymol", "eucalyptus oil", "menthol", "camphor", "origanum oil", "bay oil"],
    needsLabelRecord: true,
    cautions: ["label-is-law", "honey-supers-off", "temperature-window"],
    statements: [
      {
        topic: "efficacy",
        words: "Blend of thymol, eucalyptus oil, menthol and camphor, 42 days: −92 % against +75 % untreated.",
        figure: figure(95.4, "percent, control-corrected", computed("1 − ratio of ratios", "skinner-2001")),
        citations: [seen("skinner-2001", "abstract"), computed("1 − ratio of ratios", "skinner-2001")],
      },
      {
        topic: "efficacy",
        words: "Strips of origanum and bay oil: −97 %; poor on varroa, and the bees shred them.",
        figure: figure(98.3, "percent, control-corrected", computed("1 − ratio of ratios", "skinner-2001")),
        citations: [seen("skinner-2001", "abstract"), computed("1 − ratio of ratios", "skinner-2001")],
      },
      {
        topic: "margin",
        words:
          "Citral is 2.9 times (2.5 to 3.3) and thymol 2.0 times (1.0 to 3.6) more toxic to mite than bee; pulegone, limonene and alpha-terpineol are worse for bees than mites.",
        figure: span([1, 3.6], "times", seen("ellis-baxendale-1997", "abstract")),
        citations: [seen("ellis-baxendale-1997", "abstract")],
      },
      {
        topic: "status",
        words: "Thymol against varroa has a side effect on tracheal mites.",
        figure: null,
        citations: [recalled("table of conditions")],
      },
    ],
  },
} as const satisfies { readonly [Id in string]: ControlFact<Id> };
