/** The service's store: one code by Kysely, over a SQLite file or a schema of PostgreSQL. */
import type { KeptApart } from "../casebook/index.ts";
import type { Entry, Hash, Head } from "../journal/index.ts";
import { answered, blocked, type Result } from "../units/index.ts";
import { type Accounts, accountsOf, putAccounts } from "./accounts.ts";
import { byDevice } from "./admission.ts";
import { checkStore, type StoreReport } from "./check.ts";
import { demonstration, type JournalStore, onlyDemonstration, type PushReply, pageSize } from "./contract.ts";
import { fileShelf } from "./file-shelf.ts";
import type { FileShelf } from "./files-contract.ts";
import { type Keeping, prepare } from "./keeping.ts";
import { type ApartPart, keptApart } from "./kept-apart.ts";
import { deskOf } from "./member-desk.ts";
import { erasureOf } from "./member-erasure.ts";
import { memberExchange } from "./member-exchange.ts";
import { keysOf } from "./member-keys.ts";
import { notesOf } from "./member-notes.ts";
import { peopleOf } from "./member-people.ts";
import { sessionsOf } from "./member-sessions.ts";
import type { MemberBook } from "./members-contract.ts";
import { type Nights, nightsOf } from "./nights.ts";
import { patiently } from "./patience.ts";
import { fingerprint, statesReader } from "./projection.ts";
import { type Push, pushesTogether, takeInTogether } from "./push-together.ts";
import { entryOf, wordsOf } from "./rows.ts";
import { keepApart } from "./server-writing.ts";
import { openFile } from "./sqlite.ts";

export interface ServerStore extends JournalStore {
  /** Forecasts of the night. */
  readonly nights: Nights;
  /** Who may come in, and what each is given. */
  readonly members: MemberBook;
  /** Photos and voice notes that entries name. */
  readonly files: FileShelf;
  /**
   * Removes the demonstration with all that it was kept in. The store is closed and of no more use.
   * Refused for any other programme: records are never removed this way.
   */
  removeDemonstration(): Promise<Result<null>>;
  /**
   * Takes in entries of a backup, in their order: also those whose body is gone before the erasure that names it has
   * come. What is erased for good must be named in the end, see `check`.
   */
  pushRestored(entries: readonly Entry[]): Promise<PushReply>;
  /** Who may come in, as a backup carries it, and the position up to which the journal had come then. */
  accounts(): Promise<{ readonly accounts: Accounts; readonly position: number }>;
  /** Puts the accounts of a backup into a store that is being restored. */
  restoreAccounts(accounts: Accounts): Promise<void>;
  /** Puts what a backup kept apart into a store that is being restored: apart again, whatever it would amount to. */
  restoreApart(entries: readonly Entry[]): Promise<void>;
  /** What is kept apart, each beside what stands under its number, and what was decided on it. */
  apart(): Promise<readonly KeptApart[]>;
  /** The first of them, what waits for a person before the rest; how many more there are, how many of all wait. */
  apartUpTo(most: number): Promise<ApartPart>;
  /** How many bodies were erased: it changes when one is. */
  erasures(): Promise<number>;
  /** Hash of what the entries up to this position amount to, made root by root: the same on every database. */
  fingerprint(upTo: number): Promise<Hash>;
  /** Reads everything that is kept and says whether it is what was written; heads noted elsewhere may be given. */
  check(noted?: readonly Head[]): Promise<StoreReport>;
}

export interface ServerSettings {
  /** Path of the SQLite file; made when it is not there. Its folder must exist. */
  readonly file: string;
  readonly programme: string;
}

/**
 * Opens the SQLite store of a programme.
 * @throws OtherProgramme when the file belongs to another programme
 */
export const openServerStore = async ({ file, programme }: ServerSettings): Promise<ServerStore> =>
  storeIn(openFile(file), programme);

/**
 * The store of a programme over what it is kept in, brought up to date first.
 * @throws OtherProgramme when another programme is kept there; StoreTrouble when the database is away
 */
