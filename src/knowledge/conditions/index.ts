/** All conditions, by id. */
import type { ConditionFact } from "../fact.ts";
import type { ConditionId } from "../ids.ts";
import { acutePoisoning } from "./acute-poisoning.ts";
import { acuteVirusComplex } from "./acute-virus-complex.ts";
import { americanFoulbrood } from "./american-foulbrood.ts";
import { amoeba } from "./amoeba.ts";
import { broodBreakSwarm } from "./brood-break-swarm.ts";
import { broodNestCongested } from "./brood-nest-congested.ts";
import { chalkbrood } from "./chalkbrood.ts";
import { chilledBrood } from "./chilled-brood.ts";
import { chilledOrOldForagers } from "./chilled-or-old-foragers.ts";
import { chronicExposure } from "./chronic-exposure.ts";
import { chronicParalysis } from "./chronic-paralysis.ts";
import { droneEviction } from "./drone-eviction.ts";
import { droneLayer } from "./drone-layer.ts";
import { dwvOvert } from "./dwv-overt.ts";
import { dysenteryConfinement } from "./dysentery-confinement.ts";
import { europeanFoulbrood } from "./european-foulbrood.ts";
import { failingQueen } from "./failing-queen.ts";
import { feedToxicity } from "./feed-toxicity.ts";
import { flyParasitoids } from "./fly-parasitoids.ts";
import { hornetPredation } from "./hornet-predation.ts";
import { layingWorkers } from "./laying-workers.ts";
import { mouseDisturbance } from "./mouse-disturbance.ts";
import { nosemaApis } from "./nosema-apis.ts";
import { nosemaCeranae } from "./nosema-ceranae.ts";
import { orientationFlight } from "./orientation-flight.ts";
import { overheatingSuffocation } from "./overheating-suffocation.ts";
import { plantToxicity } from "./plant-toxicity.ts";
import { pollenDearth } from "./pollen-dearth.ts";
import { queenless } from "./queenless.ts";
import { robbing } from "./robbing.ts";
import { sacbrood } from "./sacbrood.ts";
import { smallHiveBeetle } from "./small-hive-beetle.ts";
import { smallLateColony } from "./small-late-colony.ts";
import { springTurnoverNormal } from "./spring-turnover-normal.ts";
import { starvation } from "./starvation.ts";
import { stonebrood } from "./stonebrood.ts";
import { trachealMites } from "./tracheal-mites.ts";
import { treatmentInjury } from "./treatment-injury.ts";
import { tropilaelaps } from "./tropilaelaps.ts";
import { unexplainedDepopulation } from "./unexplained-depopulation.ts";
import { varroaPms } from "./varroa-pms.ts";
import { waxMoth } from "./wax-moth.ts";
import { winterBroodPause } from "./winter-brood-pause.ts";
import { winterDamp } from "./winter-damp.ts";
import { winterLossesNormal } from "./winter-losses-normal.ts";

/** Every condition by its id, with its prior odds by season and how often each finding goes with it. */
export const conditions: { readonly [Id in ConditionId]: ConditionFact<Id> } = {
  tracheal_mites: trachealMites,
  varroa_pms: varroaPms,
  dwv_overt: dwvOvert,
  chronic_paralysis: chronicParalysis,
  acute_virus_complex: acuteVirusComplex,
  nosema_ceranae: nosemaCeranae,
  nosema_apis: nosemaApis,
  amoeba,
  dysentery_confinement: dysenteryConfinement,
  starvation,
  pollen_dearth: pollenDearth,
  acute_poisoning: acutePoisoning,
  chronic_exposure: chronicExposure,
  plant_toxicity: plantToxicity,
  queenless,
  drone_layer: droneLayer,
  laying_workers: layingWorkers,
  small_late_colony: smallLateColony,
  american_foulbrood: americanFoulbrood,
  european_foulbrood: europeanFoulbrood,
  sacbrood,
  chalkbrood,
  stonebrood,
  chilled_brood: chilledBrood,
  small_hive_beetle: smallHiveBeetle,
  wax_moth: waxMoth,
  tropilaelaps,
  robbing,
  mouse_disturbance: mouseDisturbance,
  fly_parasitoids: flyParasitoids,
  overheating_suffocation: overheatingSuffocation,
  winter_damp: winterDamp,
  brood_break_swarm: broodBreakSwarm,
  unexplained_depopulation: unexplainedDepopulation,
  winter_losses_normal: winterLossesNormal,
  chilled_or_old_foragers: chilledOrOldForagers,
  drone_eviction: droneEviction,
  orientation_flight: orientationFlight,
  spring_turnover_normal: springTurnoverNormal,
  winter_brood_pause: winterBroodPause,
  treatment_injury: treatmentInjury,
  failing_queen: failingQueen,
  brood_nest_congested: broodNestCongested,
  hornet_predation: hornetPredation,
  feed_toxicity: feedToxicity,
};
