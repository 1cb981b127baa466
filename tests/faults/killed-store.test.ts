/** Processes killed at any instant: what was acknowledged is there, and what was half done is whole or was never. */
import { copyFileSync, existsSync, readdirSync, readFileSync, rmSync } from "node:fs";
import path from "node:path";
import SQLite from "better-sqlite3";
import { afterAll, describe, expect, it } from "vitest";
import { fold } from "../../src/casebook/index.ts";
import { headsOf, verifyChain } from "../../src/journal/index.ts";
import { inFolder, openServerStore, readBackup, type ServerStore } from "../../src/storage/server.ts";
import { bee, everyKind } from "../journals/every-kind.ts";
import { fork } from "../journals/fork.ts";
import { writer } from "../journals/writer.ts";
import { isFull, scratch, seeded, tell, tries } from "./count.ts";
import { pause, until, victim, works } from "./victim.ts";

const folder = scratch("killed");
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const cli = path.resolve("src", "views", "cli", "skepsis.ts");

/** Everything about a store that can be held against something else. */
async function isWhole(store: ServerStore): Promise<void> {
  const entries = await store.all();
  expect(await store.check()).toMatchObject({ isIntact: true, checked: entries.length });
  expect(await store.states()).toEqual(fold(entries));
  expect((await store.pull(0, Number.MAX_SAFE_INTEGER - 1)).cursor).toBe(entries.length);
}

describe("a store whose process goes without a word", () => {
  it("[SG61] is whole when it is dropped without being closed", async () => {
    const file = path.join(folder, "dropped.sqlite");
    const entries = writer().write(bee(1), bee(2));
    const dropped = await openServerStore({ file, programme: "main" });
    await dropped.push(entries);
    const again = await openServerStore({ file, programme: "main" });
    expect(await again.all()).toEqual(entries);
    expect(await again.states()).toEqual(fold(entries));
    await again.close();
    await dropped.close();
  });

  it("[SG61] holds everything it acknowledged when two pushing processes are killed at any instant", async () => {
    const file = path.join(folder, "killed.sqlite");
    await (await openServerStore({ file, programme: "main" })).close();
    const below = seeded(61);
    const rounds = tries(2, 350);
    let acknowledged = 0;
    for (const round of rounds) {
      const devices = [`phone-${round}-a`, `phone-${round}-b`];
      const pushers = devices.map((device) => works("push", file, device));
      const all = () => pushers.every((pusher) => pusher.lines().length > 0);
      expect(await until(all)).toBe(true);
      await pause(below(250));
      await Promise.all(pushers.map((pusher) => pusher.kill()));

      const store = await openServerStore({ file, programme: "main" });
      const heads = await store.heads();
      for (const [index, pusher] of pushers.entries()) {
        const device = devices[index] ?? "";
        const kept = heads.find((head) => head.device === device)?.seq ?? 0;
        expect(kept).toBeGreaterThanOrEqual(pusher.acknowledged());
        expect(kept).toBeLessThanOrEqual(pusher.acknowledged() + 1);
        expect(verifyChain(await store.entriesOf(`specimen of ${device}`), []).checked).toBe(kept);
        acknowledged += pusher.acknowledged();
      }
      if (round % 25 === 1) await isWhole(store);
      await store.close();
    }
    const store = await openServerStore({ file, programme: "main" });
    await isWhole(store);
    await store.close();
    expect(acknowledged).toBeGreaterThan(rounds.count());
    tell({
      fault: "kill −9 of pushing processes",
      tried: 2 * rounds.count(),
      against: `${acknowledged} entries acknowledged`,
    });
  });

  it("[SG102] has all of its old shape or all of its new one when it is killed while it takes steps", async () => {
    const old = path.join(folder, "old.sqlite");
    const raw = new SQLite(old);
    raw.exec(readFileSync(path.join("tests", "golden", "store", "sqlite-shape-1.sql"), "utf8"));
    raw.close();
    const [first, second] = fork();
    const story = [...everyKind(), first];
    const below = seeded(102);
    const rounds = tries(2, 150);
    let midway = 0;
    for (const round of rounds) {
      const file = path.join(folder, `old-${round}.sqlite`);
      copyFileSync(old, file);
      const opening = works("migrate", file);
      await until(() => opening.lines().length > 0);
      await pause(below(25));
      if (opening.acknowledged() === 0) midway += 1;
      await opening.kill();
      const store = await openServerStore({ file, programme: "main" });
      expect(await store.all()).toHaveLength(story.length);
      expect(await store.quarantined()).toEqual([second]);
      expect(await store.states()).toEqual(fold(story));
      expect((await store.check(headsOf(story))).damage).toEqual([]);
      await store.close();
      for (const ending of ["", "-wal", "-shm"]) rmSync(`${file}${ending}`, { force: true });
    }
    tell({
      fault: "kill −9 while a store is brought up to date",
      tried: rounds.count(),
      against: `${midway} before it was done`,
    });
  });
});

