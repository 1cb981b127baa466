/** What tests that err, pools and survey designs can be in trouble with: what it means, what to do. */
import { whole } from "../numbers.ts";
import type { Slots } from "./index.ts";

const n = (slots: Slots, name: string): number => Number(slots[name] ?? 0);
const oneDigit = (value: number): string => String(Number(value.toFixed(1)));

export const surveyProblems = {
  "fewer-than-false-positives": (slots: Slots) =>
    `${whole(n(slots, "positive"))} positive of ${whole(n(slots, "examined"))}: false ones alone would give about ${oneDigit(n(slots, "expected"))}. The share is set to 0; check how well the test clears.`,
  "more-than-sensitivity": (slots: Slots) =>
    `${whole(n(slots, "positive"))} positive of ${whole(n(slots, "examined"))}: if all were infested, the test would give about ${oneDigit(n(slots, "expected"))}. The share is set to 1; check how well the test finds.`,
  "limits-cut-to-a-point": (slots: Slots) =>
    `Limits would lie wholly ${n(slots, "at") === 0 ? "below 0" : "above 1"} and were cut to that end. That is no certainty: the count does not fit the test. Check how well it finds and clears.`,
  "posterior-did-not-settle": () =>
    "The sum did not settle to enough digits. Give the test's errors as known numbers, or as narrower beliefs.",
  "no-size-in-search": (slots: Slots) =>
    `No number up to ${whole(n(slots, "searched"))} keeps both kinds of error small enough. Allow more error, or use a test that errs less.`,
  "no-count-below-zero": () => "A cut-point of 0 calls every group infested. Expected: 1 or more.",
  "no-design-reaches": (slots: Slots) =>
    `With up to ${whole(n(slots, "mostBees"))} bees from each, even all colonies do not reach the certainty asked. Take more bees, or ask for less.`,
  "no-pool-positive": (slots: Slots) =>
    `None of ${whole(n(slots, "pools"))} pools is positive: the likeliest share is 0, and only an upper limit can be given.`,
  "all-pools-positive": (slots: Slots) =>
    `All ${whole(n(slots, "pools"))} pools are positive, so how many bees are infested cannot be said; only a lower limit can. Test smaller pools.`,
  "pool-sizes-differ": (slots: Slots) =>
    `The pools hold ${whole(n(slots, "smallest"))} to ${whole(n(slots, "largest"))} bees. This way of reckoning needs pools of one size.`,
  "pooled-limit-out-of-reach": (slots: Slots) =>
    `This way of reckoning has no ${slots.end} limit for these counts. Take the likelihood limits.`,
  "pooling-saves-nothing": () => "So many are infested that pools save no tests. Test each bee by itself.",
};
