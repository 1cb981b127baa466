/**
 * `sample-size` as pictures: what so many bees could still miss.
 *
 * @module views/model
 */
import type { Answers } from "../../../../reasoning/index.ts";
import { methodWords } from "../../../words/index.ts";
import { couldMissPicture } from "../could-miss.ts";
import { methodView, roundEnd, spread } from "../method-view.ts";

export const sampleSizeView = methodView<Answers["sample-size"]>({
  words: methodWords["sample-size"],
  more: ({ designPrevalence }) => ({
    prevalences: spread(
      0,
      roundEnd(Math.min(1, 3 * (typeof designPrevalence === "number" ? designPrevalence : 0.05))),
      61,
    ),
  }),
  pictures: ({ bees, couldMiss, design, detectionProbability }) => [
    couldMissPicture({
      bees,
      points: couldMiss,
      design: { prevalence: design.designPrevalence, missed: 1 - detectionProbability },
    }),
  ],
});
