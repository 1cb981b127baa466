/** What has been published on how often colonies die and agents occur. The priors are anchored here. */
import { computed, judged, recalled, seen } from "./cite.ts";
import type { Citations } from "./fact.ts";
import type { ConditionId } from "./ids.ts";

/** A published figure of occurrence. */
export interface Occurrence {
  readonly about: ConditionId | "winter-loss" | "causes" | "depopulation";
  readonly words: string;
  readonly citations: Citations;
}

/** Published occurrence, by key. */
export const occurrence = {
  "winter-2016-17": {
    about: "winter-loss",
    words: "425,762 colonies: 20.9 % lost = 14.1 dead + 5.1 queen problems + 1.6 natural disaster.",
    citations: [seen("brodschneider-2018", "abstract")],
  },
  "winter-2017-18": {
    about: "winter-loss",
    words: "36 countries, 544,879 colonies: 16.4 % lost = 10.0 + 4.8 + 1.5; countries 2.0 to 32.8 %.",
    citations: [seen("gray-2019", "abstract")],
  },
  "winter-2018-19": {
    about: "winter-loss",
    words:
      "738,233 colonies: 16.7 % lost = 10.7 + 4.1 + 1.9. Queen problems made 24 to 29 % of losses in three winters.",
    citations: [seen("gray-2020", "abstract"), computed("shares of the three winters")],
  },
  austria: {
    about: "winter-loss",
    words:
      "1,596 colonies: 10.8 % died, three quarters in winter; varroosis, chalkbrood and sacbrood most frequent. Risks: weak or many mites in summer and autumn, queen over a year, little experience.",
    citations: [seen("morawetz-2019", "abstract")],
  },
  "austria-2018-19": {
    about: "winter-loss",
    words: "15.2 % (14.4 to 16.1) lost; many crippled wings in the season went with high loss.",
    citations: [seen("oberreiter-2020", "abstract")],
  },
  epilobee: {
    about: "winter-loss",
    words: "17 countries, 5,798 apiaries: winter losses 2 to 32 %; small and inexperienced keepers lost double.",
    citations: [seen("jacques-2017", "abstract"), seen("chauzat-2014", "opening of the summary")],
  },
  ontario: {
    about: "tracheal_mites",
    words:
      "408 colonies in autumn: varroa 75.7 %, nosema 27.9 %, tracheal mites 6.1 %; winter mortality 27.2 %; varroa went with more than 85 % of deaths.",
    citations: [seen("guzman-novoa-2010", "abstract"), recalled("years 2007 to 2008")],
  },
  "usa-survey": {
    about: "varroa_pms",
    words:
      "2009 to 2014: varroa in 84.9 % of migratory and 97.0 % of stationary apiaries, 3.65 and 5.99 per 100; nosema 59.9 and 46.7 %; Tropilaelaps none.",
    citations: [seen("traynor-2016", "abstract")],
  },
  "paralysis-rise": {
    about: "chronic_paralysis",
    words:
      "England and Wales 2007 to 2017: rose steeply, risk doubled with imports, about 40 % of affected colonies lost (quoted in the press).",
    citations: [seen("budge-2020", "abstract; press accounts for 40 %")],
  },
  submissions: {
    about: "varroa_pms",
    words:
      "Sick bees sent in the USA 2015 to 2022: nosema in 97 to 100 %, varroa in 66 to 100 % of samples. A selected sick set, not a population.",
    citations: [seen("submissions-2024", "table 1, part")],
  },
  italy: {
    about: "nosema_ceranae",
    words: "Nosema ceranae in 47 to 69 % (2009) and 30 to 60 % (2010).",
    citations: [seen("porrini-2016", "abstract")],
  },
  spain: {
    about: "depopulation",
    words: "61 apiaries at random: depopulation 67.2 %, Nosema ceranae 65.6 %, varroa 32.7 % of samples.",
    citations: [seen("spain-epidemiology-2010", "abstract")],
  },
  hawaii: {
    about: "nosema_ceranae",
    words: "89 to 95 % of 322 colonies PCR-positive with no acute losses reported.",
    citations: [seen("hawaii-nosema-2013", "abstract")],
  },
  denmark: {
    about: "acute_virus_complex",
    words: "36 % of well colonies carried no virus; every sick one carried one or more.",
    citations: [seen("danish-virus-2015", "abstract")],
  },
  "swiss-cold": {
    about: "nosema_ceranae",
    words: "Swiss survey of cold and nosema.",
    citations: [seen("nosema-cold-2017", "abstract")],
  },
  "ontario-2015": {
    about: "varroa_pms",
    words: "851 of 5,883 colonies positive by wash; mean 0.27 % in June to 4.53 % in October in small operations.",
    citations: [seen("ontario-apiarist-2015", "excerpt")],
  },
  "usa-self-reported": {
    about: "causes",
    words:
      "Named by keepers in 2012/13: hobby, starvation and weak in autumn; commercial, queen failure and pesticides.",
    citations: [seen("steinhauer-2014", "abstract")],
  },
  "tracheal-korea": {
    about: "tracheal_mites",
    words: "99 colonies by PCR: 1 with Acarapis woodi, 9 externus, 32 dorsalis; none by microscope.",
    citations: [seen("ahn-2015", "abstract")],
  },
  "tracheal-campeche": {
    about: "tracheal_mites",
    words: "116 samples in Campeche, Mexico: none found.",
    citations: [seen("dominguez-rebolledo-2023", "abstract")],
  },
  "tracheal-honey-dna": {
    about: "tracheal_mites",
    words: "102 honeys of 18 countries by DNA: none found.",
    citations: [seen("ribani-2020", "abstract")],
  },
  "tracheal-japan": {
    about: "tracheal_mites",
    words:
      "Apis cerana japonica: about 40 % of colonies, about half of the bees in those, no decline in six years; Apis mellifera 0 of 50 colonies.",
    citations: [seen("maeda-sakamoto-2020", "abstract")],
  },
  "tracheal-galicia": {
    about: "tracheal_mites",
    words: "Named only as a possible helper in colony loss; main risk Nosema ceranae, then varroa.",
    citations: [seen("meana-2017", "abstract")],
  },
  "tracheal-absent": {
    about: "tracheal_mites",
    words: "Not known from Australia, New Zealand and Scandinavia.",
    citations: [seen("beebook-tracheal", "distribution"), seen("woah-acarapis-2024", "chapter")],
  },
  "tracheal-today": {
    about: "tracheal_mites",
    words:
      "In Apis mellifera treated against varroa 0 to 6 % of colonies carry tracheal mites; those that fail because of them are about ten times fewer.",
    citations: [judged("reading of the published occurrence")],
  },
} as const satisfies Readonly<Record<string, Occurrence>>;
