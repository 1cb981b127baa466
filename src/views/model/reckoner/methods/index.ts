/**
 * The methods of the reckoner by their verbs. To add one: its words, its view, and a line here.
 *
 * @module views/model
 */
import type { Family, MethodName } from "../../../../reasoning/index.ts";
import type { MethodView } from "../method-view.ts";
import { abundanceView } from "./abundance.ts";
import { agreementView } from "./agreement.ts";
import { allocateView } from "./allocate.ts";
import { coloniesView } from "./colonies.ts";
import { coloniesNeededView } from "./colonies-needed.ts";
import { compareMiteCountsView } from "./compare-mite-counts.ts";
import { compareSharesView } from "./compare-shares.ts";
import { estimateView } from "./estimate.ts";
import { freedomView } from "./freedom.ts";
import { freedomFiniteView } from "./freedom-finite.ts";
import { freedomTreeView } from "./freedom-tree.ts";
import { groupSizeView } from "./group-size.ts";
import { intervalsView } from "./intervals.ts";
import { marginView } from "./margin.ts";
import { miteCountsView } from "./mite-counts.ts";
import { networkView } from "./network.ts";
import { noneFoundView } from "./none-found.ts";
import { pairedView } from "./paired.ts";
import { pairedReadingsView } from "./paired-readings.ts";
import { poolRetestView, poolSizeView, poolsToDetectView } from "./pool-designs.ts";
import { poolsView } from "./pools.ts";
import { reductionView } from "./reduction.ts";
import { sampleSizeView } from "./sample-size.ts";
import { scoresView } from "./scores.ts";
import { sequentialPlanView } from "./sequential-plan.ts";
import { sequentialReadingView } from "./sequential-reading.ts";
import { smoothRatesView } from "./smooth-rates.ts";
import { surveyView } from "./survey.ts";
import { threeWayPlanView } from "./three-way-plan.ts";
import { thresholdsView } from "./thresholds.ts";
import { trendView } from "./trend.ts";
import { trendInGroupsView } from "./trend-in-groups.ts";
import { truePrevalenceBeliefView, truePrevalenceTrialsView, truePrevalenceView } from "./true-prevalence.ts";
import { twoStageView } from "./two-stage.ts";
import { valueOfKnowingView } from "./value-of-knowing.ts";
import { valueOfSamplingView } from "./value-of-sampling.ts";

export const methodViews: Readonly<Record<MethodName, MethodView>> = {
  "sample-size": sampleSizeView,
  estimate: estimateView,
  intervals: intervalsView,
  "none-found": noneFoundView,
  "true-prevalence": truePrevalenceView,
  "true-prevalence-trials": truePrevalenceTrialsView,
  "true-prevalence-belief": truePrevalenceBeliefView,
  margin: marginView,
  survey: surveyView,
  "two-stage": twoStageView,
  pools: poolsView,
  "pools-to-detect": poolsToDetectView,
  "pool-size": poolSizeView,
  "pool-retest": poolRetestView,
  colonies: coloniesView,
  "colonies-needed": coloniesNeededView,
  "mite-counts": miteCountsView,
  "compare-mite-counts": compareMiteCountsView,
  abundance: abundanceView,
  freedom: freedomView,
  "freedom-tree": freedomTreeView,
  "freedom-finite": freedomFiniteView,
  allocate: allocateView,
  "smooth-rates": smoothRatesView,
  trend: trendView,
  "trend-in-groups": trendInGroupsView,
  "compare-shares": compareSharesView,
  reduction: reductionView,
  paired: pairedView,
  "paired-readings": pairedReadingsView,
  "group-size": groupSizeView,
  thresholds: thresholdsView,
  "value-of-sampling": valueOfSamplingView,
  "value-of-knowing": valueOfKnowingView,
  agreement: agreementView,
  scores: scoresView,
  network: networkView,
  "sequential-plan": sequentialPlanView,
  "sequential-reading": sequentialReadingView,
  "three-way-plan": threeWayPlanView,
};

/** The methods by what they are about, in the order of the page. */
export const methodsByFamily: readonly (readonly [Exclude<Family, "case">, readonly MethodName[]])[] = [
  ["designs", ["sample-size", "margin", "survey", "two-stage"]],
  ["sequential", ["sequential-plan", "sequential-reading", "three-way-plan"]],
  [
    "shares",
    ["estimate", "intervals", "none-found", "true-prevalence", "true-prevalence-trials", "true-prevalence-belief"],
  ],
  ["pools", ["pools", "pools-to-detect", "pool-size", "pool-retest"]],
  ["clusters", ["colonies", "colonies-needed"]],
  ["counts", ["mite-counts", "compare-mite-counts", "abundance"]],
  ["freedom", ["freedom", "freedom-tree", "freedom-finite", "allocate"]],
  ["places", ["smooth-rates", "trend", "trend-in-groups"]],
  ["comparison", ["reduction", "compare-shares", "paired", "paired-readings", "group-size"]],
  ["readers", ["agreement", "scores", "network"]],
  ["decisions", ["thresholds", "value-of-sampling", "value-of-knowing"]],
];

/** The view of this method; undefined where there is none. */
export const methodViewOf = (name: string): MethodView | undefined =>
  Object.hasOwn(methodViews, name) ? methodViews[name as MethodName] : undefined;
