/**
 * `mite-counts` as a picture: bees by their mites, counted and as two laws have them.
 *
 * @module views/model
 */
import type { Answers } from "../../../../reasoning/index.ts";
import { methodWords } from "../../../words/index.ts";
import { methodView, niceEnd } from "../method-view.ts";

const words = methodWords["mite-counts"];

export const miteCountsView = methodView<Answers["mite-counts"]>({
  words,
  pictures: ({ classes }) => {
    const names = classes.map(({ mites }, index) =>
      index === classes.length - 1 ? words.orMore(mites) : String(mites),
    );
    const most = Math.max(...classes.flatMap((each) => [each.bees, each.negativeBinomial ?? 0, each.poisson]));
    const uneven = classes.some((each) => each.negativeBinomial !== null)
      ? [{ name: words.uneven, values: classes.map((each) => each.negativeBinomial) }]
      : [];
    return [
      {
        kind: "bars",
        title: words.bars,
        under: words.barsUnder,
        label: words.label(classes.map(({ bees }, index) => ({ mites: names[index] ?? "", bees }))),
        name: "mite-counts",
        classesSay: words.mites,
        classes: names,
        y: { says: words.bees, from: 0, to: niceEnd(most), per: 1 },
        series: [
          { name: words.counted, values: classes.map(({ bees }) => bees) },
          ...uneven,
          { name: words.random, values: classes.map(({ poisson }) => poisson) },
        ],
      },
    ];
  },
});
