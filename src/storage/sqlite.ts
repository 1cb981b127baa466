/** A SQLite file, opened: one for each programme, so that programmes cannot mix. */
import { rmSync } from "node:fs";
import SQLite from "better-sqlite3";
import { type DatabaseConnection, type Dialect, Kysely, SqliteDialect } from "kysely";
import { codeOf, sqliteEngine } from "./engine.ts";
import { integrityOf } from "./integrity.ts";
import type { Keeping } from "./keeping.ts";
import { damagedRecords, StoreTrouble } from "./patience.ts";
import type { Tables } from "./tables.ts";

/**
 * Opens or makes the file; what it holds is not looked at yet.
 * @throws StoreTrouble when it is damaged or none; an error of SQLite when it may not be opened
 */
export function openFile(file: string): Keeping {
  const driver = new SQLite(file);
  try {
    driver.pragma("busy_timeout = 10000");
    driver.pragma("journal_mode = WAL");
    driver.pragma("synchronous = FULL"); // a commit is acknowledged to devices: it must be on the disk
    driver.pragma("cache_size = -65536"); // 64 MiB: ids are spread over the whole index
    driver.pragma("wal_autocheckpoint = 16000"); // 64 MiB of log before it is copied into the file: most pages are written again by then
    driver.pragma("secure_delete = ON"); // an erased body is overwritten, not only unlinked
    driver.pragma("busy_timeout = 0"); // from here on `patiently` waits, so that the service goes on answering
  } catch (trouble) {
    driver.close();
    throw sqliteEngine.isDamaged(trouble) ? new StoreTrouble(damagedRecords(`SQLite: ${codeOf(trouble)}`)) : trouble;
  }
  const database = new Kysely<Tables>({ dialect: dialectOf(driver) });
  const close = () => database.destroy();
  return {
    engine: sqliteEngine,
    database,
    place: file,
    // Moves what was written into the main file, so that erased text does not linger in the log beside it.
    afterErasure: () => void driver.pragma("wal_checkpoint(TRUNCATE)"),
    async beside(place, work) {
      driver.prepare("attach database ? as aside").run(place);
      try {
        return await work("main", "aside");
      } finally {
        driver.exec("detach database aside");
      }
    },
    findsWrong: () => integrityOf(file),
    async discard() {
      await close();
      for (const ending of ["", "-wal", "-shm"]) rmSync(`${file}${ending}`, { force: true });
    },
    close,
  };
}

/** A full disk makes SQLite end the transaction by itself: to undo it again would hide what was the trouble. */
function dialectOf(database: SQLite.Database): Dialect {
  const plain = new SqliteDialect({ database: { prepare: preparedOnce(database), close: () => database.close() } });
  return {
    createAdapter: () => plain.createAdapter(),
    createIntrospector: (db) => plain.createIntrospector(db),
    createQueryCompiler: () => plain.createQueryCompiler(),
    createDriver() {
      const made = plain.createDriver();
      const undo = made.rollbackTransaction.bind(made);
      return Object.assign(made, {
        rollbackTransaction: async (connection: DatabaseConnection) => {
          if (database.inTransaction) await undo(connection);
        },
      });
    },
  };
}

/** Statements that are kept at once: those of a push are few, those that name many values at once are of many lengths. */
const mostPrepared = 200;

/**
 * Each statement prepared once, as long as few enough are kept: to make the plan of a small one costs half as much as to
 * run it. None is read row by row, so none is still in use when it is asked for again.
 */
function preparedOnce(database: SQLite.Database): (sql: string) => SQLite.Statement {
  const prepared = new Map<string, SQLite.Statement>();
  return (sql) => {
    const known = prepared.get(sql);
    if (known) return known;
    if (prepared.size === mostPrepared) prepared.clear();
    const made = database.prepare(sql);
    prepared.set(sql, made);
    return made;
  };
}
