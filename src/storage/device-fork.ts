/** What the service has of each chain: what it acknowledged, what it lost, and how a device starts a new chain. */
import { type Entry, type EntryDraft, type EntryId, type Head, isKind } from "../journal/index.ts";
import { type Problem, problem } from "../units/index.ts";
import { keepStates } from "./device-writing.ts";
import type { DeviceRecord, Writing } from "./indexed-db.ts";

/** Takes the mark "unsent" off everything up to the acknowledged heads; returns why the device must stop, if it must. */
export async function markSent(tx: Writing, heads: readonly Head[], record: DeviceRecord): Promise<Problem | null> {
  const store = tx.objectStore("entries");
  const safeUpTo = new Map<string, number>();
  let stopped = record.stopped;
  for (const { device, seq, hash } of heads) {
    const row = await store.index("by-place").get([device, seq]);
    if (row?.hash === hash) safeUpTo.set(device, seq);
    else if (row && device === record.device) {
      stopped = problem("two-entries-one-number", "blocked", "header.seq", { slots: { id: row.id, device, seq } });
    }
    // Without a row the service knows more of the device than is here: the next pull brings it, then it can be marked.
  }
  for (const row of await store.index("by-unsent").getAll()) {
    if (row.seq > (safeUpTo.get(row.device) ?? 0)) continue;
    const { unsent: _, ...sent } = row;
    await store.put(sent);
  }
  return stopped;
}

/** Puts the mark "unsent" back on a device's entries from this number on; returns how many did not have it. */
export async function markUnsent(tx: Writing, device: string, from: number): Promise<number> {
  const store = tx.objectStore("entries");
  const rows = await store.index("by-place").getAll(IDBKeyRange.bound([device, from], [device, Infinity]));
  const sent = rows.filter((row) => row.unsent === undefined);
  for (const row of sent) await store.put({ ...row, unsent: 1 });
  return sent.length;
}

/** What stood on the old chain, to be sealed on the new one under this id. */
export interface Moved {
  readonly id: EntryId;
  readonly draft: EntryDraft;
}

/**
 * Takes the unacknowledged end off a device's chain and keeps it apart; returns it as drafts, each of which replaces
 * the entry it came from and what that one replaced, by old and new id: what was withdrawn stays withdrawn.
 */
export async function moveToNewChain(tx: Writing, device: string, newId: () => EntryId): Promise<readonly Moved[]> {
  const store = tx.objectStore("entries");
  const unsent = (await store.index("by-unsent").getAll())
    .filter((row) => row.device === device)
    .sort((one, other) => one.seq - other.seq);
  for (const { id, hash, entry } of unsent) {
    await tx.objectStore("quarantine").put({ hash, entry });
    await store.delete(id);
  }
  const first = unsent[0];
  if (first) {
    const last = await store.index("by-place").get([device, first.seq - 1]);
    if (last) await tx.objectStore("heads").put({ device, seq: last.seq, hash: last.hash });
    else await tx.objectStore("heads").delete(device);
  }
  const { position = 0 } = (await tx.objectStore("device").get("this")) ?? {};
  await keepStates(tx, new Set(unsent.map((row) => row.root)), position + 1);
  const renamed = new Map(unsent.map(({ id }) => [id, newId()]));
  return unsent.flatMap(({ entry }) => {
    const id = renamed.get(entry.header.id);
    const draft = draftOf(entry, renamed);
    return id && draft ? [{ id, draft }] : [];
  });
}

/** What has lost its body, or is of a kind unknown here, has nothing more to say but that it replaced something. */
function draftOf({ header, body }: Entry, renamed: ReadonlyMap<EntryId, EntryId>): EntryDraft | null {
  const { kind, at, about } = header;
  const replaces = [...header.replaces.flatMap((id) => [id, renamed.get(id) ?? []].flat()), header.id];
  if (body !== null && isKind(kind)) return { kind, at, about, replaces, data: body.data } as unknown as EntryDraft;
  if (header.replaces.length === 0) return null;
  return { kind: "entry-withdrawn", at, about, replaces, data: { reason: "" } };
}