describe("a backup and a restore that are killed", () => {
  const data = path.join(folder, "data");
  const count = isFull ? 3000 : 500;
  const filled = async () => {
    const store = await inFolder(data).open("main");
    const phone = writer();
    for (let from = 0; from < count; from += 50)
      await store.push(
        phone.write(
          ...Array.from({ length: 50 }, (_, index) => ({
            ...bee(index + 1),
            about: [`specimen-${from}`, "reading-1"],
          })),
        ),
      );
    await store.close();
  };
  const made = path.join(folder, "whole.zip");

  it("[SG103] leave a whole backup or none", async () => {
    await filled();
    const whole = victim([cli, "backup", "--output", made], { SKEPSIS_DATA: data });
    const began = Date.now();
    await until(whole.isOver);
    const took = Date.now() - began;
    expect(readBackup(made)).toMatchObject({ ok: true, value: { entries: count } });
    const below = seeded(103);
    const rounds = tries(1, 100);
    let [none, done] = [0, 0];
    for (const round of rounds) {
      const output = path.join(folder, `backup-${round}.zip`);
      const backing = victim([cli, "backup", "--output", output], { SKEPSIS_DATA: data });
      await pause(took / 3 + below(took));
      await backing.kill();
      if (existsSync(output)) {
        expect(readBackup(output)).toMatchObject({ ok: true, value: { entries: count } });
        done += 1;
      } else none += 1;
      for (const name of readdirSync(folder)) if (name.startsWith("backup-")) rmSync(path.join(folder, name));
    }
    tell({
      fault: "kill −9 while backing up",
      tried: rounds.count(),
      against: `${none} left none, ${done} a whole one`,
    });
  });

  it("[SG103] leave all the records or none, and the restore can be done again", async () => {
    const into = path.join(folder, "into");
    const env = { SKEPSIS_DATA: into };
    const below = seeded(104);
    const rounds = tries(2, 100);
    let [none, done] = [0, 0];
    let took = 1500;
    for (const round of rounds) {
      rmSync(into, { recursive: true, force: true });
      const restoring = victim([cli, "restore", made], env);
      const began = Date.now();
      if (round === 0) {
        await until(restoring.isOver);
        took = Date.now() - began;
      } else {
        await pause(took / 3 + below(took));
        await restoring.kill();
      }
      const store = await inFolder(into).open("main");
      const kept = await store.all();
      expect([0, count]).toContain(kept.length);
      expect((await store.check()).damage).toEqual([]);
      await store.close();
      if (kept.length === count) done += 1;
      else {
        none += 1;
        if (none % 10 === 1) {
          await until(victim([cli, "restore", made], env).isOver);
          const again = await inFolder(into).open("main");
          expect(await again.all()).toHaveLength(count);
          await again.close();
        }
      }
    }
    tell({
      fault: "kill −9 while restoring",
      tried: rounds.count(),
      against: `${none} left none, ${done} all`,
    });
  });
});
