import "fake-indexeddb/auto";
import { IDBFactory } from "fake-indexeddb";
import { beforeEach, describe, expect, it } from "vitest";
import { bee, callDrafts, everyKind, kitDrafts } from "../../tests/journals/every-kind.ts";
import { serviceFetch } from "../../tests/journals/service.ts";
import { writer } from "../../tests/journals/writer.ts";
import { fold } from "../casebook/index.ts";
import { type Entry, type EntryDraft, verifyChain } from "../journal/index.ts";
import { type DeviceStore, exchangeOnce, openDeviceStore, removeDemonstration, StoreStopped } from "./device.ts";
import { type JournalStore, memoryStore } from "./index.ts";

beforeEach(() => {
  globalThis.indexedDB = new IDBFactory();
});

const open = (device: string, programme = "main") => openDeviceStore({ programme, author: "R. Vale", device });

/** Each device has a disk of its own. */
async function onDisk<T>(disk: IDBFactory, use: () => Promise<T>): Promise<T> {
  globalThis.indexedDB = disk;
  return use();
}

describe("an exchange", () => {
  it("[SG80] brings everything to everyone", async () => {
    const service = memoryStore({ programme: "main" });
    const fetch = serviceFetch({ store: service });
    const phone = await onDisk(new IDBFactory(), () => open("phone-1"));
    const office = await onDisk(new IDBFactory(), () => open("office-1"));
    await office.record(callDrafts);
    await phone.record([bee(1), bee(2)]);
    expect(await exchangeOnce({ fetch, base: "/api", store: office })).toMatchObject({
      reached: true,
      sent: 5,
      received: 0,
    });
    expect(await exchangeOnce({ fetch, base: "/api", store: phone })).toMatchObject({
      reached: true,
      sent: 2,
      received: 5,
    });
    expect(await exchangeOnce({ fetch, base: "/api", store: office })).toMatchObject({
      reached: true,
      sent: 0,
      received: 2,
    });
    expect(await phone.states()).toEqual(await service.states());
    expect(await office.states()).toEqual(fold(await phone.all()));
    expect(office.snapshot()).toMatchObject({ unsentCount: 0, stopped: null });
    expect(office.snapshot().lastExchangeAt).not.toBeNull();
    await phone.close();
    await office.close();
  });

  it("[SG80] goes in pages when there is much", async () => {
    const service = memoryStore({ programme: "main" });
    await service.push(
      writer({ device: "office-1" }).write(...Array.from({ length: 1203 }, (_, index) => bee(index + 1))),
    );
    const phone = await open("phone-1");
    const report = await exchangeOnce({ fetch: serviceFetch({ store: service }), base: "/api", store: phone });
    expect(report).toMatchObject({ reached: true, received: 1203 });
    expect(await exchangeOnce({ fetch: serviceFetch({ store: service }), base: "/api", store: phone })).toMatchObject({
      received: 0,
    });
    await phone.close();
  });

  it("[SG81] loses and doubles nothing when the connection goes before or after any request", async () => {
    for (const side of ["before", "after"] as const) {
      for (let lost = 0; lost < 4; lost += 1) {
        globalThis.indexedDB = new IDBFactory();
        const service = memoryStore({ programme: "main" });
        await service.push(writer({ device: "office-1" }).write(...callDrafts));
        const phone = await open("phone-1");
        await phone.record([bee(1), bee(2), bee(3)]);
        let requests = 0;
        const cut = () => {
          requests += 1;
          if (requests === lost + 1) throw new TypeError("Failed to fetch");
        };
        const fetch = serviceFetch({ store: service, [side]: cut });
        const report = await exchangeOnce({ fetch, base: "/api", store: phone });
        if (!report.reached) expect(report.problems.map((each) => each.code)).toEqual(["service-unreached"]);
        await exchangeOnce({ fetch, base: "/api", store: phone });
        expect(await phone.unsentCount()).toBe(0);
        expect(await service.all()).toHaveLength(8);
        expect(await phone.states()).toEqual(await service.states());
        await phone.close();
      }
    }
  });

  it("[SG82] says what the service answered when it was no journal", async () => {
    const phone = await open("phone-1");
    await phone.record([bee(1)]);
    const answers: readonly (readonly [Response, string])[] = [
      [new Response("<html>Sign in to the network</html>"), "service-unreadable"],
      [new Response("{}", { status: 200 }), "service-unreadable"],
      [new Response("no", { status: 503 }), "service-refused"],
    ];
    for (const [response, code] of answers) {
      const report = await exchangeOnce({ fetch: async () => response, base: "/api", store: phone });
      expect(report.reached).toBe(false);
      expect(report.problems.map((each) => each.code)).toEqual([
        code === "service-unreached" ? "service-unreadable" : code,
      ]);
    }
    expect(await phone.unsentCount()).toBe(1);
    await phone.close();
  });

  it("[SG83] flags a clock that is more than ten minutes off, and changes nothing", async () => {
    const service = memoryStore({ programme: "main" });
    const date = "Mon, 09 Mar 2026 08:00:00 GMT";
    const phone = await open("phone-1");
    const at = async (minutes: number) =>
      (
        await exchangeOnce({
          fetch: serviceFetch({ store: service, date }),
          base: "/api",
          store: phone,
          now: () => Date.parse(date) + minutes * 60_000,
        })
      ).problems;
    expect(await at(10)).toEqual([]);
    expect(await at(-11)).toMatchObject([{ code: "clock-off", severity: "warned", slots: { minutes: -11 } }]);
    await phone.close();
  });

  it("[SG84] erases on every device what one erased", async () => {
    const service = memoryStore({ programme: "main" });
    const fetch = serviceFetch({ store: service });
    const phone = await onDisk(new IDBFactory(), () => open("phone-1"));
    const office = await onDisk(new IDBFactory(), () => open("office-1"));
    const [entry] = (await phone.record([bee(1)])) as [Entry];
    for (const store of [phone, office]) await exchangeOnce({ fetch, base: "/api", store });
    await office.record([withdrawal(entry, "content-erased")]);
    for (const store of [office, phone]) await exchangeOnce({ fetch, base: "/api", store });
    for (const store of [office, phone, service]) {
      expect((await store.all()).find((each) => each.header.id === entry.header.id)?.body).toBeNull();
    }
    await phone.close();
    await office.close();
  });
});

