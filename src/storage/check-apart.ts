/** What is kept apart: how many wait for a person, who settled which, and what came from lost devices. */
import { decisionOn } from "../casebook/index.ts";
import { type Entry, entryMisfit, type Hash, hasItsContent, headerHash } from "../journal/index.ts";
import { settlementsIn } from "./kept-apart.ts";
import type { Database } from "./tables.ts";

export interface ApartReport {
  /** Entries that claim a number which another entry has, kept apart, and nobody decided on them yet. */
  readonly keptApart: number;
  /** Entries kept apart on which a person decided, by who did: no fault. */
  readonly settledApart: readonly SettledApart[];
  /** Entries that came from devices reported lost, kept apart as they should be: no fault of the store. */
  readonly fromLost: number;
}

export interface SettledApart {
  readonly by: string;
  readonly entries: number;
}

export const noneApart: ApartReport = { keptApart: 0, settledApart: [], fromLost: 0 };

/** Whether another entry has the number that this one claims. */
async function isTaken(database: Database, { header: { device, seq } }: Entry, hash: Hash): Promise<boolean> {
  const held = database.selectFrom("entries").select("hash").where("device", "=", device).where("seq", "=", seq);
  const row = await held.executeTakeFirst();
  return row !== undefined && row.hash !== hash;
}

/** How many are kept apart for a person to see to, how many since their device is reported lost, and who settled which. */
export async function checkApart(
  database: Database,
  programme: string,
  tell: (what: string) => void,
): Promise<ApartReport> {
  const rows = await database.selectFrom("quarantine").selectAll().execute();
  const lost = await database.selectFrom("devices").select("device").where("lost_at", "is not", null).execute();
  const lostDevices = new Set(lost.map(({ device }) => device));
  const settlements = await settlementsIn(database, programme);
  const settledBy: string[] = [];
  let fromLost = 0;
  for (const { hash, entry } of rows) {
    const told = `kept apart ${hash}: not what was written`;
    const settled = settlements.get(hash) ?? [];
    try {
      const read = JSON.parse(entry) as Entry;
      if (entryMisfit(read) !== null || headerHash(read.header) !== hash || !hasItsContent(read)) tell(told);
      else if (decisionOn(settled) !== null)
        settledBy.push([...new Set(settled.map(({ author }) => author))].join(", "));
      else if (lostDevices.has(read.header.device) && !(await isTaken(database, read, hash))) fromLost += 1;
    } catch {
      tell(told);
    }
  }
  const settledApart = [...Map.groupBy(settledBy, (by) => by)].map(([by, all]) => ({ by, entries: all.length }));
  return { keptApart: rows.length - fromLost - settledBy.length, fromLost, settledApart };
}
