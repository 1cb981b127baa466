/**
 * `survey` as a picture: what other cut-points would miss and raise.
 *
 * @module views/model
 */
import type { Answers } from "../../../../reasoning/index.ts";
import { methodWords } from "../../../words/index.ts";
import { methodView } from "../method-view.ts";

const words = methodWords.survey;

export const surveyView = methodView<Answers["survey"]>({
  words,
  pictures: ({ examined, callInfestedFrom, byCutPoint }) => {
    const [first, last] = [byCutPoint[0], byCutPoint.at(-1)];
    if (first === undefined || last === undefined || first === last) return [];
    const points = (of: "missed" | "falseAlarm") =>
      byCutPoint.map((each) => [each.callInfestedFrom, each[of]] as const);
    return [
      {
        kind: "curves",
        title: words.cutPoints(examined),
        under: words.cutPointsUnder,
        label: words.cutPointsLabel(byCutPoint),
        name: `cut-points-of-${examined}`,
        x: { says: words.from, from: first.callInfestedFrom, to: last.callInfestedFrom, per: 1 },
        y: { says: words.times, from: 0, to: 1, per: 100 },
        series: [
          { name: words.missed, points: points("missed"), style: "full" },
          { name: words.falseAlarm, points: points("falseAlarm"), style: "dashed" },
        ],
        lines: [{ x: callInfestedFrom, says: words.chosen(callInfestedFrom) }],
      },
    ];
  },
});