describe("a service that lost what it had acknowledged", () => {
  const round = (store: DeviceStore, service: JournalStore) =>
    exchangeOnce({ fetch: serviceFetch({ store: service }), base: "/api", store });

  it("[SG85] gets all of it again, and the device what others sent meanwhile", async () => {
    for (const others of [0, 40]) {
      globalThis.indexedDB = new IDBFactory();
      const phone = await open("phone-1");
      await phone.record([bee(1), bee(2)]);
      const first = memoryStore({ programme: "main" });
      await first.push(writer({ device: "office-1" }).write(...callDrafts));
      await round(phone, first);
      const anew = memoryStore({ programme: "main" });
      const meanwhile = Array.from({ length: others }, (_, index) => bee(index + 100));
      await anew.push(writer({ device: "office-2" }).write(...meanwhile));
      // Set back, it shows by its cursor; grown past that already, only by what it misses before the next entry.
      if (others > 0) await phone.record([bee(3)]);
      expect(await round(phone, anew)).toMatchObject({ reached: true, refused: [] });
      expect(await phone.unsentCount()).toBe(0);
      expect(verifyChain(await anew.all(), await phone.heads()).isIntact).toBe(true);
      expect(await anew.states()).toEqual(await phone.states());
      expect((await phone.heads()).find((head) => head.device === "office-2")?.seq ?? 0).toBe(others);
      await phone.close();
    }
  });

  it("[SG85] is sent nothing again for an entry that it never took in", async () => {
    const phone = await open("phone-1");
    await phone.record([bee(1), bee(2)]);
    const refusing = memoryStore({ programme: "main" });
    const [one, two] = (await phone.all()) as [Entry, Entry];
    const pushes: number[] = [];
    const fetch: typeof globalThis.fetch = async (_, init) => {
      if (init?.method !== "POST") return new Response(JSON.stringify(await refusing.pull(0)));
      pushes.push(JSON.parse(String(init.body)).entries.length);
      return new Response(JSON.stringify(await refusing.push([{ ...one, body: null }, two])));
    };
    const report = await exchangeOnce({ fetch, base: "/api", store: phone });
    expect(report.refused.map((each) => each.problem.code)).toEqual(["body-missing", "entries-missing-before"]);
    expect(pushes).toEqual([2]);
    await phone.close();
  });
});

