/** Results that are right at the bench and wrong about the colony. They are no causes. */
import { computed, judged, recalled, seen } from "./cite.ts";
import type { Citations } from "./fact.ts";
import type { TestId } from "./tests/index.ts";

/** A way in which a laboratory result misleads. */
export interface LaboratoryTrap {
  readonly term: string;
  readonly words: string;
  readonly tests: readonly TestId[];
  readonly citations: Citations;
}

/** Laboratory traps by key. */
export const laboratoryTraps = {
  "external-acarapis": {
    term: "Acarapis mites on the outside of the bee",
    words:
      "Acarapis externus lives on the neck and A. dorsalis in the groove of the thorax. A PCR hit for the genus, without the species sequenced or mites seen inside the tube, is not tracheal mite disease.",
    tests: ["pooled-pcr", "tracheal-flotation"],
    citations: [
      seen("ahn-2015", "99 colonies: dorsalis 32, externus 9, woodi 1 by PCR; none by microscope"),
      seen("delfinado-baker-1982", "sites"),
    ],
  },
  "hive-tarsonemids": {
    term: "Hive, pollen and mould mites in debris",
    words: "Other small mites of the hive look alike; that it lies inside the tube decides.",
    tests: ["tracheal-flotation", "sticky-board"],
    citations: [recalled("same family body plan")],
  },
  "pcr-without-dissection": {
    term: "PCR positive, nothing at dissection",
    words: "It stays “not tracheal mite disease”. Such a finding was judged false, from external mites.",
    tests: ["pooled-pcr"],
    citations: [seen("norfolk-island-2022", "result")],
  },
  "young-bees-in-forager-sample": {
    term: "Young bees among the foragers",
    words: "Practice flights spoil a sample of foragers for nosema.",
    tests: ["spore-count", "gut-squash"],
    citations: [seen("beebook-nosema", "text")],
  },
  "honey-comb-bees-for-varroa": {
    term: "Bees from honey combs washed for varroa",
    words: "They show about half the mites of bees from the brood nest.",
    tests: ["varroa-wash", "sugar-roll"],
    citations: [seen("calderone-turcotte-1998", "result")],
  },
  "wash-after-collapse": {
    term: "Wash after the collapse, or of dead bees",
    words: "Few or no mites found then says little.",
    tests: ["varroa-wash", "sugar-roll"],
    citations: [judged("laboratory traps")],
  },
  "spores-without-share": {
    term: "Spore count without the share of bees infected",
    words: "It is weak evidence, and one million spores a bee is no verdict for Nosema ceranae.",
    tests: ["spore-count"],
    citations: [judged("laboratory traps"), seen("mulholland-2012", "abstract")],
  },
  "one-composite": {
    term: "One 60-bee composite for nosema",
    words:
      "In spring it finds nosema about 6 times in 10: of 588 colonies sampled twice 28 % were positive both times, 36 % neither, 18 and 18 % once.",
    tests: ["spore-count"],
    citations: [seen("nosema-composite-2018", "588 colonies"), computed("0.28 / 0.46", "nosema-composite-2018")],
  },
  "mites-leave-the-dead": {
    term: "Bees long dead before they were taken",
    words: "Tracheal mites leave a dead host: none found in such bees is a weak answer.",
    tests: ["tracheal-dissection", "thoracic-disc"],
    citations: [seen("spc-b451", "text")],
  },
  "dead-mites-stay": {
    term: "Dead mites after a treatment",
    words:
      "Dead mites stay in the tubes. The share of infested bees hardly falls until those bees die: score live mites, or bees that emerged after the treatment, or wait one life of a bee.",
    tests: ["tracheal-dissection", "thoracic-disc"],
    citations: [seen("underwood-currie-2009", "abstract")],
  },
} as const satisfies Readonly<Record<string, LaboratoryTrap>>;
