/** Files on the device and on their way: beside their entry, after all entries, on from where a cut left off. */
import "fake-indexeddb/auto";
import { rmSync } from "node:fs";
import { IDBFactory } from "fake-indexeddb";
import { afterAll, afterEach, beforeEach, describe, expect, it } from "vitest";
import { scratch, seeded } from "../../tests/faults/count.ts";
import { bee, callDrafts } from "../../tests/journals/every-kind.ts";
import { attachedDraft, photo, sha256Of, voice } from "../../tests/journals/file-story.ts";
import { writer } from "../../tests/journals/writer.ts";
import { openProgrammes, service } from "../views/service/index.ts";
import { type DeviceStore, exchangeOnce, fetchFile, openDeviceStore, removeWhatWasSent } from "./device.ts";
import { databaseName } from "./indexed-db.ts";
import type { ServerStore } from "./server.ts";

const folder = scratch("device-files");
afterAll(() => rmSync(folder, { recursive: true, force: true }));
beforeEach(() => {
  globalThis.indexedDB = new IDBFactory();
});
const closers: (() => Promise<unknown>)[] = [];
afterEach(async () => {
  for (const close of closers.splice(0)) await close();
});

/** Sound that goes in several pieces. */
const long = Uint8Array.from({ length: 300_000 }, (_, index) => voice[index] ?? (index * 31 + (index >> 7)) % 256);
const fileOf = (bytes: Uint8Array<ArrayBuffer>, mediaType: "image/jpeg" | "audio/webm" = "audio/webm") => ({
  ...{ sha256: sha256Of(bytes), mediaType, bytes },
});
const attach = (store: DeviceStore, bytes: Uint8Array<ArrayBuffer> = long, mediaType?: "image/jpeg") =>
  store.record([attachedDraft(bytes, mediaType ?? "audio/webm")], [fileOf(bytes, mediaType)]);

async function open(device = "phone-1"): Promise<DeviceStore> {
  const store = await openDeviceStore({ programme: "main", author: "R. Vale", device });
  closers.push(() => store.close());
  return store;
}

type Asked = { readonly method: string; readonly path: string };

let services = 0;
/** A service, and a way to it that may be cut before or after a request came through. */
async function running(): Promise<{
  readonly store: ServerStore;
  readonly asked: Asked[];
  readonly cut: { before: (asked: Asked) => boolean; after: (asked: Asked) => boolean };
  readonly fetch: typeof fetch;
}> {
  services += 1;
  const programmes = openProgrammes(`${folder}/${services}`);
  const app = await service({ version: "0", programmes, page: null, port: () => 80 });
  closers.push(() => app.close());
  const asked: Asked[] = [];
  const cut = { before: (_: Asked) => false, after: (_: Asked) => false };
  const ask: typeof fetch = async (input, init) => {
    const request = { method: init?.method ?? "GET", path: String(input) };
    asked.push(request);
    if (cut.before(request)) throw new TypeError("Failed to fetch");
    const body = init?.body;
    const reply = await app.inject({
      ...{ method: request.method as "GET", url: request.path },
      headers: { host: "localhost", ...(init?.headers as Record<string, string>) },
      ...(body === undefined || body === null
        ? {}
        : { payload: typeof body === "string" ? body : Buffer.from(body as Uint8Array) }),
    });
    if (cut.after(request)) throw new TypeError("Failed to fetch");
    return new Response(new Uint8Array(reply.rawPayload), { status: reply.statusCode });
  };
  return { store: await programmes.open("main"), asked, cut, fetch: ask };
}

const heldBy = async (store: ServerStore, bytes: Uint8Array) =>
  Buffer.from((await store.files.read(sha256Of(bytes)))?.bytes ?? []).equals(bytes);

