/**
 * `none-found` as pictures: the limits side by side, and how often such a sample would hold none.
 *
 * @module views/model
 */
import type { Answers } from "../../../../reasoning/index.ts";
import { methodWords } from "../../../words/index.ts";
import { couldMissPicture } from "../could-miss.ts";
import { methodView, roundEnd, spread } from "../method-view.ts";
import type { PictureView } from "../pictures.ts";

const words = methodWords["none-found"];

export const noneFoundView = methodView<Answers["none-found"]>({
  words,
  more: ({ examined }) => ({ prevalences: spread(0, roundEnd(Math.min(1, 5 / Math.max(1, Number(examined)))), 61) }),
  pictures: (answer) => [limits(answer), couldMissPicture({ bees: answer.oneSided.n ?? 0, points: answer.couldMiss })],
});

function limits({ oneSided, twoSided, approximations }: Answers["none-found"]): PictureView {
  const { logShortcut, ruleOfThree, jeffreys } = approximations;
  const rows = [
    { name: words.rows.oneSided, high: oneSided.high },
    { name: words.rows.twoSided, high: twoSided.high },
    { name: words.rows.jeffreys, high: jeffreys },
    { name: words.rows.logShortcut, high: logShortcut },
    { name: words.rows.ruleOfThree, high: ruleOfThree },
  ];
  const most = Math.max(...rows.map(({ high }) => high));
  // The exact limits are divided by the sensitivity; with a perfect bench the shortcuts lie above them.
  const corrected = oneSided.high > logShortcut;
  return {
    kind: "ranges",
    title: words.limits,
    under: words.limitsUnder(corrected),
    label: words.limitsLabel(rows),
    name: "limits-of-none-found",
    axis: { says: words.infested, from: 0, to: roundEnd(most), per: 100 },
    rowsSay: words.limit,
    rows: rows.map(({ name, high }) => ({ name, value: 0, low: 0, high })),
    lines: [],
  };
}
