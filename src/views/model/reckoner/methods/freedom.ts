/**
 * `freedom` as a picture: the chance of not infested, round by round.
 *
 * @module views/model
 */
import type { Answers } from "../../../../reasoning/index.ts";
import { methodWords } from "../../../words/index.ts";
import { methodView } from "../method-view.ts";

const words = methodWords.freedom;

export const freedomView = methodView<Answers["freedom"]>({
  words,
  pictures: ({ rounds, target }) => [
    {
      kind: "curves",
      title: words.curve,
      under: words.curveUnder,
      label: words.label(rounds),
      name: "free-by-round",
      x: { says: words.round, from: 0, to: Math.max(2, rounds.length), per: 1, isWhole: true },
      y: { says: words.free, from: 0, to: 1, per: 100 },
      series: [
        { name: words.after, points: rounds.map(({ round, after }) => [round, after] as const), style: "full" },
        { name: words.before, points: rounds.map(({ round, before }) => [round, before] as const), style: "dashed" },
        {
          name: words.target(target),
          points: rounds.map(({ round }) => [round, target] as const),
          style: "dotted",
        },
      ],
    },
  ],
});
