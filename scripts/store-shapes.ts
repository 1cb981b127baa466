/**
 * Writes a store of the newest shape as SQL, filled with the invented case of every kind and a fork: once when a version with a
 * new shape is released, never again for a shape that was. Tests open each of them and find everything.
 */
import { spawnSync } from "node:child_process";
import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import SQLite from "better-sqlite3";
import { migrations } from "../src/storage/migrations.ts";
import { openServerStore, recordsBy } from "../src/storage/server.ts";
import { everyKind } from "../tests/journals/every-kind.ts";
import { fork } from "../tests/journals/fork.ts";
import { startPostgres } from "../tests/postgres/server.ts";
import { ensurePostgres } from "./postgres.ts";

const out = path.join(import.meta.dirname, "..", "tests", "golden", "store");
const folder = mkdtempSync(path.join(tmpdir(), "skepsis-shape-"));
const comment = `-- Shape ${migrations.length} of the service's store, with the invented case of every kind and a fork. Written by scripts/store-shapes.ts.\n`;

const file = path.join(folder, "main.sqlite");
const store = await openServerStore({ file, programme: "main" });
await store.push([...everyKind(), ...fork()]);
await store.close();
writeFileSync(path.join(out, `sqlite-shape-${migrations.length}.sql`), comment + sqliteDump(file));

const found = ensurePostgres();
if ("missing" in found) throw new Error(found.missing);
const server = await startPostgres(found.programs);
const records = recordsBy({ database: server.address, folder });
if (!records.ok) throw new Error("no address");
const kept = await records.value.open("main");
await kept.push([...everyKind(), ...fork()]);
await records.value.close();
const options = ["--inserts", "--no-owner", "--no-privileges", "--schema=skepsis_main", `--dbname=${server.address}`];
const dumped = spawnSync(path.join(found.programs, "pg_dump"), options, { encoding: "utf8" });
await server.remove();
if (dumped.status !== 0) throw new Error(dumped.stderr);
// Without the words that only psql understands, the comments, and the settings of the session.
const lines = dumped.stdout.split("\n").filter((line) => !/^(\\|--|SET |SELECT pg_catalog|$)/.test(line));
writeFileSync(path.join(out, `postgres-shape-${migrations.length}.sql`), `${comment}${lines.join("\n")}\n`);

function sqliteDump(from: string): string {
  const raw = new SQLite(from, { readonly: true });
  const made = raw.prepare("select name, type, sql from sqlite_master where sql is not null order by rowid").all();
  const tables = made as readonly { readonly name: string; readonly type: string; readonly sql: string }[];
  const rows = tables
    .filter(({ type }) => type === "table")
    .flatMap(({ name }) =>
      (raw.prepare(`select * from ${name}`).raw().all() as unknown[][]).map((row) => ({ name, row })),
    );
  raw.close();
  const inserts = rows.map(({ name, row }) => `insert into ${name} values (${row.map(literal).join(", ")});`);
  return `${[...tables.map((each) => `${each.sql};`), ...inserts].join("\n")}\n`;
}

function literal(value: unknown): string {
  if (value === null) return "null";
  return typeof value === "number" ? String(value) : `'${String(value).replaceAll("'", "''")}'`;
}