describe("a push that does not fit one page", () => {
  it("[SG84] sends a body that was erased before it was sent together with its erasure", async () => {
    const service = memoryStore({ programme: "main" });
    const phone = await open("phone-1");
    const [one] = (await phone.record(Array.from({ length: 600 }, (_, index) => bee(index + 1)))) as [Entry];
    await phone.record([withdrawal(one, "content-erased")]);
    const report = await exchangeOnce({ fetch: serviceFetch({ store: service }), base: "/api", store: phone });
    expect(report).toMatchObject({ sent: 601, refused: [] });
    await phone.close();
  });

  it("[SG86] is cut in halves until the service takes it", async () => {
    const service = memoryStore({ programme: "main" });
    const phone = await open("phone-1");
    await phone.record(Array.from({ length: 21 }, (_, index) => bee(index + 1)));
    const answering = serviceFetch({ store: service });
    const fetch: typeof globalThis.fetch = async (url, init) =>
      init?.method === "POST" && JSON.parse(String(init.body)).entries.length > 8
        ? new Response("{}", { status: 413 })
        : answering(url, init);
    expect(await exchangeOnce({ fetch, base: "/api", store: phone })).toMatchObject({ sent: 21, refused: [] });
    const never = async () => new Response("{}", { status: 413 });
    await phone.record([bee(22)]);
    expect((await exchangeOnce({ fetch: never, base: "/api", store: phone })).problems).toMatchObject([
      { code: "service-refused", slots: { status: 413 } },
    ]);
    expect(await phone.unsentCount()).toBe(1);
    await phone.close();
  });
});

/** A withdrawal of an entry, or an erasure of its body. */
const withdrawal = ({ header: { id, about } }: Entry, kind: "entry-withdrawn" | "content-erased"): EntryDraft =>
  kind === "entry-withdrawn"
    ? { kind, at: "2026-03-17", about, replaces: [id], data: { reason: "pressed twice" } }
    : { kind, at: "2026-03-17", about, data: { entries: [id], reason: "asked for" } };

describe("a phone that was copied", () => {
  async function copied(): Promise<{
    readonly phone: DeviceStore;
    readonly fetch: typeof globalThis.fetch;
    readonly service: ReturnType<typeof memoryStore>;
  }> {
    const service = memoryStore({ programme: "main" });
    const other = writer({ device: "phone-1", author: "the copy" });
    await service.push(other.write(bee(1), bee(2)));
    const phone = await open("phone-1");
    await phone.record([bee(3), bee(4), ...kitDrafts]);
    return { phone, service, fetch: serviceFetch({ store: service }) };
  }

  it("[SG87] is stopped, both sides are kept, and the problem names the entry", async () => {
    const { phone, service, fetch } = await copied();
    const report = await exchangeOnce({ fetch, base: "/api", store: phone });
    expect(report.refused[0]?.problem).toMatchObject({
      code: "two-entries-one-number",
      slots: { device: "phone-1", seq: 1 },
    });
    expect(phone.snapshot().stopped?.code).toBe("two-entries-one-number");
    await expect(phone.record([bee(9)])).rejects.toThrow(StoreStopped);
    expect(await service.quarantined()).toHaveLength(2);
    expect(await phone.quarantined()).toHaveLength(2);
    expect(await phone.unsentCount()).toBe(6);
    await phone.close();
  });

  it("[SG88] records again under a new id without losing what it had", async () => {
    const { phone, service, fetch } = await copied();
    await exchangeOnce({ fetch, base: "/api", store: phone });
    const anew = await phone.registerAnew("phone-2");
    expect(anew.map((entry) => entry.header.seq)).toEqual([1, 2, 3, 4, 5, 6]);
    const report = await exchangeOnce({ fetch, base: "/api", store: phone });
    expect(report).toMatchObject({ reached: true, sent: 6, refused: [] });
    expect(phone.device()).toBe("phone-2");
    expect(phone.snapshot()).toMatchObject({ stopped: null, unsentCount: 0 });
    expect(await phone.states()).toEqual(await service.states());
    expect(verifyChain(await phone.all()).isIntact).toBe(true);
    expect(Object.keys((await phone.states()).specimens["specimen-1"]?.readings["reading-1"]?.bees ?? {})).toEqual([
      "1",
      "2",
      "3",
      "4",
    ]);
    await phone.record([bee(5)]);
    await phone.close();
  });

  it("[SG88] keeps withdrawn what was withdrawn before it was sent, also where the withdrawal lost its body", async () => {
    const phone = await open("phone-1");
    const [one, two] = (await phone.record([bee(1), bee(2), bee(3)])) as [Entry, Entry];
    const taken = (entry: Entry) => withdrawal(entry, "entry-withdrawn");
    const [first] = (await phone.record([taken(one), taken(two)])) as [Entry];
    await phone.record([withdrawal(first, "content-erased")]);
    const before = Object.keys((await phone.states()).specimens["specimen-1"]?.readings["reading-1"]?.bees ?? {});
    await phone.registerAnew("phone-2");
    const after = Object.keys((await phone.states()).specimens["specimen-1"]?.readings["reading-1"]?.bees ?? {});
    expect([before, after]).toEqual([["3"], ["3"]]);
    expect(verifyChain(await phone.all()).isIntact).toBe(true);
    await phone.close();
  });

  it("[SG87] heals by the next pull when it was only set back and has recorded nothing since", async () => {
    const service = memoryStore({ programme: "main" });
    const fetch = serviceFetch({ store: service });
    await service.push(writer({ device: "phone-1" }).write(bee(1), bee(2)));
    const phone = await open("phone-1");
    await exchangeOnce({ fetch, base: "/api", store: phone });
    const [next] = await phone.record([bee(3)]);
    expect(next?.header.seq).toBe(3);
    expect(await exchangeOnce({ fetch, base: "/api", store: phone })).toMatchObject({ sent: 1, refused: [] });
    await phone.close();
  });
});

