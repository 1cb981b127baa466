/** The service is killed while a file is sent: what it acknowledged is there, the rest is sent on, and the file is the file. */
import { afterAll, describe, expect, it } from "vitest";
import { amount, patience, seeded, tell, tries } from "../faults/count.ts";
import { inStore, type Place } from "../faults/place.ts";
import { pause, until } from "../faults/victim.ts";
import { attachedDraft, sha256Of, voice } from "../journals/file-story.ts";
import { writer } from "../journals/writer.ts";
import { push, startService } from "../postgres/service.ts";
import type { KilledSettings } from "./killed-pushes-contract.ts";

const part = 8 * 1024;
/** Kills on the way of one file. */
const kills = amount(1, 3);
/** Another file in each round: sound in a WebM, as far as its first bytes tell. */
const soundOf = (round: number): Uint8Array<ArrayBuffer> =>
  Uint8Array.from({ length: 60 * part + 11 }, (_, index) => voice[index] ?? (index * (round + 3) + (index >> 9)) % 256);

/** Sends pieces one after another until it is whole or the service is gone; counts what was acknowledged. */
async function sendOn(
  address: string,
  sound: Uint8Array<ArrayBuffer>,
  acknowledged: { held: number },
): Promise<boolean> {
  const at = `${address}/api/programmes/main/files/${sha256Of(sound)}`;
  try {
    let { held, isWhole } = (await (await fetch(`${at}/standing`)).json()) as { held: number; isWhole: boolean };
    expect(held).toBeGreaterThanOrEqual(acknowledged.held);
    while (!isWhole) {
      const headers = { "content-type": "application/octet-stream" };
      const body = sound.slice(held, held + part);
      const reply = await fetch(`${at}/parts?from=${held}&of=${sound.length}`, { method: "POST", headers, body });
      expect(reply.status).toBe(200);
      ({ held, isWhole } = (await reply.json()) as { held: number; isWhole: boolean });
      acknowledged.held = held;
    }
    return true;
  } catch (trouble) {
    if (trouble instanceof TypeError) return false; // the line is cut
    throw trouble;
  }
}

export function killedUploads({ name, make, part: share }: KilledSettings): void {
  describe(`a service on ${name} that is killed while a file is sent`, { timeout: patience }, () => {
    let place: Place | null = null;
    afterAll(() => place?.remove());

    it("[SG132] has what it acknowledged, takes the rest, and gives back the file (seed 133)", async () => {
      const into = await make();
      place = into;
      const below = seeded(133);
      const rounds = tries(1, 40 * share);
      let cuts = 0;
      for (const round of rounds) {
        const sound = soundOf(round);
        const acknowledged = { held: 0 };
        const entries = writer({ device: `phone-${round}` }).write(attachedDraft(sound, "audio/webm"));
        for (let [isWhole, isPushed, lives] = [false, false, 0]; !isWhole; ) {
          const service = await startService(into.database, into.folder);
          if (!isPushed) isPushed = (await push(service.address, entries)).status === 200;
          const sending = sendOn(service.address, sound, acknowledged);
          // Killed at some byte on the way, a few times; then left to finish.
          const target = acknowledged.held + 1 + below(15 * part);
          let isOver = false;
          sending.finally(() => {
            isOver = true;
          });
          if (lives < kills) {
            await until(
              () => isOver || acknowledged.held >= target,
              () => `${acknowledged.held} bytes acknowledged, not ${target}; the service said ${service.said()}`,
            );
            await pause(below(8));
          } else await sending;
          expect(service.isOver(), service.said()).toBe(false); // it has not broken by itself
          await service.kill();
          isWhole = await sending;
          if (!isWhole) cuts += 1;
          lives += 1;
        }
        await inStore(into, async (store) => {
          expect(Buffer.from((await store.files.read(sha256Of(sound)))?.bytes ?? []).equals(sound)).toBe(true);
          expect(await store.check()).toMatchObject({ isIntact: true, damage: [], files: { waiting: [] } });
        });
      }
      expect(cuts).toBeGreaterThanOrEqual(rounds.count());
      tell({
        fault: `kill −9 of the service while a file is sent, ${name}`,
        tried: cuts,
        against: `${rounds.count()} files of ${60 * part} bytes; seed 133`,
      });
    });
  });
}
