/**
 * `thresholds` as a picture: what each choice is worth at every chance.
 *
 * @module views/model
 */
import type { Answers } from "../../../../reasoning/index.ts";
import { methodWords } from "../../../words/index.ts";
import { methodView, spread } from "../method-view.ts";
import { signedEnds } from "../signed-axis.ts";

const words = methodWords.thresholds;

export const thresholdsView = methodView<Answers["thresholds"]>({
  words,
  more: () => ({ chances: spread(0, 1, 21) }),
  pictures: (answer) => {
    const { worths, worthTesting, testing, testTreatment, treatment, here } = answer;
    if (worths.length === 0) return [];
    const series = (["wait", "testFirst", "actNow"] as const).map((choice, index) => ({
      name: words.choice[choice],
      style: (["dotted", "full", "dashed"] as const)[index] ?? "full",
      points: worths.map((each) => [each.chance, each[choice]] as const),
    }));
    const values = series.flatMap(({ points }) => points.map(([, value]) => value));
    const lines = worthTesting
      ? [
          { x: testing, says: words.testFrom(testing) },
          ...(testTreatment < 1 ? [{ x: testTreatment, says: words.treatFrom(testTreatment) }] : []),
        ]
      : [{ x: treatment, says: words.treatFrom(treatment) }];
    const best = here === null ? 0 : Math.max(here.wait, here.testFirst, here.actNow);
    return [
      {
        kind: "curves",
        title: words.picture,
        under: words.pictureUnder,
        label: words.label(answer),
        name: "worths",
        x: { says: words.chance, from: 0, to: 1, per: 100 },
        y: { says: words.worth, ...signedEnds(values), per: 1 },
        series,
        lines,
        marks: here === null ? [] : [{ x: here.chance, y: best, says: words.here(here.chance) }],
      },
    ];
  },
});
