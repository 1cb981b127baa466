/** One byte of the store is another one: what is read is what was written, or the damage is told. */
import { readFileSync, rmSync, writeFileSync } from "node:fs";
import path from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { canonicalJson, type Entry } from "../../src/journal/index.ts";
import { openServerStore, type ServerStore, StoreTrouble } from "../../src/storage/server.ts";
import { bee, everyKind } from "../journals/every-kind.ts";
import { fork } from "../journals/fork.ts";
import { writer } from "../journals/writer.ts";
import { scratch, seeded, tell, tries } from "./count.ts";

const folder = scratch("flipped");
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const whole = path.join(folder, "whole.sqlite");
const bees = writer({ device: "bench-1" }).write(...Array.from({ length: 60 }, (_, index) => bee(index + 1)));
const story: readonly Entry[] = [...everyKind(), ...bees, ...fork()];

/** Everything that a store gives to whoever asks. */
async function given(store: ServerStore): Promise<string> {
  const [entries, heads, states, apart, page] = [
    await store.all(),
    await store.heads(),
    await store.states(),
    await store.quarantined(),
    await store.pull(0, 5000),
  ];
  return canonicalJson([entries, heads, states, apart, page] as unknown as Entry[]);
}

/** What became of a store that was opened and read to the end. */
async function outcome(file: string, expected: string): Promise<"same" | "named" | "silent"> {
  try {
    const store = await openServerStore({ file, programme: "main" });
    try {
      const report = await store.check();
      if (report.damage.length > 0 || report.faults.length > 0) return "named";
      return (await given(store)) === expected ? "same" : "silent";
    } finally {
      await store.close();
    }
  } catch (trouble) {
    if (trouble instanceof StoreTrouble) return "named";
    throw trouble;
  }
}

describe("a store with one byte flipped", () => {
  it("[SG100] gives what was written, or says that it is damaged; nothing changes in silence", async () => {
    const store = await openServerStore({ file: whole, programme: "main" });
    await store.push(story);
    const expected = await given(store);
    await store.close();
    const bytes = readFileSync(whole);
    const below = seeded(20261127);
    const rounds = tries(120, 20_000);
    const found = { same: 0, named: 0, silent: 0 };
    for (const _ of rounds) {
      const file = path.join(folder, "flipped.sqlite");
      const at = below(bytes.length);
      const flipped = Buffer.from(bytes);
      flipped[at] = (flipped[at] ?? 0) ^ (1 << below(8));
      for (const ending of ["-wal", "-shm"]) rmSync(`${file}${ending}`, { force: true });
      writeFileSync(file, flipped);
      const became = await outcome(file, expected);
      found[became] += 1;
      expect(became, `byte ${at}`).not.toBe("silent");
    }
    expect(found.named).toBeGreaterThan(rounds.count() / 4);
    tell({
      fault: "one bit flipped in the SQLite file",
      tried: rounds.count(),
      against: `${found.named} named, ${found.same} without effect`,
    });
  });
});
