/**
 * `network` as pictures: each cause before and after, and the signs by what they would tell.
 *
 * @module views/model
 */
import type { Answers } from "../../../../reasoning/index.ts";
import { methodWords } from "../../../words/index.ts";
import { methodView, roundEnd } from "../method-view.ts";
import type { PictureView } from "../pictures.ts";
import { signedEnds } from "../signed-axis.ts";

const words = methodWords.network;
type Answer = Answers["network"];

export const networkView = methodView<Answer>({
  words,
  pictures: (answer) => [causes(answer), ...next(answer)],
});

function causes({ causes: all }: Answer): PictureView {
  return {
    kind: "bars",
    title: words.picture,
    label: words.label(all),
    name: "causes",
    classesSay: words.cause,
    classes: all.map(({ cause }) => words.name(cause)),
    y: {
      says: words.chance,
      from: 0,
      to: roundEnd(Math.max(...all.flatMap(({ before, after }) => [before, after]))),
      per: 100,
    },
    series: [
      { name: words.before, values: all.map(({ before }) => before) },
      { name: words.after, values: all.map(({ after }) => after) },
    ],
  };
}

function next({ next: all }: Answer): readonly PictureView[] {
  // What tells nothing may come out a hair below 0 by rounding.
  const values = all.map(({ bits }) => Math.max(0, bits));
  if (values.length === 0) return [];
  return [
    {
      kind: "bars",
      title: words.nextPicture,
      under: words.nextUnder,
      label: words.nextLabel(all),
      name: "next-sign",
      classesSay: words.sign,
      classes: all.map(({ sign }) => words.name(sign)),
      y: { says: words.bits, ...signedEnds(values), per: 1 },
      series: [{ name: words.bits, values }],
    },
  ];
}