export async function storeIn(keeping: Keeping, programme: string): Promise<ServerStore> {
  const { engine, database, afterErasure, discard, close } = keeping;
  try {
    await prepare(keeping, programme);
  } catch (trouble) {
    await close();
    throw trouble;
  }
  const states = statesReader(database);

  /** Work on the tables; made anew, and empty, when another process has removed the programme meanwhile. */
  async function onTables<T>(work: () => Promise<T>): Promise<T> {
    try {
      return await patiently(engine, work);
    } catch (trouble) {
      if (!engine.isRemoved(trouble)) throw trouble;
      await prepare(keeping, programme);
      states.forget();
      return patiently(engine, work);
    }
  }

  const entries = () => database.selectFrom("entries").select(["position", "header", "body"]).orderBy("position");
  const desk = deskOf(database, engine, programme, onTables);
  const take = pushesTogether(async (pushes: readonly Push[]) => {
    const verdicts = await onTables(() =>
      database
        .transaction()
        .setIsolationLevel("read committed") // after the lock, see what others have committed before it
        .execute(async (tx) => {
          await engine.beforeWriting(tx);
          return takeInTogether(tx, programme, pushes);
        }),
    );
    if (verdicts.some(({ erased }) => erased.size > 0)) afterErasure();
    return verdicts.map(({ heads, refused }) => ({ heads, refused }));
  });

  const apartUpTo = (most: number) =>
    onTables(() =>
      database
        .transaction()
        .setIsolationLevel("repeatable read")
        .execute((tx) => keptApart(tx, programme, most)),
    );

  return {
    programme,
    nights: nightsOf({
      database,
      read: onTables,
      inTransaction: (work) =>
        onTables(() =>
          database
            .transaction()
            .setIsolationLevel("read committed")
            .execute(async (tx) => {
              await engine.beforeWriting(tx);
              return work(tx);
            }),
        ),
    }),
    members: {
      ...peopleOf(desk),
      ...sessionsOf(desk),
      ...keysOf(desk),
      ...memberExchange(desk, afterErasure),
      ...erasureOf(desk, afterErasure),
      ...notesOf(desk),
    },
    files: fileShelf({ database, engine, programme }, onTables),
    push: (given) => take({ given, isRestored: false }),
    pushRestored: (given) => take({ given, isRestored: true }),
    pull: (cursor, limit = pageSize) =>
      onTables(async () => {
        const rows = await entries()
          .where("position", ">", cursor)
          .limit(limit + 1)
          .execute();
        const page = rows.slice(0, limit);
        const { position: end } = await database.selectFrom("counters").select("position").executeTakeFirstOrThrow();
        const last = page.at(-1)?.position ?? Math.min(cursor, end);
        return { entries: page.map(entryOf), cursor: last, more: rows.length > limit };
      }),
    entriesOf: (root) => onTables(async () => (await entries().where("root", "=", root).execute()).map(entryOf)),
    all: () => onTables(async () => (await entries().execute()).map(entryOf)),
    heads: () => onTables(async () => (await database.selectFrom("heads").selectAll().execute()).sort(byDevice)),
    states: () => onTables(states.read),
    quarantined: () =>
      onTables(async () => {
        const rows = await database.selectFrom("quarantine").select("entry").execute();
        return rows.map((row) => wordsOf<Entry>(row.entry));
      }),
    accounts: () => onTables(() => database.transaction().setIsolationLevel("repeatable read").execute(accountsOf)),
    restoreAccounts: (accounts) => onTables(() => database.transaction().execute((tx) => putAccounts(tx, accounts))),
    restoreApart: (given) => onTables(() => database.transaction().execute((tx) => keepApart(tx, given))),
    apart: async () => (await apartUpTo(Number.POSITIVE_INFINITY)).apart,
    apartUpTo,
    erasures: () =>
      onTables(async () => {
        const { all } = await database
          .selectFrom("erased")
          .select((row) => row.fn.countAll<number>().as("all"))
          .executeTakeFirstOrThrow();
        return Number(all);
      }),
    fingerprint: (upTo) => onTables(() => fingerprint(database, engine, upTo)),
    check: (noted = []) => onTables(() => checkStore({ ...keeping, programme }, noted)),
    async removeDemonstration() {
      if (programme !== demonstration) return blocked(onlyDemonstration(programme));
      await patiently(engine, discard);
      return answered(null);
    },
    close,
  };
}
