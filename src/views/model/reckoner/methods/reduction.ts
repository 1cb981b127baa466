/**
 * `reduction` as a picture: every form on one scale, against no effect.
 *
 * @module views/model
 */
import type { Answers } from "../../../../reasoning/index.ts";
import { methodWords } from "../../../words/index.ts";
import { methodView } from "../method-view.ts";
import { signedEnds } from "../signed-axis.ts";

const words = methodWords.reduction;

export const reductionView = methodView<Answers["reduction"]>({
  words,
  pictures: ({ reduction, others, withoutLimits, apparentFall }) => {
    if (reduction === null) return [];
    const rows = [
      ...[reduction, ...others].map(({ method, value, low, high }) => ({
        name: words.nameOf(method),
        value,
        low,
        high,
      })),
      ...withoutLimits.map(({ method, value }) => ({ name: words.nameOf(method), value, low: null, high: null })),
      ...(apparentFall === null ? [] : [{ ...limitsOf(apparentFall), name: words.alone }]),
    ];
    return [
      {
        kind: "ranges",
        title: words.forms,
        under: words.formsUnder,
        label: words.label(rows),
        name: "reduction",
        axis: {
          says: words.axis,
          ...signedEnds(rows.flatMap(({ value, low, high }) => [value, low ?? 0, high ?? 0])),
          per: 100,
        },
        rowsSay: words.form,
        rows,
        lines: [{ at: 0, says: words.noEffect }],
      },
    ];
  },
});

const limitsOf = ({ value, low, high }: { readonly value: number; readonly low: number; readonly high: number }) => ({
  value,
  low,
  high,
});
