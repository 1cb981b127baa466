/**
 * `allocate` as a picture: what to test in each group, against a sample over all.
 *
 * @module views/model
 */
import type { Answers } from "../../../../reasoning/index.ts";
import { methodWords } from "../../../words/index.ts";
import { methodView, niceEnd } from "../method-view.ts";

const words = methodWords.allocate;

export const allocateView = methodView<Answers["allocate"]>({
  words,
  pictures: ({ groups }) => {
    const names = groups.map(({ stratum }) => words.group(stratum));
    const most = Math.max(...groups.flatMap(({ units, representative }) => [units, representative]));
    return [
      {
        kind: "bars",
        title: words.bars,
        label: words.label(groups.map(({ units }, index) => ({ name: names[index] ?? "", units }))),
        name: "to-test",
        classesSay: words.groups,
        classes: names,
        y: { says: words.units, from: 0, to: niceEnd(most), per: 1 },
        series: [
          { name: words.byRisk, values: groups.map(({ units }) => units) },
          { name: words.byShare, values: groups.map(({ representative }) => representative) },
        ],
      },
    ];
  },
});
