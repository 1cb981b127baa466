/**
 * `value-of-knowing` as a picture: the expected worth of each choice, and with the state known.
 *
 * @module views/model
 */
import type { Answers } from "../../../../reasoning/index.ts";
import { methodWords } from "../../../words/index.ts";
import { methodView } from "../method-view.ts";
import { signedEnds } from "../signed-axis.ts";

const words = methodWords["value-of-knowing"];

export const valueOfKnowingView = methodView<Answers["value-of-knowing"]>({
  words,
  pictures: ({ choices, knowing }) => {
    const values = [...choices.map(({ expected }) => expected), knowing];
    return [
      {
        kind: "bars",
        title: words.picture,
        label: words.label(choices, knowing),
        name: "expected-worth",
        classesSay: words.choice,
        classes: [...choices.map(({ choice }) => words.name(choice)), words.knowing],
        y: { says: words.worth, ...signedEnds(values), per: 1 },
        series: [{ name: words.worth, values }],
      },
    ];
  },
});
