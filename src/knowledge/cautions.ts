/** Cautions: what must be said where the act is. */
import { commonPractice, judged, recalled, seen } from "./cite.ts";
import type { Citations } from "./fact.ts";

/** What sets a caution off. */
export type CautionTrigger =
  | "any-chemical"
  | "vapour"
  | "menthol"
  | "formic-acid"
  | "oxalic-acid"
  | "acetic-acid"
  | "coumaphos"
  | "fumagillin"
  | "permethrin"
  | "antibiotic"
  | "patty"
  | "notifiable-suspicion"
  | "poisoning-suspicion"
  | "heap-while-treated"
  | "collection-in-alcohol"
  | "field-visit"
  | "report-or-export"
  | "dead-hive"
  | "feeding"
  | "brood-or-comb-moved"
  | "requeening"
  | "queen-cells"
  | "after-treatment"
  | "treatment-ended"
  | "dead-bees-or-frass"
  | "warming-bees"
  | "result-waits";

/** A caution, in the keeper's words. */
export interface CautionFact {
  readonly words: string;
  readonly triggers: readonly [CautionTrigger, ...CautionTrigger[]];
  readonly citations: Citations;
}

const further = judged("further cautions");

/** Cautions by id. */
export const cautions = {
  "label-is-law": {
    words: "The label is the law. Follow the label that is valid where you are; this page is not a label.",
    triggers: ["any-chemical"],
    citations: [seen("label-misread-2021", "part 3")],
  },
  "honey-supers-off": {
    words:
      "Take honey supers off before you treat and keep the waiting time of the label. Do not eat or sell honey from supers that were on.",
    triggers: ["vapour", "patty"],
    citations: [seen("vendor-menthol-sheets", "removal required; the waiting times differ from 2 to 4 weeks")],
  },
  "temperature-window": {
    words: "Do not start unless the forecast stays within the temperatures of the label for the whole treatment.",
    triggers: ["vapour"],
    citations: [seen("vendor-menthol-sheets", "temperatures differ"), seen("formic-notes-2022", "50–85 °F")],
  },
  "notifiable-disease": {
    words:
      "By law you may have to tell the authority. Do not move, burn or medicate first. Destroy only by or under the authority, never with petrol.",
    triggers: ["notifiable-suspicion"],
    citations: [seen("irish-bee-lab", "statutory samples"), seen("nbu-inspection", "standstill on suspicion")],
  },
  "alcohol-flammable": {
    words:
      "Alcohol burns: keep it away from the smoker, work in the open air. Carriers may refuse liquid: pour off the excess before posting.",
    triggers: ["collection-in-alcohol"],
    citations: [seen("usda-submission", "carriers"), recalled("alcohol is flammable")],
  },
  "menthol-vapour": {
    words:
      "Menthol gives a strong vapour that irritates eyes and airways. Keep it cold and sealed; it melts at about 39 to 41 °C (102 to 105 °F). Never warm it with a flame.",
    triggers: ["menthol"],
    citations: [seen("vendor-menthol-sheets", "melting, very flammable mixes"), recalled("irritation")],
  },
  "formic-corrosive": {
    words:
      "Formic acid burns skin, eyes and lungs. Wear the respirator, gloves and eye protection of the label, and keep water at hand. Queens can be lost in heat; leave entrances open.",
    triggers: ["formic-acid"],
    citations: [seen("formic-notes-2022", "queen loss"), further],
  },
  "oxalic-respirator": {
    words: "Oxalic acid vapour needs a respirator for acid gas.",
    triggers: ["oxalic-acid"],
    citations: [further],
  },
  "acetic-burns": {
    words: "Acetic acid for comb burns skin and eats metal and concrete.",
    triggers: ["acetic-acid"],
    citations: [further],
  },
  "coumaphos-nerve-poison": {
    words: "Coumaphos is an organophosphate, a nerve poison for people too.",
    triggers: ["coumaphos"],
    citations: [further],
  },
  "fumagillin-pregnancy": {
    words: "Fumagillin must not be handled by anyone who is or may be pregnant.",
    triggers: ["fumagillin"],
    citations: [further],
  },
  "permethrin-kills": {
    words: "Permethrin poured on soil kills bees and fish.",
    triggers: ["permethrin"],
    citations: [recalled("permethrin drench")],
  },
  "antibiotic-prescription": {
    words: "Antibiotics need a prescription or feed order where that is law, and they do nothing to mites.",
    triggers: ["antibiotic"],
    citations: [seen("antibiotics-answers", "three named antibiotics, since 2017-01-01")],
  },
  "patty-pests": {
    words:
      "Patties can draw robbers, ants, bears and small hive beetles: give small pieces and take leftovers away. Wintergreen and other oils are toxic to handle. A patty does not remove mites that are already inside bees.",
    triggers: ["patty"],
    citations: [
      seen("patty-beetles", "beetle larvae in patties"),
      seen("patty-notes", "wintergreen; protects, does not cure"),
      commonPractice("bears, ants, robbing"),
    ],
  },
  "stings-and-lifting": {
    words: "Mind stings, working alone and lifting. Have a phone and know where you are.",
    triggers: ["field-visit"],
    citations: [commonPractice("field work")],
  },
  "location-private": {
    words: "Where the bees stand is shown only as a large cell.",
    triggers: ["report-or-export"],
    citations: [seen("chapman-2020", "generalise, do not randomise")],
  },
  "ask-if-notifiable": {
    words: "Ask today whether what you suspect must be reported where the hives stand; the competent authority says.",
    triggers: ["result-waits"],
    citations: [judged("rules differ from place to place")],
  },
  "stay-in-place": {
    words: "Do not move hives, nuclei or queens to another place: what they carry goes with them.",
    triggers: ["result-waits"],
    citations: [judged("until a cause is known"), seen("nbu-inspection", "standstill on suspicion")],
  },
  "no-combs-reused": {
    words: "Do not extract honey from the colonies in question, and do not use their combs and supers elsewhere.",
    triggers: ["result-waits"],
    citations: [judged("comb and honey carry spores, moth and residues")],
  },
  "poison-call-today": {
    words:
      "If it may be poison: photograph it, note the time, call the pesticide authority, and freeze fresh dead bees today.",
    triggers: ["poisoning-suspicion"],
    citations: [seen("brown-kegley-2014", "text"), seen("pesticide-stewardship", "text")],
  },
  "heap-while-treated": {
    words:
      "A treatment is in the hives, and no sign of spraying is on record: 1,200 to 1,500 dead on one day are known of formic acid use. Photograph, note the time, and freeze fresh dead bees today all the same. Look whether hives without the treatment are hit, whether dose, days and heat were within the label, whether a queen still lays, and ask who sprayed near by. If other hives are hit or spraying comes to light, call the pesticide authority today.",
    triggers: ["heap-while-treated"],
    citations: [
      seen("formic-supplier", "text, low grade"),
      judged("without a report while no sign of spraying is known"),
    ],
  },
  "close-dead-hive": {
    words: "Close a dead hive bee-tight the same day and keep it closed until its brood combs are checked.",
    triggers: ["dead-hive"],
    citations: [further],
  },
  "no-foreign-honey": {
    words: "Never feed honey from elsewhere: it can carry foulbrood spores.",
    triggers: ["feeding"],
    citations: [further],
  },
  "check-brood-first": {
    words: "Check brood for disease before you unite, shake out, give a test comb or move comb.",
    triggers: ["brood-or-comb-moved"],
    citations: [further],
  },
  "test-frame-before-queen": {
    words: "Do not requeen before a test comb has been given: a virgin kills the new queen.",
    triggers: ["requeening"],
    citations: [further],
  },
  "keep-queen-cells": {
    words: "Do not destroy queen cells before you know whether there is a queen.",
    triggers: ["queen-cells"],
    citations: [further],
  },
  "wait-a-label-period": {
    words: "Wait one label period after a treatment before you judge crawling bees.",
    triggers: ["after-treatment"],
    citations: [further],
  },
  "crawlers-after-treatment": {
    words:
      "A treatment was in the hives until lately and may have hurt bees: do not judge crawling ones before one label period has passed since it ended.",
    triggers: ["treatment-ended"],
    citations: [further],
  },
  "mask-for-dead-bees": {
    words: "Long-dead bees and frass can carry moulds: wear a mask.",
    triggers: ["dead-bees-or-frass", "dead-hive"],
    citations: [recalled("moulds on dead bees")],
  },
  "poisoned-bees-gloves": {
    words: "Residues may be on the bees: wear gloves, use clean tools, and leave hives and site as they are.",
    triggers: ["poisoning-suspicion"],
    citations: [seen("brown-kegley-2014", "text"), further],
  },
  "warm-box-with-air": {
    words: "Warm bees in a box with air holes for 15 minutes, never in a closed jar or a hot car.",
    triggers: ["warming-bees"],
    citations: [seen("warm-box-account", "foragers revive"), further],
  },
} as const satisfies Readonly<Record<string, CautionFact>>;

/** Id of a caution. */
export type CautionId = keyof typeof cautions;

/** Ids of the cautions that a trigger sets off, in the order of the record. */
export const cautionsFor = (trigger: CautionTrigger): readonly CautionId[] =>
  (Object.entries(cautions) as [CautionId, CautionFact][])
    .filter(([, caution]) => caution.triggers.includes(trigger))
    .map(([id]) => id);
