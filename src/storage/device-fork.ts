/** When two phones write under one id: what was acknowledged, what must stop, and how a device starts a new chain. */
import { type EntryDraft, type Head, isKind } from "../journal/index.ts";
import { type Problem, problem } from "../units/index.ts";
import { keepStates } from "./device-writing.ts";
import type { DeviceRecord, EntryRow, Writing } from "./indexed-db.ts";

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

/**
 * Takes the unacknowledged end off a device's chain and keeps it apart; returns it as drafts, each of which replaces
 * the entry it came from. What has lost its body has nothing more to say and gives no draft.
 */
export async function moveToNewChain(tx: Writing, device: string): Promise<readonly EntryDraft[]> {
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
  return unsent.flatMap(draftOf);
}

function draftOf({ entry: { header, body } }: EntryRow): readonly EntryDraft[] {
  if (body === null || !isKind(header.kind)) return [];
  const { kind, at, about } = header;
  return [{ kind, at, about, replaces: [...header.replaces, header.id], data: body.data } as unknown as EntryDraft];
}