describe("files on the device", () => {
  it("[SG126] stand beside their entry in one transaction, or neither does", async () => {
    const store = await open();
    await attach(store);
    expect(Buffer.from((await store.file(sha256Of(long)))?.bytes ?? []).equals(long)).toBe(true);
    expect(store.snapshot()).toMatchObject({ unsentCount: 1, unsentFiles: 1 });
    const unfit = { ...attachedDraft(photo, "image/jpeg"), data: { sha256: "no hash" } } as never;
    await expect(store.record([unfit], [fileOf(photo, "image/jpeg")])).rejects.toThrow();
    expect(await store.file(sha256Of(photo))).toBeNull();
    expect(store.snapshot()).toMatchObject({ unsentCount: 1, unsentFiles: 1 });
  });

  it("[SG126] are both undone when the device is cut off after the file and before the entry", async () => {
    const store = await open();
    const original = IDBObjectStore.prototype.put;
    for (const lost of ["entries", "states", "device"]) {
      IDBObjectStore.prototype.put = function (...given) {
        if (this.name === lost) throw new DOMException("cut off", "AbortError");
        return original.apply(this, given);
      };
      try {
        await expect(attach(store)).rejects.toThrow();
      } finally {
        IDBObjectStore.prototype.put = original;
      }
      expect([lost, await store.all(), await store.file(sha256Of(long))]).toEqual([lost, [], null]);
    }
    await attach(store);
    expect(store.snapshot()).toMatchObject({ unsentCount: 1, unsentFiles: 1 });
  });

  it("[SG126] are there when the store is opened again, also one that an older version made", async () => {
    const old = indexedDB.open(databaseName("main"), 1);
    await new Promise((resolve, reject) => {
      old.onerror = reject;
      old.onsuccess = resolve;
      old.onupgradeneeded = () => {
        const entries = old.result.createObjectStore("entries", { keyPath: "id" });
        entries.createIndex("by-place", ["device", "seq"], { unique: true });
        entries.createIndex("by-root", "root");
        entries.createIndex("by-position", "position", { unique: true });
        entries.createIndex("by-unsent", "unsent");
        old.result.createObjectStore("heads", { keyPath: "device" });
        old.result.createObjectStore("states", { keyPath: "root" }).createIndex("by-position", "position");
        old.result.createObjectStore("erased", { keyPath: ["id", "root"] });
        old.result.createObjectStore("quarantine", { keyPath: "hash" });
        old.result.createObjectStore("device");
        old.result.createObjectStore("kept-by-test");
      };
    });
    old.result.close();
    const store = await open();
    await store.record(callDrafts);
    await attach(store);
    await store.close();
    const again = await open();
    expect(await again.all()).toHaveLength(callDrafts.length + 1);
    expect(again.snapshot().unsentFiles).toBe(1);
  });

  it("[SG128] one that is not this member's to send is told, and the others go on", async () => {
    const { store, fetch } = await running();
    const phone = await open();
    await attach(phone);
    await attach(phone, photo, "image/jpeg");
    const refusing: typeof fetch = async (input, init) =>
      String(input).includes(sha256Of(long)) ? new Response("{}", { status: 403 }) : fetch(input, init);
    const report = await exchangeOnce({ fetch: refusing, base: "/api", store: phone });
    expect(report.problems.map(({ code }) => code)).toContain("file-not-taken");
    expect(await heldBy(store, photo)).toBe(true);
    expect(await heldBy(store, long)).toBe(false);
    // It is not given up: another member, or a later right, may let it go.
    expect((await phone.unsentFiles()).map(({ sha256 }) => sha256)).toEqual([sha256Of(long)]);
  });

  it("[SG127] go after all entries, and the service has them whole", async () => {
    const { store, asked, fetch } = await running();
    const phone = await open();
    await attach(phone);
    await attach(phone, photo, "image/jpeg");
    await phone.record([bee(1)]);
    expect(await exchangeOnce({ fetch, base: "/api", store: phone })).toMatchObject({ sent: 3, filesSent: 2 });
    const kinds = asked.map(({ path }) => (path.includes("/files/") ? "file" : "entries"));
    expect(kinds.lastIndexOf("entries")).toBeLessThan(kinds.indexOf("file"));
    expect([await heldBy(store, long), await heldBy(store, photo)]).toEqual([true, true]);
    expect(phone.snapshot()).toMatchObject({ unsentCount: 0, unsentFiles: 0 });
    expect(await phone.file(sha256Of(long))).not.toBeNull();
    expect(await store.check()).toMatchObject({ isIntact: true, files: { whole: 2, waiting: [] } });
  });

  it("[SG128] go on after a cut at any request, before or after it came through, and nothing is sent twice over", async () => {
    for (const side of ["before", "after"] as const)
      for (let lost = 1; lost <= 7; lost += 1) {
        globalThis.indexedDB = new IDBFactory();
        const { store, asked, cut, fetch } = await running();
        const phone = await open(`phone-${side}-${lost}`);
        await attach(phone);
        cut[side] = () => asked.length === lost;
        await exchangeOnce({ fetch, base: "/api", store: phone });
        await exchangeOnce({ fetch, base: "/api", store: phone });
        expect([side, lost, await heldBy(store, long)]).toEqual([side, lost, true]);
        expect(phone.snapshot()).toMatchObject({ unsentCount: 0, unsentFiles: 0 });
        const begun = asked.filter(({ path }) => path.includes("from=0&"));
        expect(begun.length).toBeLessThanOrEqual(2);
      }
  });

  it("[SG128] come through a line that cuts a third of all requests, doubles some and lets others overtake", async () => {
    const below = seeded(128);
    const { store, cut, fetch } = await running();
    const phone = await open();
    await attach(phone);
    await attach(phone, photo, "image/jpeg");
    cut.before = () => below(6) === 0;
    cut.after = () => below(6) === 0;
    let held: (() => void) | null = null;
    const wild: typeof globalThis.fetch = async (input, init) => {
      if (init?.method === "POST" && below(3) === 0) {
        const copy = () => void fetch(input, init).catch(() => {});
        if (below(2) === 0) copy();
        else held = copy; // comes long after others
      }
      if (held && below(4) === 0) {
        held();
        held = null;
      }
      return fetch(input, init);
    };
    for (let round = 0; round < 200 && phone.snapshot().unsentFiles > 0; round += 1)
      await exchangeOnce({ fetch: wild, base: "/api", store: phone });
    expect([await heldBy(store, long), await heldBy(store, photo)]).toEqual([true, true]);
    expect(await store.check()).toMatchObject({ isIntact: true, damage: [], files: { whole: 2, waiting: [] } });
  });

  it("[SG128] leave the way to an entry that is recorded meanwhile", async () => {
    const { store, asked, cut, fetch } = await running();
    const phone = await open();
    await attach(phone);
    let parts = 0;
    cut.after = ({ path }) => {
      if (path.includes("/parts")) parts += 1;
      if (parts === 1 && path.includes("/parts")) void phone.record([bee(1)]);
      return false;
    };
    await exchangeOnce({ fetch, base: "/api", store: phone });
    expect(await heldBy(store, long)).toBe(false);
    asked.length = 0;
    await exchangeOnce({ fetch, base: "/api", store: phone });
    expect(asked[0]?.path).toMatch(/\/entries$/);
    expect(await heldBy(store, long)).toBe(true);
    expect(asked.filter(({ path }) => path.includes("from=0&"))).toEqual([]);
  });

  it("[SG129] are told when the service will not have them, stay here, and are not sent again and again", async () => {
    const { store, asked, fetch } = await running();
    const phone = await open();
    const page = new TextEncoder().encode("<!doctype html><script>alert(1)</script>") as Uint8Array<ArrayBuffer>;
    await attach(phone, page, "image/jpeg");
    const first = await exchangeOnce({ fetch, base: "/api", store: phone });
    expect(first).toMatchObject({ reached: true, filesSent: 0, problems: [{ code: "file-not-taken" }] });
    expect(String(first.problems[0]?.slots.reason)).toMatch(/no photo and no voice note/);
    asked.length = 0;
    expect(await exchangeOnce({ fetch, base: "/api", store: phone })).toMatchObject({
      problems: [{ code: "file-not-taken" }],
    });
    expect(asked.filter(({ path }) => path.includes("/files/"))).toEqual([]);
    expect(await phone.file(sha256Of(page))).not.toBeNull();
    expect((await store.check()).files).toMatchObject({ whole: 0, waiting: [{ device: "phone-1", files: 1 }] });
  });

  it("[SG129] that the device's own disk has damaged are not sent, and told", async () => {
    const { store, fetch } = await running();
    const phone = await open();
    const flipped = long.slice();
    flipped[200_000] = (flipped[200_000] ?? 0) ^ 1;
    await phone.record([attachedDraft(long, "audio/webm")], [{ ...fileOf(long), bytes: flipped }]);
    const report = await exchangeOnce({ fetch, base: "/api", store: phone });
    expect(report.problems).toMatchObject([
      { code: "file-not-taken", slots: { reason: expect.stringMatching(/damaged/) } },
    ]);
    expect(await store.files.standing(sha256Of(long), null)).toEqual({ held: 0, isWhole: false });
  });

  it("[SG130] go with the erasure of their entry, unless another entry names them", async () => {
    const { fetch, store } = await running();
    const phone = await open();
    const [one] = await attach(phone);
    const [two] = await phone.record([attachedDraft(long, "audio/webm", { caption: "again" })]);
    const office = writer({ device: "office-1" });
    const erase = (id = "") =>
      office.write({
        ...{ kind: "content-erased", at: "2026-05-05", about: ["case-1"] },
        data: { entries: [id], reason: "asked for" },
      });
    await exchangeOnce({ fetch, base: "/api", store: phone });
    await store.push(erase(one?.header.id));
    await exchangeOnce({ fetch, base: "/api", store: phone });
    expect(await phone.file(sha256Of(long))).not.toBeNull();
    await store.push(erase(two?.header.id));
    await exchangeOnce({ fetch, base: "/api", store: phone });
    expect(await phone.file(sha256Of(long))).toBeNull();
    expect(await store.files.read(sha256Of(long))).toBeNull();
  });

  it("[SG131] are sent again to a service that was set back, and only what was recorded here", async () => {
    const first = await running();
    const phone = await open();
    await attach(phone);
    await exchangeOnce({ fetch: first.fetch, base: "/api", store: phone });
    await phone.keepFile(fileOf(photo, "image/jpeg"));
    const second = await running();
    await exchangeOnce({ fetch: second.fetch, base: "/api", store: phone });
    await exchangeOnce({ fetch: second.fetch, base: "/api", store: phone });
    expect(await heldBy(second.store, long)).toBe(true);
    expect(second.asked.some(({ path }) => path.includes(sha256Of(photo)))).toBe(false);
    expect(phone.snapshot().unsentFiles).toBe(0);
  });

  it("[SG131] of others are fetched when they are looked at, held against their hash, and kept", async () => {
    const { fetch, store } = await running();
    const phone = await open();
    await attach(phone);
    await exchangeOnce({ fetch, base: "/api", store: phone });
    globalThis.indexedDB = new IDBFactory();
    const office = await open("office-1");
    const exchange = { fetch, base: "/api", store: office };
    await exchangeOnce(exchange);
    const fetched = await fetchFile(exchange, sha256Of(long));
    expect(Buffer.from(fetched?.bytes ?? []).equals(long)).toBe(true);
    if (fetched) await office.keepFile(fetched);
    expect(await office.file(sha256Of(long))).not.toBeNull();
    expect(office.snapshot().unsentFiles).toBe(0);
    const lying: typeof globalThis.fetch = async () => new Response(photo);
    expect(await fetchFile({ ...exchange, fetch: lying }, sha256Of(long))).toBeNull();
    expect(await fetchFile(exchange, "0".repeat(64))).toBeNull();
    expect((await store.check()).isIntact).toBe(true);
  });

  it("[SG131] hold back the removal of a device's records until they were sent", async () => {
    const { fetch, cut } = await running();
    const phone = await openDeviceStore({ programme: "main", owner: "m1", author: "R. Vale", device: "phone-1" });
    await attach(phone);
    cut.before = ({ path }) => path.includes("/files/");
    await exchangeOnce({ fetch, base: "/api", store: phone });
    expect(phone.snapshot()).toMatchObject({ unsentCount: 0, unsentFiles: 1 });
    expect(await removeWhatWasSent(phone, "m1")).toBe(false);
    cut.before = () => false;
    await exchangeOnce({ fetch, base: "/api", store: phone });
    expect(await removeWhatWasSent(phone, "m1")).toBe(true);
  });
});
