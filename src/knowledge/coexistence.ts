/** What can be there together. */
import { judged, seen } from "./cite.ts";
import type { Citations } from "./fact.ts";
import type { ConditionId } from "./ids.ts";

/** Two or more conditions that are often met together. */
export interface Coexistence {
  readonly first: ConditionId;
  readonly others: readonly [ConditionId, ...ConditionId[]];
  /** brings: the first brings the others on · opens-door: the first weakens, the others follow · together: no order. */
  readonly how: "brings" | "opens-door" | "together";
  readonly words: string;
  readonly citations: Citations;
}

const pairs = judged("coexistence pairs");

/** Conditions that can coexist. */
export const coexistence: readonly Coexistence[] = [
  {
    first: "varroa_pms",
    others: ["dwv_overt", "acute_virus_complex"],
    how: "brings",
    words: "Varroa carries these viruses.",
    citations: [seen("traynor-2016", "strong positive relation")],
  },
  {
    first: "varroa_pms",
    others: ["european_foulbrood"],
    how: "together",
    words: "European foulbrood may be present when mites and viruses spoil the brood.",
    citations: [seen("caron-pms", "text")],
  },
  {
    first: "tracheal_mites",
    others: ["varroa_pms"],
    how: "together",
    words: "Both mites can be in one colony.",
    citations: [pairs],
  },
  {
    first: "tracheal_mites",
    others: ["nosema_ceranae", "nosema_apis"],
    how: "together",
    words: "Tracheal mites and nosema can be in one colony.",
    citations: [pairs],
  },
  {
    first: "nosema_apis",
    others: ["amoeba"],
    how: "together",
    words: "Amoeba disease often comes with nosema.",
    citations: [seen("malpighamoeba-reference", "text")],
  },
  {
    first: "robbing",
    others: ["starvation"],
    how: "brings",
    words: "A robbed colony starves.",
    citations: [pairs],
  },
  {
    first: "small_late_colony",
    others: ["starvation"],
    how: "opens-door",
    words: "A small colony cannot reach its food in the cold.",
    citations: [pairs],
  },
  {
    first: "acute_poisoning",
    others: ["chilled_brood"],
    how: "opens-door",
    words: "With the nurses dead the brood chills.",
    citations: [pairs],
  },
  {
    first: "varroa_pms",
    others: ["chilled_brood"],
    how: "opens-door",
    words: "With too few bees left the brood chills.",
    citations: [pairs],
  },
  {
    first: "varroa_pms",
    others: ["wax_moth", "small_hive_beetle", "robbing", "winter_damp"],
    how: "opens-door",
    words: "Moth, beetle, robbers and mould follow any weakening: find what came first.",
    citations: [pairs],
  },
  {
    first: "acute_poisoning",
    others: ["failing_queen", "queenless"],
    how: "opens-door",
    words: "Queens can fail after a poisoning.",
    citations: [seen("donahue-2023", "text")],
  },
  {
    first: "nosema_ceranae",
    others: ["varroa_pms", "tracheal_mites"],
    how: "together",
    words: "In Galicia the main risk for loss was Nosema ceranae, then varroa; tracheal mites only a possible helper.",
    citations: [seen("meana-2017", "abstract")],
  },
];
