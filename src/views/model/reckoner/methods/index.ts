/**
 * The methods of the reckoner by their verbs. To add one: its words, its view, and a line here.
 *
 * @module views/model
 */
import type { Family, MethodName } from "../../../../reasoning/index.ts";
import type { MethodView } from "../method-view.ts";
import { estimateView } from "./estimate.ts";
import { intervalsView } from "./intervals.ts";
import { sampleSizeView } from "./sample-size.ts";
import { sequentialPlanView } from "./sequential-plan.ts";
import { sequentialReadingView } from "./sequential-reading.ts";
import { threeWayPlanView } from "./three-way-plan.ts";

export const methodViews: Readonly<Record<MethodName, MethodView>> = {
  "sample-size": sampleSizeView,
  estimate: estimateView,
  intervals: intervalsView,
  "sequential-plan": sequentialPlanView,
  "sequential-reading": sequentialReadingView,
  "three-way-plan": threeWayPlanView,
};

/** The methods by what they are about, in the order of the page. */
export const methodsByFamily: readonly (readonly [Exclude<Family, "case">, readonly MethodName[]])[] = [
  ["designs", ["sample-size"]],
  ["sequential", ["sequential-plan", "sequential-reading", "three-way-plan"]],
  ["shares", ["estimate", "intervals"]],
];

/** The view of this method; undefined where there is none. */
export const methodViewOf = (name: string): MethodView | undefined =>
  Object.hasOwn(methodViews, name) ? methodViews[name as MethodName] : undefined;
