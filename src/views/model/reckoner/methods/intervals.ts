/**
 * `intervals` as pictures: the range by each method, and how often each would hold the truth.
 *
 * @module views/model
 */
import type { Answers } from "../../../../reasoning/index.ts";
import { methodWords } from "../../../words/index.ts";
import { methodView, roundEnd, spread } from "../method-view.ts";
import type { PictureView } from "../pictures.ts";

const words = methodWords.intervals;
const nameOf = (method: string): string => words.names[method] ?? method;

export const intervalsView = methodView<Answers["intervals"]>({
  words,
  more: () => ({ coverageAt: spread(0.0025, 0.4975, 100) }),
  pictures: (answer) => [ranges(answer), ...(answer.coverage.length > 0 ? [coverage(answer)] : [])],
});

function ranges({ intervals, against }: Answers["intervals"]): PictureView {
  const rows = intervals.map(({ method, value, low, high }) => ({ name: nameOf(method), value, low, high }));
  const most = Math.max(...rows.map(({ high }) => high), against?.line ?? 0);
  return {
    kind: "ranges",
    title: words.ranges,
    label: words.rangesLabel(rows),
    name: "ranges",
    axis: { says: words.share, from: 0, to: roundEnd(most), per: 100 },
    rowsSay: words.method,
    rows,
    lines: against === null ? [] : [{ at: against.line, says: words.line(against.line) }],
  };
}

/** The methods whose promise differs most; all of them stand in the table of figures. */
const drawn = ["clopper-pearson", "blaker", "wilson", "jeffreys"];

function coverage({ coverage: all, intervals }: Answers["intervals"]): PictureView {
  const level = intervals[0]?.level ?? 0.95;
  const styles = ["full", "dashed", "dotted", "full"] as const;
  const series = drawn.map((method, index) => ({
    name: nameOf(method),
    style: styles[index] ?? "full",
    points: all.filter((each) => each.method === method).map(({ truth, holds }) => [truth, holds] as const),
  }));
  const lowest = series.map(({ name, points }) => ({ name, holds: Math.min(...points.map(([, holds]) => holds)) }));
  const floor = Math.min(...lowest.map(({ holds }) => holds));
  const last = Math.max(...all.map(({ truth }) => truth));
  return {
    kind: "curves",
    title: words.coverage,
    under: words.coverageUnder,
    label: words.coverageLabel(lowest),
    name: "coverage",
    x: { says: words.truth, from: 0, to: roundEnd(last), per: 100 },
    y: { says: words.holds, from: Math.max(0, Math.floor(20 * floor) / 20), to: 1, per: 100 },
    series,
    lines: [{ y: level, says: words.wanted(level) }],
  };
}
