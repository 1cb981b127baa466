/**
 * `two-stage` as pictures: cost, and colonies, by bees from each colony.
 *
 * @module views/model
 */
import type { Answers } from "../../../../reasoning/index.ts";
import { methodWords } from "../../../words/index.ts";
import { fewOf, methodView, niceEnd } from "../method-view.ts";
import type { PictureView } from "../pictures.ts";

const words = methodWords["two-stage"];
type Answer = Answers["two-stage"];

export const twoStageView = methodView<Answer>({
  words,
  pictures: (answer) => [...costs(answer), ...needed(answer)],
});

function costs({ byBees, cheapest }: Answer): readonly PictureView[] {
  if (cheapest === null) return [];
  const rows = byBees.flatMap(({ beesPerColony, cost }) => (cost === null ? [] : [{ beesPerColony, cost }]));
  const shown = rows.filter(({ cost }) => cost <= 2 * cheapest.cost);
  const last = shown.at(-1)?.beesPerColony ?? cheapest.beesPerColony;
  if (cheapest.cost === 0 || shown.length < 2) return [];
  return [
    {
      kind: "curves",
      title: words.costs,
      under: words.costsUnder,
      label: words.costsLabel(fewOf(shown)),
      name: "cost-by-bees",
      x: { says: words.bees, from: 0, to: niceEnd(last), per: 1 },
      y: { says: words.cost, from: 0, to: niceEnd(2 * cheapest.cost), per: 1 },
      series: [
        { name: words.cost, points: shown.map((each) => [each.beesPerColony, each.cost] as const), style: "full" },
      ],
      lines: [{ x: cheapest.beesPerColony, says: words.least(cheapest) }],
    },
  ];
}

function needed({ byBees, beesPerColony, colonies }: Answer): readonly PictureView[] {
  const shown = byBees.filter((each) => each.colonies <= 5 * colonies);
  const last = shown.at(-1);
  if (last === undefined || shown.length < 2) return [];
  return [
    {
      kind: "curves",
      title: words.needed,
      label: words.neededLabel(fewOf(shown)),
      name: "colonies-by-bees",
      x: { says: words.bees, from: 0, to: niceEnd(last.beesPerColony), per: 1 },
      y: { says: words.colonies, from: 0, to: niceEnd(Math.max(...shown.map((each) => each.colonies))), per: 1 },
      series: [
        {
          name: words.colonies,
          points: shown.map((each) => [each.beesPerColony, each.colonies] as const),
          style: "full",
        },
      ],
      marks: [{ x: beesPerColony, y: colonies, says: words.taken(colonies) }],
    },
  ];
}
