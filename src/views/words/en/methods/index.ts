/** What the methods of the reckoner say, by their names; apart from the other sentences, for no other page needs them. */
import type { Family } from "../../../../reasoning/index.ts";
import { abundance } from "./abundance.ts";
import { agreement } from "./agreement.ts";
import { allocate } from "./allocate.ts";
import { colonies } from "./colonies.ts";
import { coloniesNeeded } from "./colonies-needed.ts";
import { compareMiteCounts } from "./compare-mite-counts.ts";
import { compareShares } from "./compare-shares.ts";
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
import { poolRetest, poolSize, pools, poolsToDetect } from "./pools.ts";
import { reduction } from "./reduction.ts";
import { sampleSize } from "./sample-size.ts";
import { scores } from "./scores.ts";
import { sequentialPlan } from "./sequential-plan.ts";
import { sequentialReading } from "./sequential-reading.ts";
import { smoothRates } from "./smooth-rates.ts";
import { survey } from "./survey.ts";
import { threeWayPlan } from "./three-way-plan.ts";
import { thresholds } from "./thresholds.ts";
import { trend } from "./trend.ts";
import { trendInGroups } from "./trend-in-groups.ts";
import { truePrevalence, truePrevalenceBelief, truePrevalenceTrials } from "./true-prevalence.ts";
import { twoStage } from "./two-stage.ts";
import { valueOfKnowing } from "./value-of-knowing.ts";
import { valueOfSampling } from "./value-of-sampling.ts";

export type { FieldWords, MethodWords } from "./method-words.ts";
export { stopsLabel, stopWords } from "./sequential-words.ts";

export const methodWords = {
  "sample-size": sampleSize,
  estimate,
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

/** What the groups of methods are called, in the order in which they stand on the page. */
export const familyNames: Readonly<Record<Exclude<Family, "case">, string>> = {
  designs: "How many to look at",
  sequential: "Reading until the answer is in",
  shares: "From a count to a share",
  pools: "Bees tested together",
  clusters: "Several colonies, several apiaries",
  counts: "Mites per bee",
  freedom: "None found: is it free?",
  places: "Places and time",
  comparison: "Did it work? Comparing groups",
  readers: "Readers and rankings against the truth",
  decisions: "Act, test or wait",
};

/** What stands around every method. */
export const methodPage = {
  all: "All methods",
  toCase: "Back to the case",
  onward: "Read with this plan",
  reckon: "Reckon",
  working: "Reckoning …",
  done: (share: number) => `${Math.round(100 * share)} of 100 done`,
  stop: "Stop",
  stopped: "Stopped before the answer.",
  notLoaded: "This method could not be loaded. Load the page again.",
  failed: "This could not be reckoned: a fault of the program, not of your numbers. They are kept here.",
  example: "The numbers are an example. Type your own over them.",
  incomplete: "Fill in what is still empty and press Reckon.",
  pictureColumns: { value: "Found", low: "From", high: "To" },
  figures: "All figures",
  restsOn: "What it rests on",
  source: "Source",
  command: "The same at the command line",
  commandUnder: "In the project’s folder.",
  none: "There is no such method.",
};
