/**
 * What a number of bees could have missed: a curve, its points in words, its table.
 *
 * @module views/model
 */
import { tests } from "../../../knowledge/index.ts";
import { sampling } from "../../../reasoning/index.ts";
import type { Words } from "../../words/index.ts";

export interface MissedView {
  readonly bees: number;
  readonly title: string;
  readonly under: string;
  /** What the dashed line is; null where none is drawn. */
  readonly dashed: string | null;
  /** Share of bees infested, and how often none is found: as the bench is said to see, and as a trained eye is judged to. */
  readonly curve: readonly { readonly prevalence: number; readonly missed: number; readonly judged: number }[];
  /** Points with their words, as drawn. */
  readonly points: readonly { readonly prevalence: number; readonly missed: number; readonly says: string }[];
  readonly main: {
    readonly prevalence: number;
    readonly missed: number;
    readonly at: string;
    readonly times: string;
  };
  readonly label: string;
  readonly table: {
    readonly columns: readonly string[];
    readonly rows: readonly (readonly number[])[];
  };
}

/** Share of infested bees that a trained eye finds: the low end of the judged span of the dissection. */
const { sensitivity: eye } = tests["tracheal-dissection"];
const judgedSensitivity = (eye?.kind === "span" ? eye.low : eye?.value) ?? 1;

/**
 * The curve for `bees` bees read, 1 or more, with the words at the share `at`. `sensitivity`: share of infested bees
 * that the bench finds; where that is better than a trained eye is judged to be, the judged curve is drawn beside it.
 */
export function missedView(
  asked: { readonly bees: number; readonly at?: number; readonly sensitivity?: number },
  words: Words,
): MissedView {
  const { bees, at = 0.05, sensitivity = 1 } = asked;
  const say = words.found;
  const missed = (prevalence: number, seen = sensitivity) =>
    1 - sampling.detectionProbability({ bees, designPrevalence: prevalence, sensitivity: seen });
  const hasJudged = judgedSensitivity < sensitivity;
  // Wide enough that the curve has nearly come down and the share asked about is on it: 15 in 100, or up to all.
  const end = Math.min(1, Math.max(0.15, Math.ceil(Math.max(1 - 0.01 ** (1 / bees), at) * 20) / 20));
  const curve = Array.from({ length: 76 }, (_, index) => (index / 75) * end).map((prevalence) => ({
    prevalence,
    missed: missed(prevalence),
    judged: missed(prevalence, Math.min(sensitivity, judgedSensitivity)),
  }));
  // Further points stand where their words are clear of those of the main one.
  const points = [0.02, 0.01]
    .filter((prevalence) => prevalence * 2 < at)
    .map((prevalence) => ({
      prevalence,
      missed: missed(prevalence),
      says: say.missedPoint({ prevalence, missed: missed(prevalence) }),
    }));
  const shares = [...new Set([0.01, 0.02, 0.05, 0.1, 0.15, 0.2, 0.3, 0.5, at])]
    .filter((share) => share <= Math.max(end, 0.2))
    .sort((one, other) => one - other);
  return {
    bees,
    title: say.missedHead({ bees }),
    under: say.missedUnder({ bees }),
    dashed: hasJudged ? say.missedDashed({ sensitivity: judgedSensitivity }) : null,
    curve,
    points,
    main: {
      prevalence: at,
      missed: missed(at),
      at: say.missedAt({ prevalence: at }),
      times: say.missedTimes({ missed: missed(at) }),
    },
    label: say.missedLabel({
      bees,
      points: shares.map((prevalence) => say.missedPoint({ prevalence, missed: missed(prevalence) })).join(", "),
    }),
    table: {
      columns: [
        say.missedColumns.prevalence,
        say.missedColumns.missed,
        ...(hasJudged ? [say.missedColumns.judged] : []),
      ],
      rows: shares.map((share) => [
        100 * share,
        100 * missed(share),
        ...(hasJudged ? [100 * missed(share, judgedSensitivity)] : []),
      ]),
    },
  };
}
