/**
 * `abundance` as a picture: bees with mites by mites per bee.
 *
 * @module views/model
 */
import type { Answers } from "../../../../reasoning/index.ts";
import { methodWords } from "../../../words/index.ts";
import { methodView, niceEnd, spread } from "../method-view.ts";

const words = methodWords.abundance;
/** As far as the scale goes when the mean is not typed but follows from a share. */
const usualEnd = 5;

export const abundanceView = methodView<Answers["abundance"]>({
  words,
  more: ({ mean }) => {
    const end = typeof mean === "number" && mean > 0 ? endFor(mean) : usualEnd;
    return { means: spread(end / 80, end, 80) };
  },
  pictures: ({ mean, prevalence, k, curve }) => {
    const end = curve.at(-1)?.mean ?? 1;
    const points = (of: (each: (typeof curve)[number]) => number) => [
      [0, 0] as const,
      ...curve.map((each) => [each.mean, of(each)] as const),
    ];
    const random = { name: words.random, points: points((each) => each.prevalenceAtRandom), style: "dashed" } as const;
    const uneven =
      k === null ? [] : [{ name: words.uneven(k), points: points((each) => each.prevalence), style: "full" } as const];
    return [
      {
        kind: "curves",
        title: words.curve,
        ...(k === null ? {} : { under: words.curveUnder }),
        label: words.label(curve.filter((_, index) => index % 10 === 9)),
        name: "abundance",
        x: { says: words.mean, from: 0, to: end, per: 1 },
        y: { says: words.share, from: 0, to: 1, per: 100 },
        series: [...uneven, random],
        lines: mean <= end ? [{ x: mean, says: words.here(prevalence) }] : [],
      },
    ];
  },
});

const endFor = (mean: number): number => niceEnd(3 * mean);
