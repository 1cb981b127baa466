/** Processes that push and processes that bring records up to date, killed at any instant: one suite, run on both databases. */
import { readFileSync } from "node:fs";
import path from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { fold } from "../../src/casebook/index.ts";
import { headsOf, verifyChain } from "../../src/journal/index.ts";
import { expectSome, patience, seeded, tell, tries } from "../faults/count.ts";
import { inStore, isWhole, type Place, recordsIn } from "../faults/place.ts";
import { pause, untilSaid, works } from "../faults/victim.ts";
import { bee, everyKind } from "../journals/every-kind.ts";
import { fork } from "../journals/fork.ts";
import { writer } from "../journals/writer.ts";

export interface KilledSettings {
  readonly name: "SQLite" | "PostgreSQL";
  /** A new, empty place. */
  readonly make: () => Promise<Place>;
  /** Kept store of the oldest shape of this database. */
  readonly oldest: string;
  /** What part of the full counts is tried here. */
  readonly part: number;
}

/** Who pushes, and from which devices. */
const pushers = [
  { work: "alone", who: "pushing processes", seed: 61, full: 350, devicesOf: (name: string) => [name] },
  {
    ...{ work: "together", who: "processes of several members", seed: 24, full: 100 },
    devicesOf: (name: string) => [1, 2, 3, 4].map((number) => `${name}-${number}`),
  },
] as const;

export function killedPushes({ name, make, oldest, part }: KilledSettings): void {
  const places: Place[] = [];
  const newPlace = async (): Promise<Place> => {
    const place = await make();
    places.push(place);
    return place;
  };
  afterAll(() => {
    for (const place of places) place.remove();
  });

  describe(`a store on ${name} whose process goes without a word`, { timeout: patience }, () => {
    it("[SG61] is whole when it is dropped without being closed", async () => {
      const place = await newPlace();
      const entries = writer().write(bee(1), bee(2));
      const records = recordsIn(place);
      const dropped = await records.open("main");
      await dropped.push(entries);
      await inStore(place, async (again) => {
        expect(await again.all()).toEqual(entries);
        expect(await again.states()).toEqual(fold(entries));
      });
      await dropped.close();
      await records.close();
    });

    it.each(pushers)("[SG61] holds everything it acknowledged when two $who are killed (seed $seed)", async (each) => {
      const place = await newPlace();
      await inStore(place, async () => {});
      const below = seeded(each.seed);
      const rounds = tries(1, each.full * part);
      let [acknowledged, killed] = [0, 0];
      for (const round of rounds) {
        const names = [`phone-${round}-a`, `phone-${round}-b`];
        const pushing = names.map((device) => works(place.env, each.work, device));
        // From the first line on, which comes before any push; in every other round from the first acknowledgement on.
        await untilSaid(pushing, (lines) => lines.length > (round % 2 === 0 ? 1 : 0));
        await pause(below(250));
        killed += (await Promise.all(pushing.map((one) => one.kill()))).filter(Boolean).length;
        await place.quiet(); // a commit that was under way is seen by all that is looked at below, or by none

        await inStore(place, async (store) => {
          const heads = await store.heads();
          for (const [index, one] of pushing.entries()) {
            for (const device of each.devicesOf(names[index] ?? "")) {
              const kept = heads.find((head) => head.device === device)?.seq ?? 0;
              expect(kept).toBeGreaterThanOrEqual(one.acknowledged(device));
              expect(kept).toBeLessThanOrEqual(one.acknowledged(device) + 1);
              expect(verifyChain(await store.entriesOf(`specimen of ${device}`), []).checked).toBe(kept);
              acknowledged += one.acknowledged(device);
            }
          }
          if (round % 25 === 24) await isWhole(store);
        });
      }
      await inStore(place, isWhole);
      expect(acknowledged).toBeGreaterThan(rounds.count());
      expect(killed).toBeGreaterThan(0);
      tell({
        fault: `kill −9 of ${each.who}, ${name}`,
        tried: killed,
        against: `${acknowledged} entries acknowledged; seed ${each.seed}`,
      });
    });

    it("[SG102] has all of its old shape or all of its new one when it is killed while it takes steps (seed 102)", async () => {
      const place = await newPlace();
      const old = readFileSync(path.join("tests", "golden", "store", oldest), "utf8");
      const [first, second] = fork();
      const story = [...everyKind(), first];
      await place.run(old);
      const whole = works(place.env, "steps");
      await untilSaid([whole], (lines) => lines.length > 0);
      const began = Date.now();
      await untilSaid([whole], (lines) => lines.includes("done"));
      const took = Date.now() - began;
      expect([await whole.end(), whole.complaints()]).toEqual([0, ""]);
      const below = seeded(102);
      const rounds = tries(1, 150 * part);
      let midway = 0;
      for (const round of rounds) {
        await place.empty();
        await place.run(old);
        const opening = works(place.env, "steps");
        await untilSaid([opening], (lines) => lines.length > 0);
        await pause(below(1.5 * took));
        await opening.kill();
        if (!opening.lines().includes("done")) midway += 1;
        await inStore(place, async (store) => {
          expect(await store.all()).toHaveLength(story.length);
          expect(await store.quarantined()).toEqual([second]);
          expect(await store.states()).toEqual(fold(story));
          expect((await store.check(headsOf(story))).damage).toEqual([]);
          if (round === 0) expect((await store.push(story)).refused).toEqual([]);
        });
      }
      expectSome(midway, rounds);
      tell({
        fault: `kill −9 while a store is brought up to date, ${name}`,
        tried: rounds.count(),
        against: `${midway} before it was done; seed 102`,
      });
    });
  });
}
