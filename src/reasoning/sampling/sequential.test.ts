/** Sequential plans against print, against all sequences of a short plan, and in awkward cases. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import bennett from "../../../tests/golden/bennett-1991-clusters.json" with { type: "json" };
import nist from "../../../tests/golden/nist-handbook-6-2-3.json" with { type: "json" };
import wald from "../../../tests/golden/wald-1947-running-example.json" with { type: "json" };
import {
  coloniesForPrecision,
  fixedPlanLow,
  type SequentialDesign,
  type SequentialPlan,
  sequentialCharacteristics,
  sequentialLines,
  sequentialPlan,
  type ThreeWayPlan,
  threeWayCharacteristics,
  threeWayPlan,
  waldCurve,
} from "./index.ts";

const mites = { lowPrevalence: 0.05, highPrevalence: 0.15, alpha: 0.1, beta: 0.1 } as const;

function made(design: SequentialDesign): SequentialPlan {
  const plan = sequentialPlan(design);
  if (!plan.ok) throw new Error(plan.problems[0]?.code);
  return plan.value;
}

function madePair(design: Parameters<typeof threeWayPlan>[0]): ThreeWayPlan {
  const plan = threeWayPlan(design);
  if (!plan.ok) throw new Error(plan.problems[0]?.code);
  return plan.value;
}

const shortDesign = fc.record({
  lowPrevalence: fc.double({ min: 0.02, max: 0.4, noNaN: true }),
  highPrevalence: fc.double({ min: 0.45, max: 0.95, noNaN: true }),
  alpha: fc.double({ min: 0.02, max: 0.4, noNaN: true }),
  beta: fc.double({ min: 0.02, max: 0.4, noNaN: true }),
  maxBees: fc.integer({ min: 4, max: 10 }),
  minBees: fc.integer({ min: 1, max: 4 }),
  batch: fc.integer({ min: 1, max: 4 }),
  atEnd: fc.constantFrom("midline" as const, "undecided" as const),
});

/** Every sequence of bees up to the last, with its chance. */
function* sequences(
  bees: number,
  p: number,
): Generator<{ readonly found: readonly boolean[]; readonly chance: number }> {
  for (let bits = 0; bits < 2 ** bees; bits += 1) {
    const found = Array.from({ length: bees }, (_, i) => ((bits >> i) & 1) === 1);
    yield { found, chance: found.reduce((chance, each) => chance * (each ? p : 1 - p), 1) };
  }
}

/** Rounding of a line's value at a few bees; far below the distance of any line from a count it does not meet. */
const slack = 1e-13;

/** Follows one sequence by the lines themselves, not by the looks of the plan. */
function followed({ design, lines }: SequentialPlan, found: readonly boolean[]) {
  let positive = 0;
  for (let n = 1; n <= design.maxBees; n += 1) {
    if (found[n - 1]) positive += 1;
    const isLook = n === design.maxBees || (n >= design.minBees && (n - design.minBees) % design.batch === 0);
    if (!isLook) continue;
    if (positive <= lines.lowIntercept + lines.slope * n + slack)
      return { said: "low", bees: n, crossed: true } as const;
    if (positive >= lines.highIntercept + lines.slope * n - slack)
      return { said: "high", bees: n, crossed: true } as const;
  }
  const midline = positive <= lines.slope * design.maxBees ? ("low" as const) : ("high" as const);
  return {
    said: design.atEnd === "undecided" ? ("undecided" as const) : midline,
    bees: design.maxBees,
    crossed: false,
  };
}

