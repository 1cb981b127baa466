/** Sampling: when, which bees, where from, how many, how kept, and what destination laboratories ask. */
import { commonPractice, computed, judged, recalled, seen } from "./cite.ts";
import type { Citations } from "./fact.ts";
import { type Figure, figure, type Span, span } from "./figure.ts";
import type { TestId } from "./tests/index.ts";

/** One fact about taking a sample. */
export interface SamplingFact {
  readonly topic:
    | "season"
    | "how-many"
    | "where"
    | "which-bees"
    | "keeping"
    | "label"
    | "sign"
    | "apiary"
    | "detection";
  readonly words: string;
  readonly figure: Figure | Span | null;
  readonly citations: Citations;
}

/** Facts about sampling for tracheal mites, by key. */
export const samplingFacts = {
  "season-winter": {
    topic: "season",
    words:
      "Look in winter or early spring: bees are old and there is little brood. In summer young bees dilute the share.",
    figure: null,
    citations: [seen("beebook-tracheal", "3.2.1")],
  },
  "season-autumn-view": {
    topic: "season",
    words: "Another view: the chance to find them is highest in autumn.",
    figure: null,
    citations: [seen("ah-690", "secondary")],
  },
  "bees-per-colony": {
    topic: "how-many",
    words: "About 50 bees a colony to see whether there are any.",
    figure: figure(50, "bees", seen("beebook-tracheal", "3.2.2")),
    citations: [seen("beebook-tracheal", "3.2.2"), seen("spc-b451", "about 50 at random")],
  },
  "where-presence": {
    topic: "where",
    words: "To find them: old bees, from honey supers or under the inner cover.",
    figure: null,
    citations: [seen("beebook-tracheal", "3.2.2")],
  },
  "where-estimate": {
    topic: "where",
    words:
      "To estimate the share: bees from the honey and pollen edge of brood combs, where ages mix. Nurses alone mislead: a single mite with an egg near the opening is easy to miss.",
    figure: null,
    citations: [seen("beebook-tracheal", "3.2.2")],
  },
  "where-entrance": {
    topic: "where",
    words: "At the entrance: crawling bees near it, or bees that leave and come back.",
    figure: null,
    citations: [seen("ah-690", "secondary")],
  },
  drones: {
    topic: "which-bees",
    words: "Take drones if there are any: they carry more mites. They are seasonal, so workers are the routine unit.",
    figure: null,
    citations: [seen("beebook-tracheal", "3.2.2, 2.2.5")],
  },
  queen: {
    topic: "which-bees",
    words: "Find the queen before you take the sample.",
    figure: null,
    citations: [seen("beebook-tracheal", "3.2.2")],
  },
  "random-bees": {
    topic: "which-bees",
    words: "Crawling or dead bees carry mites more often: good to find them, wrong to estimate.",
    figure: null,
    citations: [judged("detection table")],
  },
  keeping: {
    topic: "keeping",
    words: "70 % ethanol works; fresh or frozen bees open better, with no alcohol inside the tubes.",
    figure: figure(70, "percent ethanol", seen("beebook-tracheal", "3.2.2")),
    citations: [seen("beebook-tracheal", "3.2.2")],
  },
  "keeping-at-once": {
    topic: "keeping",
    words: "Into 70 % ethyl or methyl alcohol at once; refuse bees dead for an unknown time.",
    figure: null,
    citations: [seen("ah-690", "secondary")],
  },
  label: {
    topic: "label",
    words: "Write place, colony number and date on the label; in pencil inside, marker outside.",
    figure: null,
    citations: [seen("beebook-tracheal", "3.2.2"), commonPractice("pencil inside, marker outside")],
  },
  "crawlers-no-indicator": {
    topic: "sign",
    words:
      "Crawling bees come only in late winter and early spring and at a very high share; nosema and viruses give them too. No indicator.",
    figure: null,
    citations: [seen("beebook-tracheal", "3.1")],
  },
  "k-wing-indicator": {
    topic: "sign",
    words:
      "In Apis cerana japonica K-wing goes with the share of infested bees, and K-wing with crawlers worked as a first look at colonies.",
    figure: null,
    citations: [seen("maeda-2016", "abstract"), seen("maeda-sakamoto-2020", "abstract")],
  },
  "quick-laboratory": {
    topic: "how-many",
    words: "One laboratory opened 20 bees out of a 300-bee wash.",
    figure: figure(20, "bees", commonPractice("Alberta, 2002", "alberta-quick-test")),
    citations: [commonPractice("Alberta, 2002", "alberta-quick-test")],
  },
  "apiary-rule": {
    topic: "apiary",
    words: "One inspection service tests 10 % of colonies, all if there are ten or fewer (stated for varroa).",
    figure: figure(10, "percent of colonies", commonPractice("state service, 2018", "inspection-service-rule")),
    citations: [commonPractice("state service, 2018", "inspection-service-rule")],
  },
  "n-for-five-percent": {
    topic: "detection",
    words: "59 bees find 5 % infested 95 times in 100; 50 bees do not reach that (92 in 100).",
    figure: figure(59, "bees", seen("pirk-2013", "2.2")),
    citations: [seen("pirk-2013", "2.2"), computed("50 bees: 0.9231")],
  },
  "printed-table-header": {
    topic: "detection",
    words: "A widely copied table of bee numbers has a column headed 90 % whose figures are those of 95 %.",
    figure: null,
    citations: [seen("bees-mailing-list-2001", "table"), computed("5 %: 58, 1 %: 298")],
  },
} as const satisfies Readonly<Record<string, SamplingFact>>;

