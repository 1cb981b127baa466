/** Chance that a colony dies in winter, by the share of infested bees: a curve through stated points. */
import type { Citation } from "../../knowledge/index.ts";
import { ensure, type Problem } from "../../units/index.ts";
import { decisionProblem } from "./problems.ts";

/** A point of the curve, and who says so. */
export interface LossPoint {
  /** Share of infested bees in autumn, 0–1. */
  readonly prevalence: number;
  /** Chance of losing the colony by spring, 0–1. */
  readonly loss: number;
  /** Absent on points of the user's own. */
  readonly citation?: Citation;
}

/** Points by rising prevalence, losses never falling. Straight lines between; flat before the first and after the last. */
export type LossCurve = readonly LossPoint[];

const healthy = {
  prevalence: 0,
  loss: 0.11,
  citation: {
    source: null,
    at: "operations without tracheal mites lost 11 %: Frazier 1994, through an extension page of 2015",
    read: "seen",
  },
} as const satisfies LossPoint;
const chosen = (prevalence: number, loss: number) =>
  ({
    prevalence,
    loss,
    citation: {
      source: "beebook-tracheal",
      at: "chosen to fit words: 40 to 50 % and more often die (5.1); above 30 to 40 % more likely to die (Bailey 1958)",
      read: "judgement",
    },
  }) as const satisfies LossPoint;

/**
 * Three readings of a literature that does not agree; no published curve was found.
 *
 * `middle`: a strong colony in a cold winter, points chosen to fit words, hence judgement. `cold`: the autumn rule
 * that 15 to 25 % "will not survive", taken at its word. `mild`: nothing before 30 %, then up to the 31 % that
 * infested operations lost. None is a measured curve: give your own when you have one.
 */
export const winterLossReadings = {
  middle: [healthy, chosen(0.2, 0.22), chosen(0.3, 0.38), chosen(0.4, 0.55), chosen(0.6, 0.85)],
  cold: [
    healthy,
    {
      prevalence: 0.25,
      loss: 1,
      citation: {
        source: "beebook-tracheal",
        at: "5.2: colonies with 15 to 25 % in autumn will not survive; absolute wording",
        read: "seen",
      },
    },
  ],
  mild: [
    healthy,
    {
      prevalence: 0.3,
      loss: 0.11,
      citation: {
        source: "bailey-1958",
        at: "more likely to die only above 30 or 40 %; low lasting infestations without effect (Erickson 1996)",
        read: "judgement",
      },
    },
    {
      prevalence: 1,
      loss: 0.31,
      citation: {
        source: null,
        at: "infested operations lost 31 %: Frazier 1994, through an extension page of 2015; placed at 100 %",
        read: "judgement",
      },
    },
  ],
} as const satisfies Readonly<Record<"middle" | "cold" | "mild", LossCurve>>;

/** The reading used when no curve is given; the answer then says so. */
export const defaultReading = "middle";

/**
 * Loss at a prevalence by straight lines between the points of a sound curve.
 *
 * @returns chance 0–1
 * @throws DomainError for a prevalence outside [0, 1] or an empty curve
 * @source straight lines between the points of the curve
 *
 * @example
 * winterLossAt(winterLossReadings.middle, 0.25)  // → 0.3
 */
export function winterLossAt(curve: LossCurve, prevalence: number): number {
  ensure(prevalence >= 0 && prevalence <= 1, "prevalence", prevalence, "in [0, 1]");
  const first = curve[0];
  ensure(first !== undefined, "curve", curve, "at least one point");
  if (prevalence <= first.prevalence) return first.loss;
  for (let i = 1; i < curve.length; i++) {
    const [left, right] = [curve[i - 1] as LossPoint, curve[i] as LossPoint];
    if (prevalence <= right.prevalence) {
      const along = (prevalence - left.prevalence) / (right.prevalence - left.prevalence);
      return left.loss + along * (right.loss - left.loss);
    }
  }
  return (curve.at(-1) as LossPoint).loss;
}

/** What is wrong with a curve, or null: empty, not rising in prevalence, falling in loss, outside 0 to 1. */
export function lossCurveProblem(curve: LossCurve): Problem | null {
  const field = "winterLossByPrevalence";
  if (curve.length === 0) return decisionProblem("loss-curve-empty", "blocked", field, {});
  let before = { prevalence: -1, loss: 0 };
  for (const [i, { prevalence, loss }] of curve.entries()) {
    if (!(prevalence > before.prevalence && prevalence >= 0 && prevalence <= 1)) {
      return decisionProblem("loss-curve-disordered", "blocked", `${field}[${i}].prevalence`, {
        point: i + 1,
        prevalence,
      });
    }
    if (!(loss >= before.loss && loss <= 1)) {
      return decisionProblem("loss-curve-falls", "blocked", `${field}[${i}].loss`, { point: i + 1, loss });
    }
    before = { prevalence, loss };
  }
  return null;
}
