/** Backups and restores, killed at any instant: one suite, run on both databases. */
import { existsSync, readdirSync, rmSync } from "node:fs";
import path from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { begun, filled, manifestOf, restoredOf, succeeds, timeOf } from "../faults/backing-up.ts";
import { amount, expectSome, patience, scratch, seeded, tell, tries } from "../faults/count.ts";
import type { Place } from "../faults/place.ts";
import { command, pause } from "../faults/victim.ts";
import type { KilledSettings } from "./killed-pushes-contract.ts";

const count = amount(500, 3000);

export function killedBackups({ name, make, part }: KilledSettings): void {
  describe(`a backup and a restore on ${name} that are killed`, { timeout: patience }, () => {
    const folder = scratch("backups");
    const whole = path.join(folder, "whole.zip");
    const places: Place[] = [];
    /** Files that have not got their names: backups that are being written, or were when they were killed. */
    const isPartial = () => readdirSync(folder).some((name) => name.includes(".zip.part-"));
    let took = 0;
    beforeAll(async () => {
      const place = await make();
      places.push(place);
      await filled(place, count);
      took = await timeOf(command(place.env, "backup", "--output", whole), isPartial);
    }, patience);
    afterAll(() => {
      for (const place of places) place.remove();
      rmSync(folder, { recursive: true, force: true });
    });

    it("[SG103] leave a whole backup or none (seed 103)", async () => {
      expect(manifestOf(whole).entries).toBe(count);
      const below = seeded(103);
      const rounds = tries(1, 100 * part);
      let [none, done, midway] = [0, 0, 0];
      for (const round of rounds) {
        const output = path.join(folder, `backup-${round}.zip`);
        const backing = command(places[0]?.env ?? {}, "backup", "--output", output);
        await begun(backing, isPartial);
        await pause(below(1.2 * took));
        await backing.kill();
        if (existsSync(output)) {
          expect(manifestOf(output).casebook).toEqual(manifestOf(whole).casebook);
          done += 1;
        } else none += 1;
        if (isPartial()) midway += 1;
        for (const left of readdirSync(folder)) if (left.startsWith("backup-")) rmSync(path.join(folder, left));
      }
      expectSome(midway, rounds);
      tell({
        fault: `kill −9 while backing up, ${name}`,
        tried: rounds.count(),
        against: `${none} left none, ${midway} of them midway, ${done} a whole one; seed 103`,
      });
    });

    it("[SG103] leave all the records or none, and the restore can be done again (seed 104)", async () => {
      const into = await make();
      places.push(into);
      const manifest = manifestOf(whole);
      const restore = () => command(into.env, "restore", whole);
      const took = await timeOf(restore(), into.hasAside);
      const below = seeded(104);
      const rounds = tries(1, 100 * part);
      let [none, done, midway] = [0, 0, 0];
      for (const _ of rounds) {
        await into.empty();
        const restoring = restore();
        await begun(restoring, into.hasAside);
        await pause(below(1.2 * took));
        await restoring.kill();
        await into.quiet();
        const isBegun = await into.hasAside();
        const kept = await restoredOf(into, manifest);
        if (kept > 0) done += 1;
        else none += 1;
        if (kept === 0 && isBegun) midway += 1;
        if (kept > 0 || none % 10 !== 1) continue;
        await succeeds(restore());
        expect(await restoredOf(into, manifest)).toBe(count);
      }
      expectSome(midway, rounds);
      tell({
        fault: `kill −9 while restoring, ${name}`,
        tried: rounds.count(),
        against: `${none} left none, ${midway} of them midway, ${done} all; seed 104`,
      });
    });
  });
}
