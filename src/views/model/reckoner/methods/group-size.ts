/**
 * `group-size` as a picture: the exact power of groups around the size that is needed.
 *
 * @module views/model
 */
import type { Answers } from "../../../../reasoning/index.ts";
import { methodWords } from "../../../words/index.ts";
import { methodView } from "../method-view.ts";
import { signedEnds } from "../signed-axis.ts";

const words = methodWords["group-size"];

export const groupSizeView = methodView<Answers["group-size"]>({
  words,
  pictures: ({ power, perGroupCorrected, wanted, coloniesPerGroup }) => {
    // The sums are for bees that fall alone; of whole colonies they would promise too much.
    if (power.length < 2 || coloniesPerGroup !== null) return [];
    const needed = power.find(({ perGroup }) => perGroup === perGroupCorrected);
    return [
      {
        kind: "curves",
        title: words.power,
        under: words.powerUnder,
        label: words.label(power),
        name: "power",
        x: { says: words.size, ...signedEnds(power.map(({ perGroup }) => perGroup)), per: 1 },
        y: { says: words.shown, from: 0, to: 1, per: 100 },
        series: [
          { name: words.fisher, style: "full", points: power.map(({ perGroup, fisher }) => [perGroup, fisher]) },
        ],
        marks: needed ? [{ x: needed.perGroup, y: needed.fisher, says: words.needed(needed.perGroup) }] : [],
        lines: [{ y: wanted.power, says: words.wanted(wanted.power) }],
      },
    ];
  },
});
