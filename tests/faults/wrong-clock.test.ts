/** A device whose clock is a day and two hours off: it is told, nothing is corrected, and the clock decides nothing. */
import "fake-indexeddb/auto";
import { IDBFactory } from "fake-indexeddb";
import { describe, expect, it } from "vitest";
import { conflictsOf, fold } from "../../src/casebook/index.ts";
import { verifyChain } from "../../src/journal/index.ts";
import { exchangeOnce, openDeviceStore } from "../../src/storage/device.ts";
import { memoryStore } from "../../src/storage/index.ts";
import { callDrafts, ids } from "../journals/every-kind.ts";
import { serviceFetch } from "../journals/service.ts";
import { tell, tries } from "./count.ts";

const hour = 3_600_000;

describe("a clock that is off", () => {
  it("[SG107] by 26 hours is told; entries keep its time, and of two values neither wins by it", async () => {
    const right = Date.parse("2026-03-09T08:00:00.000Z");
    const rounds = tries(4, 100);
    for (const round of rounds) {
      const hours = (round % 2 ? -1 : 1) * (26 + Math.floor(round / 2));
      const store = memoryStore({ programme: "main" });
      const fetch = serviceFetch({ store, date: new Date(right).toUTCString() });
      const phone = async (device: string, now: number) => {
        globalThis.indexedDB = new IDBFactory();
        return openDeviceStore({ programme: "main", author: device, device, now: () => now });
      };
      const [good, wrong] = [await phone("good", right), await phone("wrong", right + hours * hour)];
      const [, , finding] = callDrafts;
      if (finding?.kind !== "finding-recorded") throw new Error("the story tells a finding");
      await good.record(callDrafts);
      await wrong.record([{ ...finding, data: { ...finding.data, state: "absent" } }]);
      const told = await exchangeOnce({ fetch, base: "/api", store: wrong, now: () => right + hours * hour });
      expect(told.problems).toMatchObject([{ code: "clock-off", slots: { minutes: hours * 60 } }]);
      expect((await exchangeOnce({ fetch, base: "/api", store: good, now: () => right })).problems).toEqual([]);
      await exchangeOnce({ fetch, base: "/api", store: wrong, now: () => right + hours * hour });
      const entries = await store.all();
      expect(verifyChain(entries, await store.heads()).isIntact).toBe(true);
      expect(entries.find(({ header }) => header.device === "wrong")?.header.recordedAt).toBe(
        new Date(right + hours * hour).toISOString(),
      );
      for (const each of [good, wrong]) {
        expect(await each.states()).toEqual(fold(entries));
        expect(conflictsOf(await each.states(), ids.case).map(({ candidates }) => candidates.length)).toEqual([2]);
        await each.close();
      }
    }
    tell({
      fault: "a clock 26 hours off, and more",
      tried: rounds.count(),
      against: "two devices, one slot",
    });
  });
});
