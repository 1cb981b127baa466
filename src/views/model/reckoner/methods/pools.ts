/**
 * `pools` as a picture: ranges and estimates by every method.
 *
 * @module views/model
 */
import type { Answers } from "../../../../reasoning/index.ts";
import { methodWords } from "../../../words/index.ts";
import { methodView, roundEnd } from "../method-view.ts";

const words = methodWords.pools;
const nameOf = (method: string): string => words.names[method] ?? method;

export const poolsView = methodView<Answers["pools"]>({
  words,
  pictures: ({ estimate, limits, points, imperfect }) => {
    const value = estimate?.value ?? null;
    const ranges = limits.flatMap(({ method, low, high }) =>
      low === null && high === null ? [] : [{ name: nameOf(method), value, low: low ?? 0, high: high ?? 1 }],
    );
    const corrected =
      imperfect === null
        ? []
        : [{ name: words.corrected, value: imperfect.value, low: imperfect.low, high: imperfect.high }];
    const estimates = points.flatMap(({ method, value }) =>
      value === null ? [] : [{ name: nameOf(method), value, low: null, high: null }],
    );
    const rows = [...ranges, ...corrected, ...estimates];
    if (ranges.length === 0) return [];
    return [
      {
        kind: "ranges",
        title: words.ranges,
        under: words.rangesUnder,
        label: words.rangesLabel(rows),
        name: "pools",
        axis: {
          says: words.share,
          from: 0,
          to: roundEnd(Math.max(...rows.map(({ high, value }) => high ?? value ?? 0))),
          per: 100,
        },
        rowsSay: words.method,
        rows,
        lines: [],
      },
    ];
  },
});
