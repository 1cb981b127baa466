/**
 * `margin` as pictures: bees by the share found, and what the number planned would tell.
 *
 * @module views/model
 */
import type { Answers } from "../../../../reasoning/index.ts";
import { methodWords } from "../../../words/index.ts";
import { methodView, niceEnd, roundEnd, spread } from "../method-view.ts";
import type { PictureView } from "../pictures.ts";

const words = methodWords.margin;
const every = 16;

export const marginView = methodView<Answers["margin"]>({
  words,
  more: () => ({ prevalences: spread(0.01, 0.99, 99) }),
  pictures: (answer) => [needed(answer), known(answer)],
});

function needed({ byPrevalence, bees, design }: Answers["margin"]): PictureView {
  const most = Math.max(bees, ...byPrevalence.map((each) => each.bees));
  return {
    kind: "curves",
    title: words.needed,
    under: words.neededUnder,
    label: words.beesLabel(byPrevalence.filter((_, index) => index % every === 0)),
    name: "bees-for-margin",
    x: { says: words.found, from: 0, to: 1, per: 100 },
    y: { says: words.bees, from: 0, to: niceEnd(most), per: 1 },
    series: [
      { name: words.bees, points: byPrevalence.map((each) => [each.prevalence, each.bees] as const), style: "full" },
    ],
    lines: [{ x: design.expectedPrevalence, says: words.planned(bees) }],
  };
}

function known({ byPrevalence, bees, design }: Answers["margin"]): PictureView {
  const most = Math.max(design.margin, ...byPrevalence.map(({ halfWidth }) => halfWidth));
  return {
    kind: "curves",
    title: words.known(bees),
    label: words.halfLabel(byPrevalence.filter((_, index) => index % every === 0)),
    name: `margin-of-${bees}`,
    x: { says: words.found, from: 0, to: 1, per: 100 },
    y: { says: words.halfWidth, from: 0, to: roundEnd(1.1 * most), per: 100 },
    series: [
      {
        name: words.halfWidth,
        points: byPrevalence.map(({ prevalence, halfWidth }) => [prevalence, halfWidth] as const),
        style: "full",
      },
    ],
    lines: [{ y: design.margin, says: words.wanted(design.margin) }],
  };
}
