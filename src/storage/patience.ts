/** Tries a transaction again when others stood in its way, a bounded number of times, and says when the database is away. */
import { type Problem, problem } from "../units/index.ts";
import { codeOf, type Engine } from "./engine.ts";

/** The records cannot be used now, and it is nobody's bug: told in words. */
export class StoreTrouble extends Error {
  override name = "StoreTrouble";
  readonly problem: Problem;
  constructor(trouble: Problem) {
    super(`${trouble.code}: ${trouble.slots.reason ?? ""}`);
    this.problem = trouble;
  }
}

const patienceMilliseconds = 10_000;

/**
 * Does the work; when another writer stood in its way, again and again until the engine's tries or ten seconds are
 * spent. Work must be one transaction, since whatever it did before it failed is undone.
 * @throws StoreTrouble when the database is away or stays busy; else whatever the work throws
 */
export async function patiently<T>(engine: Engine, work: () => Promise<T>): Promise<T> {
  const began = Date.now();
  for (let tries = 1; ; tries += 1) {
    try {
      return await work();
    } catch (trouble) {
      if (engine.isDamaged(trouble)) throw new StoreTrouble(damagedRecords(`${engine.name}: ${codeOf(trouble)}`));
      if (engine.isAway(trouble)) throw new StoreTrouble(unavailable(engine, trouble, "which does not answer"));
      if (!engine.isPassing(trouble)) throw trouble;
      if (tries >= engine.mostTries || Date.now() - began > patienceMilliseconds)
        throw new StoreTrouble(unavailable(engine, trouble, "held by other writers"));
      await new Promise((resolve) => setTimeout(resolve, 2 + Math.random() * 10));
    }
  }
}

/** What is kept is not what was written: nobody's bug, and nothing to wait for. */
export const damagedRecords = (reason: string): Problem =>
  problem("records-damaged", "blocked", null, { slots: { reason } });

const unavailable = (engine: Engine, trouble: unknown, wanted: string): Problem => {
  const reason = `${engine.name}, ${wanted}: ${codeOf(trouble) || "connection lost"}`;
  return problem("records-unavailable", "blocked", null, { slots: { reason } });
};
