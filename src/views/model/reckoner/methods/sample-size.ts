/**
 * `sample-size` as pictures: what so many bees could still miss.
 *
 * @module views/model
 */
import type { Answers } from "../../../../reasoning/index.ts";
import { methodWords } from "../../../words/index.ts";
import { methodView, roundEnd, spread } from "../method-view.ts";

const words = methodWords["sample-size"];

export const sampleSizeView = methodView<Answers["sample-size"]>({
  words,
  more: ({ designPrevalence }) => ({
    prevalences: spread(0, endFor(typeof designPrevalence === "number" ? designPrevalence : 0.05), 61),
  }),
  pictures: ({ bees, couldMiss, design }) => {
    const points = couldMiss.map(({ prevalence, missed }) => [prevalence, missed] as const);
    const to = endFor(design.designPrevalence);
    const near = couldMiss.filter((_, index) => index % 10 === 0);
    const missed = 1 - (couldMiss.find(({ prevalence }) => prevalence >= design.designPrevalence - 1e-12)?.missed ?? 0);
    return [
      {
        kind: "curves",
        title: words.couldMiss,
        under: words.couldMissUnder,
        label: words.label({ bees, points: near }),
        name: `could-miss-${bees}`,
        x: { says: words.infested, from: 0, to, per: 100 },
        y: { says: words.missed, from: 0, to: 1, per: 100 },
        series: [{ name: words.missed, points, style: "full" }],
        marks: [{ x: design.designPrevalence, y: 1 - missed, says: words.atDesign({ missed: 1 - missed }) }],
      },
    ];
  },
});

const endFor = (designPrevalence: number): number => roundEnd(Math.min(1, 3 * designPrevalence));
