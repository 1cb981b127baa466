/**
 * The experience page: sentence, scores, the reliability diagram, what was taught beside its start, drift of signs.
 *
 * @module views/model
 */
import type { Estimate, Problem } from "../../../units/index.ts";
import type { WholeWords } from "../../words/index.ts";
import type { CurvesPicture } from "../reckoner/pictures.ts";
import { conditionTerm, stepTerm, withTerms } from "../terms.ts";
import { type ExperienceTold, type TaughtValue, withCode } from "./experience-told.ts";

export interface ScoreRow {
  readonly name: string;
  readonly value: string;
  readonly range: string;
  readonly means: string;
}

export interface ExperienceView {
  readonly answer: string;
  readonly under: string;
  readonly scores: readonly ScoreRow[];
  /** What keeps a score from being given, or what it leaves out. */
  readonly notes: readonly Problem[];
  readonly scoredSays: string;
  readonly reliability: CurvesPicture | null;
  readonly cases: readonly { readonly case: string; readonly says: string; readonly rank: number }[];
  readonly values: readonly {
    readonly kind: TaughtValue["kind"];
    readonly says: string;
    readonly published: string;
    readonly start: string;
    readonly seen: string;
    readonly inUse: string;
  }[];
  readonly drift: readonly {
    readonly finding: string;
    readonly years: string;
    readonly says: string;
  }[];
  readonly driftSays: string;
  readonly refused: readonly Problem[];
  readonly problems: readonly Problem[];
}

/** A p held against the number of signs at or below this is called a drift. Convention, no source. */
const driftAt = 0.05;

/** Everything that the page shows. */
export function experienceView(told: ExperienceTold, words: WholeWords): ExperienceView {
  const say = words.own;
  const { closed, inUse, values, score, drift, codes, problems } = told;
  const { lessons, refused } = inUse.experience;
  const { scored, scores, leftOut, notScored } = score;
  const names = inUse.start;
  const use = inUse.settings.experience;
  const withNames = (each: Problem) => withTerms(withCode(each, codes), names);
  return {
    answer: say.answer({ closed, learnt: lessons.length }),
    under: say.under({ ...use, learnt: lessons.length }),
    scores: scores.ok
      ? [
          scoreRow(say.brier, scores.value.brier, say.plain),
          scoreRow(
            say.logScore({ clip: scores.value.clip, held: scores.value.held }),
            scores.value.logScore,
            say.plain,
          ),
          scoreRow(say.topOne, scores.value.topOne, say.share),
          scoreRow(say.topThree, scores.value.topThree, say.share),
        ]
      : [],
    notes: [...(scores.ok ? [] : scores.problems), ...notScored.filter((each) => !refused.includes(each))].map((each) =>
      withNames(each),
    ),
    scoredSays: say.scored({ cases: scored.length, leftOut }),
    reliability: scores.ok ? reliabilityOf(scores.value.bins, words) : null,
    cases: scored.map((each) => ({
      case: codes[each.case] ?? each.case,
      rank: each.rank,
      says: say.scoredCase({
        confirmed: each.confirmed.map((id) => conditionTerm(names, id)),
        given: each.given,
        rank: each.rank,
        likeliest: conditionTerm(names, each.likeliest),
        posterior: each.posterior,
      }),
    })),
    values: values.map((value) => ({
      kind: value.kind,
      says:
        value.kind === "frequency"
          ? say.pair({ condition: conditionTerm(names, value.of), finding: stepTerm(names, value.by) })
          : value.kind === "healthy-rate"
            ? say.inHealthy({ finding: stepTerm(names, value.by), season: value.of })
            : say.priorOf({ condition: conditionTerm(names, value.of), season: value.by }),
      published: value.published === null ? say.nonePublished : say.share(value.published),
      start: say.share(value.start),
      seen: say.seen(value),
      inUse: say.share(value.inUse),
    })),
    drift: drift.flatMap(({ finding, years, trend }) =>
      trend.ok
        ? [
            {
              finding: stepTerm(names, finding),
              years: say.years({ years }),
              says: say.trend({
                rises: trend.value.z > 0,
                adjusted: trend.value.adjusted,
                sure: trend.value.adjusted <= driftAt,
              }),
            },
          ]
        : [],
    ),
    driftSays: say.drift({
      tested: drift.filter(({ trend }) => trend.ok).length,
      looked: drift.length,
      drifting: drift.filter(({ trend }) => trend.ok && trend.value.adjusted <= driftAt).length,
    }),
    refused: refused.map(withNames),
    problems: problems.map(withNames),
  };
}

const scoreRow = (
  { name, means }: { readonly name: string; readonly means: string },
  { value, low, high }: Estimate,
  show: (value: number) => string,
): ScoreRow => ({ name, means, value: show(value), range: `${show(low)} to ${show(high)}` });

interface Bin {
  readonly n: number;
  readonly meanStated: number;
  readonly observed: Estimate;
}

/** Stated against observed: a dot a bin with its limits, and the line on which both are alike. */
function reliabilityOf(bins: readonly Bin[], words: WholeWords): CurvesPicture {
  const say = words.own.reliability;
  const axis = { from: 0, to: 1, per: 100 } as const;
  return {
    kind: "curves",
    title: say.title,
    under: say.under,
    name: "reliability",
    label: say.label({
      bins: bins.map(({ n, meanStated, observed }) => ({ n, stated: meanStated, observed: observed.value })),
    }),
    x: { ...axis, says: say.stated },
    y: { ...axis, says: say.observed },
    series: [
      {
        name: say.alike,
        style: "dashed",
        points: [
          [0, 0],
          [1, 1],
        ],
      },
      { name: say.bin, style: "points", points: bins.map(({ meanStated, observed }) => [meanStated, observed.value]) },
    ],
    uprights: bins.map(({ meanStated, observed }) => ({ x: meanStated, low: observed.low, high: observed.high })),
  };
}
