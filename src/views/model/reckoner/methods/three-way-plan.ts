/**
 * `three-way-plan` as pictures: the counts at which each plan speaks, how often each answer is given, and the bees it takes.
 *
 * @module views/model
 */
import type { Answers } from "../../../../reasoning/index.ts";
import { methodWords } from "../../../words/index.ts";
import { methodView, roundEnd, spread } from "../method-view.ts";
import type { CurvesPicture, Series } from "../pictures.ts";

type Answer = Answers["three-way-plan"];

const words = methodWords["three-way-plan"];

export const threeWayPlanView = methodView<Answer>({
  words,
  more: ({ severeShare }) => ({
    prevalences: spread(0, endFor(typeof severeShare === "number" ? severeShare : 0.4), 81),
  }),
  pictures: (answer) => [stops(answer), answers(answer), average(answer)],
});

const endFor = (severeShare: number): number => roundEnd(Math.min(1, 1.25 * severeShare));

function stops({ looks }: Answer): CurvesPicture {
  const end = looks.at(-1)?.bees ?? 1;
  const line = (of: "light" | "notLight" | "notSevere" | "severe", style: Series["style"]): Series => ({
    name: words[of],
    points: looks.flatMap((look) => (look[of] === null ? [] : [[look.bees, look[of]] as const])),
    style,
  });
  const most = Math.max(2, ...looks.flatMap(({ notLight, severe }) => [notLight ?? 0, severe ?? 0]));
  return {
    kind: "curves",
    title: words.stops,
    under: words.stopsUnder,
    label: words.stopsLabel(looks),
    name: "stops",
    x: { says: words.bees, from: 0, to: end, per: 1 },
    y: { says: words.found, from: 0, to: most + 1, per: 1 },
    series: [line("light", "steps"), line("notLight", "steps"), line("notSevere", "steps"), line("severe", "steps")],
  };
}

function answers({ characteristics, atShares }: Answer): CurvesPicture {
  const styles = { light: "full", moderate: "dashed", severe: "dotted", undecided: "full" } as const;
  const kinds = ["light", "moderate", "severe", "undecided"] as const;
  const given = kinds.filter((kind) => kind !== "undecided" || characteristics.some(({ undecided }) => undecided > 0));
  return {
    kind: "curves",
    title: words.answers,
    under: words.answersUnder,
    label: words.answersLabel(atShares),
    name: "answers",
    x: shares(characteristics),
    y: { says: words.timesSaid, from: 0, to: 1, per: 100 },
    series: given.map((kind) => ({
      name: words.names[kind],
      points: characteristics.map((row) => [row.prevalence, row[kind]] as const),
      style: styles[kind],
    })),
  };
}

function average({ characteristics, atShares }: Answer): CurvesPicture {
  const most = Math.max(...characteristics.map(({ averageBees }) => averageBees), 1);
  return {
    kind: "curves",
    title: words.average,
    under: words.averageUnder,
    label: words.averageLabel(atShares),
    name: "average-bees",
    x: shares(characteristics),
    y: { says: words.averageBees, from: 0, to: Math.ceil(1.1 * most), per: 1 },
    series: [
      {
        name: words.averageBees,
        points: characteristics.map(({ prevalence, averageBees }) => [prevalence, averageBees] as const),
        style: "full",
      },
    ],
  };
}

const shares = (rows: Answer["characteristics"]): CurvesPicture["x"] => ({
  says: words.prevalence,
  from: 0,
  to: roundEnd(Math.max(0.01, ...rows.map(({ prevalence }) => prevalence))),
  per: 100,
});
