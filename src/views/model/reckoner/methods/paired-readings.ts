/**
 * `paired-readings` as a picture: the split of the bees read differently, against one half.
 *
 * @module views/model
 */
import type { Answers } from "../../../../reasoning/index.ts";
import { methodWords } from "../../../words/index.ts";
import { methodView } from "../method-view.ts";

const words = methodWords["paired-readings"];

export const pairedReadingsView = methodView<Answers["paired-readings"]>({
  words,
  pictures: ({ firstOfDiffering: { value, low, high } }) => [
    {
      kind: "ranges",
      title: words.split,
      label: words.label({ value, low, high }),
      name: "split",
      axis: { says: words.axis, from: 0, to: 1, per: 100 },
      rowsSay: words.rows,
      rows: [{ name: words.row, value, low, high }],
      lines: [{ at: 0.5, says: words.half }],
    },
  ],
});
