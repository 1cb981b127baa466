/**
 * The picture of a sequential plan: its two lines, the counts that stop the reading, and a sample's path.
 *
 * @module views/model
 */
import { stopsLabel, stopWords } from "../../../words/index.ts";
import { roundEnd } from "../method-view.ts";
import type { CurvesPicture, Series } from "../pictures.ts";

interface Lines {
  readonly slope: number;
  readonly lowIntercept: number;
  readonly highIntercept: number;
}

interface Look {
  readonly bees: number;
  readonly low: number | null;
  readonly high: number | null;
}

interface Shown {
  readonly lines: Lines;
  readonly looks: readonly Look[];
  readonly plan: { readonly maxBees: number; readonly lowUpTo: number | null };
  readonly path?: readonly { readonly bees: number; readonly positive: number }[];
  readonly stop?: { readonly bees: number; readonly positive: number; readonly says: string } | undefined;
}

export function stopsPicture({ lines, looks, plan, path = [], stop }: Shown): CurvesPicture {
  const end = Math.max(plan.maxBees, path.length);
  const counts = [...looks.flatMap(({ low, high }) => [low ?? 0, high ?? 0]), ...path.map(({ positive }) => positive)];
  const top = wholeEnd(Math.max(...counts) + 1);
  const low = looks.flatMap(({ bees, low: count }) => (count === null ? [] : [[bees, count] as const]));
  const high = looks.flatMap(({ bees, high: count }) => (count === null ? [] : [[bees, count] as const]));
  const walked: Series = {
    name: stopWords.path,
    points: [[0, 0] as const, ...path.map(({ bees, positive }) => [bees, positive] as const)],
    style: "steps",
  };
  const { lowUpTo, maxBees } = plan;
  const last =
    lowUpTo === null
      ? { x: maxBees, y: middleOf(lines, maxBees), says: stopWords.lastBeeOpen }
      : { x: maxBees, y: lowUpTo, says: stopWords.lastBee(lowUpTo) };
  return {
    kind: "curves",
    title: stopWords.stops,
    label: stopsLabel(looks),
    name: "stops",
    x: { says: stopWords.bees, from: 0, to: end, per: 1 },
    y: { says: stopWords.found, from: 0, to: top, per: 1 },
    series: [
      { name: stopWords.low, points: low, style: "steps" },
      { name: stopWords.high, points: high, style: "steps" },
      ...(path.length > 0 ? [walked] : []),
    ],
    areas: areasOf(lines, { end: maxBees, top }),
    marks: stop ? [{ x: stop.bees, y: stop.positive, says: stop.says }] : [last],
  };
}

/** An end of the scale of bees with mites whose steps are whole bees. */
const wholeEnd = (most: number): number => (most <= 4 ? 4 : most > 12 && most <= 15 ? 18 : most);

const middleOf = ({ slope, lowIntercept, highIntercept }: Lines, bees: number): number =>
  Math.max(0, slope * bees + (lowIntercept + highIntercept) / 2);

function areasOf(
  { slope, lowIntercept, highIntercept }: Lines,
  { end, top }: { readonly end: number; readonly top: number },
): NonNullable<CurvesPicture["areas"]> {
  const firstLow = -lowIntercept / slope;
  const topHigh = Math.min(end, (top - highIntercept) / slope);
  return [
    ...(firstLow < end
      ? [
          {
            says: stopWords.belowLine,
            tone: 1,
            edge: [[firstLow, 0, 0] as const, [end, 0, Math.min(top, lowIntercept + slope * end)] as const],
          } as const,
        ]
      : []),
    ...(topHigh > 0
      ? [
          {
            says: stopWords.aboveLine,
            tone: 3,
            edge: [
              [0, Math.min(top, highIntercept), top] as const,
              [topHigh, Math.min(top, highIntercept + slope * topHigh), top] as const,
            ],
          } as const,
        ]
      : []),
  ];
}

/** A round end of the scale of shares that shows twice the high one. */
export const sharesTo = (highPrevalence: unknown): number =>
  roundEnd(Math.min(1, 2 * (typeof highPrevalence === "number" ? highPrevalence : 0.2)));
