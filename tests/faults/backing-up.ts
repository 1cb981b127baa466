/** What tests of backups and restores that are cut off need: a place that is filled, and what came of it. */
import { expect } from "vitest";
import { type BackupManifest, readBackup } from "../../src/storage/server.ts";
import { bee } from "../journals/every-kind.ts";
import { writer } from "../journals/writer.ts";
import { inStore, type Place } from "./place.ts";
import { hasEnded, until, type Victim } from "./victim.ts";

/** Fills a place with as many entries, fifty to a specimen. */
export const filled = (place: Place, entries: number): Promise<void> =>
  inStore(place, async (store) => {
    const phone = writer();
    for (let from = 0; from < entries; from += 50)
      await store.push(
        phone.write(
          ...Array.from({ length: 50 }, (_, index) => ({
            ...bee(index + 1),
            about: [`specimen-${from}`, "reading-1"],
          })),
        ),
      );
  });

/** Waits until a command has begun its work, or is over already. */
export const begun = (running: Victim, hasBegun: () => boolean | Promise<boolean>): Promise<void> =>
  until(
    async () => hasEnded(running.child) || (await hasBegun()),
    () => `a command does not begin; it complained ${running.complaints()}`,
  );

/** Milliseconds that a command takes from when it has begun, when nothing stands in its way. */
export async function timeOf(running: Victim, hasBegun: () => boolean | Promise<boolean>): Promise<number> {
  await begun(running, hasBegun);
  const began = Date.now();
  await succeeds(running);
  return Date.now() - began;
}

/** Expects that a command ends well, without a complaint. */
export async function succeeds(running: Victim): Promise<void> {
  expect([await running.end(), running.complaints()]).toEqual([0, ""]);
}

/** How many entries are here after a restore that may have been cut off: none, or what the backup says, all of it. */
export const restoredOf = (place: Place, manifest: BackupManifest): Promise<number> =>
  inStore(place, async (store) => {
    const kept = (await store.all()).length;
    expect([0, manifest.entries]).toContain(kept);
    expect((await store.check()).damage).toEqual([]);
    if (kept > 0) expect(await store.fingerprint(kept)).toBe(manifest.casebook.hash);
    return kept;
  });

export const manifestOf = (file: string): BackupManifest => {
  const read = readBackup(file);
  if (!read.ok) throw new Error(`${file} is not whole`);
  return read.value;
};
