/**
 * `smooth-rates` as pictures: rates found against smoothed, and cases against cases expected.
 *
 * @module views/model
 */
import type { Answers } from "../../../../reasoning/index.ts";
import { methodWords } from "../../../words/index.ts";
import { methodView, niceEnd } from "../method-view.ts";
import type { PictureView } from "../pictures.ts";

const words = methodWords["smooth-rates"];
/** More areas than this stand too close for bars; they are put in the order of their rates. */
const mostBars = 16;

type Answer = Answers["smooth-rates"];
type Areas = Answer["areas"];

export const smoothRatesView = methodView<Answer>({
  words,
  pictures: (answer) => [
    answer.areas.length <= mostBars ? bars(answer) : ranked(answer),
    ...(answer.poissonGamma !== null && answer.areas.length <= mostBars ? [risks(answer)] : []),
  ],
});

/** What is drawn of every area, by name. */
function drawnOf(areas: Areas): readonly (readonly [string, (each: Areas[number]) => number | null])[] {
  const local = areas.some((each) => each.localByFocalMean !== null);
  return [
    [words.found, (each) => each.rate],
    [words.global, (each) => each.global],
    ...(local ? [[words.local, (each: Areas[number]) => each.localByFocalMean] as const] : []),
  ];
}

function bars({ areas }: Answer): PictureView {
  const drawn = drawnOf(areas);
  return {
    kind: "bars",
    title: words.rates,
    under: words.ratesUnder,
    label: words.label(areas),
    name: "rates",
    classesSay: words.area,
    classes: areas.map(({ area }) => String(area)),
    y: {
      says: words.cases,
      from: 0,
      to: endOf(
        areas,
        drawn.map(([, of]) => of),
      ),
      per: 100,
    },
    series: drawn.map(([name, of]) => ({ name, values: areas.map(of) })),
  };
}

function ranked({ areas: inList, mean }: Answer): PictureView {
  const areas = [...inList].sort((a, b) => a.rate - b.rate);
  const drawn = drawnOf(areas);
  return {
    kind: "curves",
    title: words.ranked,
    under: words.ratesUnder,
    label: words.label([...areas.slice(0, 3), ...areas.slice(-3)]),
    name: "rates",
    x: { says: words.place, from: 0, to: areas.length, per: 1 },
    y: {
      says: words.cases,
      from: 0,
      to: endOf(
        areas,
        drawn.map(([, of]) => of),
      ),
      per: 100,
    },
    series: drawn.map(([name, of], index) => ({
      name,
      points: areas.flatMap((each, place) => {
        const value = of(each);
        return value === null ? [] : [[place + 1, value] as const];
      }),
      style: index === 0 ? "full" : "points",
    })),
    lines: [{ y: mean, says: words.mean(mean) }],
  };
}

function risks({ areas }: Answer): PictureView {
  const drawn: ReturnType<typeof drawnOf> = [
    [words.found, (each) => each.relativeRisk],
    [words.byLikelihood, (each) => each.relativeRiskByLikelihood],
    [words.byMoments, (each) => each.relativeRiskByMoments],
  ];
  const kept = drawn.filter(([, of]) => areas.some((each) => of(each) !== null));
  return {
    kind: "bars",
    title: words.risks,
    under: words.risksUnder,
    label: words.risksLabel(areas),
    name: "relative-risks",
    classesSay: words.area,
    classes: areas.map(({ area }) => String(area)),
    y: {
      says: words.times,
      from: 0,
      to: endOf(
        areas,
        kept.map(([, of]) => of),
      ),
      per: 1,
    },
    series: kept.map(([name, of]) => ({ name, values: areas.map(of) })),
  };
}

const endOf = (areas: Areas, of: readonly ((each: Areas[number]) => number | null)[]): number =>
  niceEnd(Math.max(...areas.flatMap((each) => of.map((value) => value(each) ?? 0))));
