/** The kept states of the roots: made by the fold, thrown away and made again at will, never a source of anything. */
import { createHash } from "node:crypto";
import { type Casebook, emptyCasebook, foldRoot, foldVersion, withRoots } from "../casebook/index.ts";
import { canonicalJson, type Hash, textHash } from "../journal/index.ts";
import type { Engine } from "./engine.ts";
import { nativeDigest } from "./native-digest.ts";
import { entryOf, lockCounter } from "./rows.ts";
import type { Database, Tables, Writing } from "./tables.ts";

type StateRow = Tables["states"];

/** What a root's entries amount to, those up to a position. */
async function folded(database: Database | Writing, root: string, upTo = Number.MAX_SAFE_INTEGER): Promise<Casebook> {
  const rows = await database
    .selectFrom("entries")
    .select(["header", "body"])
    .where("root", "=", root)
    .where("position", "<=", upTo)
    .execute();
  return foldRoot(root, rows.map(entryOf));
}

/** Folds these roots and keeps what comes of it, in the transaction that took in their entries. */
export async function keepStates(tx: Writing, roots: Iterable<string>, position: number): Promise<void> {
  for (const root of roots) {
    const row = sealedState({ root, position, part: JSON.stringify(await folded(tx, root)) });
    await tx
      .insertInto("states")
      .values(row)
      .onConflict((conflict) => conflict.column("root").doUpdateSet(row))
      .execute();
  }
}

/** The row of a state: what it says of itself stands first in it, so that a damaged one is never taken for a whole one. */
function sealedState({ root, position, part }: Omit<StateRow, "fold_version">): StateRow {
  const row = { root, fold_version: foldVersion, position };
  return { ...row, part: `${sealOf({ ...row, part })} ${part}` };
}

const sealLength = 32;

const sealOf = ({ root, fold_version, position, part }: StateRow): string =>
  createHash("sha256").update(`${root}\n${fold_version}\n${position}\n${part}`).digest("hex").slice(0, sealLength);

/** Whether the row is what this fold wrote. */
export const isSealed = (row: StateRow): boolean =>
  row.fold_version === foldVersion &&
  typeof row.part === "string" &&
  row.part.startsWith(`${sealOf({ ...row, part: partIn(row) })} `);

const partIn = ({ part }: StateRow): string => part.slice(sealLength + 1);

/** The kept state; null when this fold did not make it, or when it is not what was written. */
export const stateIn = (row: StateRow): Casebook | null =>
  isSealed(row) ? (JSON.parse(partIn(row)) as Casebook) : null;

/** Makes the states anew that another version of the fold has left, or all of them when they were dropped. */
export async function renewStates(database: Database, engine: Engine, programme: string): Promise<void> {
  if ((await outdatedRoots(database)).length === 0) return;
  await database.transaction().execute(async (tx) => {
    await engine.beforeWriting(tx);
    const position = await lockCounter(tx, programme);
    await keepStates(tx, await outdatedRoots(tx), position); // asked again: another process may have been faster
  });
}

async function outdatedRoots(database: Database | Writing): Promise<readonly string[]> {
  const any = await database.selectFrom("states").select("part").limit(1).executeTakeFirst();
  // Versions before the seal wrote the bare JSON.
  const rows =
    any && !any.part.startsWith("{")
      ? await database.selectFrom("states").select("root").where("fold_version", "!=", foldVersion).execute()
      : await database.selectFrom("entries").select("root").distinct().execute();
  return rows.map((row) => row.root);
}

/** Reads the casebook from the kept states, each time only what has changed since the last. */
export interface StatesReader {
  readonly read: () => Promise<Casebook>;
  /** Forgets what was read. */
  readonly forget: () => void;
}

/** A reader of one store. One look after another, so that an older one never covers a newer. */
export function statesReader(database: Database): StatesReader {
  let [casebook, position] = [emptyCasebook, 0];
  let looking: Promise<unknown> = Promise.resolve();

  async function look(): Promise<Casebook> {
    const changed = await database.selectFrom("states").selectAll().where("position", ">", position).execute();
    const parts: Casebook[] = [];
    // Another version of the program may be writing beside this one, and a disk may fail: what is not this fold's own
    // whole state is not read, but folded here.
    for (const row of changed) parts.push(stateIn(row) ?? (await folded(database, row.root)));
    casebook = withRoots(
      casebook,
      changed.map((row) => row.root),
      parts,
    );
    position = Math.max(position, ...changed.map((row) => row.position));
    return casebook;
  }

  return {
    read() {
      const next = looking.then(look, look);
      looking = next;
      return next;
    },
    forget: () => {
      [casebook, position] = [emptyCasebook, 0];
    },
  };
}

/** States read at once where all of them are gone through. */
const statesAtOnce = 200;

/** The kept states in the order of their roots' bytes, which is the same in every database. */
export async function* statesByRoot(database: Database, { byBytes }: Engine): AsyncGenerator<StateRow> {
  const root = byBytes("root");
  for (let last: string | null = null; ; ) {
    let query = database.selectFrom("states").selectAll().orderBy(root).limit(statesAtOnce);
    if (last !== null) query = query.where(root, ">", last);
    const rows: readonly StateRow[] = await query.execute();
    yield* rows;
    if (rows.length < statesAtOnce) return;
    last = rows.at(-1)?.root ?? "";
  }
}

/** Hash over the hashes of the roots' states, as they were at a position. */
export async function fingerprint(database: Database, engine: Engine, upTo: number): Promise<Hash> {
  const all = createHash("sha256");
  for await (const row of statesByRoot(database, engine)) {
    const part = row.position <= upTo ? stateIn(row) : null;
    const text = canonicalJson(part ?? (await folded(database, row.root, upTo)));
    // A root whose first entry came later amounts to nothing yet.
    if (text !== nothing) all.update(`${JSON.stringify(row.root)} ${textHash(text, nativeDigest)}\n`);
  }
  return all.digest("hex");
}

const nothing = canonicalJson(emptyCasebook);
