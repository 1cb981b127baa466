/** What the methods of the reckoner say, by their names; apart from the other sentences, for no other page needs them. */
import type { Family } from "../../../../reasoning/index.ts";
import { estimate } from "./estimate.ts";
import { intervals } from "./intervals.ts";
import { sampleSize } from "./sample-size.ts";
import { sequentialPlan } from "./sequential-plan.ts";
import { sequentialReading } from "./sequential-reading.ts";
import { threeWayPlan } from "./three-way-plan.ts";

export type { FieldWords, MethodWords } from "./method-words.ts";
export { stopsLabel, stopWords } from "./sequential-words.ts";

export const methodWords = {
  "sample-size": sampleSize,
  estimate,
  intervals,
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
  reckon: "Reckon",
  working: "Reckoning …",
  done: (share: number) => `${Math.round(100 * share)} of 100 done`,
  stop: "Stop",
  stopped: "Stopped before the answer.",
  pictureColumns: { value: "Found", low: "From", high: "To" },
  figures: "All figures",
  restsOn: "What it rests on",
  source: "Source",
  command: "The same at the command line",
  commandUnder: "In the project’s folder.",
  none: "There is no such method.",
  rule: (rule: string) => `Rule ${rule}.`,
};
