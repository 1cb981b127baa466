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
  readonly dashed: string;
  /** Bees infested in 100, and how often in 100 none is found: by a perfect eye, and by one that overlooks some. */
  readonly curve: readonly { readonly prevalence: number; readonly perfect: number; readonly judged: number }[];
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
    readonly columns: readonly [string, string, string];
    readonly rows: readonly (readonly [number, number, number])[];
  };
}

/** Share of infested bees that a trained eye finds: the low end of the judged span of the dissection. */
const { sensitivity: eye } = tests["tracheal-dissection"];
const judgedSensitivity = (eye?.kind === "span" ? eye.low : eye?.value) ?? 1;

/** The curve for `bees` bees read, 1 or more. */
export function missedView(bees: number, words: Words): MissedView {
  const say = words.found;
  const missed = (prevalence: number, sensitivity = 1) =>
    1 - sampling.detectionProbability({ bees, designPrevalence: prevalence, sensitivity });
  // Wide enough that the curve has nearly come down: 15 in 100, or up to all for few bees.
  const end = Math.min(1, Math.max(0.15, Math.ceil((1 - 0.01 ** (1 / bees)) * 20) / 20));
  const curve = Array.from({ length: 76 }, (_, index) => (index / 75) * end).map((prevalence) => ({
    prevalence,
    perfect: missed(prevalence),
    judged: missed(prevalence, judgedSensitivity),
  }));
  const main = { prevalence: 0.05, missed: missed(0.05) };
  const points = [0.02, 0.01].map((prevalence) => ({
    prevalence,
    missed: missed(prevalence),
    says: say.missedPoint({ prevalence, missed: missed(prevalence) }),
  }));
  const shares = [0.01, 0.02, 0.05, 0.1, 0.15, 0.2, 0.3, 0.5].filter((share) => share <= Math.max(end, 0.2));
  return {
    bees,
    title: say.missedHead({ bees }),
    under: say.missedUnder({ bees }),
    dashed: say.missedDashed({ sensitivity: judgedSensitivity }),
    curve,
    points,
    main: {
      ...main,
      at: say.missedAt({ prevalence: main.prevalence }),
      times: say.missedTimes({ missed: main.missed }),
    },
    label: say.missedLabel({
      bees,
      points: shares.map((prevalence) => say.missedPoint({ prevalence, missed: missed(prevalence) })).join(", "),
    }),
    table: {
      columns: [say.missedColumns.prevalence, say.missedColumns.perfect, say.missedColumns.judged],
      rows: shares.map((share) => [100 * share, 100 * missed(share), 100 * missed(share, judgedSensitivity)]),
    },
  };
}
