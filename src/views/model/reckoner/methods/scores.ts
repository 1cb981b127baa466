/**
 * `scores` as a picture: what was said against what was seen, bin by bin.
 *
 * @module views/model
 */
import type { Answers } from "../../../../reasoning/index.ts";
import { methodWords } from "../../../words/index.ts";
import { methodView } from "../method-view.ts";

const words = methodWords.scores;

export const scoresView = methodView<Answers["scores"]>({
  words,
  pictures: ({ bins }) => [
    {
      kind: "curves",
      title: words.picture,
      under: words.pictureUnder,
      label: words.label(bins),
      name: "said-and-seen",
      x: { says: words.said, from: 0, to: 1, per: 100 },
      y: { says: words.seen, from: 0, to: 1, per: 100 },
      series: [
        { name: words.bin, style: "points", points: bins.map(({ meanStated, observed }) => [meanStated, observed]) },
        {
          name: words.perfect,
          style: "dashed",
          points: [
            [0, 0],
            [1, 1],
          ],
        },
      ],
      uprights: bins.map(({ meanStated, low, high }) => ({ x: meanStated, low, high })),
    },
  ],
});
