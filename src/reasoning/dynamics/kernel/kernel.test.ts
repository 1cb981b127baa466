/** The kernels give the same bits: the plain day is the rule, the program in WebAssembly the same in less time. */
import { describe, expect, it } from "vitest";
import { chanceOfHazard } from "../chance-of-hazard.ts";
import { placeWinterColony } from "../colony.ts";
import { type DayInRun, engine } from "../day.ts";
import { fullLayout, type Layout, layoutOf, shortestLayout } from "../layout.ts";
import { type Measures, noMeasures } from "../measures.ts";
import { specified } from "../parameters.ts";
import { assumedNoise, type Noise } from "../particles.ts";
import { rateYear } from "../rates.ts";
import { assembledKernel, type Kernel, plainKernel, type Run } from "./kernel.ts";

const length = 730;
const days: readonly DayInRun[] = Array.from({ length }, (_, elapsed) => ({
  dayOfYear: ((304 + elapsed) % 365) + 1,
  elapsed,
}));

/** Everything that can be done to a colony: no patty and a patty, two vapours, a new stock, days without laying. */
function everything(): Measures {
  const measures = noMeasures(length);
  measures.contact.fill(0.6, 30, 90);
  measures.clearing.fill(0.2, 300, 321);
  measures.clearing.fill(30, 500, 501);
  measures.laying.fill(0, 240, 250);
  measures.emerging.fill(0.7, 271);
  measures.emerging.fill(1.3, 290);
  return measures;
}

interface Colony {
  readonly bees: number;
  readonly infestedShare: number;
}

function taken(kernel: Kernel, layout: Layout, colony: Colony, cuts: readonly number[]) {
  const states = new Float64Array(3 * layout.length).fill(7);
  placeWinterColony(states, layout.length, layout, { ...colony, contactRate: 1.7 });
  const seen: number[] = [];
  let from = 0;
  for (const to of [...cuts, length]) {
    kernel.run(states, layout.length, { from, to, particle: 2 ** 31 + 5 });
    seen.push(...kernel.seen.subarray(0, 3 * (to - from)));
    from = to;
  }
  return { states, seen: Float64Array.from(seen) };
}

const bytes = (numbers: Float64Array): string => Buffer.from(numbers.buffer).toString("base64");

describe("kernels", () => {
  const layouts: readonly [string, Layout][] = [
    ["full", fullLayout],
    ["24 ages", layoutOf({ summerAges: 24, winterAges: 24 })],
    ["the fewest ages", shortestLayout(specified)],
    ["odd and even", layoutOf({ summerAges: 20, winterAges: 33 })],
    ["too few to forage", layoutOf({ summerAges: 5, winterAges: 2 })],
  ];
  const noises: readonly [string, Noise | null][] = [
    ["calm", null],
    ["noise", assumedNoise],
  ];
  it.each(layouts.flatMap(([ages, layout]) => noises.map(([air, noise]) => ({ ages, layout, air, noise }))))(
    "[SE100] the program and the plain day give the same bytes: $ages, $air",
    ({ layout, noise }) => {
      for (const measures of [noMeasures(length), everything()])
        for (const colony of [
          { bees: 22000, infestedShare: 0.16 },
          { bees: 22000, infestedShare: 0 },
          { bees: 0, infestedShare: 0 },
        ]) {
          const model = engine({ parameters: specified, layout, rates: rateYear(specified), measures });
          const run: Run = { model, days, seed: 2 ** 40 + 3, noise };
          const program = assembledKernel(run) ?? expect.fail("no WebAssembly here");
          const ours = taken(program, layout, colony, [1, 100, 304]);
          const plain = taken(plainKernel(run), layout, colony, []);
          expect(bytes(ours.states)).toBe(bytes(plain.states));
          expect(bytes(ours.seen)).toBe(bytes(plain.seen));
          // Neighbours in the array are left alone.
          expect([...ours.states.subarray(0, layout.length)].every((each) => each === 7)).toBe(true);
        }
    },
  );

  it("[SE101] the chance of a hazard is that of the library, from the faintest to certain", () => {
    for (let power = -300; power < 3; power += 0.01) {
      const hazard = 10 ** power;
      // Fifteen roundings at most, and beyond a hazard of 4 what the series leaves out.
      expect(Math.abs(chanceOfHazard(hazard) / -Math.expm1(-hazard) - 1), `${hazard}`).toBeLessThan(2e-14);
    }
    expect([chanceOfHazard(0), chanceOfHazard(1e300), chanceOfHazard(Infinity)]).toEqual([0, 1, 1]);
  });
});
