/** The device's store: records into IndexedDB, keeps the states, tells listeners. */
import { type Casebook, emptyCasebook, foldVersion, withRoots } from "../casebook/index.ts";
import { type Entry, type EntryId, headerHash, newEntryId, newSalt, sealChain } from "../journal/index.ts";
import { type Problem, problem } from "../units/index.ts";
import { judge } from "./admission.ts";
import { type PushReply, pageSize } from "./contract.ts";
import { type DeviceSettings, type DeviceSnapshot, type DeviceStore, StoreStopped } from "./device-contract.ts";
import {
  fileIn,
  markFilesUnsent,
  putCopied,
  putFetched,
  putRecorded,
  settleFile,
  unsentFiles,
} from "./device-files.ts";
import { type Moved, markSent, markUnsent, moveToNewChain } from "./device-fork.ts";
import { heldIn, keepStates, quarantine, takeIn } from "./device-writing.ts";
import {
  allStores,
  type Database,
  type DeviceRecord,
  databaseName,
  inOneTransaction,
  openDatabase,
  type Writing,
} from "./indexed-db.ts";

const closed = problem("store-closed", "blocked", null);
const randomBytes = (): Uint8Array => crypto.getRandomValues(new Uint8Array(16));

const nothingShown: DeviceSnapshot = {
  casebook: emptyCasebook,
  unsentCount: 0,
  unsentFiles: 0,
  lastSafeAt: null,
  lastExchangeAt: null,
  stopped: null,
};

