/** Closed forms of the daily model and of its simpler relatives: thresholds, roots, steady states. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { countAgain } from "./colony.ts";
import {
  at,
  classes,
  criticalForagerMortality,
  foodPlentySteady,
  fullLayout,
  hiveForagersAfter,
  hiveForagersSteady,
  patent,
  printedHiveForagers,
  reproductionNumber,
  specified,
  varroaGrowth,
  winterGrowth,
} from "./index.ts";
import { benchColony, endlessSummer, endlessWinter } from "./runs-for-tests.ts";

const golden = (file: string) => JSON.parse(readFileSync(`tests/golden/season/${file}`, "utf8"));
const forms = golden("closed-forms.json");
const khoury = golden("khoury-2011.json");

describe("closed forms", () => {
  it("[SE20] the colony without mites settles at the closed form", () => {
    const colony = benchColony({ drivers: endlessSummer, bees: 30000, infestedShare: 0 });
    colony.step(4000);
    const { beesPerDailyEmergence } = reproductionNumber(specified, { flight: 1, flow: 1 });
    const { layingMaximum, eggSurvival, broodSurvival, careHalf } = specified;
    const closed = layingMaximum * eggSurvival * broodSurvival * beesPerDailyEmergence - careHalf;
    expect(Math.abs(beesPerDailyEmergence - forms.noMites.beesPerDailyEmergence)).toBeLessThan(0.50001e-7);
    expect(Math.abs(closed - forms.noMites.bees)).toBeLessThan(0.50001e-9);
    expect(Math.abs(colony.see().bees - forms.noMites.bees)).toBeLessThan(0.50001e-9);
  });

  it.each(forms.reproduction as { flight: number; flow: number; number: number }[])(
    "[SE21] flight $flight, flow $flow: one infested bee infests $number",
    ({ number, ...drivers }) => {
      expect(Math.abs(reproductionNumber(specified, drivers).number - number)).toBeLessThan(0.50001e-10);
    },
  );

  it.each(forms.threshold as { factor: number; growthPerDay: number }[])(
    "[SE21] at $factor of the critical contact mites change by $growthPerDay a day",
    ({ factor, growthPerDay }) => {
      const { number } = reproductionNumber(specified, { flight: 1, flow: 1 });
      const contactRate = (specified.contactRate / number) * factor;
      const colony = benchColony({
        drivers: endlessSummer,
        parameters: { contactRate },
        bees: 30000,
        infestedShare: 0,
      });
      colony.step(1000);
      const { state } = colony;
      for (let cell = fullLayout.summer; cell < fullLayout.winter; cell += classes) {
        const moved = (state[cell] as number) * 1e-6;
        state[cell] = (state[cell] as number) - moved;
        state[cell + patent] = moved;
      }
      countAgain(state, 0, fullLayout);
      colony.step(1000);
      const before = state[at.infested] as number;
      colony.step(500);
      const growth = ((state[at.infested] as number) / before) ** (1 / 500) - 1;
      expect(Math.sign(growth)).toBe(Math.sign(factor - 1));
      expect(Math.abs(growth - growthPerDay)).toBeLessThan(0.50001e-7);
    },
  );

  it("[SE22] the broodless winter share grows by the root of its equation", () => {
    expect(Math.abs(winterGrowth(specified) - forms.winter.root)).toBeLessThan(0.50001e-12);
    const colony = benchColony({
      drivers: endlessWinter,
      parameters: { winterHarm: 0 },
      bees: 20000,
      infestedShare: 1e-7,
    });
    colony.step(399);
    const before = colony.see().infestedShare;
    colony.step(1);
    expect(Math.abs(colony.see().infestedShare / before - forms.winter.simulated)).toBeLessThan(0.50001e-9);
  });

  it.each(khoury.steady as Record<string, number>[])(
    "[SE23] steady at a forager death rate of $foragerMortality",
    ({ foragerMortality, ...printed }) => {
      const ours = hiveForagersSteady(foragerMortality ?? 0, printedHiveForagers);
      const digits: Record<string, number> = {
        foragersPerHiveBee: 5,
        bees: 3,
        hiveBees: 3,
        foragers: 3,
        onsetDays: 5,
        lifeDays: 5,
      };
      for (const [name, value] of Object.entries(printed))
        expect(Math.abs(Reflect.get(ours, name) - value), name).toBeLessThan(0.50001 * 10 ** -(digits[name] ?? 9));
    },
  );

  it("[SE23] the critical death rate is the printed one, and there the steady colony is gone", () => {
    const critical = criticalForagerMortality(printedHiveForagers);
    expect(Math.abs(critical - khoury.criticalMortality)).toBeLessThan(0.50001e-10);
    expect(Math.abs(hiveForagersSteady(critical, printedHiveForagers).bees)).toBeLessThan(1e-8);
  });

  it.each([0.24, 0.4])("[SE23] paths at a forager death rate of %s", (foragerMortality) => {
    let state: readonly [number, number] = [16000, 8000];
    let from = 0;
    for (const row of (khoury.path as Record<string, number>[]).filter(
      (each) => each.foragerMortality === foragerMortality,
    )) {
      const day = row.day ?? 0;
      const [hiveBees, foragers] = state;
      state = hiveForagersAfter(
        { foragerMortality, hiveBees, foragers, days: day - from, stepsPerDay: 100 },
        printedHiveForagers,
      );
      from = day;
      expect(Math.abs(state[0] - (row.hiveBees ?? 0))).toBeLessThan(0.50001e-4);
      expect(Math.abs(state[1] - (row.foragers ?? 0))).toBeLessThan(0.50001e-4);
    }
    expect(from).toBe(500);
  });

  it.each(golden("khoury-2013-food-plenty.json").steady as Record<string, number>[])(
    "[SE24] plenty of food at $foragerMortality",
    ({ foragerMortality, ...recalled }) => {
      const ours = foodPlentySteady(foragerMortality ?? 0, { ...printedHiveForagers, careHalf: 5000 }, 1 / 9);
      for (const [name, value] of Object.entries(recalled))
        expect(Math.abs(Reflect.get(ours, name) - value), name).toBeLessThan(0.50001e-4);
    },
  );

  const varroa = golden("varroa-growth.json");
  it.each(varroa.rows as Record<string, number>[])(
    "[SE25] varroa: invasion in $invasionDays days, gain $gain",
    ({ invasionDays = 0, gain = 0, growth = 0, doublingDays = 0 }) => {
      const r = Math.log(varroaGrowth({ invasion: 1 / invasionDays, gain, survival: 0.994 }));
      expect(Math.abs(r - growth)).toBeLessThan(0.50001e-5);
      expect(Math.abs(Math.LN2 / r - doublingDays)).toBeLessThan(0.050001);
    },
  );

  it("[SE25] mites let run by the equation grow by its root", () => {
    const z = varroaGrowth({ invasion: 1 / 7, gain: 1.5, survival: 0.994 });
    expect(Math.abs(z - varroa.z)).toBeLessThan(0.50001e-9);
    const inside = new Array<number>(12).fill(0);
    let [mites, before] = [1, 1];
    for (let day = 0; day < 1500; day++) {
      const leaving = inside.shift() ?? 0;
      const alive = 0.994 * mites;
      inside.push(alive / 7);
      before = mites;
      mites = (6 / 7) * alive + 1.5 * leaving;
    }
    expect(Math.abs(mites / before - z)).toBeLessThan(1e-12);
  });
});