describe("Wald's lines", () => {
  it("[SD150] are those of the handbook's plan, to the digits recalled", () => {
    const lines = sequentialLines(nist);
    if (!lines.ok) throw new Error("refused");
    expect(lines.value.lowIntercept).toBeCloseTo(nist.lowIntercept, 3);
    expect(lines.value.highIntercept).toBeCloseTo(nist.highIntercept, 3);
    expect(lines.value.slope).toBeCloseTo(nist.slope, 4);
  });

  it("[SD150] are those of Wald's running example", () => {
    const { lowIntercept, highIntercept, slope, firstLow, firstHigh, ...test } = wald;
    const lines = sequentialLines(test);
    if (!lines.ok) throw new Error("refused");
    expect(lines.value.lowIntercept).toBeCloseTo(lowIntercept, 9);
    expect(lines.value.highIntercept).toBeCloseTo(highIntercept, 9);
    expect(lines.value.slope).toBeCloseTo(slope, 9);
    expect([lines.value.firstLow, lines.value.firstHigh]).toEqual([firstLow, firstHigh]);
  });

  it("[SD150] refuse shares and errors that leave nothing to decide", () => {
    const code = (design: SequentialDesign) => sequentialPlan(design).problems[0]?.code;
    expect(code({ ...mites, maxBees: 50, highPrevalence: 0.05 })).toBe("sequential-prevalences-disordered");
    expect(code({ ...mites, maxBees: 50, alpha: 0.6, beta: 0.4 })).toBe("sequential-errors-too-large");
    expect(code({ ...mites, maxBees: 50, minBees: 60 })).toBe("sequential-bees-disordered");
    expect(() => sequentialLines({ ...mites, lowPrevalence: 0 })).toThrow("lowPrevalence must be");
    expect(() => sequentialPlan({ ...mites, maxBees: 10.5 })).toThrow("maxBees must be");
  });

  it("[SD151] trap: a line that meets a count on paper meets it", () => {
    // At p0 = 1 − p1 the slope is ½ and 3-to-1 odds with errors of 1 in 10 put the lines at exactly ±1.
    const plan = made({ lowPrevalence: 0.25, highPrevalence: 0.75, alpha: 0.1, beta: 0.1, maxBees: 12 });
    expect(plan.lines.slope).toBeCloseTo(0.5, 15);
    expect(plan.lines.highIntercept).toBeCloseTo(1, 15);
    for (const { bees, low, high } of plan.looks) {
      expect(low).toBe(bees >= 2 ? Math.floor(bees / 2 - 1) : null);
      expect(high).toBe(bees >= 2 ? Math.ceil(bees / 2 + 1) : null);
    }
    expect([plan.lines.firstLow, plan.lines.firstHigh]).toEqual([2, 2]);
  });

  it("[SD151] trap: 2 of 2 infested meet the high line of 5 against 15 in 100, as 3 times 3 is 9", () => {
    // Computed, the line lies at 2.0000000000000004: without slack the plan would read on.
    const { lines, looks } = made({ ...mites, maxBees: 20 });
    expect(lines.highIntercept + 2 * lines.slope).toBeGreaterThan(2);
    expect(looks[1]).toEqual({ bees: 2, low: null, high: 2 });
  });
});

describe("what a plan does", () => {
  it("[SD152] is the sum over all sequences of bees", () => {
    fc.assert(
      fc.property(shortDesign, fc.double({ min: 0, max: 1, noNaN: true }), (design, prevalence) => {
        const plan = made(design);
        const sum = { low: 0, high: 0, undecided: 0, averageBees: 0, squares: 0, reachesEnd: 0 };
        for (const { found, chance } of sequences(design.maxBees, prevalence)) {
          const { said, bees, crossed } = followed(plan, found);
          sum[said] += chance;
          sum.averageBees += bees * chance;
          sum.squares += bees * bees * chance;
          if (!crossed) sum.reachesEnd += chance;
        }
        const [row] = sequentialCharacteristics(plan, [prevalence]);
        if (!row) throw new Error("no row");
        for (const name of ["low", "high", "undecided", "averageBees", "reachesEnd"] as const) {
          expect(Math.abs(row[name] - sum[name])).toBeLessThan(1e-11); // rounding of up to 1024 products
        }
        expect(row.low + row.high + row.undecided).toBeCloseTo(1, 12);
        expect(row.sdBees ** 2).toBeCloseTo(sum.squares - sum.averageBees ** 2, 9);
      }),
      { seed: 1947, numRuns: 60 },
    );
  });

  it("[SD152] falls in low as the share rises, from surely low at none to surely high at all", () => {
    const shares = Array.from({ length: 41 }, (_, i) => i / 40);
    const rows = sequentialCharacteristics(made({ ...mites, maxBees: 80, minBees: 5, batch: 5 }), shares);
    expect(rows[0]?.low).toBe(1);
    expect(rows.at(-1)?.high).toBe(1);
    for (const [i, { low }] of rows.entries()) expect(low).toBeLessThanOrEqual((rows[i - 1]?.low ?? 1) + 1e-15);
    expect(() => sequentialCharacteristics(made({ ...mites, maxBees: 9 }), [1.1])).toThrow("prevalence must be");
  });

  it("[SD153] Wald's curve runs near the plan without an end, and is not it", () => {
    const curve = waldCurve(mites, [1, 0, -1]);
    if (!curve.ok) throw new Error("refused");
    const endless = made({ ...mites, maxBees: 3000, atEnd: "undecided" });
    const exact = sequentialCharacteristics(
      endless,
      curve.value.map(({ prevalence }) => prevalence),
    );
    for (const [i, { low, averageBees, prevalence }] of curve.value.entries()) {
      // Overshoot of the lines: true errors lie up to 0.04 below the nominal ones, and a tenth more bees are read.
      expect(Math.abs((exact[i]?.low ?? 0) - low)).toBeLessThan(0.04);
      expect((exact[i]?.averageBees ?? 0) / averageBees).toBeGreaterThan(1);
      expect((exact[i]?.averageBees ?? 0) / averageBees).toBeLessThan(1.25);
      expect(prevalence).toBeCloseTo([0.05, 0.0919343268, 0.15][i] as number, 9);
    }
    expect(waldCurve({ ...mites, highPrevalence: 0.01 }, [1]).ok).toBe(false);
  });

  it("[SD153] Wald's curve is in numbers for any h, and joins its limit at h = 0", () => {
    const curve = waldCurve(mites, [-1e9, -50, 50, 1e9, 0, 1e-7, -1e-7, 1e-300]);
    if (!curve.ok) throw new Error("refused");
    expect(curve.value.slice(0, 4).map(({ low }) => low)).toEqual([0, expect.closeTo(0, 12), expect.closeTo(1, 12), 1]);
    const [limit, ...near] = curve.value.slice(4);
    for (const { prevalence, low, averageBees } of near) {
      expect(prevalence).toBeCloseTo(limit?.prevalence as number, 7);
      expect(low).toBeCloseTo(limit?.low as number, 6);
      expect(averageBees / (limit?.averageBees as number)).toBeCloseTo(1, 6); // rounding over h
    }
  });

  it("[SD155] a plan with a fixed number of bees is one that looks once", () => {
    const once = made({ ...mites, maxBees: 50, minBees: 50, atEnd: "midline" });
    // Its midline at 50 bees is 4.6: low with 4 or fewer, as a fixed plan says it.
    const shares = [0, 0.05, 0.1, 0.3, 1];
    const rows = sequentialCharacteristics(once, shares);
    for (const [i, low] of fixedPlanLow({ bees: 50, most: 4, prevalences: shares }).entries()) {
      expect(rows[i]?.low).toBeCloseTo(low, 12);
    }
    expect(() => fixedPlanLow({ bees: 0, most: 1, prevalences: [0.1] })).toThrow("bees must be");
  });

  it("[SD160] 500 bees at 50 shares take well under a second", () => {
    const plan = made({ ...mites, maxBees: 500 });
    const shares = Array.from({ length: 50 }, (_, i) => (i + 1) / 51);
    const start = performance.now();
    expect(sequentialCharacteristics(plan, shares)).toHaveLength(50);
    // A few milliseconds on an ordinary machine; the bound leaves room for a busy one.
    expect(performance.now() - start).toBeLessThan(500);
  });
});

