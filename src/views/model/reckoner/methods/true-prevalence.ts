/**
 * The true prevalence as pictures: ranges by method beside the share called positive; what is believed as a curve.
 *
 * @module views/model
 */
import type { Answers } from "../../../../reasoning/index.ts";
import { methodWords } from "../../../words/index.ts";
import { methodView, type Question, roundEnd, spread } from "../method-view.ts";
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
  more: (question) => ({ lines: spread(0, endFor(question), 61) }),
  pictures: (answer) => [believed(answer)],
});

/** Wide enough for most of what is believed after so many of so many, when the test finds so many. */
function endFor({ positive, examined, sensitivity, sensitivityPrior }: Question): number {
  const prior = (sensitivityPrior ?? {}) as { readonly a?: number; readonly b?: number };
  const finds = typeof sensitivity === "number" ? sensitivity : (prior.a ?? 1) / ((prior.a ?? 1) + (prior.b ?? 0));
  const end = (1.5 * (Number(positive) + 3)) / Number(examined) / finds;
  return Number.isFinite(end) && end > 0 ? roundEnd(Math.min(1, end)) : 1;
}

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
    lines: aboveLine === null && estimate.value <= to ? [{ x: estimate.value, says: beliefWords.mean }] : [],
  };
}