describe("the demonstration on a device", () => {
  it("[SG89] never mixes with records, and goes away whole", async () => {
    const real = await open("phone-1");
    const invented = await open("phone-1", "demonstration");
    await invented.push(everyKind("demonstration"));
    await real.record([bee(1)]);
    expect((await real.push(await invented.all())).refused[0]?.problem.code).toBe("other-programme");
    expect(await removeDemonstration(real)).toMatchObject({
      ok: false,
      problems: [{ code: "only-demonstration-removable" }],
    });
    expect((await removeDemonstration(invented)).ok).toBe(true);
    expect((await indexedDB.databases()).map((each) => each.name)).toEqual(["skepsis-main"]);
    expect(await real.all()).toHaveLength(1);
    await real.close();
  });

  it("[SG89] goes away also while another tab shows it", async () => {
    const [one, two] = [await open("phone-1", "demonstration"), await open("phone-1", "demonstration")];
    await one.record([bee(1)]);
    let told = 0;
    two.subscribe(() => {
      told += 1;
    });
    expect((await removeDemonstration(one)).ok).toBe(true);
    expect(told).toBeGreaterThan(0);
    expect(two.snapshot()).toMatchObject({ stopped: { code: "store-closed" }, casebook: { specimens: {} } });
    await expect(two.record([bee(2)])).rejects.toThrow(StoreStopped);
    await two.close();
    const again = await open("phone-1", "demonstration");
    expect(await again.all()).toEqual([]);
    await again.close();
  });
});

