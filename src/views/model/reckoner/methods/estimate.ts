/**
 * `estimate` as pictures: the range, and what the count could have missed.
 *
 * @module views/model
 */
import type { Answers } from "../../../../reasoning/index.ts";
import { methodWords } from "../../../words/index.ts";
import { methodView, roundEnd, spread } from "../method-view.ts";
import type { PictureView } from "../pictures.ts";

const words = methodWords.estimate;
const missedWords = methodWords["sample-size"];
const farthest = 0.2;

export const estimateView = methodView<Answers["estimate"]>({
  words,
  more: ({ sensitivity }) => (sensitivity === undefined ? {} : { prevalences: spread(0, farthest, 61) }),
  pictures: (answer) => [range(answer), ...(answer.couldMiss === null ? [] : [missed(answer, answer.couldMiss)])],
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

function missed(
  { estimate: { n } }: Answers["estimate"],
  couldMiss: NonNullable<Answers["estimate"]["couldMiss"]>,
): PictureView {
  const bees = n ?? 0;
  return {
    kind: "curves",
    title: missedWords.couldMiss,
    under: missedWords.couldMissUnder,
    label: missedWords.label({ bees, points: couldMiss.filter((_, index) => index % 10 === 0) }),
    name: `could-miss-${bees}`,
    x: { says: missedWords.infested, from: 0, to: farthest, per: 100 },
    y: { says: missedWords.missed, from: 0, to: 1, per: 100 },
    series: [
      {
        name: missedWords.missed,
        points: couldMiss.map(({ prevalence, missed }) => [prevalence, missed] as const),
        style: "full",
      },
    ],
  };
}
