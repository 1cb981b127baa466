/** How many bees or colonies a comparison of two shares needs in each group, and what a given number can show. */
import { binomial, normalQuantile, normalUpperQuantile } from "../../numerics/index.ts";
import { answered, blocked, ensure, type Result } from "../../units/index.ts";
import { fisherTests } from "../bench/index.ts";
import { efficacyProblem } from "./problems.ts";

export interface TwoShares {
  /** Expected share in the first group, 0 < p < 1. */
  readonly firstShare: number;
  readonly secondShare: number;
  /** Two-sided error of the first kind; 0.05 when not given. */
  readonly alpha?: number;
}

export interface GroupSize {
  /** Per group, before rounding up: the usual formula, variance pooled under no difference. */
  readonly pooled: number;
  /** The same without pooling. */
  readonly unpooled: number;
  /** Pooled with Fleiss's correction for continuity: close to what Fisher's test needs. */
  readonly corrected: number;
  /** `pooled` rounded up. */
  readonly perGroup: number;
  /** `corrected` rounded up. */
  readonly perGroupCorrected: number;
}

/**
 * Number in each of two equal groups to tell two shares apart, by the normal approximation.
 *
 * Pooled: (zα√(2p̄q̄) + zβ√(p1q1 + p2q2))²/d². Corrected: n/4·(1 + √(1 + 4/(n·d)))². For bees within colonies see
 * `clustersPerGroup`: bees of one colony are no independent trials.
 *
 * @returns GroupSize, or `shares-equal`
 * @throws DomainError for shares, alpha or power outside (0, 1), or a power of half of alpha or less
 * @source Fleiss, Tytun & Ury 1980 for the correction; pooled form as in standard texts
 *
 * @example
 * groupSize({ firstShare: 0.6, secondShare: 0.4 }).value.perGroup  // → 97
 * groupSize({ firstShare: 0.6, secondShare: 0.4 }).value.perGroupCorrected  // → 107
 */
export function groupSize(wanted: TwoShares & { readonly power?: number }): Result<GroupSize> {
  const { firstShare: p1, secondShare: p2, alpha = 0.05, power = 0.8 } = wanted;
  for (const [name, value] of Object.entries({ firstShare: p1, secondShare: p2, alpha, power })) {
    ensure(value > 0 && value < 1, name, value, "in (0, 1)");
  }
  // A test that sees nothing still says "different" so often; below that the formula turns back on itself.
  ensure(power > alpha / 2, "power", power, `above half of alpha, ${alpha / 2}`);
  if (p1 === p2) return blocked(efficacyProblem("shares-equal", "blocked", "secondShare", { share: p1 }));
  const [zAlpha, zBeta] = [normalUpperQuantile(alpha / 2), normalQuantile(power)];
  const difference = Math.abs(p1 - p2);
  const mean = (p1 + p2) / 2;
  const apart = p1 * (1 - p1) + p2 * (1 - p2);
  const pooled = ((zAlpha * Math.sqrt(2 * mean * (1 - mean)) + zBeta * Math.sqrt(apart)) / difference) ** 2;
  const corrected = (pooled / 4) * (1 + Math.sqrt(1 + 4 / (pooled * difference))) ** 2;
  return answered({
    pooled,
    unpooled: ((zAlpha + zBeta) / difference) ** 2 * apart,
    corrected,
    perGroup: Math.ceil(pooled),
    perGroupCorrected: Math.ceil(corrected),
  });
}

export interface ClusterNumber {
  /** 1 + (m − 1)·ICC: by how much a bee of a colony counts for less than one drawn alone. */
  readonly designEffect: number;
  readonly perGroup: number;
  /** One more in each group, for the degrees of freedom that a comparison of few colonies loses. */
  readonly perGroupPlusOne: number;
}

/** A whole number overshot by less than this through rounding is that number. */
const roundingSlack = 1e-9;

/**
 * Colonies per group when m bees of each are looked at and bees of a colony are alike by ICC.
 *
 * @returns ClusterNumber, colonies
 * @throws DomainError unless `individuals` is above 0, `perCluster` ≥ 1 and 0 ≤ icc ≤ 1
 * @source design effect 1 + (m − 1)·ICC: Kish 1965; one more per group: Snedecor & Cochran's rule (from memory)
 *
 * @example
 * clustersPerGroup({ individuals: 81.96, perCluster: 10, icc: 0.1 })  // → {"designEffect":1.9,"perGroup":16,"perGroupPlusOne":17}
 */
export function clustersPerGroup(design: {
  /** Per group, as if all were independent. */
  readonly individuals: number;
  readonly perCluster: number;
  /** Intra-cluster correlation. */
  readonly icc: number;
}): ClusterNumber {
  const { individuals, perCluster, icc } = design;
  ensure(individuals > 0 && Number.isFinite(individuals), "individuals", individuals, "above 0");
  ensure(perCluster >= 1 && Number.isFinite(perCluster), "perCluster", perCluster, "1 or more");
  ensure(icc >= 0 && icc <= 1, "icc", icc, "in [0, 1]");
  const designEffect = 1 + (perCluster - 1) * icc;
  const clusters = (individuals * designEffect) / perCluster;
  return {
    designEffect,
    perGroup: Math.ceil(clusters - roundingSlack),
    perGroupPlusOne: Math.ceil(clusters + 1 - roundingSlack),
  };
}

/** A P above alpha by less than this share is taken as alpha. */
const levelSlack = 1e-9;

/**
 * Chance that Fisher's two-sided test comes out at alpha or below, summed over every pair of counts.
 *
 * @returns probability 0–1
 * @throws DomainError for shares outside [0, 1], alpha outside (0, 1) or groups that are not whole numbers ≥ 1
 * @source definition; Fisher's test as in `fisherTest` of the bench
 *
 * @example
 * fisherPower({ firstShare: 0.3, secondShare: 0.05, firstSize: 30, secondSize: 30 })  // → 0.63131296665
 */
export function fisherPower(
  design: TwoShares & {
    readonly firstSize: number;
    readonly secondSize: number;
    /** Fisher's P, or its mid-P; Fisher's when not given. */
    readonly by?: "fisher" | "mid-p";
  },
): number {
  const { firstShare, secondShare, firstSize, secondSize, alpha = 0.05, by = "fisher" } = design;
  for (const [name, value] of Object.entries({ firstShare, secondShare })) {
    ensure(value >= 0 && value <= 1, name, value, "in [0, 1]");
  }
  for (const [name, value] of Object.entries({ firstSize, secondSize })) {
    ensure(Number.isInteger(value) && value >= 1, name, value, "a whole number of 1 or more");
  }
  ensure(alpha > 0 && alpha < 1, "alpha", alpha, "in (0, 1)");
  const chances = ({ n, p }: { readonly n: number; readonly p: number }) => {
    const { pmf } = binomial({ n, p });
    return Float64Array.from({ length: n + 1 }, (_, x) => pmf(x));
  };
  const first = chances({ n: firstSize, p: firstShare });
  const second = chances({ n: secondSize, p: secondShare });
  let power = 0;
  for (let withOutcome = 0; withOutcome <= firstSize + secondSize; withOutcome++) {
    const { law, twoSided, midTwoSided } = fisherTests({ first: firstSize, second: secondSize, withOutcome });
    const pValue = by === "fisher" ? twoSided : midTwoSided;
    for (let a = law.support.low; a <= law.support.high; a++) {
      if (pValue(a) > alpha * (1 + levelSlack)) continue;
      power += (first[a] as number) * (second[withOutcome - a] as number);
    }
  }
  return Math.min(1, power);
}