/** Opens the programme's store on this device; it is made on the first run. */
export async function openDeviceStore(settings: DeviceSettings): Promise<DeviceStore> {
  const { programme, owner, now = Date.now } = settings;
  const newId = (): EntryId => newEntryId(now(), randomBytes());
  const listeners = new Set<() => void>();
  let shown = nothingShown;
  let isClosed = false;
  const database = await openDatabase(programme, () => closedElsewhere(), owner);
  let { device, author } = await firstRecord(database, settings, now);
  let position = 0;
  const channel = new BroadcastChannel(databaseName(programme, owner));

  /** One look after another, so that an older one never covers a newer. */
  let looking: Promise<void> = Promise.resolve();
  function look(): Promise<void> {
    looking = looking.then(lookOnce, lookOnce);
    return looking;
  }

  /** Reads what has changed since the last look, also by other tabs. */
  async function lookOnce(): Promise<void> {
    const tx = database.transaction(allStores, "readonly");
    const [record, changed, unsentCount, unsentFileCount] = await Promise.all([
      tx.objectStore("device").get("this"),
      tx.objectStore("states").index("by-position").getAll(IDBKeyRange.lowerBound(position, true)),
      tx.objectStore("entries").index("by-unsent").count(),
      tx.objectStore("files").index("by-unsent").count(),
    ]);
    if (!record || isClosed) return;
    const roots = changed.map((row) => row.root);
    const parts = changed.map((row) => JSON.parse(row.words) as Casebook);
    const casebook = changed.length > 0 ? withRoots(shown.casebook, roots, parts) : shown.casebook;
    const { lastSafeAt, lastExchangeAt, stopped } = record;
    position = Math.max(position, record.position);
    ({ device, author } = record);
    shown = { casebook, unsentCount, unsentFiles: unsentFileCount, lastSafeAt, lastExchangeAt, stopped };
    for (const listener of listeners) listener();
  }

  /** Another tab removed the store, or the browser did: nothing more is kept here. */
  function closedElsewhere(): void {
    isClosed = true;
    shown = { ...nothingShown, stopped: closed };
    for (const listener of listeners) listener();
  }

  /** One transaction that ends in a look, here and in the other tabs. */
  async function change<T>(work: (tx: Writing, record: DeviceRecord) => Promise<T>): Promise<T> {
    if (isClosed) throw new StoreStopped(closed);
    const result = await inOneTransaction(database, async (tx) => work(tx, await thisDevice(tx)));
    await look().catch(() => {}); // it is on the disk: a look that fails must not say otherwise
    channel.postMessage("changed");
    return result;
  }

  async function admit(entries: readonly Entry[], from: { cursor?: number; areUnsent: boolean }): Promise<PushReply> {
    return change(async (tx, record) => {
      const held = await heldIn(tx, entries);
      const verdict = judge(entries, held, { programme, acceptsWithheld: true, acceptsGaps: !from.areUnsent });
      const { admitted, heads, erased, refused } = verdict;
      const end = await takeIn(tx, { admitted, heads, erased, record, areUnsent: from.areUnsent });
      await quarantine(tx, verdict, (entry) => headerHash(entry.header));
      const ownFork = verdict.quarantined.some((entry) => entry.header.device === record.device);
      const stopped = ownFork ? (refused.find(isFork)?.problem ?? null) : record.stopped;
      await saveDevice(tx, { ...record, position: end, cursor: from.cursor ?? record.cursor, stopped });
      return { heads, refused };
    });
  }

  /** Drafts sealed onto the chain of this device, not yet written. */
  async function sealHere(tx: Writing, record: DeviceRecord, drafts: readonly Moved[]): Promise<readonly Entry[]> {
    const head = (await tx.objectStore("heads").get(record.device)) ?? null;
    const recordedAt = new Date(now()).toISOString();
    return sealChain(
      drafts.map(({ draft }) => draft),
      { device: record.device, head, programme, author: record.author, recordedAt },
      drafts.map(({ id }) => ({ id, salt: newSalt(randomBytes()) })),
    );
  }

  async function write(tx: Writing, record: DeviceRecord, sealed: readonly Entry[]) {
    const verdict = judge(sealed, await heldIn(tx, sealed), { programme, acceptsWithheld: false });
    const [trouble] = verdict.refused;
    if (trouble) throw new StoreStopped(trouble.problem);
    const position = await takeIn(tx, { ...verdict, record, areUnsent: true });
    return { position, lastSafeAt: sealed.at(-1)?.header.recordedAt ?? record.lastSafeAt };
  }

  channel.addEventListener("message", () => void look().catch(() => {}));
  await look();
  return {
    programme,
    device: () => device,
    author: () => author,
    signAs: (name) => change((tx, record) => saveDevice(tx, { ...record, author: name })),
    record: (drafts, files = []) =>
      change(async (tx, record) => {
        if (record.stopped) throw new StoreStopped(record.stopped);
        const named = drafts.map((draft) => ({ id: newId(), draft }));
        const sealed = await sealHere(tx, record, named);
        await putRecorded(tx, files);
        await saveDevice(tx, { ...record, ...(await write(tx, record, sealed)) });
        return sealed;
      }),
    file: (sha256) => fileIn(database, sha256),
    keepFile: (file) => change((tx) => putFetched(tx, file)),
    takeFiles: (files) => change((tx) => putCopied(tx, files)),
    unsentFiles: () => unsentFiles(database),
    settleFile: (sha256, refused) => change((tx) => settleFile(tx, sha256, refused)),
    registerAnew: (id = newId()) =>
      change(async (tx, old) => {
        const record = { ...old, device: id, cursor: 0, stopped: null };
        const moved = await moveToNewChain(tx, old.device, newId);
        const sealed = await sealHere(tx, record, moved);
        await saveDevice(tx, { ...record, ...(await write(tx, record, sealed)) });
        return sealed;
      }),
    push: (entries) => admit(entries, { areUnsent: true }),
    takePage: (page) => admit(page.entries, { areUnsent: false, cursor: page.cursor }),
    async pull(cursor, limit = pageSize) {
      const after = IDBKeyRange.lowerBound(cursor, true);
      const rows = await database.getAllFromIndex("entries", "by-position", after, limit + 1);
      const page = rows.slice(0, limit);
      const end = (await database.get("device", "this"))?.position ?? 0;
      return {
        entries: page.map((row) => row.entry),
        cursor: page.at(-1)?.position ?? Math.min(cursor, end),
        more: rows.length > limit,
      };
    },
    entriesOf: async (root) =>
      (await database.getAllFromIndex("entries", "by-root", root))
        .sort((one, other) => one.position - other.position)
        .map((row) => row.entry),
    all: async () => (await database.getAllFromIndex("entries", "by-position")).map((row) => row.entry),
    heads: () => database.getAll("heads"),
    states: async () => shown.casebook,
    quarantined: async () => (await database.getAll("quarantine")).map((row) => row.entry),
    snapshot: () => shown,
    subscribe(listener) {
      listeners.add(listener);
      return () => void listeners.delete(listener);
    },
    async unsent(limit = pageSize) {
      const rows = await database.getAllFromIndex("entries", "by-unsent");
      return rows
        .sort((one, other) => one.position - other.position)
        .slice(0, limit)
        .map((row) => row.entry);
    },
    unsentCount: async () => database.countFromIndex("entries", "by-unsent"),
    lastSafeAt: () => shown.lastSafeAt,
    cursor: async () => (await database.get("device", "this"))?.cursor ?? 0,
    acknowledge: (heads) =>
      change(async (tx, record) => {
        const stopped = await markSent(tx, heads, record);
        await saveDevice(tx, { ...record, lastExchangeAt: new Date(now()).toISOString(), stopped });
      }),
    sendAgain: (of, from) =>
      change(async (tx, record) => {
        const marked = await markUnsent(tx, of, from);
        if (marked > 0) await markFilesUnsent(tx);
        if (marked > 0) await saveDevice(tx, { ...record, cursor: 0 });
        return marked;
      }),
    stop: (reason) => change((tx, record) => saveDevice(tx, { ...record, stopped: reason })),
    async close() {
      channel.close();
      listeners.clear();
      database.close();
    },
  };
}

const isFork = (refusal: { readonly problem: Problem }): boolean => refusal.problem.code === "two-entries-one-number";

/** What the device knows of itself; written on the first run, states made anew when the fold has changed since. */
function firstRecord(database: Database, settings: DeviceSettings, now: () => number): Promise<DeviceRecord> {
  return inOneTransaction(database, async (tx) => {
    const known = await tx.objectStore("device").get("this");
    if (known?.foldVersion === foldVersion) return known;
    if (known) {
      const rows = await tx.objectStore("entries").getAll();
      await tx.objectStore("states").clear();
      await keepStates(tx, new Set(rows.map((row) => row.root)), known.position);
    }
    const record: DeviceRecord = known
      ? { ...known, foldVersion }
      : {
          device: settings.device ?? newEntryId(now(), randomBytes()),
          author: settings.author,
          position: 0,
          cursor: 0,
          foldVersion,
          lastSafeAt: null,
          lastExchangeAt: null,
          stopped: null,
        };
    await saveDevice(tx, record);
    return record;
  });
}

async function thisDevice(tx: Writing): Promise<DeviceRecord> {
  const record = await tx.objectStore("device").get("this");
  if (!record) throw new StoreStopped(closed);
  return record;
}

async function saveDevice(tx: Writing, record: DeviceRecord): Promise<void> {
  await tx.objectStore("device").put(record, "this");
}
