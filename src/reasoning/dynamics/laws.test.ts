/** Laws of the day of a colony: bees kept, mites kept, no spread without contact, fewer ages and half steps. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { countAgain } from "./colony.ts";
import { at, fullLayout, layoutOf, noMeasures, shortestLayout, specified } from "./index.ts";
import { benchColony, courseOf, endlessWinter, november } from "./runs-for-tests.ts";

const golden = (file: string) => JSON.parse(readFileSync(`tests/golden/season/${file}`, "utf8"));
const forms = golden("closed-forms.json");
const noDeaths = { drivers: { ...endlessWinter, winterMortality: 0 }, parameters: { winterHarm: 0 } };

describe("laws of the day", () => {
  it("[SE4] without deaths every bee is still there after 120 days, and the share is the printed one", () => {
    const colony = benchColony({ ...noDeaths, bees: 20000, infestedShare: 0.2 });
    colony.step(120);
    expect(Math.abs(colony.see().bees - forms.noDeaths.bees)).toBeLessThan(1e-8); // 120 sums of 20 000 round by 4e-12 each
    expect(Math.abs(100 * colony.see().infestedShare - forms.noDeaths.toPerHundred)).toBeLessThan(0.50001e-6);
  });

  it("[SE4] bees, infested and patent bees told are those in the cells, whatever was done", () => {
    const actions = [
      { kind: "formic", from: "2026-09-01" },
      { kind: "requeen", from: "2026-07-01", susceptibility: 0.7 },
    ] as const;
    expect(courseOf({ ...november, actions }).every(({ bees }) => bees > 0)).toBe(true);
    const measures = noMeasures(400);
    measures.clearing.fill(0.2, 100, 130);
    const colony = benchColony({ bees: 22000, infestedShare: 0.16, measures });
    colony.step(400);
    const told = [at.bees, at.infested, at.patent].map((place) => colony.state[place] as number);
    countAgain(colony.state, 0, fullLayout);
    told.forEach((each, place) => {
      expect(Math.abs(each / (colony.state[place] as number) - 1)).toBeLessThan(1e-12); // sums in another order
    });
  });

  it("[SE4] a bee freed of living mites keeps dead ones: nobody is gained or lost", () => {
    const measures = noMeasures(10);
    measures.clearing.fill(0.2);
    const colony = benchColony({ ...noDeaths, bees: 20000, infestedShare: 0.2, measures });
    const before = colony.see();
    colony.step(10);
    const after = colony.see();
    expect(Math.abs(after.bees - before.bees)).toBeLessThan(1e-8);
    expect(after.clearedShare).toBeGreaterThan(0.15);
    const still = benchColony({
      ...noDeaths,
      parameters: { winterHarm: 0, contactRate: 0 },
      bees: 20000,
      infestedShare: 0.2,
      measures,
    });
    still.step(10);
    expect(Math.abs(still.see().infestedShare + still.see().clearedShare - 0.2)).toBeLessThan(1e-12);
  });

  it("[SE5] without contact no further bee is infested, and without an infested bee none ever is", () => {
    const apart = benchColony({ parameters: { contactRate: 0 }, bees: 22000, infestedShare: 0.16 });
    let before = 22000 * 0.16;
    for (let day = 0; day < 365; day++) {
      apart.step(1);
      const now = apart.state[at.infested] as number;
      expect(now).toBeLessThanOrEqual(before);
      before = now;
    }
    const clean = courseOf({ ...november, start: { ...november.start, infestedShare: 0 } });
    expect(clean.every(({ infestedShare, clearedShare }) => infestedShare === 0 && clearedShare === 0)).toBe(true);
  });

  it("[SE7] the one-line map of the share comes nearer to the logistic curve with half the step", () => {
    const { rate, days, from, map, logistic } = forms.withoutLatency;
    const mapped = (steps: number) => {
      let share = from;
      for (let step = 0; step < steps; step++) share += (1 - share) * -Math.expm1((-rate * share * days) / steps);
      return share;
    };
    expect(Math.abs(mapped(days) - map)).toBeLessThan(0.50001e-10);
    const curve = 1 / (1 + ((1 - from) / from) * Math.exp(-rate * days));
    expect(Math.abs(curve - logistic)).toBeLessThan(0.50001e-10);
    const [whole, halved, quartered] = [mapped(days), mapped(2 * days), mapped(4 * days)].map((each) =>
      Math.abs(each - curve),
    ) as [number, number, number];
    // First order: half the step, half the error, within a tenth.
    expect(whole / halved).toBeGreaterThan(1.9);
    expect(halved / quartered).toBeGreaterThan(1.9);
    expect(whole / halved).toBeLessThan(2.1);
  });

  it("[SE7] a day of patent bees only, among old bees, is that map", () => {
    // Latent bees never move on, so the patent share is fixed and each day takes the same part of the clean bees.
    const drivers = { ...endlessWinter, winterMortality: 0 };
    const colony = benchColony({
      drivers,
      parameters: { winterHarm: 0, latentAdvance: 0 },
      bees: 20000,
      infestedShare: 0.2,
    });
    colony.step(120);
    const clean = 0.8 * Math.exp(-1.7 * 0.008 * 0.2 * 120);
    expect(Math.abs(1 - colony.see().infestedShare - clean)).toBeLessThan(1e-12);
  });

  it("[SE8] 24 ages, and the fewest that will do, give what 64 give", () => {
    const run = (layout: typeof fullLayout) => {
      const colony = benchColony({ layout, bees: 22000, infestedShare: 0.16 });
      colony.step(730);
      return colony.see();
    };
    const full = run(fullLayout);
    for (const layout of [layoutOf({ summerAges: 24, winterAges: 24 }), shortestLayout(specified)])
      for (const [name, value] of Object.entries(run(layout)))
        expect(Math.abs(value - Reflect.get(full, name)), name).toBeLessThanOrEqual(1e-12 * Math.abs(value));
    const tooFew = run(layoutOf({ summerAges: 18, winterAges: 9 }));
    expect(Math.abs(tooFew.bees - full.bees)).toBeGreaterThan(1e-3);
  });
});
