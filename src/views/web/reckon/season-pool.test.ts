/** The pool of a device: how many workers, and the same answer where it can start none. */
import { expect, it } from "vitest";
import { dynamics } from "../../../reasoning/index.ts";
import { seasonPool, workersFor } from "./season-pool.ts";

it("leaves a core to the page, never begins one worker for nothing, and stays small", () => {
  expect([undefined, Number.NaN, 0, 1, 2, 3, 4, 5, 8, 64].map(workersFor)).toEqual([1, 1, 1, 1, 2, 2, 3, 4, 4, 4]);
});

it("[SE107] reckons here where workers cannot start others, with the same bytes, and hears a stop between pieces", async () => {
  const question: dynamics.ChoicesQuestion = {
    site: {},
    start: { date: "2026-08-01", bees: 30_000, infestedShare: 0.08, brood: "usual" },
    actions: [],
    counts: [],
    decideOn: "2026-08-25",
    until: "2026-11-15",
    draws: 101,
    seed: 3,
    choices: [{ name: "menthol", actions: [{ kind: "menthol", from: "2026-09-01" }] }],
  };
  const pool = seasonPool(8);
  expect(pool.threads).toHaveLength(1);
  const alone = dynamics.compareChoices(question, { every: 3 });
  expect(await dynamics.compareInThreads(question, { every: 3 }, pool)).toEqual(alone);
  let isStopped = false;
  setTimeout(() => {
    isStopped = true;
  }, 0);
  expect(await dynamics.compareInThreads(question, { every: 3 }, pool, { isStopped: () => isStopped })).toBeNull();
});
