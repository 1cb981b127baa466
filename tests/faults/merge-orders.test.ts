/** Two and three devices that were offline for days over the same colonies: in whatever order they meet, all end alike. */
import "fake-indexeddb/auto";
import { IDBFactory } from "fake-indexeddb";
import { describe, expect, it } from "vitest";
import { type Casebook, conflictsOf, fold, rootOf } from "../../src/casebook/index.ts";
import { canonicalJson, type Entry, type EntryDraft } from "../../src/journal/index.ts";
import { type DeviceStore, exchangeOnce, openDeviceStore } from "../../src/storage/device.ts";
import { memoryStore } from "../../src/storage/index.ts";
import { apiaryDrafts, callDrafts, ids } from "../journals/every-kind.ts";
import { serviceFetch } from "../journals/service.ts";
import { writer } from "../journals/writer.ts";
import { seeded, tell, tries } from "./count.ts";

const finding = (id: string, state: "present" | "absent" | "not-looked", day: string): EntryDraft => ({
  kind: "finding-recorded",
  at: day,
  about: [ids.case, ids.colonyOne],
  data: { colony: ids.colonyOne, finding: id, state, on: day },
});

/** What each device writes while it is away: the same slots, corrections and withdrawals among them. */
function away(): readonly (readonly Entry[])[] {
  const office = writer({ device: "office", author: "Office" });
  const first = office.write(...apiaryDrafts.slice(0, 3), ...callDrafts);
  const seen = first.find(({ header }) => header.kind === "finding-recorded")?.header.id ?? "";
  const yard = writer({ device: "yard", author: "Yard", from: "2026-03-10T06:00:00.000Z" });
  const bench = writer({ device: "bench", author: "Bench", from: "2026-03-08T06:00:00.000Z" });
  return [
    [...first, ...office.write(finding("k_wing", "present", "2026-03-11"))],
    [
      ...yard.write(finding("k_wing", "absent", "2026-03-11")),
      ...yard.write({ ...finding("crawlers", "absent", "2026-03-10"), replaces: [seen] }),
      ...yard.write({
        kind: "colony-state-recorded",
        at: "2026-03-12",
        about: [ids.case, ids.colonyOne],
        data: { colony: ids.colonyOne, state: "dead", on: "2026-03-12" },
      }),
    ],
    [
      ...bench.write({
        kind: "entry-withdrawn",
        at: "2026-03-09",
        about: [ids.case],
        replaces: [seen],
        data: { reason: "another case" },
      }),
      ...bench.write(finding("k_wing", "present", "2026-03-11")),
    ],
  ];
}

/** A meeting: this device writes its next entries, or exchanges. */
type Step = { readonly device: number; readonly does: "write" | "exchange" };

/** A schedule from a seed: every device writes all it has, one entry a time, and meets the service in between at will. */
function schedule(pieces: readonly (readonly Entry[])[], below: (bound: number) => number): readonly Step[] {
  const left = pieces.map((own) => own.length);
  const steps: Step[] = [];
  while (left.some((count) => count > 0)) {
    const device = below(pieces.length);
    const does = below(3) === 0 || (left[device] ?? 0) === 0 ? "exchange" : "write";
    if (does === "write") left[device] = (left[device] ?? 0) - 1;
    steps.push({ device, does });
  }
  // The last rounds in any order, until everybody has everything.
  const order = pieces.map((_, index) => index).sort(() => below(3) - 1);
  return [...steps, ...[...order, ...order].map((device) => ({ device, does: "exchange" as const }))];
}

const conflicts = (casebook: Casebook) => conflictsOf(casebook, ids.case).map(({ slot }) => slot.join(" "));

describe("devices that were offline for days over the same colonies", () => {
  it("[SG105] end with one casebook and the same conflicts, in whatever order they exchange", async () => {
    const below = seeded(105);
    const rounds = tries(12, 10_000);
    const seenOrders = new Set<string>();
    const all = away();
    for (const round of rounds) {
      const pieces = round % 3 === 0 ? all.slice(0, 2) : all;
      const expected = fold(pieces.flat());
      const store = memoryStore({ programme: "main" });
      const fetch = serviceFetch({ store });
      const phones: DeviceStore[] = [];
      for (let index = 0; index < pieces.length; index += 1) {
        globalThis.indexedDB = new IDBFactory();
        phones.push(await openDeviceStore({ programme: "main", author: "x", device: `held-${index}` }));
      }
      const next = pieces.map(() => 0);
      const steps = schedule(pieces, below);
      seenOrders.add(steps.map(({ device, does }) => `${device}${does[0]}`).join(""));
      for (const { device, does } of steps) {
        const phone = phones[device] as DeviceStore;
        if (does === "write") {
          const entry = pieces[device]?.[next[device] ?? 0] as Entry;
          next[device] = (next[device] ?? 0) + 1;
          expect((await phone.push([entry])).refused).toEqual([]);
        } else expect(await exchangeOnce({ fetch, base: "/api", store: phone })).toMatchObject({ refused: [] });
      }
      for (const phone of phones) {
        const states = await phone.states();
        expect(canonicalJson(states)).toBe(canonicalJson(expected));
        expect(await phone.unsentCount()).toBe(0);
        await phone.close();
      }
      if (pieces.length === 3) expect(conflicts(await store.states())).toContain(`findings ${ids.colonyOne} k_wing`);
      expect(canonicalJson(await store.states())).toBe(canonicalJson(expected));
    }
    tell({
      fault: "devices offline for days, exchanged in other orders",
      tried: rounds.count(),
      against: `${seenOrders.size} different orders`,
    });
  });

  it("[SG105] and the fold of every order of all their entries is the same", () => {
    const entries = away()
      .flat()
      .filter((entry) => rootOf(entry) === ids.case);
    const expected = canonicalJson(fold(entries));
    const below = seeded(7);
    const rounds = tries(100, 10_000);
    for (const _ of rounds) {
      const shuffled = [...entries];
      for (let at = shuffled.length - 1; at > 0; at -= 1) {
        const other = below(at + 1);
        [shuffled[at], shuffled[other]] = [shuffled[other] as Entry, shuffled[at] as Entry];
      }
      expect(canonicalJson(fold(shuffled))).toBe(expected);
    }
    tell({
      fault: "entries folded in other orders",
      tried: rounds.count(),
      against: `${entries.length} entries`,
    });
  });
});