/** Where on the hive the bees for a question come from. One scoop cannot serve all. */
export interface BeesFor {
  readonly question: string;
  readonly test: TestId;
  readonly from: string;
  readonly citations: Citations;
}

/** Which bees serve which question. */
export const beesFor: readonly BeesFor[] = [
  {
    question: "Is there any tracheal mite?",
    test: "tracheal-dissection",
    from: "old bees from the honey super or under the inner cover",
    citations: [seen("beebook-tracheal", "3.2.2")],
  },
  {
    question: "What share of the bees carries tracheal mites?",
    test: "tracheal-dissection",
    from: "the honey and pollen edge of brood combs",
    citations: [seen("beebook-tracheal", "3.2.2")],
  },
  {
    question: "How much varroa?",
    test: "varroa-wash",
    from: "combs with open brood",
    citations: [seen("sr-beekeepers-oregon", "page"), seen("beverly-bees", "page")],
  },
  {
    question: "How much nosema?",
    test: "spore-count",
    from: "foragers or bees of the outer combs, not while young bees fly to practise",
    citations: [seen("beebook-nosema", "text"), seen("bbka-module-3", "notes")],
  },
];

/** What a laboratory asks of a parcel. Laboratories contradict each other: follow the one you send to. */
export interface DestinationRule {
  readonly destination: string;
  readonly purpose: string;
  readonly bees: Figure | Span | null;
  readonly keep: string;
  readonly pack: string;
  readonly citations: Citations;
}

/** What destination laboratories ask, as found; ask the laboratory for its rules of today. */
export const destinationRules = {
  "us-federal-adult-bees": {
    destination: "US federal bee laboratory",
    purpose: "Parasites of adult bees",
    bees: span([100, null], "bees", seen("usda-submission", "adult bees")),
    keep: "Dying or freshly dead bees into 70 % ethyl, methyl or isopropyl alcohol at once; never dry, never decayed.",
    pack: "Leak-proof container; pour off the excess alcohol before posting; one colony each.",
    citations: [seen("usda-submission", "adult bees")],
  },
  "alabama-adult-bees": {
    destination: "Alabama state laboratory",
    purpose: "Parasites of adult bees",
    bees: span([100, 200], "bees", seen("alabama-lab", "page")),
    keep: "Mature bees caught alive and killed in a pint of alcohol.",
    pack: "Wide jar, labelled with owner, yard and hive.",
    citations: [seen("alabama-lab", "page")],
  },
  "ireland-uk-adult-bees": {
    destination: "Irish bee laboratory, UK practice",
    purpose: "Diseases of adult bees",
    bees: figure(30, "bees", seen("irish-bee-lab", "association note")),
    keep: "Dry.",
    pack: "Matchbox or paper, never plastic.",
    citations: [seen("irish-bee-lab", "association note"), seen("bbka-module-3", "30 bees")],
  },
  "uk-poisoning": {
    destination: "UK poisoning practice",
    purpose: "Poisoning",
    bees: figure(200, "bees", seen("bbka-module-3", "notes")),
    keep: "Fresh dead bees, secure; two further sets of 200 in the freezer.",
    pack: "No plastic.",
    citations: [seen("bbka-module-3", "notes")],
  },
  "residue-laboratories": {
    destination: "Residue laboratories",
    purpose: "Pesticide residues",
    bees: span([200, 300], "bees", seen("brown-kegley-2014", "about 100 ml")),
    keep: "Dead less than 1 to 2 days, frozen at once, on ice in transport; plus a pollen comb; keep a second set.",
    pack: "New sealed bag or jar, clean tools, chain of custody, neutral codes.",
    citations: [seen("brown-kegley-2014", "text"), seen("agvic-residue", "text")],
  },
  "brood-disease": {
    destination: "Laboratories for brood disease",
    purpose: "Brood disease",
    bees: null,
    keep: "Comb of 5 × 5 cm (2 × 2 inches) or more with most dead cells and no honey; dry and cool. UK laboratories often 10 × 10 cm (from memory).",
    pack: "Paper in a stout box; never plastic, foil, wax paper, tin or glass.",
    citations: [seen("usda-submission", "brood"), recalled("UK size")],
  },
  "virus-pcr": {
    destination: "Laboratories for viruses",
    purpose: "Viruses by PCR",
    bees: span([50, 100], "bees", recalled("table of submissions")),
    keep: "Live or frozen, bees with signs and normal bees apart; dry ice, or a preservative for RNA; no alcohol at room temperature.",
    pack: "Double bag.",
    citations: [recalled("table of submissions")],
  },
  "unknown-arthropods": {
    destination: "Reference laboratory",
    purpose: "Unknown mites or beetles",
    bees: null,
    keep: "All of them, whole, in 70 to 95 % alcohol.",
    pack: "Tube.",
    citations: [recalled("table of submissions")],
  },
} as const satisfies Readonly<Record<string, DestinationRule>>;
