/**
 * `trend` as a picture: each group with its range, in order.
 *
 * @module views/model
 */
import type { Answers } from "../../../../reasoning/index.ts";
import { methodWords } from "../../../words/index.ts";
import { methodView, roundEnd } from "../method-view.ts";

const words = methodWords.trend;
/** More rows than this are no picture; the figures hold them. */
const mostDrawn = 60;

export const trendView = methodView<Answers["trend"]>({
  words,
  pictures: ({ groups }) => {
    if (groups.length > mostDrawn) return [];
    const rows = groups.map(({ score, ...range }, index) => ({ name: words.group(index + 1, score), ...range }));
    return [
      {
        kind: "ranges",
        title: words.ranges,
        label: words.label(rows),
        name: "trend",
        axis: { says: words.share, from: 0, to: roundEnd(Math.max(...rows.map(({ high }) => high))), per: 100 },
        rowsSay: words.groups,
        rows,
        lines: [],
      },
    ];
  },
});
