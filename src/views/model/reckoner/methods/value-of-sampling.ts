/**
 * `value-of-sampling` as a picture: worth and net worth by the number of bees.
 *
 * @module views/model
 */
import type { Answers } from "../../../../reasoning/index.ts";
import { methodWords } from "../../../words/index.ts";
import { methodView } from "../method-view.ts";
import { signedEnds } from "../signed-axis.ts";

const words = methodWords["value-of-sampling"];

export const valueOfSamplingView = methodView<Answers["value-of-sampling"]>({
  words,
  pictures: ({ sizes, best, evpi }) => {
    if (sizes.length < 2) return [];
    const values = [evpi, ...sizes.flatMap(({ evsi, net }) => [evsi, net])];
    return [
      {
        kind: "curves",
        title: words.picture,
        under: words.pictureUnder,
        label: words.label(sizes),
        name: "worth-by-size",
        x: { says: words.bees, ...signedEnds(sizes.map(({ bees }) => bees)), per: 1 },
        y: { says: words.worth, ...signedEnds(values), per: 1 },
        series: [
          { name: words.evsi, style: "full", points: sizes.map(({ bees, evsi }) => [bees, evsi]) },
          { name: words.net, style: "dashed", points: sizes.map(({ bees, net }) => [bees, net]) },
        ],
        lines: [{ y: evpi, says: words.most(evpi) }],
        marks: best.net > 0 && best.bees > 0 ? [{ x: best.bees, y: best.net, says: words.best(best.bees) }] : [],
      },
    ];
  },
});
