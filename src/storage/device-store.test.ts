import "fake-indexeddb/auto";
import { IDBFactory } from "fake-indexeddb";
import { openDB } from "idb";
import { beforeEach, describe, expect, it } from "vitest";
import { bee, callDrafts, ids } from "../../tests/journals/every-kind.ts";
import { storageContract } from "../../tests/laws/storage-contract.ts";
import { fold } from "../casebook/index.ts";
import { verifyChain } from "../journal/index.ts";
import { openDeviceStore } from "./device.ts";
import { databaseName, openDatabase } from "./indexed-db.ts";

beforeEach(() => {
  globalThis.indexedDB = new IDBFactory();
});

storageContract("IndexedDB", (programme) => openDeviceStore({ programme, author: "R. Vale" }));

describe("the device's store", () => {
  const open = (programme = "main") => openDeviceStore({ programme, author: "R. Vale", device: "phone-1" });

  it("[SG70] records drafts as a chain that verifies, and shows them at once", async () => {
    const store = await open();
    let calls = 0;
    store.subscribe(() => {
      calls += 1;
    });
    const before = store.snapshot();
    expect(before).toBe(store.snapshot());
    const recorded = [...(await store.record(callDrafts)), ...(await store.record([bee(1), bee(2)]))];
    expect(verifyChain(await store.all())).toMatchObject({ isIntact: true, checked: recorded.length });
    expect(recorded.map((entry) => entry.header.seq)).toEqual([1, 2, 3, 4, 5, 6, 7]);
    expect(await store.states()).toEqual(fold(recorded));
    expect(store.snapshot().casebook.cases[ids.case]?.record).not.toBeNull();
    expect(store.snapshot().unsentCount).toBe(7);
    expect(await store.unsentCount()).toBe(7);
    expect(store.lastSafeAt()).toBe(recorded.at(-1)?.header.recordedAt);
    expect(calls).toBeGreaterThanOrEqual(2);
    await store.close();
  });

  it("[SG71] records in one transaction that waits for the disk, whatever it touches", async () => {
    const store = await open();
    const original = IDBDatabase.prototype.transaction;
    const writing: (string | undefined)[] = [];
    IDBDatabase.prototype.transaction = function (names, mode, options) {
      if (mode === "readwrite") writing.push(options?.durability);
      return original.call(this, names, mode, options);
    };
    try {
      await store.record([...callDrafts, bee(1)]);
    } finally {
      IDBDatabase.prototype.transaction = original;
    }
    expect(writing).toEqual(["strict"]);
    await store.close();
  });

  it("[SG72] makes states anew that another version of the fold left", async () => {
    const store = await open();
    const recorded = await store.record(callDrafts);
    await store.close();
    const database = await openDatabase("main", () => {});
    const known = await database.get("device", "this");
    if (!known) throw new Error("the device has no record");
    await database.put("device", { ...known, foldVersion: known.foldVersion + 1 }, "this");
    await database.put("states", { root: ids.case, position: 1, words: JSON.stringify(fold([])) });
    database.close();
    const again = await open();
    expect(await again.states()).toEqual(fold(recorded));
    await again.close();
  });

  it("[SG72] makes states anew that an older version kept in another form", async () => {
    const store = await open();
    const recorded = await store.record(callDrafts);
    await store.close();
    const now = await openDatabase("main", () => {});
    const names = ["entries", "heads", "device"] as const;
    const held = await Promise.all(
      names.map(async (name) => [name, await now.getAllKeys(name), await now.getAll(name)] as const),
    );
    now.close();
    globalThis.indexedDB = new IDBFactory();
    const older = await openDB(databaseName("main"), 2, {
      upgrade(database) {
        const entries = database.createObjectStore("entries", { keyPath: "id" });
        entries.createIndex("by-place", ["device", "seq"], { unique: true });
        for (const name of ["root", "position", "unsent"]) entries.createIndex(`by-${name}`, name);
        database.createObjectStore("heads", { keyPath: "device" });
        database.createObjectStore("states", { keyPath: "root" }).createIndex("by-position", "position");
        database.createObjectStore("erased", { keyPath: ["id", "root"] });
        database.createObjectStore("quarantine", { keyPath: "hash" });
        database.createObjectStore("device");
        database.createObjectStore("files", { keyPath: "sha256" }).createIndex("by-unsent", "unsent");
        database.createObjectStore("file-bytes");
      },
    });
    for (const [name, keys, values] of held)
      for (const [index, value] of values.entries())
        await older.put(name, value, name === "device" ? keys[index] : undefined);
    await older.put("states", { root: ids.case, position: 1, part: fold(recorded) });
    older.close();
    const again = await open();
    expect(await again.all()).toEqual(recorded);
    expect(await again.states()).toEqual(fold(recorded));
    expect(again.snapshot().unsentCount).toBe(recorded.length);
    await again.close();
  });

  it("[SG73] loses no number when two tabs record at once", async () => {
    const [one, two] = [await open(), await open()];
    await Promise.all(Array.from({ length: 40 }, (_, index) => (index % 2 ? one : two).record([bee(index + 1)])));
    const entries = await one.all();
    expect(entries.map((entry) => entry.header.seq).sort((a, b) => a - b)).toEqual(
      Array.from({ length: 40 }, (_, index) => index + 1),
    );
    expect(verifyChain(entries).isIntact).toBe(true);
    await one.close();
    await two.close();
  });

  it("[SG74] shows in one tab what another recorded", async () => {
    const [one, two] = [await open(), await open()];
    const told = new Promise<void>((resolve) => {
      two.subscribe(() => two.snapshot().unsentCount === 1 && resolve());
    });
    await one.record([bee(1)]);
    await told;
    expect(two.snapshot().casebook).toEqual(one.snapshot().casebook);
    await one.close();
    await two.close();
  });

  it("[SG75] keeps device, author, states and time when opened again", async () => {
    const store = await open();
    await store.signAs("L. Brook");
    const [entry] = await store.record([bee(1)]);
    await store.close();
    const again = await openDeviceStore({ programme: "main", author: "someone", device: "another" });
    expect(again.device()).toBe("phone-1");
    expect(again.author()).toBe("L. Brook");
    expect(entry?.header.author).toBe("L. Brook");
    expect(again.lastSafeAt()).toBe(entry?.header.recordedAt);
    expect(again.snapshot().casebook).toEqual(fold(entry ? [entry] : []));
    const [next] = await again.record([bee(2)]);
    expect(next?.header.seq).toBe(2);
    await again.close();
  });

  it("[SG71] writes all drafts or none", async () => {
    const store = await open();
    const broken = { ...bee(2), data: { ...bee(2).data, left: "purple" } } as never;
    await expect(store.record([bee(1), broken])).rejects.toThrow("data of bee-read");
    expect(await store.all()).toEqual([]);
    expect(await store.heads()).toEqual([]);
    const [entry] = await store.record([bee(1)]);
    expect(entry?.header.seq).toBe(1);
    await store.close();
  });
});
