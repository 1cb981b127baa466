/** Is what is kept what was written: the tables, the chains, the heads, the kept states. Entry by entry, never all at once. */
import { sql } from "kysely";
import { rootOf } from "../casebook/index.ts";
import {
  type ChainWalk,
  chainWalk,
  type Entry,
  entryMisfit,
  erasedBy,
  type Hash,
  type Head,
  headerHash,
  type VerifyReport,
} from "../journal/index.ts";
import { erasureKey } from "./admission.ts";
import { type ApartReport, checkApart, noneApart } from "./check-apart.ts";
import { checkFiles } from "./check-files.ts";
import { checkRights, type RightsReport } from "./check-rights.ts";
import { columnsOf } from "./columns.ts";
import type { Engine } from "./engine.ts";
import { attachedRow } from "./file-names.ts";
import type { FilesReport } from "./files-contract.ts";
import type { Keeping } from "./keeping.ts";
import { nativeDigest } from "./native-digest.ts";
import { StoreTrouble } from "./patience.ts";
import { isSealed, statesByRoot } from "./projection.ts";
import { type RightsRefold, rightsRefold } from "./rights.ts";
import { entryOf } from "./rows.ts";
import type { Database, EntryRow, Tables, Writing } from "./tables.ts";

/** What checking a store found. */
export interface StoreReport extends VerifyReport, ApartReport {
  /** Photos and voice notes; null where only a journal was checked. */
  readonly files: FilesReport | null;
  /** Who may see what, refolded from the journal; null where only a journal was checked, or not all of it could be read. */
  readonly rights: RightsReport | null;
  /** What is damaged beside the chains, each in a few words with its place. */
  readonly damage: readonly string[];
}

const pageRows = 1000;
const mostDamage = 50;

/** Reads all that is kept and holds it against the chains, the heads the store noted, and these. */
export async function checkStore(
  {
    database,
    engine,
    findsWrong,
    programme,
  }: Pick<Keeping, "database" | "engine" | "findsWrong"> & { readonly programme: string },
  noted: readonly Head[],
): Promise<StoreReport> {
  const damage: string[] = [];
  const tell = (what: string) => void (damage.length < mostDamage && damage.push(what));
  // Beside the rest: it takes as long as all the entries.
  const tables = findsWrong().then(
    (lines) => {
      for (const line of lines) tell(`tables: ${line}`);
      return lines.length > 0;
    },
    (trouble: unknown) => {
      if (!isDamage(engine, trouble)) throw trouble;
      tell(`tables: ${(trouble as Error).message}`);
      return true;
    },
  );
  tables.catch(() => {}); // awaited below, and until then no reason to end the process
  const { found, stopped } = await atOneInstant(database, engine, tell, async (tx, part) => {
    const heads = (await part("heads", () => tx.selectFrom("heads").selectAll().execute())) ?? [];
    for (const head of heads.filter((each) => !isHead(each))) tell(`heads: ${head.device}`);
    const walking: Walking = {
      walk: chainWalk([...heads.filter(isHead), ...noted], nativeDigest),
      erased: new Set(),
      named: new Map(),
      refold: rightsRefold(programme),
      tell,
    };
    const walked = await part("entries", () => walkEntries(tx, walking));
    return {
      heads,
      report: walking.walk.report(),
      rights: walked && (await part("rights", () => checkCounterAndRights(tx, { ...walking, ...walked }))),
      areNamedSo: await part("columns", () => checkColumns(tx, tell)),
      erasures: await part("erasures", () => checkErasures(tx, walking.erased, tell)),
      files: await part("files", () => checkFiles(tx, walking.named, tell)),
      states: await part("states", () => checkStates(tx, engine, tell)),
      apart: (await part("kept apart", () => checkApart(tx, programme, tell))) ?? noneApart,
    };
  });
  const isWrong = (await tables) || found.areNamedSo === false;
  // A row that the database calls no row of its table may be of any shape; else it is a bug of ours.
  for (const { name, trouble } of stopped)
    if (isWrong) tell(`${name}: not what was written`);
    else throw trouble;
  const { heads, report, rights, files, apart } = found;
  for (const { device, seq } of report.heads) {
    const head = heads.find((each) => each.device === device);
    if (!head) tell(`heads: none of ${device}`);
    else if (head.seq < seq) tell(`heads: ${head.seq} of ${device}, whose entries reach ${seq}`);
  }
  const isIntact = report.isIntact && damage.length === 0 && apart.keptApart === 0;
  return { ...report, isIntact, ...apart, files, rights, damage };
}

const isDamage = (engine: Engine, trouble: unknown): boolean =>
  engine.isDamaged(trouble) || trouble instanceof StoreTrouble;

/** One part of the check; null when it stopped, as on what the database itself cannot read, and the other parts go on. */
type Part = <T>(name: string, work: () => Promise<T>) => Promise<T | null>;

interface Stopped {
  readonly name: string;
  readonly trouble: unknown;
}

/** Reads everything as it stands at one instant, so that what is written meanwhile is no difference. */
async function atOneInstant<T>(
  database: Database,
  engine: Engine,
  tell: (what: string) => void,
  work: (tx: Writing, part: Part) => Promise<T>,
): Promise<{ readonly found: T; readonly stopped: readonly Stopped[] }> {
  const stopped: Stopped[] = [];
  const begun = await database.startTransaction().setIsolationLevel("repeatable read").execute();
  try {
    const found = await work(begun, async (name, reading) => {
      const mark = await begun.savepoint("part").execute();
      try {
        return await reading();
      } catch (trouble) {
        if (isDamage(engine, trouble)) tell(`${name}: ${(trouble as Error).message}`);
        else stopped.push({ name, trouble });
        // PostgreSQL reads no further where something failed; SQLite may have ended the transaction by itself, and reads on.
        await mark
          .rollbackToSavepoint("part")
          .execute()
          .catch(() => {});
        return null;
      }
    });
    return { found, stopped };
  } finally {
    await begun.rollback().execute();
  }
}

