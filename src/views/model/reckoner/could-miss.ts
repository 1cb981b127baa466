/**
 * What a number of bees could still miss, as a falling curve: the same picture wherever none found is told.
 *
 * @module views/model
 */
import { methodWords } from "../../words/index.ts";
import { fewOf } from "./method-view.ts";
import type { CurvesPicture } from "./pictures.ts";

const words = methodWords["sample-size"];

export interface CouldMiss {
  readonly bees: number;
  /** Share of samples in which none would be found, by true share, from 0 up. */
  readonly points: readonly { readonly prevalence: number; readonly missed: number }[];
  /** The share that the number was planned for; left out where none was. */
  readonly design?: { readonly prevalence: number; readonly missed: number };
}

/** The curve of what could be missed, over the shares that its points span. */
export function couldMissPicture({ bees, points, design }: CouldMiss): CurvesPicture {
  return {
    kind: "curves",
    title: words.couldMiss,
    under: words.couldMissUnder,
    label: words.label({ bees, points: fewOf(points) }),
    name: `could-miss-${bees}`,
    x: { says: words.infested, from: 0, to: points.at(-1)?.prevalence || 1, per: 100 },
    y: { says: words.missed, from: 0, to: 1, per: 100 },
    series: [
      {
        name: words.missed,
        points: points.map(({ prevalence, missed }) => [prevalence, missed] as const),
        style: "full",
      },
    ],
    ...(design ? { marks: [{ x: design.prevalence, y: design.missed, says: words.atDesign(design) }] } : {}),
  };
}
