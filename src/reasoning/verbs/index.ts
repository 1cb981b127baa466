/** The verbs, in the order of the work. */
import { decide } from "./decide.ts";
import { differential } from "./differential.ts";
import { efficacy } from "./efficacy.ts";
import { estimate } from "./estimate.ts";
import { sampleSize } from "./sample-size.ts";
import type { Verb } from "./verb.ts";
import { windows } from "./windows.ts";

/** Every verb of the reasoning that programs and people can ask. */
export const verbs: readonly Verb[] = [differential, sampleSize, estimate, decide, windows, efficacy];

/** The verb of this name; undefined where there is none. */
export const verbNamed = (name: string): Verb | undefined => verbs.find((each) => each.name === name);

export { labelRecord } from "./label-record.ts";
export * from "./message.ts";
export { nearestName, readInput } from "./read-input.ts";
export { listed, optionsOf, type Shape, shapeAt, shapeInWords } from "./shape.ts";
export { type Reply, unknownVerb, type Verb, verb } from "./verb.ts";
