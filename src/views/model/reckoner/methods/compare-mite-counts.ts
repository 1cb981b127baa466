/**
 * `compare-mite-counts` as pictures: mites per bee by group, and how many times as many.
 *
 * @module views/model
 */
import type { Answers } from "../../../../reasoning/index.ts";
import { methodWords } from "../../../words/index.ts";
import { methodView, niceEnd } from "../method-view.ts";
import type { PictureView } from "../pictures.ts";

const words = methodWords["compare-mite-counts"];

export const compareMiteCountsView = methodView<Answers["compare-mite-counts"]>({
  words,
  pictures: (answer) => [means(answer), ...(answer.ratios.length > 0 ? [ratios(answer)] : [])],
});

function means({ groups }: Answers["compare-mite-counts"]): PictureView {
  const rows = groups.map(({ group, mean, low, high }) => ({ name: words.group(group), value: mean, low, high }));
  return {
    kind: "ranges",
    title: words.means,
    label: words.label(rows),
    name: "mites-per-bee",
    axis: { says: words.perBee, from: 0, to: niceEnd(Math.max(...rows.map((row) => row.high ?? row.value))), per: 1 },
    rowsSay: words.theGroup,
    rows,
    lines: [],
  };
}

function ratios({ ratios: all, against }: Answers["compare-mite-counts"]): PictureView {
  const rows = all.map(({ group, value, low, high }) => ({ name: words.group(group), value, low, high }));
  return {
    kind: "ranges",
    title: words.ratios(against),
    label: words.label(rows),
    name: "times-as-many",
    axis: { says: words.times, from: 0, to: niceEnd(Math.max(1.5, ...rows.map(({ high }) => high))), per: 1 },
    rowsSay: words.theGroup,
    rows,
    lines: [{ at: 1, says: words.asMany }],
  };
}
