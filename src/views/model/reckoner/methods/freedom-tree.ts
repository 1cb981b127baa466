/**
 * `freedom-tree` as a picture: what each group and all together would find.
 *
 * @module views/model
 */
import type { Answers } from "../../../../reasoning/index.ts";
import { methodWords } from "../../../words/index.ts";
import { methodView } from "../method-view.ts";

const words = methodWords["freedom-tree"];

export const freedomTreeView = methodView<Answers["freedom-tree"]>({
  words,
  pictures: ({ groups, sensitivity }) => {
    const rows = [
      ...groups.map((each) => ({ name: words.group(each.stratum), sensitivity: each.sensitivity })),
      { name: words.all, sensitivity },
    ];
    return [
      {
        kind: "bars",
        title: words.bars,
        under: words.barsUnder,
        label: words.label(rows),
        name: "found-by-group",
        classesSay: words.groups,
        classes: rows.map(({ name }) => name),
        y: { says: words.found, from: 0, to: 1, per: 100 },
        series: [{ name: words.found, values: rows.map((each) => each.sensitivity) }],
      },
    ];
  },
});
