/** Which drawings stand beside a finding: itself first, then what it is taken for. */
import type { ComponentType } from "react";
import type { FindingId } from "../../../../knowledge/index.ts";
import { HeadDrone, HeadWorker, Hover, Pry } from "./bees.tsx";
import { LarvaCoiled, LarvaTwisted, Mummy, NoThread, Sac, Scale, Thread } from "./brood.tsx";
import { CapsDomed, CapsSound, CapsSunken, EggOne, EggsMany, OpenedInLine, OpenedScattered } from "./combs.tsx";
import { FlyBraula, LarvaBeetle, LarvaMoth, MiteTropilaelaps, MiteVarroa } from "./pests.tsx";
import { WingCrumpled, WingFolded, WingK, WingWorn } from "./wings.tsx";

/** Every drawing, by the name under which the words know it. */
export const figures = {
  wingFolded: WingFolded,
  wingK: WingK,
  wingCrumpled: WingCrumpled,
  wingWorn: WingWorn,
  miteVarroa: MiteVarroa,
  miteTropilaelaps: MiteTropilaelaps,
  flyBraula: FlyBraula,
  larvaBeetle: LarvaBeetle,
  larvaMoth: LarvaMoth,
  thread: Thread,
  noThread: NoThread,
  scale: Scale,
  mummy: Mummy,
  sac: Sac,
  larvaCoiled: LarvaCoiled,
  larvaTwisted: LarvaTwisted,
  capsSound: CapsSound,
  capsDomed: CapsDomed,
  capsSunken: CapsSunken,
  openedScattered: OpenedScattered,
  openedInLine: OpenedInLine,
  eggOne: EggOne,
  eggsMany: EggsMany,
  headWorker: HeadWorker,
  headDrone: HeadDrone,
  hover: Hover,
  pry: Pry,
} as const satisfies Readonly<Record<string, ComponentType>>;

export type FigureName = keyof typeof figures;

/** The twenty findings that are drawn. */
export const drawings: Readonly<Partial<Record<FindingId, readonly FigureName[]>>> = {
  k_wing: ["wingK", "wingFolded", "wingCrumpled", "wingWorn"],
  deformed_wings: ["wingCrumpled", "wingK", "wingWorn"],
  worn_wings: ["wingWorn", "wingK", "wingCrumpled"],
  crawlers: ["headWorker", "headDrone"],
  mostly_drones: ["headDrone", "headWorker"],
  varroa_on_adults: ["miteVarroa", "flyBraula"],
  fast_small_mites: ["miteTropilaelaps", "miteVarroa"],
  robbing_signs: ["pry", "hover"],
  hover_facing_hive: ["hover", "pry"],
  ropy_thread: ["thread", "noThread"],
  twisted_discoloured_larva: ["larvaTwisted", "larvaCoiled"],
  hard_flat_scale: ["scale", "mummy", "sac"],
  chalk_mummies: ["mummy", "scale"],
  sac_larva: ["sac", "larvaCoiled"],
  sunken_perforated_caps: ["capsSunken", "capsSound"],
  chewed_or_bald_pupae: ["openedScattered", "openedInLine"],
  drone_brood_in_worker_cells: ["capsDomed", "capsSound"],
  multiple_eggs_per_cell: ["eggsMany", "eggOne"],
  beetles_or_spined_larvae: ["larvaBeetle", "larvaMoth"],
  webbing_tunnels: ["larvaMoth", "larvaBeetle"],
};
