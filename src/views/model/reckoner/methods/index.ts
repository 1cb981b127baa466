/**
 * The methods of the reckoner by their verbs. To add one: its words, its view, and a line here.
 *
 * @module views/model
 */
import type { Family, MethodName } from "../../../../reasoning/index.ts";
import type { MethodView } from "../method-view.ts";
import { abundanceView } from "./abundance.ts";
import { allocateView } from "./allocate.ts";
import { coloniesView } from "./colonies.ts";
import { coloniesNeededView } from "./colonies-needed.ts";
import { compareMiteCountsView } from "./compare-mite-counts.ts";
import { estimateView } from "./estimate.ts";
import { freedomView } from "./freedom.ts";
import { freedomFiniteView } from "./freedom-finite.ts";
import { freedomTreeView } from "./freedom-tree.ts";
import { intervalsView } from "./intervals.ts";
import { marginView } from "./margin.ts";
import { miteCountsView } from "./mite-counts.ts";
import { noneFoundView } from "./none-found.ts";
import { poolRetestView, poolSizeView, poolsToDetectView } from "./pool-designs.ts";
import { poolsView } from "./pools.ts";
import { sampleSizeView } from "./sample-size.ts";
import { smoothRatesView } from "./smooth-rates.ts";
import { surveyView } from "./survey.ts";
import { trendView } from "./trend.ts";
import { trendInGroupsView } from "./trend-in-groups.ts";
import { truePrevalenceBeliefView, truePrevalenceTrialsView, truePrevalenceView } from "./true-prevalence.ts";
import { twoStageView } from "./two-stage.ts";

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
};

/** The methods by what they are about, in the order of the page. */
export const methodsByFamily: readonly (readonly [Exclude<Family, "case">, readonly MethodName[]])[] = [
  ["designs", ["sample-size", "margin", "survey", "two-stage"]],
  [
    "shares",
    ["estimate", "intervals", "none-found", "true-prevalence", "true-prevalence-trials", "true-prevalence-belief"],
  ],
  ["pools", ["pools", "pools-to-detect", "pool-size", "pool-retest"]],
  ["clusters", ["colonies", "colonies-needed"]],
  ["counts", ["mite-counts", "compare-mite-counts", "abundance"]],
  ["freedom", ["freedom", "freedom-tree", "freedom-finite", "allocate"]],
  ["places", ["smooth-rates", "trend", "trend-in-groups"]],
];

/** The view of this method; undefined where there is none. */
export const methodViewOf = (name: string): MethodView | undefined =>
  Object.hasOwn(methodViews, name) ? methodViews[name as MethodName] : undefined;
