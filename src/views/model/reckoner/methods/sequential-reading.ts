/**
 * `sequential-reading` as pictures: the sample's path, the ranges, and how often each would hold the truth.
 *
 * @module views/model
 */
import type { Answers } from "../../../../reasoning/index.ts";
import { methodWords } from "../../../words/index.ts";
import { methodView, roundEnd, spread } from "../method-view.ts";
import type { PictureView } from "../pictures.ts";
import { sharesTo, stopsPicture } from "./sequential-stops.ts";

type Answer = Answers["sequential-reading"];

const words = methodWords["sequential-reading"];

export const sequentialReadingView = methodView<Answer>({
  words,
  more: ({ highPrevalence }) => ({
    coverageAt: spread(0.005, sharesTo(highPrevalence), 80),
  }),
  pictures: (answer) => [stops(answer), ...ranges(answer), ...(answer.coverage.length > 1 ? [coverage(answer)] : [])],
});

function stops(answer: Answer): PictureView {
  const { says, examined, positive } = answer;
  return stopsPicture({
    ...answer,
    stop: says === "read-on" ? undefined : { bees: examined, positive, says: words.stoppedAt({ positive, examined }) },
  });
}

function ranges({ estimate, naive, allBees, allBeesHold }: Answer): readonly PictureView[] {
  const rows = [
    { name: words.knows, range: estimate },
    { name: words.forgets, range: naive },
    { name: words.allBees(allBeesHold), range: allBees },
  ].flatMap(({ name, range }) => (range === null ? [] : [{ name, ...range }]));
  if (rows.length === 0) return [];
  const most = Math.max(...rows.map(({ high }) => high));
  return [
    {
      kind: "ranges",
      title: words.ranges,
      label: words.rangesLabel(rows),
      name: "ranges",
      axis: { says: words.share, from: 0, to: roundEnd(most), per: 100 },
      rowsSay: words.method,
      rows: rows.map(({ name, value, low, high }) => ({ name, value, low, high })),
      lines: [],
    },
  ];
}

function coverage({ coverage: all, level: wanted }: Answer): PictureView {
  const floor = Math.min(...all.flatMap(({ stageWise, naive }) => [stageWise, naive]));
  return {
    kind: "curves",
    title: words.coverage,
    under: words.coverageUnder,
    label: words.coverageLabel({
      knows: Math.min(...all.map(({ stageWise }) => stageWise)),
      forgets: Math.min(...all.map(({ naive }) => naive)),
    }),
    name: "coverage",
    x: { says: words.truth, from: 0, to: roundEnd(Math.max(...all.map(({ prevalence }) => prevalence))), per: 100 },
    y: { says: words.holds, from: Math.max(0, Math.floor(20 * Math.min(floor, wanted)) / 20), to: 1, per: 100 },
    series: [
      { name: words.knows, points: all.map((each) => [each.prevalence, each.stageWise] as const), style: "full" },
      { name: words.forgets, points: all.map((each) => [each.prevalence, each.naive] as const), style: "dashed" },
    ],
    lines: [{ y: wanted, says: words.wanted(wanted) }],
  };
}
