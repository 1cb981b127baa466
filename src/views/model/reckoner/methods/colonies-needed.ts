/**
 * `colonies-needed` as a picture: colonies by the bees taken from each.
 *
 * @module views/model
 */
import type { Answers } from "../../../../reasoning/index.ts";
import { methodWords } from "../../../words/index.ts";
import { methodView } from "../method-view.ts";

const words = methodWords["colonies-needed"];

export const coloniesNeededView = methodView<Answers["colonies-needed"]>({
  words,
  more: ({ beesPerColony }) => ({ otherBees: beesUpTo(3 * (typeof beesPerColony === "number" ? beesPerColony : 20)) }),
  pictures: ({ colonies, bees, others }) => {
    const least = others[0];
    if (least === undefined) return [];
    const from = bees / colonies;
    return [
      {
        kind: "curves",
        title: words.curve,
        under: words.curveUnder,
        label: words.label([{ beesPerColony: from, colonies }, ...others.filter((_, index) => index % 12 === 0)]),
        name: "colonies-needed",
        x: { says: words.beesFromEach, from: 0, to: others.at(-1)?.beesPerColony ?? 1, per: 1 },
        y: {
          says: words.colonies,
          from: 0,
          to: Math.max(colonies, ...shown(others).map((each) => each.colonies)),
          per: 1,
        },
        series: [
          {
            name: words.colonies,
            points: shown(others).map((each) => [each.beesPerColony, each.colonies] as const),
            style: "full",
          },
        ],
        marks: [{ x: from, y: colonies, says: words.here(colonies) }],
      },
    ];
  },
});

/** One bee from each asks for so many colonies that the rest of the curve would lie flat. */
const shown = <T>(others: readonly T[]): readonly T[] => (others.length > 10 ? others.slice(2) : others);

/** Whole numbers up to a number of bees, at most 120 of them, the last one in. */
function beesUpTo(most: number): readonly number[] {
  const step = Math.max(1, Math.ceil(most / 120));
  return Array.from({ length: Math.floor(most / step) }, (_, index) => (index + 1) * step);
}
