/** Chunks of many colonies: neither order nor cut changes a colony's seed. */
import { expect, it } from "vitest";
import { chiSquare } from "../../../numerics/index.ts";
import { chunkPlan } from "./chunk-plan.ts";
import { colonyForecast } from "./forecast.ts";

const names = (count: number) => Array.from({ length: count }, (_, each) => `colony ${each}`);
const seedsOf = (colonies: readonly string[], size: number, seed = 1) =>
  Object.fromEntries(
    chunkPlan(colonies, { size, seed }).flatMap((chunk) => chunk.colonies.map((each) => [each.colony, each.seed])),
  );

it("[SE106] every colony stands in one chunk, and order and cut change no seed; another run has others", () => {
  const colonies = names(101);
  const seeds = seedsOf(colonies, 10);
  expect(Object.keys(seeds)).toHaveLength(101);
  expect(seedsOf(colonies.toReversed(), 7)).toEqual(seeds);
  expect(seedsOf(colonies.slice(30, 40), 100)).toEqual(
    Object.fromEntries(colonies.slice(30, 40).map((colony) => [colony, seeds[colony]])),
  );
  expect(chunkPlan(colonies, { size: 10, seed: 1 }).map(({ colonies: each }) => each.length)).toEqual([
    ...new Array<number>(10).fill(10),
    1,
  ]);
  const others = seedsOf(colonies, 10, 2);
  expect(colonies.every((colony) => others[colony] !== seeds[colony])).toBe(true);
});

it("[SE106] a chunk reckoned again, alone, gives the same bytes", () => {
  const [, second] = chunkPlan(names(6), { size: 3, seed: 7 });
  const reckoned = () =>
    second?.colonies.map(({ seed }) =>
      colonyForecast({
        site: {},
        start: { date: "2026-08-01", bees: 30_000, infestedShare: 0.08, brood: "usual" },
        ...{ actions: [], until: "2026-09-15", counts: [], draws: 100, seed },
      }),
    );
  expect(reckoned()).toEqual(reckoned());
});

it("[SE106] seeds are far apart: none twice in two hundred thousand, low bits even, all whole", () => {
  const seeds = Object.values(seedsOf(names(200_000), 1000));
  expect(new Set(seeds).size).toBe(200_000);
  expect(seeds.every((seed) => Number.isSafeInteger(seed) && seed >= 0)).toBe(true);
  const tally = new Int32Array(64);
  for (const seed of seeds) tally[seed % 64] = (tally[seed % 64] as number) + 1;
  const chi = tally.reduce((sum, each) => sum + (each - 3125) ** 2 / 3125, 0);
  expect(chiSquare({ df: 63 }).sf(chi)).toBeGreaterThan(1e-4);
});

it("[SE106] what cannot be planned is refused", () => {
  expect(() => chunkPlan(["a", "a"], { size: 1, seed: 1 })).toThrow("colonies");
  expect(() => chunkPlan(["a"], { size: 0, seed: 1 })).toThrow("size");
  expect(() => chunkPlan(["a"], { size: 1, seed: 0.5 })).toThrow("seed");
  expect(chunkPlan([], { size: 5, seed: 1 })).toEqual([]);
});