describe("an exchange of a member", () => {
  /** A service that gives what it is told to, as one that withholds does. */
  const given = (entries: readonly Entry[], scope: string): typeof fetch => {
    return async (input, init) => {
      if (init?.method === "POST") return new Response(JSON.stringify({ heads: [], refused: [] }));
      const cursor = Number(new URL(String(input), "http://localhost").searchParams.get("cursor"));
      return new Response(
        JSON.stringify({ entries: entries.slice(cursor), cursor: entries.length, more: false, scope }),
      );
    };
  };
  const memberOf = (kept: { scope: string | null }) => ({
    scope: () => kept.scope,
    keepScope: (scope: string) => {
      kept.scope = scope;
    },
  });

  it("[SG211] takes in a chain with holes, and the entries of the holes when they come later", async () => {
    const office = writer({ device: "office-1" });
    const chain = office.write(bee(1), bee(2), bee(3), bee(4));
    const phone = await open("phone-1");
    const kept = { scope: null as string | null };
    const some = chain.filter((_, index) => index % 2 === 1);
    const settings = { base: "/api", store: phone, member: memberOf(kept) };
    expect(await exchangeOnce({ ...settings, fetch: given(some, "own") })).toMatchObject({
      reached: true,
      refused: [],
    });
    expect(await phone.all()).toEqual(some);
    expect(await phone.heads()).toMatchObject([{ device: "office-1", seq: 4 }]);
    expect(await exchangeOnce({ ...settings, fetch: given(chain, "all") })).toMatchObject({ refused: [] });
    expect((await phone.all()).map(({ header }) => header.seq).toSorted()).toEqual([1, 2, 3, 4]);
    expect(await phone.heads()).toMatchObject([{ device: "office-1", seq: 4 }]);
    expect(await phone.states()).toEqual(fold(chain));
    await phone.close();
  });

  it("[SG211] fills in a body that was withheld, and keeps an erased one erased", async () => {
    const chain = writer({ device: "office-1" }).write(bee(1), bee(2));
    const withheld = chain.map(({ header }) => ({ header, body: null }));
    const phone = await open("phone-1");
    await phone.takePage({ entries: withheld, cursor: 2 });
    expect((await phone.states()).unread.map(({ why }) => why)).toEqual(["withheld", "withheld"]);
    await phone.takePage({ entries: chain, cursor: 2 });
    expect(await phone.states()).toEqual(fold(chain));
    const erased = writer({ device: "office-2" }).write({
      ...{ kind: "content-erased", at: "2026-03-17", about: chain[0]?.header.about ?? [] },
      data: { entries: [chain[0]?.header.id ?? ""], reason: "asked for" },
    } as EntryDraft);
    await phone.takePage({ entries: erased, cursor: 3 });
    await phone.takePage({ entries: chain, cursor: 3 });
    expect((await phone.all()).filter(({ body }) => body === null)).toHaveLength(1);
    await phone.close();
  });

  it("[SG211] sends no entry of another's device again, whatever the service has lost", async () => {
    const others = writer({ device: "office-1" }).write(bee(1), bee(2));
    const phone = await open("phone-1");
    await phone.takePage({ entries: others, cursor: 2 });
    await phone.record([bee(3)]);
    const sent: string[] = [];
    const empty = memoryStore({ programme: "main" });
    const base = serviceFetch({ store: empty });
    const fetch: typeof globalThis.fetch = (input, init) => {
      if (init?.method === "POST")
        for (const { header } of (JSON.parse(String(init.body)) as { entries: Entry[] }).entries)
          sent.push(header.device);
      return base(input, init);
    };
    await exchangeOnce({ fetch, base: "/api", store: phone, member: memberOf({ scope: null }) });
    expect(new Set(sent)).toEqual(new Set(["phone-1"]));
    await phone.close();
  });

  it("[SG211] others' entries of a carried copy hold the own ones up by nothing, however many they are", async () => {
    const phone = await open("phone-1");
    await phone.push(
      writer({ device: "office-1" }).write(...Array.from({ length: 620 }, (_, index) => bee(index + 1))),
    );
    await phone.record([bee(1), bee(2)]);
    const service = memoryStore({ programme: "main" });
    const fetch: typeof globalThis.fetch = async (input, init) => {
      if (init?.method !== "POST") return serviceFetch({ store: service })(input, init);
      const { entries } = JSON.parse(String(init.body)) as { entries: Entry[] };
      const own = entries.filter(({ header }) => header.device === "phone-1");
      const refused = entries.filter(({ header }) => header.device !== "phone-1");
      const { heads } = await service.push(own);
      const slots = { device: "office-1" };
      const told = refused.map(({ header }) => ({ id: header.id, problem: { code: "device-of-another", slots } }));
      return new Response(JSON.stringify({ heads, refused: told }));
    };
    const report = await exchangeOnce({ fetch, base: "/api", store: phone, member: memberOf({ scope: null }) });
    expect(report.refused.length).toBeGreaterThan(0);
    expect((await service.all()).map(({ header }) => [header.device, header.seq])).toEqual([
      ["phone-1", 1],
      ["phone-1", 2],
    ]);
    await phone.close();
  });

  it("[SG211] says that one must sign in when the service asks for it", async () => {
    const phone = await open("phone-1");
    const fetch = async () => new Response("{}", { status: 401 });
    expect(await exchangeOnce({ fetch, base: "/api", store: phone })).toMatchObject({
      reached: false,
      problems: [{ code: "sign-in-needed" }],
    });
    await phone.close();
  });
});