const isHead = ({ device, seq, hash }: Head): boolean =>
  typeof device === "string" && Number.isSafeInteger(seq) && typeof hash === "string";

interface Walking {
  readonly walk: ChainWalk;
  readonly erased: Set<string>;
  /** Files that entries name, by entry. */
  readonly named: Map<string, Tables["attached"]>;
  readonly refold: RightsRefold;
  readonly tell: (what: string) => void;
}

/** Position of the last entry, and how many could not be read. */
interface Walked {
  readonly last: number;
  readonly unread: number;
}

/** In the order taken in: in it each device's numbers rise. */
async function walkEntries(database: Database, { walk, erased, named, refold, tell }: Walking): Promise<Walked> {
  let unread = 0;
  for (let last = 0; ; ) {
    const query = database.selectFrom("entries").selectAll().where("position", ">", last).orderBy("position");
    const rows = await query.limit(pageRows).execute();
    for (const row of rows) {
      const read = readable(row, tell);
      if (!read) {
        unread += 1;
        continue;
      }
      const { entry, hash } = read;
      walk.take(entry, hash);
      refold.take(entry, row.position);
      const attached = attachedRow(entry);
      if (attached) named.set(attached.entry, attached);
      for (const id of erasedBy(entry)) erased.add(erasureKey({ id, root: rootOf(entry) }));
    }
    last = rows.at(-1)?.position ?? last;
    if (rows.length < pageRows) return { last, unread };
  }
}

/** Rights of which an entry cannot be read any more are not refolded: that entry is told already. */
async function checkCounterAndRights(
  tx: Writing,
  { last, unread, refold, tell }: Walked & Pick<Walking, "refold" | "tell">,
): Promise<RightsReport | null> {
  const { position } = await tx.selectFrom("counters").select("position").executeTakeFirstOrThrow();
  if (position !== last) tell(`counter: ${position} where ${last} entries were taken in`);
  return unread > 0 ? null : checkRights(tx, refold.told(), tell);
}

interface Readable {
  readonly entry: Entry;
  readonly hash: Hash;
}

/** The entry of a row whose columns say what its header says; told, and null, when it is none. */
function readable(row: EntryRow, tell: (what: string) => void): Readable | null {
  const place = `entry ${row.seq} of ${row.device}`;
  let entry: Entry;
  try {
    entry = entryOf(row);
  } catch {
    tell(`${place}: no longer the words that were written`);
    return null;
  }
  const hash = hashOf(entry);
  if (hash !== row.hash) {
    tell(`${place}: no longer what it is looked up by`);
    if (hash === null || entryMisfit(entry) !== null) return null;
    return { entry, hash };
  }
  const { id, device, seq, kind } = entry.header;
  if (id !== row.id || device !== row.device || seq !== row.seq || kind !== row.kind || rootOf(entry) !== row.root)
    tell(`${place}: kept in the place of another`);
  return { entry, hash };
}

/** Null when the header has lost the shape of one. */
function hashOf({ header }: Entry): Hash | null {
  try {
    return headerHash(header, nativeDigest);
  } catch {
    return null;
  }
}

/** Each table has its columns under their names, also those that nothing else here reads. */
async function checkColumns(database: Database, tell: (what: string) => void): Promise<boolean> {
  let areNamedSo = true;
  for (const [table, columns] of Object.entries(columnsOf) as [keyof Tables, readonly string[]][]) {
    // A row in any case, so that the names it comes with are seen: SQLite finds a column by small letters or capitals.
    const row: object | undefined = await database
      .selectFrom(sql<{ readonly one: number }>`(select 1 as one)`.as("one"))
      .leftJoin(table as "entries", (join) => join.on(sql<boolean>`1 = 0`))
      .select(columns.map((name) => database.dynamic.ref(`${table}.${name}`)))
      .executeTakeFirst();
    if (Object.keys(row ?? {}).join() === columns.join()) continue;
    tell(`columns of ${table}: not named as they were`);
    areNamedSo = false;
  }
  return areNamedSo;
}

async function checkErasures(
  database: Database,
  said: ReadonlySet<string>,
  tell: (what: string) => void,
): Promise<void> {
  const kept = new Set((await database.selectFrom("erased").selectAll().execute()).map(erasureKey));
  for (const key of [...said, ...kept]) if (!said.has(key) || !kept.has(key)) tell(`erasures: ${key}`);
}

/** Every root has its state, sealed by the fold that made it. */
async function checkStates(database: Database, engine: Engine, tell: (what: string) => void): Promise<void> {
  let states = 0;
  for await (const row of statesByRoot(database, engine)) {
    states += 1;
    if (!isSealed(row)) tell(`state of ${row.root}: not what was written`);
  }
  const { roots } = await database
    .selectFrom("entries")
    .select((row) => row.fn.count<number>("root").distinct().as("roots"))
    .executeTakeFirstOrThrow();
  if (Number(roots) !== states) tell(`states: ${states} where there are ${roots} cases, places and specimens`);
}
