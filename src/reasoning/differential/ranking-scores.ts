/** How well a ranked list of exclusive causes did: scores over cases whose cause became known. */
import { answered, blocked, ensure, problem, type Result } from "../../units/index.ts";

export interface RankingScores {
  /** Mean over cases of Σ (p − y)² over causes: 0 is perfect, 2 the worst. */
  readonly brier: number;
  /** Mean of −ln of the probability given to the cause that held; undefined where one was given 0. */
  readonly logLoss: Result<number>;
  /** Share of cases whose cause stood first. */
  readonly topOne: number;
  /** Share of cases whose cause stood among the first three. */
  readonly topThree: number;
  /** Mean of 1/rank of the cause that held. */
  readonly meanReciprocalRank: number;
}

/**
 * Scores of probabilities over several causes, one of which held. Of causes given the same, the earlier in the list
 * ranks first.
 *
 * @returns RankingScores, or `no-forecasts`
 * @throws DomainError for rows of unequal length, probabilities outside [0, 1] or a cause that is not in the row
 * @source Brier 1950 (multi-category form)
 *
 * @example
 * rankingScores({ stated: [[0.7, 0.3], [0.4, 0.6]], held: [0, 0] }).value.meanReciprocalRank  // → 0.75
 */
export function rankingScores(cases: {
  /** One row per case, one probability per cause. */
  readonly stated: readonly (readonly number[])[];
  /** Index of the cause that held, one per case. */
  readonly held: readonly number[];
}): Result<RankingScores> {
  const { stated, held } = cases;
  ensure(stated.length === held.length, "held", held.length, `as many as stated: ${stated.length}`);
  const n = stated.length;
  if (n === 0) return blocked(problem("no-forecasts", "blocked", "stated"));
  const causes = stated[0]?.length ?? 0;
  const rows = stated.map((row, i) => {
    ensure(row.length === causes, "stated", row.length, `${causes} probabilities in each row`);
    for (const p of row) ensure(p >= 0 && p <= 1, "stated", p, "in [0, 1]");
    const cause = held[i] as number;
    const given = row[cause] ?? Number.NaN;
    ensure(given >= 0, "held", cause, `an index from 0 to ${causes - 1}`);
    const before = row.filter((p, other) => p > given || (p === given && other < cause)).length;
    const squared = row.reduce((sum, p, other) => sum + (p - Number(other === cause)) ** 2, 0);
    return { given, rank: before + 1, squared };
  });
  const mean = (of: (row: (typeof rows)[number]) => number) => rows.reduce((sum, row) => sum + of(row), 0) / n;
  const ruledOut = rows.filter(({ given }) => given === 0).length;
  return answered({
    brier: mean(({ squared }) => squared),
    logLoss:
      ruledOut > 0
        ? blocked(problem("cause-was-ruled-out", "unknown", "stated", { slots: { cases: ruledOut } }))
        : answered(-mean(({ given }) => Math.log(given))),
    topOne: mean(({ rank }) => Number(rank === 1)),
    topThree: mean(({ rank }) => Number(rank <= 3)),
    meanReciprocalRank: mean(({ rank }) => 1 / rank),
  });
}
