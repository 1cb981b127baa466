/**
 * `paired` as a picture: each colony's number after over its number before.
 *
 * @module views/model
 */
import type { Answers } from "../../../../reasoning/index.ts";
import { methodWords } from "../../../words/index.ts";
import { methodView } from "../method-view.ts";
import { signedEnds } from "../signed-axis.ts";

const words = methodWords.paired;

export const pairedView = methodView<Answers["paired"]>({
  words,
  pictures: ({ pairs }) => {
    const ends = signedEnds(pairs.flatMap(({ before, after }) => [before, after]));
    const points = pairs.map(({ before, after }) => [before, after] as const);
    return [
      {
        kind: "curves",
        title: words.picture,
        under: words.pictureUnder,
        label: words.label(pairs),
        name: "pairs",
        x: { says: words.before, ...ends, per: 1 },
        y: { says: words.after, ...ends, per: 1 },
        series: [
          { name: words.colony, points, style: "points" },
          {
            name: words.same,
            points: [
              [ends.from, ends.from],
              [ends.to, ends.to],
            ],
            style: "dashed",
          },
        ],
      },
    ];
  },
});
