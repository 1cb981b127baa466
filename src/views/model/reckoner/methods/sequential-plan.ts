/**
 * `sequential-plan` as pictures: its stops, how often it says low, and how many bees it takes.
 *
 * @module views/model
 */
import type { Answers } from "../../../../reasoning/index.ts";
import { methodWords } from "../../../words/index.ts";
import { fewOf, methodView, spread } from "../method-view.ts";
import type { CurvesPicture, PictureView, Series } from "../pictures.ts";
import { sharesTo, stopsPicture } from "./sequential-stops.ts";

type Answer = Answers["sequential-plan"];

const words = methodWords["sequential-plan"];

export const sequentialPlanView = methodView<Answer>({
  words,
  onward: "sequential-reading",
  more: ({ highPrevalence }) => ({
    prevalences: spread(0, sharesTo(highPrevalence), 81),
    exponents: spread(-4, 4, 81),
  }),
  pictures: (answer) => [stopsPicture(answer), ...curvesOf(answer)],
});

function curvesOf(answer: Answer): readonly PictureView[] {
  const { characteristics, wald, plan } = answer;
  const to = sharesTo(plan.highPrevalence);
  const shown = characteristics.filter(({ prevalence }) => prevalence <= to);
  const approximate = wald.filter(({ prevalence }) => prevalence <= to).toSorted((a, b) => a.prevalence - b.prevalence);
  const x = { says: words.prevalence, from: 0, to, per: 100 } as const;
  return [saidLow(answer, { shown, approximate, x }), average(answer, { shown, approximate, x })];
}

interface Shown {
  readonly shown: Answer["characteristics"];
  readonly approximate: Answer["wald"];
  readonly x: CurvesPicture["x"];
}

function saidLow({ plan, alpha, beta, fixed }: Answer, { shown, approximate, x }: Shown): CurvesPicture {
  const byFixed: Series[] =
    fixed === null
      ? []
      : [
          {
            name: words.fixed(fixed.bees),
            points: shown.flatMap(({ prevalence, fixedLow }) =>
              fixedLow === null ? [] : [[prevalence, fixedLow] as const],
            ),
            style: "dotted",
          },
        ];
  return {
    kind: "curves",
    title: words.saidLow,
    under: words.saidLowUnder,
    label: words.lowLabel(fewOf(shown)),
    name: "said-low",
    x,
    y: { says: words.timesLow, from: 0, to: 1, per: 100 },
    series: [
      {
        name: words.exact,
        points: shown.map(({ prevalence, low }) => [prevalence, low] as const),
        style: "full",
      },
      {
        name: words.wald,
        points: approximate.map(({ prevalence, low }) => [prevalence, low] as const),
        style: "dashed",
      },
      ...byFixed,
    ],
    marks: [
      { x: plan.lowPrevalence, y: 1 - alpha, says: words.wrong(alpha) },
      { x: plan.highPrevalence, y: beta, says: words.wrong(beta) },
    ],
  };
}

function average({ atWorst, fixed }: Answer, { shown, approximate, x }: Shown): CurvesPicture {
  const most = Math.max(
    atWorst.averageBees,
    fixed?.bees ?? 0,
    ...shown.map(({ averageBees }) => averageBees),
    ...approximate.map(({ averageBees }) => averageBees),
  );
  return {
    kind: "curves",
    title: words.average,
    under: words.averageUnder,
    label: words.averageLabel(fewOf(shown)),
    name: "average-bees",
    x,
    y: { says: words.averageBees, from: 0, to: Math.ceil(1.1 * most), per: 1 },
    series: [
      {
        name: words.exact,
        points: shown.map(({ prevalence, averageBees }) => [prevalence, averageBees] as const),
        style: "full",
      },
      {
        name: words.wald,
        points: approximate.map(({ prevalence, averageBees }) => [prevalence, averageBees] as const),
        style: "dashed",
      },
    ],
    ...(fixed === null ? {} : { lines: [{ y: fixed.bees, says: words.fixed(fixed.bees) }] }),
  };
}
