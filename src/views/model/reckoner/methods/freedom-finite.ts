/**
 * `freedom-finite` as a picture: what the round would find, by how many are infested.
 *
 * @module views/model
 */
import type { Answers } from "../../../../reasoning/index.ts";
import { methodWords } from "../../../words/index.ts";
import { methodView } from "../method-view.ts";

const words = methodWords["freedom-finite"];

export const freedomFiniteView = methodView<Answers["freedom-finite"]>({
  words,
  pictures: ({ byInfested }) => [
    {
      kind: "curves",
      title: words.curve,
      label: words.label(byInfested),
      name: "found-by-infested",
      x: { says: words.infested, from: 0, to: Math.max(2, byInfested.at(-1)?.infested ?? 2), per: 1 },
      y: { says: words.found, from: 0, to: 1, per: 100 },
      series: [
        {
          name: words.found,
          points: byInfested.map(({ infested, sensitivity }) => [infested, sensitivity] as const),
          style: "full",
        },
      ],
    },
  ],
});
