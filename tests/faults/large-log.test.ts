/** SQLite's log is large when its process is killed, or is just copied into the file: the next opening has everything. */
import { existsSync, mkdtempSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { patience, seeded, tell, tries } from "./count.ts";
import { folderPlace, inStore, isWhole, type Place } from "./place.ts";
import { pause, until, works } from "./victim.ts";

const mebibyte = 2 ** 20;
const sizeOf = (file: string): number => statSync(file, { throwIfNoEntry: false })?.size ?? 0;

describe("a SQLite file whose log is large", { timeout: patience }, () => {
  const places: Place[] = [];
  afterAll(() => {
    for (const place of places) place.remove();
  });

  it("[SG117] is opened with everything after a kill, leaves no log when it is closed, and its log has an end (seed 117)", async () => {
    const below = seeded(117);
    const rounds = tries(2, 30);
    let [acknowledged, largest] = [0, 0];
    for (const round of rounds) {
      // On the disk: memory that stands in for one may be smaller than the log.
      const place = await folderPlace(mkdtempSync(path.join(tmpdir(), "skepsis-log-")));
      places.push(place);
      const file = path.join(place.folder, "main.sqlite");
      const log = `${file}-wal`;
      const isCopied = round % 2 === 1;
      const target = (32 + below(28)) * mebibyte;
      const pushing = works(place.env, "alone", "phone-1");
      const isThere = isCopied ? () => sizeOf(file) > mebibyte / 4 : () => sizeOf(log) >= target;
      await until(isThere, () => `the log has ${sizeOf(log)} bytes, the file ${sizeOf(file)}`, 60_000);
      if (isCopied) await pause(below(500)); // it goes on in the log from its beginning
      expect(await pushing.kill()).toBe(true);
      largest = Math.max(largest, sizeOf(log));
      // Sixteen thousand pages of 4 KiB, and what the push that went beyond them wrote.
      expect(sizeOf(log)).toBeLessThan(66 * mebibyte);
      if (!isCopied) expect(sizeOf(file)).toBeLessThan(mebibyte / 4);
      await inStore(place, async (store) => {
        const kept = (await store.all()).length;
        expect(kept).toBeGreaterThanOrEqual(pushing.acknowledged("phone-1"));
        expect(kept).toBeLessThanOrEqual(pushing.acknowledged("phone-1") + 1);
        await isWhole(store);
      });
      expect(existsSync(log)).toBe(false);
      acknowledged += pushing.acknowledged("phone-1");
      place.remove();
    }
    tell({
      fault: "kill −9 of a process whose SQLite log is large",
      tried: rounds.count(),
      against: `${acknowledged} entries acknowledged, logs of up to ${Math.round(largest / mebibyte)} MiB; seed 117`,
    });
  });
});
