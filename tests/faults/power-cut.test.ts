/** The power fails while SQLite writes: whatever part of the unsynchronised writes reached the disk, what was acknowledged is there. */
import { existsSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import path from "node:path";
import SQLite from "better-sqlite3";
import { afterAll, describe, expect, it } from "vitest";
import { fold } from "../../src/casebook/index.ts";
import { type Entry, headsOf } from "../../src/journal/index.ts";
import { openServerStore, StoreTrouble } from "../../src/storage/server.ts";
import { bee } from "../journals/every-kind.ts";
import { writer } from "../journals/writer.ts";
import { scratch, seeded, tell, tries } from "./count.ts";

const folder = scratch("power");
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** A disk writes a sector whole or not at all. */
const sector = 512;

interface Disk {
  readonly main: Buffer;
  readonly log: Buffer;
  /** Entries acknowledged when this was on the disk. */
  readonly acknowledged: number;
}

const chain = writer({ device: "phone-1" }).write(...Array.from({ length: 200 }, (_, index) => bee(index + 1)));

const pushed = 5;

/** What lay on the disk after each acknowledged push, a checkpoint of SQLite's own among them. */
async function recorded(): Promise<readonly Disk[]> {
  const file = path.join(folder, "recorded.sqlite");
  const store = await openServerStore({ file, programme: "main" });
  const read = (name: string) => (existsSync(name) ? readFileSync(name) : Buffer.alloc(0));
  const disks: Disk[] = [];
  for (let from = 0; from < chain.length; from += pushed) {
    await store.push(chain.slice(from, from + pushed));
    if ((from / pushed) % 7 === 6) {
      // SQLite does this by itself once the log has grown; here sooner.
      const beside = new SQLite(file);
      beside.pragma("wal_checkpoint(PASSIVE)");
      beside.close();
    }
    disks.push({ main: read(file), log: read(`${file}-wal`), acknowledged: from + pushed });
  }
  await store.close();
  return disks;
}

/** The later content where the dice say so, sector by sector; cut off at any byte where the file was growing. */
function torn(before: Buffer, after: Buffer, below: (bound: number) => number): Buffer {
  const made = Buffer.alloc(Math.max(before.length, after.length));
  before.copy(made);
  const odds = below(101);
  for (let at = 0; at < after.length; at += sector)
    if (below(100) < odds) after.copy(made, at, at, Math.min(at + sector, after.length));
  const shortest = Math.min(before.length, after.length);
  return below(2) === 0 ? made.subarray(0, shortest + below(made.length - shortest + 1)) : made;
}

/** Bytes of the header of a log: which log it is. */
const headerBytes = 32;

/**
 * The log while it grows. One that begins anew has its header synchronised before its first frame is written, so that no
 * old header stands before new frames: those of the old log that are left would bring back what was before.
 * @source sqlite3.c as better-sqlite3 ships it, sqlite3WalFrames: "Sync the header (unless SQLITE_IOCAP_SEQUENTIAL is true
 * or unless all syncing is turned off by PRAGMA synchronous=OFF)"
 */
function tornLog(before: Buffer, after: Buffer, below: (bound: number) => number): Buffer {
  const header = after.subarray(0, headerBytes);
  if (before.length === 0 || before.subarray(0, headerBytes).equals(header)) return torn(before, after, below);
  const begun = Buffer.from(before);
  header.copy(begun);
  // Nothing of the new log but its header, or any of its frames after it.
  return below(4) === 0 ? begun : torn(begun, after, below);
}

/**
 * What a cut between two acknowledged pushes can leave. SQLite synchronises the log at every commit, and before it
 * copies the log into the main file; it synchronises that file before the log begins anew.
 */
function afterCut(before: Disk, after: Disk, below: (bound: number) => number): Omit<Disk, "acknowledged"> {
  if (before.main.equals(after.main)) return { main: before.main, log: tornLog(before.log, after.log, below) };
  return below(2) === 0
    ? { main: before.main, log: tornLog(before.log, after.log, below) }
    : { main: torn(before.main, after.main, below), log: after.log };
}

function laid({ main, log }: Omit<Disk, "acknowledged">): string {
  const file = path.join(folder, "cut.sqlite");
  rmSync(`${file}-shm`, { force: true });
  writeFileSync(file, main);
  writeFileSync(`${file}-wal`, log);
  return file;
}

describe("a SQLite file after the power failed", () => {
  const recording = recorded();

  it("[SG101] holds what was acknowledged, whichever of the later writes reached the disk", async () => {
    const disks = await recording;
    expect(disks.some((disk, index) => index > 0 && !disk.main.equals(disks[index - 1]?.main ?? disk.main))).toBe(true);
    const below = seeded(17);
    const rounds = tries(40, 3000);
    for (const tried of rounds) {
      const index = tried < disks.length - 1 ? tried : below(disks.length - 1);
      const [before, after] = [disks[index], disks[index + 1]] as [Disk, Disk];
      const store = await openServerStore({ file: laid(afterCut(before, after, below)), programme: "main" });
      const entries = await store.all();
      expect(entries.length).toBeGreaterThanOrEqual(before.acknowledged);
      expect(entries).toEqual(chain.slice(0, entries.length));
      expect(await store.check(headsOf(chain.slice(0, before.acknowledged)))).toMatchObject({ isIntact: true });
      if (tried % 20 === 0) expect(await store.states()).toEqual(fold(entries));
      expect((await store.push(chain.slice(entries.length, entries.length + 3))).refused).toEqual([]);
      await store.close();
    }
    tell({
      fault: "power cut, SQLite's writes torn",
      tried: rounds.count(),
      against: "5 to 200 entries",
    });
  });

  it("[SG101] of which synchronised parts are gone says so, by the heads that devices keep", async () => {
    const disks = await recording;
    const below = seeded(29);
    const rounds = tries(30, 2000);
    let [named, whole] = [0, 0];
    for (const _ of rounds) {
      const disk = disks[below(disks.length)] as Disk;
      const main = below(2) === 0 ? disk.main : disk.main.subarray(0, below(disk.main.length));
      const log = disk.log.subarray(0, below(disk.log.length + 1));
      const acknowledged: readonly Entry[] = chain.slice(0, disk.acknowledged);
      try {
        const store = await openServerStore({ file: laid({ main, log }), programme: "main" });
        try {
          const { isIntact } = await store.check(headsOf(acknowledged));
          const isThere = JSON.stringify(await store.all().catch(() => null)) === JSON.stringify(acknowledged);
          expect(isIntact).toBe(isThere);
          if (isThere) whole += 1;
          else named += 1;
        } finally {
          await store.close();
        }
      } catch (trouble) {
        if (!(trouble instanceof StoreTrouble)) throw trouble;
        named += 1;
      }
    }
    expect(named).toBeGreaterThan(rounds.count() / 2);
    tell({
      fault: "SQLite's file or log cut off",
      tried: rounds.count(),
      against: `${named} named, ${whole} without effect`,
    });
  });
});
