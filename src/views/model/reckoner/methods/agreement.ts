/**
 * `agreement` as a picture: each measure with its range, against chance.
 *
 * @module views/model
 */
import type { Answers } from "../../../../reasoning/index.ts";
import { methodWords } from "../../../words/index.ts";
import { methodView } from "../method-view.ts";
import { signedEnds } from "../signed-axis.ts";

const words = methodWords.agreement;

export const agreementView = methodView<Answers["agreement"]>({
  words,
  pictures: ({ kappa, weighted, pabak, ac1 }) => {
    const all = [kappa, ...weighted, pabak, ac1].filter((each) => each !== null);
    const rows = all.map(({ method, value, low, high }) => ({ name: words.nameOf(method), value, low, high }));
    return [
      {
        kind: "ranges",
        title: words.picture,
        under: words.pictureUnder,
        label: words.label(rows),
        name: "agreement",
        axis: { says: words.axis, ...signedEnds([1, ...rows.flatMap(({ low, high }) => [low, high])]), per: 1 },
        rowsSay: words.measure,
        rows,
        lines: [{ at: 0, says: words.chance }],
      },
    ];
  },
});
