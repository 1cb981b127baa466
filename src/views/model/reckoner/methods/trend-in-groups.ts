/**
 * `trend-in-groups` as a picture: the share in a typical group, by period.
 *
 * @module views/model
 */
import type { Answers } from "../../../../reasoning/index.ts";
import { methodWords } from "../../../words/index.ts";
import { methodView, roundEnd } from "../method-view.ts";

const words = methodWords["trend-in-groups"];

export const trendInGroupsView = methodView<Answers["trend-in-groups"]>({
  words,
  pictures: ({ shares }) => {
    const rows = shares.map(({ period, value, low, high }) => ({ name: words.period(period), value, low, high }));
    return [
      {
        kind: "ranges",
        title: words.ranges,
        under: words.rangesUnder,
        label: words.label(rows),
        name: "trend-in-groups",
        axis: { says: words.share, from: 0, to: roundEnd(Math.max(...rows.map(({ high }) => high))), per: 100 },
        rowsSay: words.periods,
        rows,
        lines: [],
      },
    ];
  },
});
