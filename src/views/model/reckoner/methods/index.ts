/**
 * The methods of the reckoner by their verbs. To add one: its words, its view, and a line here.
 *
 * @module views/model
 */
import type { Family, MethodName } from "../../../../reasoning/index.ts";
import type { MethodView } from "../method-view.ts";
import { estimateView } from "./estimate.ts";
import { intervalsView } from "./intervals.ts";
import { marginView } from "./margin.ts";
import { noneFoundView } from "./none-found.ts";
import { poolRetestView, poolSizeView, poolsToDetectView } from "./pool-designs.ts";
import { poolsView } from "./pools.ts";
import { sampleSizeView } from "./sample-size.ts";
import { surveyView } from "./survey.ts";
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
};

/** The methods by what they are about, in the order of the page. */
export const methodsByFamily: readonly (readonly [Exclude<Family, "case">, readonly MethodName[]])[] = [
  ["designs", ["sample-size", "margin", "survey", "two-stage"]],
  [
    "shares",
    ["estimate", "intervals", "none-found", "true-prevalence", "true-prevalence-trials", "true-prevalence-belief"],
  ],
  ["pools", ["pools", "pools-to-detect", "pool-size", "pool-retest"]],
];

/** The view of this method; undefined where there is none. */
export const methodViewOf = (name: string): MethodView | undefined =>
  Object.hasOwn(methodViews, name) ? methodViews[name as MethodName] : undefined;
