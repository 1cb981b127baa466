/**
 * `colonies` as pictures: the ranges over all colonies, and each colony by itself.
 *
 * @module views/model
 */
import type { Answers } from "../../../../reasoning/index.ts";
import type { Estimate } from "../../../../units/index.ts";
import { methodWords } from "../../../words/index.ts";
import { methodView, roundEnd } from "../method-view.ts";
import type { RangesPicture } from "../pictures.ts";

const words = methodWords.colonies;
/** More rows than this are no picture; the figures hold them. */
const mostDrawn = 60;

export const coloniesView = methodView<Answers["colonies"]>({
  words,
  pictures: (answer) => [over(answer), ...(answer.each.length <= mostDrawn ? [each(answer)] : [])],
});

type Row = Pick<Estimate, "value" | "low" | "high"> & { readonly name: string };

const rowOf = ({ value, low, high, method }: Estimate): Row => ({
  name: words.names[method] ?? method,
  value,
  low,
  high,
});

function over({ intervals, fitted, meanColony, none, each: all }: Answers["colonies"]): RangesPicture {
  const exact = none
    ? [
        { ...rowOf(none.colonies), name: words.noneOf.colonies },
        { ...rowOf(none.bees), name: words.noneOf.bees },
      ]
    : [];
  const fits = fitted ? [rowOf(fitted.mean), rowOf(fitted.meanByLogit)] : [];
  const rows = [...exact, ...intervals.map(rowOf), ...fits, ...(meanColony ? [rowOf(meanColony)] : [])];
  // Nothing over all could be said: each colony is drawn in the other picture, its largest end sets this scale.
  const ends = rows.length > 0 ? rows : all.map(rowOf);
  return {
    kind: "ranges",
    title: words.over,
    ...(none ? {} : { under: words.overUnder }),
    label: words.rangesLabel(rows),
    name: "over-colonies",
    axis: axisFor(ends),
    rowsSay: words.range,
    rows,
    lines: [],
  };
}

function each({ each: all, share }: Answers["colonies"]): RangesPicture {
  const rows = all.map((estimate, index) => ({ ...rowOf(estimate), name: words.colony(index + 1) }));
  return {
    kind: "ranges",
    title: words.each,
    under: words.eachUnder,
    label: words.rangesLabel(rows),
    name: "each-colony",
    axis: axisFor(rows),
    rowsSay: words.theColony,
    rows,
    lines: [{ at: share, says: words.all(share) }],
  };
}

/** A scale that shows every end, those beyond 0 and 1 too. */
function axisFor(rows: readonly Row[]): RangesPicture["axis"] {
  const [least, most] = [Math.min(0, ...rows.map(({ low }) => low)), Math.max(...rows.map(({ high }) => high))];
  return { says: words.share, from: least < 0 ? -roundEnd(-least) : 0, to: most > 1 ? most : roundEnd(most), per: 100 };
}
