/** The verbs, in the order of the work; those that can be asked by hand by what they are about. */

import { abundance } from "./abundance.ts";
import { agreement } from "./agreement.ts";
import { allocate } from "./allocate.ts";
import { colonies } from "./colonies.ts";
import { coloniesNeeded } from "./colonies-needed.ts";
import { compareCauses } from "./compare-causes.ts";
import { compareMiteCounts } from "./compare-mite-counts.ts";
import { compareShares } from "./compare-shares.ts";
import { decide } from "./decide.ts";
import { differential } from "./differential.ts";
import { efficacy } from "./efficacy.ts";
import { estimate } from "./estimate.ts";
import { freedom } from "./freedom.ts";
import { freedomFinite } from "./freedom-finite.ts";
import { freedomTree } from "./freedom-tree.ts";
import { groupSize } from "./group-size.ts";
import { intervals } from "./intervals.ts";
import { margin } from "./margin.ts";
import { miteCounts } from "./mite-counts.ts";
import { network } from "./network.ts";
import { noneFound } from "./none-found.ts";
import { paired } from "./paired.ts";
import { pairedReadings } from "./paired-readings.ts";
import { poolRetest } from "./pool-retest.ts";
import { poolSize } from "./pool-size.ts";
import { pools } from "./pools.ts";
import { poolsToDetect } from "./pools-to-detect.ts";
import { reduction } from "./reduction.ts";
import { sampleSize } from "./sample-size.ts";
import { scores } from "./scores.ts";
import { season } from "./season.ts";
import { seasonChoices } from "./season-choices.ts";
import { sequentialPlan } from "./sequential-plan.ts";
import { sequentialReading } from "./sequential-reading.ts";
import { smoothRates } from "./smooth-rates.ts";
import { survey } from "./survey.ts";
import { threeWayPlan } from "./three-way-plan.ts";
import { thresholds } from "./thresholds.ts";
import { trend } from "./trend.ts";
import { trendInGroups } from "./trend-in-groups.ts";
import { truePrevalence } from "./true-prevalence.ts";
import { truePrevalenceBelief } from "./true-prevalence-belief.ts";
import { truePrevalenceTrials } from "./true-prevalence-trials.ts";
import { twoStage } from "./two-stage.ts";
import { valueOfKnowing } from "./value-of-knowing.ts";
import { valueOfSampling } from "./value-of-sampling.ts";
import type { AnswerOf, Verb } from "./verb.ts";
import { windows } from "./windows.ts";

const byName = {
  differential,
  "compare-causes": compareCauses,
  "sample-size": sampleSize,
  estimate,
  decide,
  windows,
  season,
  "season-choices": seasonChoices,
  efficacy,
  intervals,
  "none-found": noneFound,
  "true-prevalence": truePrevalence,
  "true-prevalence-trials": truePrevalenceTrials,
  "true-prevalence-belief": truePrevalenceBelief,
  margin,
  survey,
  "two-stage": twoStage,
  pools,
  "pools-to-detect": poolsToDetect,
  "pool-size": poolSize,
  "pool-retest": poolRetest,
  colonies,
  "colonies-needed": coloniesNeeded,
  "mite-counts": miteCounts,
  "compare-mite-counts": compareMiteCounts,
  abundance,
  freedom,
  "freedom-tree": freedomTree,
  "freedom-finite": freedomFinite,
  allocate,
  "smooth-rates": smoothRates,
  trend,
  "trend-in-groups": trendInGroups,
  "compare-shares": compareShares,
  reduction,
  paired,
  "paired-readings": pairedReadings,
  "group-size": groupSize,
  thresholds,
  "value-of-sampling": valueOfSampling,
  "value-of-knowing": valueOfKnowing,
  agreement,
  scores,
  network,
  "sequential-plan": sequentialPlan,
  "sequential-reading": sequentialReading,
  "three-way-plan": threeWayPlan,
};

/** What each verb answers, by its name. */
export type Answers = { readonly [Name in keyof typeof byName]: AnswerOf<(typeof byName)[Name]> };

/** Verbs that can be asked by hand, without a case. */
export type MethodName = Exclude<
  keyof Answers,
  "differential" | "compare-causes" | "decide" | "windows" | "season" | "season-choices" | "efficacy"
>;

/** Every verb of the reasoning that programs and people can ask. */
export const verbs: readonly Verb[] = Object.values(byName);

/** The verb of this name; undefined where there is none. */
export const verbNamed = (name: string): Verb | undefined => verbs.find((each) => each.name === name);

export { labelRecord } from "./label-record.ts";
export * from "./message.ts";
export { changesFrom, evidenceFrom, type OwnEvidence } from "./own-evidence.ts";
export { nearestName, readInput } from "./read-input.ts";
export { askSeason } from "./season.ts";
export { askSeasonChoices } from "./season-choices.ts";
export { listed, optionsOf, type Shape, shapeAt, shapeInWords } from "./shape.ts";
export {
  type AnswerOf,
  type Family,
  families,
  type Progress,
  type Reply,
  unknownVerb,
  type Verb,
  verb,
} from "./verb.ts";