describe("light, moderate, severe", () => {
  const lower = mites;
  const upper = { lowPrevalence: 0.3, highPrevalence: 0.6, alpha: 0.1, beta: 0.1 } as const;

  it("[SD154] is the sum over all sequences of bees", () => {
    for (const atEnd of ["midline", "undecided"] as const) {
      const plan = madePair({ lower, upper, maxBees: 12, minBees: 2, batch: 2, atEnd });
      for (const p of [0, 0.1, 0.35, 0.8, 1]) {
        const sum = { light: 0, moderate: 0, severe: 0, contradictory: 0, undecided: 0, averageBees: 0, reachesEnd: 0 };
        for (const { found, chance } of sequences(12, p)) {
          const [a, b] = [followed(plan.lower, found), followed(plan.upper, found)];
          const pair = `${a.said} ${b.said}`;
          const answer = /undecided/.test(pair)
            ? "undecided"
            : pair === "low low"
              ? "light"
              : pair === "high low"
                ? "moderate"
                : pair === "high high"
                  ? "severe"
                  : "contradictory";
          sum[answer] += chance;
          sum.averageBees += Math.max(a.bees, b.bees) * chance;
          if (!a.crossed || !b.crossed) sum.reachesEnd += chance;
        }
        const [row] = threeWayCharacteristics(plan, [p]);
        for (const [name, value] of Object.entries(sum)) {
          expect(Math.abs((row?.[name as keyof typeof sum] ?? -1) - value)).toBeLessThan(1e-11);
        }
      }
    }
  });

  it("[SD154] refuses plans that do not lie one above the other", () => {
    expect(threeWayPlan({ lower: upper, upper: lower, maxBees: 50 }).problems[0]?.code).toBe(
      "sequential-bands-disordered",
    );
    expect(threeWayPlan({ lower, upper: { ...upper, highPrevalence: 0.2 }, maxBees: 50 }).ok).toBe(false);
    expect(threeWayPlan({ lower: { ...lower, alpha: 0.95 }, upper, maxBees: 50 }).ok).toBe(false);
  });
});

it("[SD161] 17 colonies of 20 bees, as printed", () => {
  const { colonies, designEffect } = coloniesForPrecision(bennett);
  expect(colonies).toBe(bennett.colonies);
  expect(designEffect).toBeCloseTo(1.38, 12);
});

it("[SD161] one colony fewer gives fewer bees than needed", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.01, max: 0.99, noNaN: true }),
      fc.double({ min: 0.01, max: 0.3, noNaN: true }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      fc.integer({ min: 1, max: 200 }),
      (expectedPrevalence, margin, intraclass, beesPerColony) => {
        const size = coloniesForPrecision({ expectedPrevalence, margin, intraclass, beesPerColony, level: 0.9 });
        expect(size.colonies * beesPerColony).toBeGreaterThanOrEqual(size.bees * (1 - 1e-9));
        expect((size.colonies - 1) * beesPerColony).toBeLessThan(size.bees);
      },
    ),
    { seed: 1991, numRuns: 300 },
  );
});
