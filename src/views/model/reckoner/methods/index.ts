/**
 * The methods of the reckoner by their verbs. To add one: its words, its view, and a line here.
 *
 * @module views/model
 */
import type { Family, MethodName } from "../../../../reasoning/index.ts";
import type { MethodView } from "../method-view.ts";
import { agreementView } from "./agreement.ts";
import { compareSharesView } from "./compare-shares.ts";
import { estimateView } from "./estimate.ts";
import { groupSizeView } from "./group-size.ts";
import { intervalsView } from "./intervals.ts";
import { networkView } from "./network.ts";
import { pairedView } from "./paired.ts";
import { pairedReadingsView } from "./paired-readings.ts";
import { reductionView } from "./reduction.ts";
import { sampleSizeView } from "./sample-size.ts";
import { scoresView } from "./scores.ts";
import { thresholdsView } from "./thresholds.ts";
import { valueOfKnowingView } from "./value-of-knowing.ts";
import { valueOfSamplingView } from "./value-of-sampling.ts";

export const methodViews: Readonly<Record<MethodName, MethodView>> = {
  "sample-size": sampleSizeView,
  estimate: estimateView,
  intervals: intervalsView,
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
};

/** The methods by what they are about, in the order of the page. */
export const methodsByFamily: readonly (readonly [Exclude<Family, "case">, readonly MethodName[]])[] = [
  ["designs", ["sample-size"]],
  ["shares", ["estimate", "intervals"]],
  ["comparison", ["reduction", "compare-shares", "paired", "paired-readings", "group-size"]],
  ["readers", ["agreement", "scores", "network"]],
  ["decisions", ["thresholds", "value-of-sampling", "value-of-knowing"]],
];

/** The view of this method; undefined where there is none. */
export const methodViewOf = (name: string): MethodView | undefined =>
  Object.hasOwn(methodViews, name) ? methodViews[name as MethodName] : undefined;
