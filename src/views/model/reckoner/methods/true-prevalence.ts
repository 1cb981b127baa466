/**
 * The true prevalence as pictures: ranges by method beside the share called positive; what is believed as a curve.
 *
 * @module views/model
 */
import type { Answers } from "../../../../reasoning/index.ts";
import { methodWords } from "../../../words/index.ts";
import { methodView, roundEnd, spread } from "../method-view.ts";
import type { PictureView } from "../pictures.ts";

const words = methodWords["true-prevalence"];
const beliefWords = methodWords["true-prevalence-belief"];

export const truePrevalenceView = methodView<Answers["true-prevalence"]>({
  words,
  pictures: (answer) => [ranges(answer)],
});

export const truePrevalenceTrialsView = methodView<Answers["true-prevalence-trials"]>({
  words: methodWords["true-prevalence-trials"],
  pictures: (answer) => [ranges(answer)],
});

type Corrected = Pick<Answers["true-prevalence"], "apparent" | "estimates">;

function ranges({ apparent, estimates }: Corrected): PictureView {
  const found = estimates.map(({ method, value, low, high }) => ({
    name: words.names[method] ?? method,
    value,
    low,
    high,
  }));
  const rows = [...found, { name: words.asFound, value: apparent, low: null, high: null }];
  return {
    kind: "ranges",
    title: words.ranges,
    label: words.rangesLabel(rows),
    name: "true-prevalence",
    axis: {
      says: words.share,
      from: 0,
      to: roundEnd(Math.max(apparent, ...found.map(({ high }) => high))),
      per: 100,
    },
    rowsSay: words.method,
    rows,
    lines: [],
  };
}

export const truePrevalenceBeliefView = methodView<Answers["true-prevalence-belief"]>({
  words: beliefWords,
  more: ({ positive, examined }) => ({ lines: spread(0, endFor(Number(positive), Number(examined)), 61) }),
  pictures: (answer) => [believed(answer)],
});

/** Wide enough for most of what is believed after so many of so many. */
const endFor = (positive: number, examined: number): number =>
  examined > 0 && positive <= examined ? roundEnd(Math.min(1, (2 * (positive + 3)) / examined)) : 1;

function believed({ above, aboveLine, estimate }: Answers["true-prevalence-belief"]): PictureView {
  const to = above.at(-1)?.line || 1;
  return {
    kind: "curves",
    title: beliefWords.curve,
    under: beliefWords.curveUnder,
    label: beliefWords.curveLabel(above.filter((_, index) => index % 10 === 0)),
    name: "true-prevalence-belief",
    x: { says: beliefWords.line, from: 0, to, per: 100 },
    y: { says: beliefWords.chance, from: 0, to: 1, per: 100 },
    series: [
      { name: beliefWords.chance, points: above.map(({ line, chance }) => [line, chance] as const), style: "full" },
    ],
    marks:
      aboveLine === null || aboveLine.line > to
        ? []
        : [{ x: aboveLine.line, y: aboveLine.chance, says: beliefWords.ends(aboveLine.chance) }],
    lines: estimate.value <= to ? [{ x: estimate.value, says: beliefWords.mean }] : [],
  };
}
