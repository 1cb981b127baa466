/**
 * `estimate` as pictures: the range, and what the count could have missed.
 *
 * @module views/model
 */
import type { Answers } from "../../../../reasoning/index.ts";
import { methodWords } from "../../../words/index.ts";
import { couldMissPicture } from "../could-miss.ts";
import { methodView, roundEnd, spread } from "../method-view.ts";
import type { PictureView } from "../pictures.ts";

const words = methodWords.estimate;
const farthest = 0.2;

export const estimateView = methodView<Answers["estimate"]>({
  words,
  more: ({ sensitivity }) => (sensitivity === undefined ? {} : { prevalences: spread(0, farthest, 61) }),
  pictures: (answer) => [
    range(answer),
    ...(answer.couldMiss === null
      ? []
      : [couldMissPicture({ bees: answer.estimate.n ?? 0, points: answer.couldMiss })]),
  ],
});

function range(answer: Answers["estimate"]): PictureView {
  const { value, low, high } = answer.estimate;
  const says = answer.quantity === "mites-per-bee" ? words.mites : words.share;
  return {
    kind: "ranges",
    title: words.range,
    label: words.rangeLabel(words.says(answer)),
    name: "range",
    axis: { says, from: 0, to: high > 1 ? high : roundEnd(high), per: 100 },
    rowsSay: words.count,
    rows: [{ name: says, value, low, high }],
    lines: [],
  };
}
