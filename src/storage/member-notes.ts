/** What the service itself writes down: who came in and what was changed about it, sealed onto a chain of its own. */
import { rootOf } from "../casebook/index.ts";
import {
  type BodyOf,
  type EntryDraft,
  erasedBy,
  headerHash,
  newEntryId,
  newSalt,
  sealChain,
} from "../journal/index.ts";
import { erasureKey } from "./admission.ts";
import type { Desk } from "./member-desk.ts";
import type { Doing, MemberBook } from "./members-contract.ts";
import { atTheMachine, serviceDevice } from "./own-devices.ts";
import { takeIn } from "./server-writing.ts";
import type { Writing } from "./tables.ts";

export type Note = Omit<BodyOf<"access-noted">, "by">;

const chance = () => crypto.getRandomValues(new Uint8Array(16));

/** Writes acts down in the transaction that does them; returns the new position. The counter must be locked. */
export async function noteActs(
  tx: Writing,
  { programme, from, doing: { by, at } }: { readonly programme: string; readonly from: number; readonly doing: Doing },
  notes: readonly Note[],
): Promise<number> {
  if (notes.length === 0) return from;
  const drafts = notes.map(
    (note): EntryDraft => ({ kind: "access-noted", at, about: [programme], data: { ...note, by } }),
  );
  return recordHere(tx, { programme, from, doing: { by, at } }, drafts);
}

/** Seals drafts onto the service's chain and takes them in, what they erase too; returns the new position. */
export async function recordHere(
  tx: Writing,
  { programme, from, doing: { by, at } }: { readonly programme: string; readonly from: number; readonly doing: Doing },
  drafts: readonly EntryDraft[],
): Promise<number> {
  const head = await tx.selectFrom("heads").selectAll().where("device", "=", serviceDevice).executeTakeFirst();
  const sealed = sealChain(
    drafts,
    { device: serviceDevice, head: head ?? null, programme, author: by ?? atTheMachine, recordedAt: at },
    drafts.map(() => ({ id: newEntryId(Date.parse(at), chance()), salt: newSalt(chance()) })),
  );
  const admitted = sealed.map((entry) => ({ entry, hash: headerHash(entry.header) }));
  const heads = admitted.slice(-1).map(({ entry, hash }) => ({ device: serviceDevice, seq: entry.header.seq, hash }));
  const erased = new Map(
    sealed
      .flatMap((entry) => erasedBy(entry).map((id) => ({ id, root: rootOf(entry) })))
      .map((each) => [erasureKey(each), each]),
  );
  return takeIn(tx, { admitted, refused: [], quarantined: [], heads, erased }, from);
}

export const notesOf = ({ write }: Desk): Pick<MemberBook, "note"> => ({
  note: (act, doing) => write(doing, async (_, note) => note(act)),
});
