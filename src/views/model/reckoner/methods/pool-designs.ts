/**
 * Designs of pools as pictures: pools by size, cost by size, tests by size.
 *
 * @module views/model
 */
import type { Answers } from "../../../../reasoning/index.ts";
import { methodWords } from "../../../words/index.ts";
import { fewOf, methodView, niceEnd, roundEnd } from "../method-view.ts";
import type { PictureView } from "../pictures.ts";

const detectWords = methodWords["pools-to-detect"];
const sizeWords = methodWords["pool-size"];
const retestWords = methodWords["pool-retest"];

/** Whole sizes from one to another, at most sixty of them. */
function sizesBetween(from: number, to: number): readonly number[] {
  const step = Math.max(1, Math.ceil((to - from) / 60));
  return Array.from({ length: Math.floor((to - from) / step) + 1 }, (_, index) => from + index * step);
}

export const poolsToDetectView = methodView<Answers["pools-to-detect"]>({
  words: detectWords,
  more: ({ size }) => ({ sizes: sizesBetween(1, Math.min(1000, Math.max(10, 2 * wholeOr(size, 5)))) }),
  pictures: ({ bySize, pools, design }) => {
    const shown = bySize.filter((each) => each.pools <= 6 * pools);
    const last = shown.at(-1);
    if (last === undefined || shown.length < 2) return [];
    return [
      {
        kind: "curves",
        title: detectWords.needed,
        under: detectWords.neededUnder,
        label: detectWords.neededLabel(fewOf(shown)),
        name: "pools-by-size",
        x: { says: detectWords.size, from: 0, to: niceEnd(last.size), per: 1 },
        y: { says: detectWords.pools, from: 0, to: niceEnd(Math.max(...shown.map((each) => each.pools))), per: 1 },
        series: [
          { name: detectWords.pools, points: shown.map((each) => [each.size, each.pools] as const), style: "full" },
        ],
        marks: [{ x: design.size, y: pools, says: detectWords.planned(pools) }],
      },
    ];
  },
});

const wholeOr = (value: unknown, other: number): number =>
  typeof value === "number" && Number.isInteger(value) && value > 0 ? value : other;

export const poolSizeView = methodView<Answers["pool-size"]>({
  words: sizeWords,
  pictures: (answer) => [...costs(answer), ...reacting(answer)],
});

function costs({ sizes, best }: Answers["pool-size"]): readonly PictureView[] {
  const shown = sizes.filter(({ cost }) => cost <= 3 * best.cost);
  const last = shown.at(-1);
  if (best.cost === 0 || last === undefined || shown.length < 2) return [];
  return [
    {
      kind: "curves",
      title: sizeWords.costs,
      under: sizeWords.costsUnder,
      label: sizeWords.costsLabel(fewOf(shown)),
      name: "cost-by-pool-size",
      x: { says: sizeWords.size, from: 0, to: niceEnd(last.size), per: 1 },
      y: { says: sizeWords.cost, from: 0, to: niceEnd(Math.max(...shown.map(({ cost }) => cost))), per: 1 },
      series: [{ name: sizeWords.cost, points: shown.map(({ size, cost }) => [size, cost] as const), style: "full" }],
      lines: [{ x: best.size, says: sizeWords.least(best) }],
    },
  ];
}

function reacting({ sizes, limit }: Answers["pool-size"]): readonly PictureView[] {
  const last = sizes.at(-1);
  if (last === undefined || sizes.length < 2) return [];
  return [
    {
      kind: "curves",
      title: sizeWords.reacting,
      label: sizeWords.reactsLabel(fewOf(sizes)),
      name: "reacting-by-pool-size",
      x: { says: sizeWords.size, from: 0, to: niceEnd(last.size), per: 1 },
      y: { says: sizeWords.reacts, from: 0, to: roundEnd(Math.min(1, 1.1 * limit)), per: 100 },
      series: [
        { name: sizeWords.reacts, points: sizes.map(({ size, reacts }) => [size, reacts] as const), style: "full" },
      ],
      lines: [{ y: limit, says: sizeWords.limit(limit) }],
    },
  ];
}

export const poolRetestView = methodView<Answers["pool-retest"]>({
  words: retestWords,
  more: ({ largest }) => ({ sizes: sizesBetween(2, Math.min(60, Math.max(3, wholeOr(largest, 60)))) }),
  pictures: ({ bySize, size }) => {
    const last = bySize.at(-1);
    if (last === undefined || bySize.length < 2) return [];
    const most = Math.max(1, ...bySize.map(({ testsPerBee }) => testsPerBee));
    return [
      {
        kind: "curves",
        title: retestWords.tests,
        label: retestWords.testsLabel(fewOf(bySize)),
        name: "tests-by-pool-size",
        x: { says: retestWords.size, from: 0, to: niceEnd(last.size), per: 1 },
        y: { says: retestWords.per100, from: 0, to: niceEnd(most), per: 100 },
        series: [
          {
            name: retestWords.per100,
            points: bySize.map((each) => [each.size, each.testsPerBee] as const),
            style: "full",
          },
        ],
        lines: [
          { y: 1, says: retestWords.single },
          ...(size <= last.size ? [{ x: size, says: retestWords.best(size) }] : []),
        ],
      },
    ];
  },
});
