/**
 * `compare-shares` as pictures: differences against 0, ratios against 1, and the chances of the tests.
 *
 * @module views/model
 */
import type { Answers } from "../../../../reasoning/index.ts";
import { methodWords } from "../../../words/index.ts";
import { methodView, roundEnd } from "../method-view.ts";
import type { PictureView } from "../pictures.ts";
import { signedEnds } from "../signed-axis.ts";

const words = methodWords["compare-shares"];
type Answer = Answers["compare-shares"];

export const compareSharesView = methodView<Answer>({
  words,
  pictures: (answer) => [differences(answer), ...ratios(answer), tests(answer)],
});

const rowOf = ({ method, value, low, high }: Answer["differences"][number]) => ({
  name: words.nameOf(method),
  value,
  low,
  high,
});

function differences({ differences: all }: Answer): PictureView {
  const rows = all.map(rowOf);
  return {
    kind: "ranges",
    title: words.differences,
    label: words.label(rows, 100),
    name: "differences",
    axis: { says: words.difference, ...signedEnds(rows.flatMap(({ low, high }) => [low, high])), per: 100 },
    rowsSay: words.method,
    rows,
    lines: [{ at: 0, says: words.none }],
  };
}

function ratios({ ratios: all, oddsRatio }: Answer): readonly PictureView[] {
  const rows = [...all, ...(oddsRatio === null ? [] : [oddsRatio])].map(rowOf);
  if (rows.length === 0) return [];
  return [
    {
      kind: "ranges",
      title: words.ratios,
      label: words.label(rows, 1),
      name: "ratios",
      axis: { says: words.ratio, ...signedEnds([1, ...rows.map(({ high }) => high)]), per: 1 },
      rowsSay: words.method,
      rows,
      lines: [{ at: 1, says: words.none }],
    },
  ];
}

function tests({ tests: all }: Answer): PictureView {
  const most = Math.max(...all.map(({ pValue }) => pValue));
  return {
    kind: "ranges",
    title: words.tests,
    under: words.testsUnder,
    label: words.testsLabel(all),
    name: "tests",
    axis: { says: words.chance, from: 0, to: roundEnd(most), per: 100 },
    rowsSay: words.test,
    rows: all.map(({ test, pValue }) => ({ name: words.nameOf(test), value: pValue, low: null, high: null })),
    lines: [],
  };
}
