/** The verbs, in the order of the work; those that can be asked by hand by what they are about. */
import { decide } from "./decide.ts";
import { differential } from "./differential.ts";
import { efficacy } from "./efficacy.ts";
import { estimate } from "./estimate.ts";
import { intervals } from "./intervals.ts";
import { sampleSize } from "./sample-size.ts";
import { sequentialPlan } from "./sequential-plan.ts";
import { sequentialReading } from "./sequential-reading.ts";
import { threeWayPlan } from "./three-way-plan.ts";
import type { AnswerOf, Verb } from "./verb.ts";
import { windows } from "./windows.ts";

const byName = {
  differential,
  "sample-size": sampleSize,
  estimate,
  decide,
  windows,
  efficacy,
  intervals,
  "sequential-plan": sequentialPlan,
  "sequential-reading": sequentialReading,
  "three-way-plan": threeWayPlan,
};

/** What each verb answers, by its name. */
export type Answers = { readonly [Name in keyof typeof byName]: AnswerOf<(typeof byName)[Name]> };

/** Verbs that can be asked by hand, without a case. */
export type MethodName = Exclude<keyof Answers, "differential" | "decide" | "windows" | "efficacy">;

/** Every verb of the reasoning that programs and people can ask. */
export const verbs: readonly Verb[] = Object.values(byName);

/** The verb of this name; undefined where there is none. */
export const verbNamed = (name: string): Verb | undefined => verbs.find((each) => each.name === name);

export { labelRecord } from "./label-record.ts";
export * from "./message.ts";
export { nearestName, readInput } from "./read-input.ts";
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
